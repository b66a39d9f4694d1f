#include "report/screen/progress_report.hpp"

#include "report/bottle/danger_words.hpp"
#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/form/short_screen.hpp"
#include "report/form/table.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/short_words.hpp"
#include "report/plans/studio_words.hpp"
#include "report/rules/conduct_words.hpp"
#include "report/rules/passage_matrix.hpp"

#include "gentlest/answers/ahead.hpp"
#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

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
  if (!progress.conduct.tests.empty() || progress.next.kind != NextKind::test) return {};
  return bullet("First, before any solvent: a dry swab, then water or saliva where the surface bears it (" +
                    rule_words(Rule::blanks_first) + ")",
                style);
}

std::string believed_line(const Progress& progress, bool full, const Style& style) {
  const NextAnswer& next = progress.next;
  if (!next.outlook) return {};
  const CandidateOutlook& outlook = *next.outlook;
  const auto figure = [&](double chance) { return full ? " (" + per_cent(chance) + ")" : std::string(); };
  std::string text = fmt::format("believed: {} to move {}{}", likelihood_word(outlook.effect),
                                 progress.layers[progress.target].name, figure(outlook.effect));
  if (!outlook.riskiest.empty())
    text += fmt::format(", {} to affect {}{}", likelihood_word(outlook.risk), outlook.riskiest, figure(outlook.risk));
  return bullet(text, style);
}

std::vector<std::string> dangers_of_proposal(const Progress& progress) {
  if (!progress.next.mixture) return {};
  std::vector<Liquid> liquids;
  add_liquids(liquids, *progress.next.mixture);
  return danger_words(liquids, progress.cautions);
}

// What must stand beside every mixture that is proposed.
std::string cautions_text(const Progress& progress, const Style& style) {
  if (!progress.next.mixture) return {};
  const Mixture& mixture = *progress.next.mixture;
  std::string text = bullet("hazards of the parts: " + hazard_line(mixture), style);
  for (const std::string& danger : dangers_of_proposal(progress)) text += bullet(danger, style);
  return text +
         bullet("how it dries, its label, gloves and cautions: gentlest vial JOB \"" + to_text(mixture) + "\"", style) +
         bullet(
             "a proposal for a test, not a permission: the safety data sheets, local rules and the licensed "
             "conservator decide",
             style);
}

std::vector<std::string> unjudged_lines(const Progress& progress, bool full) {
  std::vector<std::string> lines;
  for (const PlannedLayer& layer : progress.layers)
    if (is_kept_unjudged(layer))
      lines.push_back(full ? layer.name + ": " + state_of_unjudged(layer) : layer_line(layer));
  if (progress.proposed)
    for (const std::string& sentence : full ? sighting_sentences(*progress.proposed) : seen_marks(*progress.proposed))
      lines.push_back(sentence);
  if (progress.task.target) return lines;
  for (const std::string& words : first_test_words(progress.first_tests, progress.to_try, progress.layers))
    lines.push_back(words);
  return lines;
}

// The next step with its reason: the first stands on every screen, of the second the end may be left to --full.
struct NextLines {
  std::string head;
  std::vector<std::string> more;
};

