// The tests as they were recorded: at a glance, one by one, and as rows.
#include "report/paper/test_report.hpp"

#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/learning/typed_reading.hpp"

#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/mixture_name.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

Cell words(std::string_view text) {
  return text.empty() ? Cell() : Cell(std::string(text));
}

std::string fact_words(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* number = std::get_if<double>(&cell)) return as_recorded(*number);
  if (const auto* flag = std::get_if<bool>(&cell)) return *flag ? "yes" : "no";
  return "not noted";
}

// Two facts in a row.
std::string facts_table(const Reading& reading) {
  const std::vector<ReadingFact> facts = reading_facts(reading);
  std::string text = "<table class=\"facts\"><tbody>\n";
  for (std::size_t i = 0; i < facts.size(); i += 2) {
    text += "<tr>";
    for (std::size_t k = i; k < i + 2; ++k)
      text += k < facts.size() ? fmt::format("<th scope=\"row\">{}</th><td>{}</td>", html_text(facts[k].title),
                                             user_text(fact_words(facts[k].value)))
                               : std::string("<th></th><td></td>");
    text += "</tr>\n";
  }
  return text + "</tbody></table>\n";
}

std::string test_html(const RecordedTest& test) {
  std::string text = fmt::format("<div class=\"{}\">\n", is_withdrawn(test) ? "test withdrawn" : "test");
  const std::string mixture = shown_line(test).mixture;
  text += element("h3", fmt::format("Test {}: {}", test.number, user_text(mixture.empty() ? "not noted" : mixture)));
  text += element("p", "<b>" + user_text(status_words(test)) + "</b>");
  text += facts_table(shown_line(test));
  std::vector<std::string> items;
  for (const std::string& line : corrections_of(test)) items.push_back(user_text(line));
  if (!items.empty()) text += element("p", "Corrections, in the order in which they were written:") + html_list(items);
  return text + "</div>\n";
}

std::vector<std::string> glance_row(const RecordedTest& test) {
  std::vector<std::string> row = {std::to_string(test.number)};
  for (const char* key : {"date", "mixture", "passage", "removal", "original"})
    row.push_back(user_text(fact_words(field_value(shown_line(test), key))));
  row.push_back(user_text(status_words(test)));
  return row;
}

void add_outlook(std::vector<Cell>& row, const LayerOutlook* outlook) {
  for (const double value :
       {outlook ? outlook->chance.mean : 0, outlook ? outlook->chance.low : 0, outlook ? outlook->chance.high : 0})
    row.push_back(outlook ? Cell(computed_value(value)) : Cell());
}

const ConsideredMixture* considered_of(const TestReview& review, const RecordedTest& test) {
  if (!test.mixture) return nullptr;
  for (const ConsideredMixture& one : review.considered)
    if (to_text(one.judged.mixture) == to_text(*test.mixture)) return &one;
  return nullptr;
}

// A later look is no correction: the first reading stays as it was read.
std::string look_words(const Reading& look) {
  std::vector<std::string> seen;
  for (const char* key : {"removal", "original", "colour", "signs", "after_drying", "remark"})
    if (const std::string value = get_field(look, key); !value.empty()) seen.push_back(value);
  return fmt::format("Looked at again {} after the test: {}", look.looked_after, joined(seen, "; ", "nothing noted"));
}

}  // namespace

std::vector<ReadingFact> reading_facts(const Reading& reading) {
  std::vector<ReadingFact> facts = {{"date", "date", {}},
                                    {"who", "by whom", {}},
                                    {"mixture", mixture_column, {}},
                                    {"layer", "layer that was to go", {}},
                                    {"passage", "passage or layer below", {}},
                                    {"at_edge", at_the_edge, {}},
                                    {"x_cm", "x, cm from the left", {}},
                                    {"y_cm", "y, cm from below", {}},
                                    {"swab", "swab", {}},
                                    {"rolls", "rolls", {}},
                                    {"seconds", "contact, seconds", {}},
                                    {"removal", removal_column, {}},
                                    {"original", "the original", {}},
                                    {"colour", "colour on the swab", {}},
                                    {"clearing", "cleared with", {}},
                                    {"after_drying", "after drying", {}},
                                    {"confidence", "how sure", {}},
                                    {"remark", "remark", {}}};
  for (ReadingFact& fact : facts) {
    fact.value = field_value(reading, fact.key);
    if (reading.layer.empty() && fact.key == std::string_view("layer")) fact.value = words("the uppermost");
  }
  return facts;
}

