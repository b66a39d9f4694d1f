// The tests as they were recorded: at a glance, one by one, and as rows.
#include "report/paper/test_report.hpp"

#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/learning/typed_reading.hpp"

#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/reading_titles.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace gentlest {

namespace {

// What a test took, as keys of a reading.
constexpr std::array<const char*, 3> times = {"seconds", "first_effect_s", "rolls"};

Cell words(std::string_view text) {
  return text.empty() ? Cell() : Cell(std::string(text));
}

std::string fact_words(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* number = std::get_if<double>(&cell)) return as_recorded(*number);
  if (const auto* flag = std::get_if<bool>(&cell)) return *flag ? "yes" : "no";
  return "not noted";
}

// Those that have a column of their own in the row of a test.
bool is_in_row(std::string_view key) {
  for (const char* one : {"date", "who", "mixture", "passage", "at_edge", "x_cm", "y_cm", "seconds", "removal",
                          "original", "photo_before", "photo", "looked_after"})
    if (key == one) return true;
  return false;
}

// What was noted besides, in one line; nothing of what is as nothing was said.
std::vector<std::string> noted_besides(const Reading& reading) {
  std::vector<std::string> words;
  for (const ReadingFact& fact : reading_facts(reading))
    if (!is_in_row(fact.key) && get_field(reading, fact.key) != get_field({}, fact.key))
      words.push_back(html_text(fact.title) + ": " + user_text(fact_words(fact.value)));
  return words;
}

std::string place_of(const Reading& reading) {
  std::vector<std::string> words;
  if (reading.at_edge) words.emplace_back("edge");
  if (!reading.passage.empty()) words.push_back(user_text(reading.passage));
  if (reading.site)
    words.push_back("<span class=\"nowrap\">" + as_recorded(reading.site->x.value) + " / " +
                    as_recorded(reading.site->y.value) + " cm</span>");
  return joined(words, ", ", "");
}

std::string noted_cell(const Reading& reading, const char* key) {
  return user_text(get_field(reading, key));
}

// These only say which test a later look is of.
bool names_the_test(std::string_view key) {
  for (const char* one :
       {"test", "mixture", "layer", "passage", "at_edge", "x_cm", "y_cm", "looked_after", "correction", "withdrawn"})
    if (key == one) return true;
  return false;
}

// Later looks at the same place, each as its last line says, with all that was noted then.
std::vector<std::string> later_looks_of(const RecordedTest& test) {
  std::vector<std::string> texts;
  for (const Reading* line : later_looks(test)) {
    std::vector<std::string> seen;
    if (line->withdrawn) seen.emplace_back("withdrawn");
    for (const ReadingField& field : reading_fields())
      if (!line->withdrawn && !names_the_test(field.key) && field.text(*line) != field.text({}))
        seen.push_back(html_text(title_of_field(field.key)) + ": " + user_text(field.text(*line)));
    texts.push_back(html_text(title_of_field("looked_after")) + " " + user_text(line->looked_after) + ": " +
                    joined(seen, "; ", "nothing noted"));
  }
  return texts;
}

std::string test_row(const RecordedTest& test) {
  const Reading& line = shown_line(test);
  const std::string seconds = noted_cell(line, "seconds");
  std::string cells = fmt::format("<th scope=\"row\">{}</th>", test.number);
  std::string day = noted_cell(line, "date");
  if (!line.who.empty()) day += " " + user_text(line.who);
  for (const std::string& cell : {day, user_text(line.mixture.empty() ? std::string("not noted") : line.mixture),
                                  place_of(line), seconds, noted_cell(line, "removal"), noted_cell(line, "original")})
    cells += "<td>" + cell + "</td>";
  return "<tr>" + cells + "</tr>\n";
}

std::string photo_html(const ReportPhoto& photo, const char* when, int test) {
  const std::string name = user_text(photo.name);
  if (!photo.fault.empty())
    return element("p", fmt::format("{}: {}, not shown: {}", when, name, user_text(photo.fault)));
  if (photo.data_uri.empty()) return element("p", fmt::format("{}: {}", when, name));
  return fmt::format(
      "<figure class=\"photo\"><img src=\"{}\" alt=\"Test {}, {}: {}\"><figcaption>{}: {}</figcaption></figure>\n",
      photo.data_uri, test, when, html_text(photo.name), when, name);
}

std::string photos_html(const TestReportInputs& inputs, int test) {
  const auto found = inputs.photos.find(test);
  if (found == inputs.photos.end()) return {};
  std::string text;
  for (const ReportPhoto& photo : found->second.before) text += photo_html(photo, title_of_field("photo_before"), test);
  for (const ReportPhoto& photo : found->second.after) text += photo_html(photo, title_of_field("photo"), test);
  return "<div class=\"photos\">\n" + text + "</div>\n";
}

// One row, and a second where more was noted, the test does not count, or a line was corrected. The two stay together.
std::string test_rows(const RecordedTest& test, const TestReportInputs& inputs) {
  constexpr int columns = 7;
  std::string more = joined(noted_besides(shown_line(test)), "; ", "");
  if (is_withdrawn(test) || test.not_counted)
    more = "<b>" + user_text(status_words(test)) + "</b>" + (more.empty() ? "" : "; " + more);
  std::vector<std::string> corrections;
  for (const std::string& line : corrections_of(test)) corrections.push_back(user_text(line));
  if (!corrections.empty()) more += "<div>Corrected: " + joined(corrections, " Then: ") + "</div>";
  for (const std::string& look : later_looks_of(test)) more += "<div>" + look + "</div>";
  more += photos_html(inputs, test.number);
  std::string text = fmt::format("<tbody class=\"{}\">\n", is_withdrawn(test) ? "test withdrawn" : "test");
  text += test_row(test);
  if (!more.empty()) text += fmt::format("<tr><td></td><td colspan=\"{}\">{}</td></tr>\n", columns - 1, more);
  return text + "</tbody>\n";
}

