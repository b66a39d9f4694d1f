#include "report/screen/progress_report.hpp"

#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/form/table.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"
#include "report/rules/conduct_words.hpp"
#include "report/rules/passage_matrix.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr std::size_t readings_shown = 6;

std::string mixture_text(const Progress& progress) {
  return progress.next.mixture ? to_text(*progress.next.mixture) : std::string();
}

// The last readings as they were read; the report has all.
std::string readings_table(const Conduct& conduct, bool full, const Style& style) {
  const std::size_t count = conduct.tests.size();
  if (count == 0) return paragraph("No test is counted yet.", style);
  Table table;
  table.columns = {{"test", Align::left, false},
                   {"where", Align::left, true},
                   {"mixture", Align::left, true},
                   {"as read", Align::left, true}};
  const std::size_t first = full || count <= readings_shown ? 0 : count - readings_shown;
  for (std::size_t i = first; i < count; ++i) {
    const SwabTest& test = conduct.tests[i];
    table.rows.push_back({std::to_string(test.number), place_words(test.place, test.passage), test.words,
                          (test.harmed ? "HARM: " : "") + as_read_words(test)});
  }
  std::string text = to_text(table, style);
  if (first > 0)
    text += paragraph(counted(first, "earlier test", "earlier tests") + ": --full or gentlest report", style);
  return text;
}

// The blanks come before any solvent.
std::string blanks_line(const Progress& progress, const Style& style) {
  const auto& tests = progress.conduct.tests;
  const bool made = std::any_of(tests.begin(), tests.end(), [](const SwabTest& test) { return test.is_blank; });
  if (made || progress.next.kind != NextKind::test) return {};
  if (!tests.empty()) return {};
  return bullet("First, before any solvent: a dry swab, then water or saliva where the surface bears it (" +
                    rule_words(Rule::blanks_first) + ")",
                style);
}

std::string believed_line(const Progress& progress, const Style& style) {
  const NextAnswer& next = progress.next;
  if (!next.outlook) return {};
  const CandidateOutlook& outlook = *next.outlook;
  std::string text = fmt::format("believed: {} to move {} ({})", likelihood_word(outlook.effect),
                                 progress.layers[progress.target].name, per_cent(outlook.effect));
  if (!outlook.riskiest.empty())
    text +=
        fmt::format(", {} to affect {} ({})", likelihood_word(outlook.risk), outlook.riskiest, per_cent(outlook.risk));
  return bullet(text, style);
}

// What must stand beside every mixture that is proposed.
std::string cautions_text(const Progress& progress, const Style& style) {
  if (!progress.next.mixture) return {};
  const Mixture& mixture = *progress.next.mixture;
  return bullet("hazards of the parts: " + hazard_line(mixture), style) +
         bullet("how it dries, its label, gloves and cautions: gentlest vial JOB \"" + to_text(mixture) + "\"", style) +
         bullet(
             "a proposal for a test, not a permission: the safety data sheets, local rules and the licensed "
             "conservator decide",
             style);
}

std::string unjudged_lines(const Progress& progress, const Style& style) {
  std::string text;
  for (const PlannedLayer& layer : progress.layers)
    if (is_kept_unjudged(layer)) text += bullet(layer.name + ": " + state_of_unjudged(layer), style);
  if (progress.proposed)
    for (const std::string& sentence : sighting_sentences(*progress.proposed)) text += bullet(sentence, style);
  if (progress.task.target) return text;
  for (const std::string& words : first_test_words(progress.first_tests, progress.to_try, progress.layers))
    text += bullet(words, style);
  return text;
}

std::string next_lines(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room,
                       const Style& style) {
  const NextAnswer& next = progress.next;
  std::string text = paragraph(next_words(progress), style) + blanks_line(progress, style) +
                     bullet("why: " + why_words(progress), style) + believed_line(progress, style);
  if (next.test && next.test->place == Place::edge)
    text += bullet(
        "the edge: tacking edge or under the frame, of the same paint; record it with at_edge=yes (no such place: "
        "edge_tests: 0 in the limits of the job)",
        style);
  if (next.working)
    for (const std::string& words : working_words(progress.conduct, *next.working)) text += bullet(words, style);
  if (next.kind == NextKind::no_window)
    for (const std::string& words : what_closes_words(plan, progress)) text += bullet(words, style);
  if (room) text += bullet(room_words(*room, plan.job.limits.risk_limit), style);
  text += unjudged_lines(progress, style);
  if (next.kind == NextKind::test)
    for (const std::string& words : stop_rules_words()) text += bullet(words, style);
  return text + cautions_text(progress, style);
}

std::string band(const Estimate& estimate, int places) {
  return fmt::format("{} ({} to {})", fixed(estimate.mean, places), fixed(estimate.low, places),
                     fixed(estimate.high, places));
}

std::string chance_band(const Estimate& estimate) {
  return fmt::format("{} (90 % between {} and {})", per_cent(estimate.mean), per_cent(estimate.low),
                     per_cent(estimate.high));
}

// By the spheres alone, with their ranges.
std::string outlook_lines(const Progress& progress, const Style& style) {
  if (!progress.next.mixture || !progress.task.target) return {};
  const NextTestTask& task = progress.task;
  const Hansen point = mix(*progress.next.mixture);
  std::string text = bullet(
      fmt::format("{}: chance to be moved, by its sphere alone, {}; RED {}", progress.layers[progress.target].name,
                  chance_band(task.target->chance_estimate(point, task.settings.effect_level)),
                  band(task.target->RED_estimate(point), 2)),
      style);
  for (const KeptBelief& kept : task.kept)
    text += bullet(fmt::format("{}: chance to be affected, by its sphere alone, {}; RED {}", kept.name,
                               chance_band(kept.belief.chance_estimate(point, kept.risk_level)),
                               band(kept.belief.RED_estimate(point), 2)),
                   style);
  return text;
}