NextLines next_lines(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room, bool full,
                     const Style& style) {
  const NextAnswer& next = progress.next;
  NextLines lines;
  lines.head = paragraph(next_words(progress), style) + blanks_line(progress, style) +
               bullet("why: " + why_words(progress), style) + believed_line(progress, full, style);
  if (next.kind == NextKind::test)
    for (const std::string& words : stop_rules_words()) lines.head += bullet(words, style);
  lines.more = unjudged_lines(progress, full);
  if (next.test && next.test->place == Place::edge)
    lines.more.emplace_back(
        "the edge: tacking edge or under the frame, of the same paint; record it with at_edge=yes (no such place: "
        "edge_tests: 0 in the limits of the job)");
  if (next.working)
    for (const std::string& words : working_words(progress.conduct, *next.working)) lines.more.push_back(words);
  if (next.kind == NextKind::no_window)
    for (const std::string& words : what_closes_words(plan, progress)) lines.more.push_back(words);
  if (room) lines.more.push_back(room_words(*room, plan.job.limits.risk_limit));
  if (next.is_surprised)
    lines.more.emplace_back("the readings fit badly with what was held before the tests: examine what the layers are");
  return lines;
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

std::string harms_text(const Progress& progress, const Style& style) {
  std::string text;
  for (const std::string& line : harm_words(progress.conduct)) text += paragraph(line, style, 0);
  return text;
}

// Where no further swab is proposed and nothing has worked.
std::string ways_line(const Progress& progress, const Style& style) {
  const NextKind kind = progress.next.kind;
  return kind == NextKind::test || kind == NextKind::found ? std::string() : bullet(ways_pointer, style);
}

// The whole answer, or as much of it as one screen holds; `ending` stands last.
std::string progress_text(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room, bool full,
                          const std::string& ending, const Style& style) {
  std::vector<std::string> left_out;
  for (const std::string& line : not_counted_words(progress)) left_out.push_back("the beliefs leave out " + line);
  const NextLines next = next_lines(plan, progress, room, full, style);
  const ExaminationVerdict verdict = plan.examination.verdict;
  const std::string examined =
      verdict == ExaminationVerdict::go ? "" : paragraph(verdict_sentence(plan.examination), style);
  std::vector<ScreenPart> parts = {must_stand(harms_text(progress, style) + examined + heading("As read", style) +
                                              readings_table(progress.conduct, full, style)),
                                   screen_list("", left_out, 1, style),
                                   screen_list("What that closed", closure_words(plan, progress.conduct), 2, style),
                                   must_stand(heading("Next", style) + next.head),
                                   screen_list("", studio_sentences(plan), 1, style),
                                   screen_list("", next.more, 2, style),
                                   must_stand(cautions_text(progress, style) + ending)};
  return full ? whole_of(parts) : screen_of(std::move(parts), style);
}

Cell number_or_nothing(bool is_known, double value) {
  return is_known ? Cell(computed_value(value)) : Cell();
}

// As a program finds them again: the recipe of each planned mixture that a harm closes.
std::vector<std::string> struck_out_recipes(const Progress& progress) {
  std::vector<std::string> recipes;
  for (std::size_t step = 0; step < progress.conduct.steps.size(); ++step)
    if (is_struck_out(progress, step)) recipes.push_back(to_text(progress.conduct.steps[step].mixture));
  return recipes;
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
                          "effect_words",
                          "risk_words",
                          "riskiest",
                          "dangers",
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
                          "first_tests",
                          "examination",
                          "hazards",
                          "stop_rules",
                          "closed_mixtures"})
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
                        words(has ? likelihood_word(next.outlook->effect) : ""),
                        words(has && !progress.task.kept.empty() ? likelihood_word(next.outlook->risk) : ""),
                        words(has ? next.outlook->riskiest : ""),
                        words(joined(dangers_of_proposal(progress), " | ")),
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
                        words(joined(first_test_words(progress.first_tests, progress.to_try, progress.layers), " ")),
                        Cell(verdict_sentence(plan.examination)),
                        words(next.mixture ? hazard_line(*next.mixture) : ""),
                        words(next.kind == NextKind::test ? joined(stop_rules_words(), " | ") : ""),
                        words(joined(struck_out_recipes(progress), " | "))});
  return sheet;
}

}  // namespace

std::string progress_report(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room, bool full,
                            Form form, const Style& style, const Edition& edition) {
  if (form == Form::text)
    return progress_text(plan, progress, room, full,
                         ways_line(progress, style) +
                             (full ? full_text(plan, progress, style)
                                   : bullet("ranges, what the tests taught, what was passed over: --full", style)),
                         style);
  return sheet_report(progress_sheet(plan, progress, room), form, style, edition);
}

std::string report_screen(const Plan& plan, const Progress& progress, const std::optional<RungRoom>& room,
                          const Style& style) {
  return heading("Tests of: " + title_of(plan.job.object), style).substr(1) +
         progress_text(
             plan, progress, room, false,
             ways_line(progress, style) +
                 bullet("the whole report, to print and to file: gentlest report JOB LOG --output report.html", style),
             style);
}

}  // namespace gentlest
