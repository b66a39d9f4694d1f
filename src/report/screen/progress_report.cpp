#include "report/screen/progress_report.hpp"

#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/form/table.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/learning_words.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string mixture_text(const Progress& progress) {
  return progress.mixture ? to_text(*progress.mixture) : std::string();
}

std::string band(const Estimate& estimate, int places) {
  return fmt::format("{} ({} to {})", fixed(estimate.mean, places), fixed(estimate.low, places),
                     fixed(estimate.high, places));
}

std::string chance_band(const Estimate& estimate) {
  return fmt::format("{} (90 % between {} and {})", per_cent(estimate.mean), per_cent(estimate.low),
                     per_cent(estimate.high));
}

// The proposed or found mixture against every layer.
std::string outlook_lines(const Progress& progress) {
  if (!progress.next.mixture) return {};
  const NextTestTask& task = progress.task;
  const Hansen& point = progress.next.mixture->point;
  std::string text = bullet(fmt::format("{}: chance to be moved {}; RED {}", progress.layers[progress.target].name,
                                        chance_band(task.target->chance_estimate(point, task.settings.effect_level)),
                                        band(task.target->RED_estimate(point), 2)));
  for (const KeptBelief& kept : task.kept)
    text += bullet(fmt::format("{}: chance to be affected {}; RED {}", kept.name,
                               chance_band(kept.belief.chance_estimate(point, kept.risk_level)),
                               band(kept.belief.RED_estimate(point), 2)));
  const CandidateOutlook& outlook = *progress.next.mixture;
  if (outlook.counts_tests) text += bullet(counted_words(outlook));
  return text;
}

// The proposed mixture on the layers without a sphere, and what to test first.
std::string unjudged_lines(const Progress& progress) {
  std::string text;
  for (const PlannedLayer& layer : progress.layers)
    if (is_kept_unjudged(layer)) text += bullet(layer.name + ": " + state_of_unjudged(layer));
  if (progress.proposed)
    for (const std::string& sentence : sighting_sentences(*progress.proposed)) text += bullet(sentence);
  if (progress.closed > 0)
    text += bullet(fmt::format("closed by a harm on a layer without a sphere: {}",
                               counted(progress.closed, "mixture", "mixtures")));
  if (progress.task.target) return text;
  for (const std::string& words : first_test_words(progress.first_tests, progress.to_try, progress.layers))
    text += bullet(words);
  return text;
}

// What must stand beside every mixture that is proposed.
std::string cautions_text(const Progress& progress) {
  if (!progress.mixture) return {};
  const Mixture& mixture = *progress.mixture;
  return bullet("hazards of the parts: " + hazard_line(mixture)) +
         bullet("how it dries, its label, gloves and cautions: gentlest vial JOB \"" + to_text(mixture) + "\"") +
         bullet(
             "a proposal for a test, not a permission: the safety data sheets, local rules and the licensed "
             "conservator decide");
}

std::string progress_text(const Progress& progress, const std::optional<RungRoom>& room, const Style& style) {
  const NextTest& next = progress.next;
  std::string text;
  for (const std::string& line : unjudged_harm_words(progress)) text += paragraph(line);
  text += heading(taught_heading, style);
  for (const std::string& line : learnt_words(progress)) text += bullet(line);
  for (const std::string& line : not_counted_words(progress)) text += bullet("not counted: " + line);
  text += heading("Next", style);
  const std::string mixture = mixture_text(progress);
  const char* between = next.step == NextStep::no_window ? "; what came nearest: " : ": ";
  text += paragraph(mixture.empty() ? step_words(next.step) : step_words(next.step) + between + mixture);
  if (!next.passage.empty()) text += paragraph("on: " + next.passage);
  text += paragraph(reason_words(next));
  if (next.step == NextStep::try_at_edge)
    text += bullet(
        "the edge: tacking edge or under the frame, of the same paint; record it with at_edge=yes (no such place: "
        "edge_tests: 0 in the limits of the job)");
  text += outlook_lines(progress) + unjudged_lines(progress);
  if (room) text += bullet(room_words(*room, progress.task.settings.risk_limits.back()));
  if (!next.untested.empty()) text += bullet("not yet tested with it: " + joined(next.untested));
  if (next.drifting > 0)
    text += bullet(fmt::format("passed over, since they get riskier than the job allows while they dry: {}",
                               counted(next.drifting, "mixture", "mixtures")));
  for (const std::string& reason : left_off_words(progress.left_off)) text += bullet(bottle_left_off + reason);
  if (next.is_surprised)
    text += bullet("the readings fit badly with what was held before the tests: examine what the layers are");
  const bool borrowed = std::any_of(progress.layers.begin(), progress.layers.end(),
                                    [](const PlannedLayer& layer) { return layer.sphere && !layer.own_response; });
  if (borrowed)
    text += bullet("the response curve" + of_borrowed_curve(progress.layers) +
                   " is borrowed from fresh resins in long contact; the swab decides, look at it");
  return text + cautions_text(progress);
}

Cell number_or_nothing(bool is_known, double value) {
  return is_known ? Cell(computed_value(value)) : Cell();
}

Sheet progress_sheet(const Progress& progress, const std::optional<RungRoom>& room) {
  const NextTest& next = progress.next;
  const bool has = next.mixture.has_value();
  Sheet sheet;
  sheet.kind = "next";
  for (const char* key : {"step",
                          "mixture",
                          "passage",
                          "effect",
                          "risk",
                          "riskiest",
                          "truly_good",
                          "risk_limit",
                          "readings_counted",
                          "readings_left_out",
                          "fits_badly",
                          "passed_over_for_drying",
                          "rungs_of_room",
                          "stronger_rungs",
                          "untested",
                          "reason",
                          "bottles_left_off",
                          "harm_not_judged",
                          "not_judged",
                          "first_tests"})
    sheet.columns.push_back({key, key, -1, true});
  const auto words = [](const std::string& text) { return text.empty() ? Cell() : Cell(text); };
  sheet.rows.push_back({Cell(step_words(next.step)),
                        words(mixture_text(progress)),
                        words(next.passage),
                        number_or_nothing(has, has ? next.mixture->effect : 0),
                        number_or_nothing(has && !progress.task.kept.empty(), has ? next.mixture->risk : 0),
                        words(has ? next.mixture->riskiest : ""),
                        number_or_nothing(has, has ? next.mixture->good : 0),
                        number_or_nothing(next.risk_limit > 0, next.risk_limit),
                        Cell(static_cast<double>(progress.counted.size())),
                        words(joined(not_counted_words(progress), "; ")),
                        Cell(next.is_surprised),
                        Cell(static_cast<double>(next.drifting)),
                        room ? Cell(static_cast<double>(room->within)) : Cell(),
                        room ? Cell(static_cast<double>(room->stronger)) : Cell(),
                        words(joined(next.untested)),
                        Cell(reason_words(next)),
                        words(joined(left_off_words(progress.left_off), "; ")),
                        words(joined(unjudged_harm_words(progress), " ")),
                        words(progress.proposed ? sighting_mark(*progress.proposed) : ""),
                        words(joined(first_test_words(progress.first_tests, progress.to_try, progress.layers), " "))});
  return sheet;
}

}  // namespace

std::string progress_report(const Progress& progress, const std::optional<RungRoom>& room, Form form,
                            const Style& style, const Edition& edition) {
  if (form == Form::text) return progress_text(progress, room, style);
  return sheet_report(progress_sheet(progress, room), form, style, edition);
}

}  // namespace gentlest