// Mixtures against places, as read.
std::string matrix_text(const Plan& plan, const Progress& progress, const Style& style) {
  const PassageMatrix matrix = passage_matrix(plan, progress);
  if (matrix.rows.empty()) return {};
  Table table;
  table.columns = {{"mixture", Align::left, true}};
  for (const MatrixColumn& column : matrix.columns)
    table.columns.push_back({column.title + (column.note.empty() ? "" : " (" + column.note + ")"), Align::left, true});
  for (const MatrixRow& row : matrix.rows) {
    std::vector<std::string> cells = {row.name.empty() ? row.mixture : row.name + ": " + row.mixture};
    for (const MatrixCell& cell : row.cells) cells.push_back(joined(cell_words(cell, progress.conduct), "; "));
    table.rows.push_back(std::move(cells));
  }
  return heading(matrix_heading, style) + to_text(table, style) + paragraph(matrix_key, style);
}

std::string full_text(const Plan& plan, const Progress& progress, const Style& style) {
  std::string text = matrix_text(plan, progress, style) + heading(taught_heading, style);
  for (const std::string& line : learnt_words(progress)) text += bullet(line, style);
  text += outlook_lines(progress, style);
  if (progress.next.kind != NextKind::no_window)
    for (const std::string& words : no_window_words(plan, progress)) text += bullet("passed over: " + words, style);
  for (const std::string& reason : left_off_words(progress.left_off)) text += bullet(bottle_left_off + reason, style);
  const bool borrowed = std::any_of(progress.layers.begin(), progress.layers.end(),
                                    [](const PlannedLayer& layer) { return layer.sphere && !layer.own_response; });
  if (borrowed)
    text += bullet("the response curve" + of_borrowed_curve(progress.layers) +
                       " is borrowed from fresh resins in long contact; the swab decides, look at it",
                   style);
  return text;
}

std::string progress_text(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room, bool full,
                          const Style& style) {
  std::string text;
  for (const std::string& line : harm_words(progress.conduct)) text += paragraph(line, style, 0);
  text += heading("As read", style) + readings_table(progress.conduct, full, style);
  for (const std::string& line : not_counted_words(progress)) text += bullet("the beliefs leave out " + line, style);
  const std::vector<std::string> closed = closure_words(plan, progress.conduct);
  if (!closed.empty()) text += heading("What that closed", style);
  for (const std::string& line : closed) text += bullet(line, style);
  text += heading("Next", style) + next_lines(plan, progress, room, style);
  if (progress.next.is_surprised)
    text += bullet("the readings fit badly with what was held before the tests: examine what the layers are", style);
  if (full) return text + full_text(plan, progress, style);
  return text + bullet("ranges, what the tests taught, what was passed over: --full", style);
}

Cell number_or_nothing(bool is_known, double value) {
  return is_known ? Cell(computed_value(value)) : Cell();
}

Sheet progress_sheet(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room) {
  const NextAnswer& next = progress.next;
  const bool has = next.outlook.has_value();
  Sheet sheet;
  sheet.kind = "next";
  for (const char* key : {"step",
                          "rung",
                          "mixture",
                          "place",
                          "passage",
                          "reason",
                          "rule",
                          "effect",
                          "risk",
                          "riskiest",
                          "harms",
                          "closed",
                          "works",
                          "untested",
                          "too_risky",
                          "readings_counted",
                          "readings_left_out",
                          "fits_badly",
                          "rungs_of_room",
                          "stronger_rungs",
                          "bottles_left_off",
                          "not_judged",
                          "first_tests"})
    sheet.columns.push_back({key, key, -1, true});
  const auto words = [](const std::string& text) { return text.empty() ? Cell() : Cell(text); };
  const std::string step = next.test ? step_name(progress.conduct, next.test->step) : std::string();
  sheet.rows.push_back({Cell(next_kind_word(next.kind)),
                        words(step),
                        words(mixture_text(progress)),
                        words(next.test ? place_words(next.test->place, {}) : ""),
                        words(next.test ? next.test->passage : ""),
                        Cell(why_words(progress)),
                        Cell(static_cast<double>(next.rule)),
                        number_or_nothing(has, has ? next.outlook->effect : 0),
                        number_or_nothing(has && !progress.task.kept.empty(), has ? next.outlook->risk : 0),
                        words(has ? next.outlook->riskiest : ""),
                        words(joined(harm_words(progress.conduct), " ")),
                        words(joined(closure_words(plan, progress.conduct), "; ")),
                        words(next.working ? to_text(next.working->mixture) : ""),
                        words(next.working ? joined(next.working->untested) : ""),
                        words(joined(no_window_words(plan, progress), "; ")),
                        Cell(static_cast<double>(progress.counted.size())),
                        words(joined(not_counted_words(progress), "; ")),
                        Cell(next.is_surprised),
                        room ? Cell(static_cast<double>(room->within)) : Cell(),
                        room ? Cell(static_cast<double>(room->stronger)) : Cell(),
                        words(joined(left_off_words(progress.left_off), "; ")),
                        words(progress.proposed ? sighting_mark(*progress.proposed) : ""),
                        words(joined(first_test_words(progress.first_tests, progress.to_try, progress.layers), " "))});
  return sheet;
}

}  // namespace

std::string progress_report(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room, bool full,
                            Form form, const Style& style, const Edition& edition) {
  if (form == Form::text) return progress_text(plan, progress, room, full, style);
  return sheet_report(progress_sheet(plan, progress, room), form, style, edition);
}

}  // namespace gentlest