std::string tests_table(const TestReview& review, const TestReportInputs& inputs) {
  std::string text = "<table class=\"tests\">\n<thead><tr>";
  std::size_t column = 0;
  for (const char* head :
       {"test", "date, by whom", mixture_column, "place: x / y", "contact, s", removal_column, "the original"})
    text += column_head(column++, head);
  text += "</tr></thead>\n";
  for (const RecordedTest& test : review.tests) text += test_rows(test, inputs);
  return text + "</table>\n";
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

}  // namespace

std::vector<ReadingFact> reading_facts(const Reading& reading) {
  std::vector<ReadingFact> facts;
  for (const ReadingField& field : reading_fields()) {
    if (field.key == "test" || field.key == "correction" || field.key == "withdrawn") continue;
    facts.push_back({field.key, title_of_field(field.key), field.value(reading)});
    if (field.key == "layer" && reading.layer.empty()) facts.back().value = words("the uppermost");
  }
  return facts;
}

std::string status_words(const RecordedTest& test) {
  if (is_withdrawn(test)) {
    const auto last =
        std::find_if(test.lines.rbegin(), test.lines.rend(), [](const Reading& line) { return !is_later_look(line); });
    return "withdrawn: " + last->correction;
  }
  if (test.not_counted) return "not counted: " + words_of(*test.not_counted);
  return "counts";
}

std::vector<std::string> corrections_of(const RecordedTest& test) {
  std::vector<std::string> texts;
  for (std::size_t i = 1; i < test.lines.size(); ++i) {
    const Reading& line = test.lines[i];
    const std::vector<Reading> lines_before(test.lines.begin(), test.lines.begin() + static_cast<std::ptrdiff_t>(i));
    const Reading* earlier = line_before(line, lines_before);
    if (!earlier) continue;  // a later look corrects nothing: later_looks_of words it
    std::vector<std::string> changes;
    const std::vector<ReadingFact> before = reading_facts(*earlier);
    const std::vector<ReadingFact> after = reading_facts(line);
    for (std::size_t k = 0; k < after.size() && !line.withdrawn; ++k)
      if (before[k].value != after[k].value)
        changes.push_back(fmt::format("{}: \"{}\" became \"{}\"", after[k].title, fact_words(before[k].value),
                                      fact_words(after[k].value)));
    const std::string what = line.withdrawn ? "withdrawn" : joined(changes, "; ", "nothing changed");
    const std::string of_look = is_later_look(line) ? "look after " + line.looked_after + ": " : std::string();
    texts.push_back(
        fmt::format("{}{}. Reason: {}", of_look, what, line.correction.empty() ? "not noted" : line.correction));
  }
  return texts;
}

std::string report_tests(const TestReview& review, const TestReportInputs& inputs) {
  std::string text = "<section>\n" + element("h2", "The tests");
  text += review.tests.empty() ? element("p", "The log holds no test.") : tests_table(review, inputs);
  std::vector<std::string> faults;
  for (const std::string& fault : inputs.log_faults) faults.push_back(user_text(fault));
  if (!faults.empty()) text += element("h3", "Lines of the log that could not be read whole") + html_list(faults);
  return text + "</section>\n";
}

std::string report_times(const TestReport& report) {
  std::vector<std::vector<std::string>> rows;
  for (const ConsideredMixture& mixture : report.review.considered) {
    std::vector<std::string> numbers;
    std::map<const char*, std::vector<std::string>> noted;
    for (const RecordedTest& test : report.review.tests) {
      if (std::find(mixture.tests.begin(), mixture.tests.end(), test.number) == mixture.tests.end()) continue;
      numbers.push_back(std::to_string(test.number));
      for (const char* key : times)
        if (const std::string value = get_field(shown_line(test), key); !value.empty())
          noted[key].push_back(html_text(value));
    }
    if (noted.empty()) continue;
    rows.push_back({user_text(mixture_name(mixture.judged)), joined(numbers)});
    for (const char* key : times) rows.back().push_back(joined(noted[key], ", ", ""));
  }
  if (rows.empty()) return {};
  std::vector<std::string> header = {mixture_column, "tests"};
  for (const char* key : times) header.emplace_back(title_of_field(key));
  return "<section>\n" + element("h3", "Time by rung, one figure a test") + html_table(header, rows, "times") +
         "</section>\n";
}

Sheet test_report_sheet(const TestReview& review) {
  Sheet sheet{"report", {{"test", "test", -1, false}, {"status", "status", -1, true}}, {}};
  for (const ReadingFact& fact : reading_facts({}))
    sheet.columns.push_back({std::string(fact.key), fact.title, -1, true});
  for (const char* key : {"corrections", "rung", "dD_MPa05", "dP_MPa05", "dH_MPa05", "effect", "effect_low",
                          "effect_high", "risk", "risk_low", "risk_high", "riskiest", "chosen"})
    sheet.columns.push_back({key, key, -1, true});
  for (const RecordedTest& test : review.tests) {
    std::vector<Cell> row = {Cell(static_cast<double>(test.number)), words(status_words(test))};
    // With its later looks: of the original the worst counts. A withdrawn test stands as it was shown.
    const std::vector<Reading> counted = current_readings(test.lines);
    for (ReadingFact& fact : reading_facts(counted.empty() ? shown_line(test) : counted.front()))
      row.push_back(std::move(fact.value));
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