std::string status_words(const RecordedTest& test) {
  if (is_withdrawn(test)) return "withdrawn: " + test.lines.back().correction;
  if (test.not_counted) return "not counted: " + words_of(*test.not_counted);
  return "counts";
}

std::vector<std::string> corrections_of(const RecordedTest& test) {
  std::vector<std::string> texts;
  for (std::size_t i = 1; i < test.lines.size(); ++i) {
    const Reading& line = test.lines[i];
    const std::vector<Reading> lines_before(test.lines.begin(), test.lines.begin() + static_cast<std::ptrdiff_t>(i));
    const Reading* earlier = line_before(line, lines_before);
    if (!earlier) {
      texts.push_back(look_words(line));
      continue;
    }
    std::vector<std::string> changes;
    const std::vector<ReadingFact> before = reading_facts(*earlier);
    const std::vector<ReadingFact> after = reading_facts(line);
    for (std::size_t k = 0; k < after.size() && !line.withdrawn; ++k)
      if (before[k].value != after[k].value)
        changes.push_back(fmt::format("{}: \"{}\" became \"{}\"", after[k].title, fact_words(before[k].value),
                                      fact_words(after[k].value)));
    const std::string what = line.withdrawn ? "withdrawn" : joined(changes, "; ", "nothing changed");
    texts.push_back(fmt::format("{}. Reason: {}", what, line.correction.empty() ? "not noted" : line.correction));
  }
  return texts;
}

std::string report_tests(const TestReview& review, const TestReportInputs& inputs) {
  std::string text = "<section>\n" + element("h2", "The tests");
  if (review.tests.empty()) text += element("p", "The log holds no test.");
  std::vector<std::vector<std::string>> rows;
  for (const RecordedTest& test : review.tests) rows.push_back(glance_row(test));
  if (!rows.empty())
    text += html_table({"test", "date", mixture_column, "on", removal_column, "the original", "status"}, rows, "tests");
  for (const RecordedTest& test : review.tests) text += test_html(test);
  std::vector<std::string> faults;
  for (const std::string& fault : inputs.log_faults) faults.push_back(user_text(fault));
  if (!faults.empty()) text += element("h3", "Lines of the log that could not be read whole") + html_list(faults);
  return text + "</section>\n";
}

Sheet test_report_sheet(const TestReview& review) {
  Sheet sheet{"report", {{"test", "test", -1, false}, {"status", "status", -1, true}}, {}};
  for (const ReadingFact& fact : reading_facts({})) sheet.columns.push_back({fact.key, fact.title, -1, true});
  for (const char* key : {"corrections", "rung", "dD_MPa05", "dP_MPa05", "dH_MPa05", "effect", "effect_low",
                          "effect_high", "risk", "risk_low", "risk_high", "riskiest", "chosen"})
    sheet.columns.push_back({key, key, -1, true});
  for (const RecordedTest& test : review.tests) {
    std::vector<Cell> row = {Cell(static_cast<double>(test.number)), words(status_words(test))};
    for (ReadingFact& fact : reading_facts(shown_line(test))) row.push_back(std::move(fact.value));
    const ConsideredMixture* mixture = considered_of(review, test);
    const LayerOutlook* riskiest = mixture ? riskiest_outlook(*mixture) : nullptr;
    row.push_back(words(joined(corrections_of(test), " | ", "none")));
    row.push_back(mixture ? words(name_in_plan(mixture->judged)) : Cell());
    const Hansen point = test.mixture ? mix(*test.mixture) : Hansen{};
    for (const double value : {point.dD, point.dP, point.dH})
      row.push_back(test.mixture ? Cell(computed_value(value)) : Cell());
    add_outlook(row, mixture ? target_outlook(*mixture) : nullptr);
    add_outlook(row, riskiest);
    row.push_back(riskiest ? words(riskiest->layer) : Cell());
    row.push_back(Cell(review.chosen && mixture == &review.considered[*review.chosen]));
    sheet.rows.push_back(std::move(row));
  }
  return sheet;
}

}  // namespace gentlest
