// The ladder on one screen: what the hand needs, what to watch, what hurts, what is weak, where the rest stands.
#include "report/bottle/contact_words.hpp"
#include "report/bottle/danger_words.hpp"
#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"
#include "report/form/said.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/plans/layer_cost_words.hpp"
#include "report/plans/line_words.hpp"
#include "report/plans/plan_report.hpp"
#include "report/plans/short_words.hpp"
#include "report/plans/studio_words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

namespace gentlest {

namespace {

constexpr std::size_t most_rows = 8;
constexpr std::size_t least_rows = 3;
constexpr std::size_t most_watched = 3;
constexpr std::size_t most_bottle_columns = 3;  // more bottles stand as a recipe in one column

std::string title_text(const Plan& plan, const Style& style) {
  return heading(plan_title(plan), style).substr(1);
}

std::vector<const BenchMixture*> rows_shown(const Bench& bench, std::size_t most) {
  std::vector<const BenchMixture*> rows;
  for (const BenchMixture& mixture : bench.mixtures)
    if (rows.size() < most) rows.push_back(&mixture);
  return rows;
}

std::string recipe_cell(const Plan& plan, const BenchMixture& mixture) {
  if (!is_measured(mixture, plan)) return to_text(mixture.judged.mixture) + " % (BEYOND YOUR LIMIT: not for a vial)";
  std::vector<std::string> parts;
  for (const RecipeLine& line : mixture.recipe.lines)
    parts.push_back(line.liquid.label + " " + as_recorded(line.volume.value));
  return joined(parts, " + ");
}

// The layer that all risks shown are of; empty where they differ.
std::string one_riskiest(const std::vector<const BenchMixture*>& rows) {
  std::string name = rows.empty() ? std::string() : as_made(*rows.front()).riskiest;
  for (const BenchMixture* row : rows)
    if (as_made(*row).riskiest != name) name.clear();
  return name;
}

Table ladder_table(const Plan& plan, const Bench& bench, const std::vector<const BenchMixture*>& rows) {
  const bool by_bottle = plan.outcome == Outcome::window && bench.totals.size() <= most_bottle_columns;
  const bool topped = std::any_of(rows.begin(), rows.end(), [](const auto* row) { return row->top_up.has_value(); });
  const std::string riskiest = one_riskiest(rows);
  Table table;
  table.columns = {{ladder_rungs(plan).empty() ? "mixture" : "rung", Align::left, true}};
  const std::vector<std::string>& order = plan.lines.empty() ? std::vector<std::string>{} : ladder_bottles(plan);
  if (by_bottle)
    for (const std::string& bottle : order) table.columns.push_back({bottle, Align::right, true});
  else
    table.columns.push_back({"recipe", Align::left, true});
  if (topped) table.columns.push_back({"top up", Align::right, true});
  table.columns.push_back({"moves " + plan.layers[plan.target].name, Align::left, true});
  table.columns.push_back({riskiest.empty() ? "risk" : "harms " + riskiest, Align::left, true});
  for (const BenchMixture* row : rows) {
    const JudgedMixture& judged = as_made(*row);
    std::vector<std::string> cells = {short_name(row->judged)};
    if (by_bottle)
      for (const std::string& bottle : order) cells.push_back(volume_of(*row, bottle));
    else
      cells.push_back(recipe_cell(plan, *row));
    if (topped) cells.push_back(top_up_text(*row));
    cells.push_back(likelihood_cell(judged.effect));
    const std::string whose = riskiest.empty() && judged.risk ? ", " + judged.riskiest : std::string();
    cells.push_back(judged.risk || !judged.riskiest.empty() ? likelihood_cell(judged.risk) + whose
                                                            : riskiest_words(judged));
    table.rows.push_back(std::move(cells));
  }
  return table;
}

// Each mark once, behind the mixtures that it is true of.
std::vector<std::string> marks_of(const Plan& plan, const std::vector<const BenchMixture*>& rows) {
  Said said;
  for (const BenchMixture* row : rows) {
    if (!is_measured(*row, plan)) continue;
    std::vector<std::string> marks = short_marks(as_made(*row), plan.job.limits.risk_limit);
    if (row->beyond_limit && plan.outcome == Outcome::window)
      marks.emplace_back("AS MEASURED BEYOND YOUR RISK LIMIT: measure finer (--measure)");
    const std::string slow = slow_mark(row->contact);
    if (!slow.empty()) marks.push_back(slow);
    for (const std::string& mark : marks) say(said, mark, short_name(row->judged));
  }
  std::vector<std::string> lines;
  for (const auto& [mark, names] : said)
    lines.push_back((names.size() == rows.size() && rows.size() > 1 ? "all" : joined(names)) + ": " + mark);
  return lines;
}

std::string ladder_heading(const Plan& plan) {
  const std::size_t rungs = ladder_rungs(plan).size();
  if (rungs == 0) return plan.to_try.empty() ? "How close this shelf comes" : "Liquids that may be tried alone";
  return fmt::format("The ladder: {}, mL for a vial of {} mL", counted(rungs, "rung", "rungs"),
                     as_recorded(plan.job.limits.vial_mL));
}

ScreenPart table_part(const Plan& plan, const Bench& bench, const std::vector<const BenchMixture*>& rows,
                      const Style& style) {
  if (rows.empty()) return {};
  std::string text = heading(ladder_heading(plan), style) + to_text(ladder_table(plan, bench, rows), style);
  if (rows.size() < bench.mixtures.size()) text += bullet(more_in_full(bench.mixtures.size() - rows.size()), style);
  return must_stand(text);
}

std::string other_lines_sentence(const Plan& plan) {
  std::vector<std::string> lines;
  for (std::size_t i = 1; i < plan.lines.size(); ++i)
    lines.push_back(
        fmt::format("line {}, {} with {}", i + 1, plan.lines[i].bottles.front(), stock_words(plan.lines[i])));
  return lines.empty() ? std::string() : "Other ways up: " + joined(lines, "; ") + ".";
}

// Three at most, and how many there are beside them.
ScreenPart watch_part(const Plan& plan, const Style& style) {
  std::vector<std::string> words = own_watch_words(plan);
  for (const std::string& cost : layer_cost_words(plan)) words.push_back("The ladder " + cost + ".");
  const std::size_t all = words.size();
  if (all > most_watched) {
    words.resize(most_watched);
    words.push_back(more_in_full(all - most_watched));
  }
  return screen_list("To watch here", words, words.size(), style);
}

// How long and with what to clear, of the strongest mixture that may be made: what is gentler is held no longer.
std::string each_test_sentence(const Bench& bench) {
  const auto last = std::find_if(bench.mixtures.rbegin(), bench.mixtures.rend(),
                                 [](const BenchMixture& mixture) { return !mixture.beyond_limit; });
  return last == bench.mixtures.rend() ? std::string() : "Each test: " + contact_in_short(last->contact) + ".";
}

std::string rest_sentence(const Plan& plan) {
  if (plan.outcome != Outcome::window) return std::string(ways_pointer) + " More: --full (figures, gloves, sources).";
  return "More: --full; gentlest sheet, labels, next.";
}

std::string sentences_text(const std::vector<std::string>& sentences, const Style& style) {
  const std::string text = joined(sentences, " ");
  return text.empty() ? text : paragraph(text, style);
}

// That nothing speaks against a swab is worth a line only where there is one to make.
std::string examination_text_of(const Plan& plan, const Style& style) {
  const bool is_go = plan.examination.verdict == ExaminationVerdict::go;
  return is_go && plan.outcome != Outcome::window ? "" : paragraph(verdict_sentence(plan.examination), style);
}

// Everything above the rows of the ladder, and everything below.
std::vector<ScreenPart> parts_above(const Plan& plan, const Style& style) {
  std::vector<ScreenPart> parts = {must_stand(title_text(plan, style)), must_stand(examination_text_of(plan, style)),
                                   screen_list("", layer_lines(plan), 2, style)};
  if (plan.outcome == Outcome::window) return parts;
  parts.push_back(must_stand("\n" + sentences_text(short_no_rungs_words(plan), style)));
  parts.push_back(
      screen_list("Before any solvent", first_test_words(plan.first_tests, plan.to_try, plan.layers), 4, style));
  return parts;
}

std::vector<ScreenPart> parts_below(const Plan& plan, const Bench& bench, const Style& style, const Edition& edition) {
  std::vector<ScreenPart> parts;
  std::vector<std::string> known = order_words(plan);
  known.push_back(other_lines_sentence(plan));
  if (plan.outcome != Outcome::no_window) known.push_back(each_test_sentence(bench));
  known.erase(std::remove(known.begin(), known.end(), std::string()), known.end());
  parts.push_back(must_stand(sentences_text(known, style)));
  if (plan.outcome == Outcome::window)
    parts.push_back(screen_list("First", first_test_words(plan.first_tests, plan.to_try, plan.layers), 3, style));
  const std::vector<Liquid> bottles = liquids_of(planned_mixtures(plan));
  const std::vector<std::string> dangers = danger_words(bottles, plan.cautions);
  parts.push_back(must_stand(sentences_text(studio_sentences(plan), style)));
  parts.push_back(watch_part(plan, style));
  std::vector<std::string> weak = short_weak_words(plan.layers);
  for (const std::string& reason : left_off_words(plan.left_off)) weak.push_back("left off: " + reason);
  parts.push_back(screen_list("", weak, 1, style));
  parts.push_back(screen_list(dangers_heading, dangers, dangers.size(), style));
  parts.push_back(must_stand(screen_ending(rest_sentence(plan), style, edition)));
  return parts;
}

}  // namespace

std::string plan_short_text(const Plan& plan, const Bench& bench, const Style& style, const Edition& edition) {
  std::vector<ScreenPart> parts = parts_above(plan, style);
  const std::size_t ladder = parts.size();  // the rows, then their marks
  parts.resize(ladder + 2);
  std::vector<ScreenPart> below = parts_below(plan, bench, style, edition);
  std::move(below.begin(), below.end(), std::back_inserter(parts));
  std::string text;
  // Long recipes take more lines than one: then fewer rungs stand here.
  for (std::size_t most = most_rows; most >= least_rows; --most) {
    const std::vector<const BenchMixture*> rows = rows_shown(bench, most);
    const std::vector<std::string> marks = marks_of(plan, rows);
    parts[ladder] = table_part(plan, bench, rows, style);
    parts[ladder + 1] = screen_list("", marks, marks.size(), style);
    text = screen_of(parts, style);
    if (fits_screen(text)) break;
  }
  return text;
}

}  // namespace gentlest
