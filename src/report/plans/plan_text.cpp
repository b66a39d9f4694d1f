#include "report/bottle/danger_words.hpp"
#include "report/examined/examination_words.hpp"
#include "report/form/format.hpp"
#include "report/form/said.hpp"
#include "report/form/table.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/layer_cost_words.hpp"
#include "report/plans/plan_report.hpp"
#include "report/plans/studio_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

std::string full_title_text(const Plan& plan, const Style& style) {
  const PaintingObject& object = plan.job.object;
  std::string text = heading(plan_title(plan), style).substr(1);
  const std::string facts = object_facts(object);
  if (!facts.empty()) text += paragraph(facts, style);
  if (!object.note.empty()) text += paragraph(object.note, style);
  return text;
}

std::string search_limits_text(const Job& job, const Style& style) {
  const std::string words = search_limits_words(job);
  return words.empty() ? words : paragraph(words, style);
}

std::string finer_text(const Plan& plan, const Style& style) {
  if (!plan.finer_asked) return {};
  if (plan.finer.empty())
    return paragraph(fmt::format("Between rung {} and rung {} these bottles offer nothing, even in steps of 1 %.",
                                 plan.finer_asked->from, plan.finer_asked->to),
                     style);
  return paragraph(
      fmt::format("Numbers with a point are finer steps between two rungs, in shares of 1 %: {} mL of a vial of {} mL.",
                  as_recorded(plan.job.limits.vial_mL / 100), as_recorded(plan.job.limits.vial_mL)),
      style);
}

std::string ladder_text(const Plan& plan, const std::vector<const JudgedMixture*>& mixtures, const Style& style) {
  std::string text =
      heading(fmt::format("The ladder for \"{}\": {} on {} ({})", plan.layers[plan.target].name,
                          counted(ladder_rungs(plan).size(), "rung", "rungs"),
                          counted(ladder_bottles(plan).size(), "bottle", "bottles"), joined(ladder_bottles(plan))),
              style);
  text += two_numbers_text(plan.layers, plan.job.limits, style);
  text += paragraph(
      plan.by_effect_alone
          ? fmt::format("From gentle to strong by effect alone: no layer to keep has a sphere, so no risk is told and "
                        "none bounds the ladder. It goes from one bottle towards another and ends with the first rung "
                        "that reaches an effect of {}.",
                        per_cent(plan.job.limits.wanted_effect))
          : fmt::format("From gentle to strong; no rung exceeds a risk of {}, and from an effect of {} on a mixture "
                        "counts as one that works.",
                        per_cent(plan.job.limits.risk_limit), per_cent(plan.job.limits.wanted_effect)),
      style);
  text += search_limits_text(plan.job, style);
  text += ladder_line_text(plan, style);
  return text + finer_text(plan, style) + "\n" + recipes_table(mixtures, plan.job.limits, style);
}

std::string no_window_text(const Plan& plan, const std::vector<const JudgedMixture*>& mixtures, const Style& style) {
  const Limits& limits = plan.job.limits;
  std::string text = heading(no_rungs_heading(plan), style);
  for (const std::string& sentence : no_window_sentences(plan)) text += paragraph(sentence, style);
  text += search_limits_text(plan.job, style);
  if (!mixtures.empty()) {
    text += heading(plan.to_try.empty() ? how_close_heading : to_try_heading, style);
    text += two_numbers_text(plan.layers, limits, style) + "\n";
    text += recipes_table(mixtures, plan.job.limits, style);
  }
  return text;
}

std::string margin_text(const Plan& plan, const Style& style) {
  if (plan.margin_claimed)
    return paragraph(
        "margin: how far the mixture stays outside the nearest range to keep, in RED; below 0 it lies "
        "inside.",
        style);
  std::vector<std::string> flagged;
  for (const PlannedLayer& layer : plan.layers) {
    for (const PassageWarning& one : warnings_against_margin(layer))
      flagged.push_back((one.passage.empty() ? layer.name : one.passage) + " (" + flags_text(one.flags) + ")");
    if (!layer.sphere) flagged.push_back(layer.name + " (no sphere)");
  }
  return paragraph(
      "No margin is claimed, because of " + joined(flagged) + ": what such a layer bears, no distance can tell.",
      style);
}

std::string places_text(const Plan& plan, const std::vector<const JudgedMixture*>& mixtures, const Style& style) {
  std::string text = heading("Where each mixture sits", style);
  text += paragraph(
      "dD, dP, dH: Hansen parameters, MPa^0.5. fd, fp, fh: the same in the triangle, a view only. RED: distance to the "
      "middle of a layer's range over its radius; below 1 the mixture lies inside, but 1 is no wall.",
      style);
  text += margin_text(plan, style) + "\n" + places_table(mixtures, plan.layers, plan.margin_claimed, style);
  text += heading("How sure that is", style);
  text += paragraph(
      "RED to each layer, the middle 90 % of what the range may be. A question mark: 1 lies within, so whether the "
      "mixture is inside or outside is open and the rung may flip.",
      style);
  return text + "\n" + bands_table(mixtures, plan.layers, style);
}

std::string flips_text(const Plan& plan, const std::vector<const JudgedMixture*>& mixtures, const Style& style) {
  std::string text = "\n";
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    std::vector<std::string> open;
    for (const JudgedMixture* judged : mixtures)
      if (judged->outlooks[i] && judged->outlooks[i]->may_flip) open.push_back(short_name(*judged));
    std::string words = ladder_rungs(plan).empty() ? "open for the mixture: " : "open at rung ";
    words += joined(open);
    if (open.empty()) words = "no mixture here may flip";
    if (open.size() == mixtures.size()) words = "open for all mixtures shown";
    if (!plan.layers[i].sphere) words = "not judged, so open throughout";
    text += bullet(plan.layers[i].name + ": " + words, style);
  }
  return text;
}

// Mixture by mixture, on the layers without a sphere.
std::string sightings_text(const std::vector<const JudgedMixture*>& mixtures, const Style& style) {
  Said said;
  for (const JudgedMixture* judged : mixtures)
    for (const std::string& sentence : sighting_sentences(*judged)) say(said, sentence, short_name(*judged));
  std::string text;
  for (const auto& [sentence, names] : said) text += bullet(joined(names) + ": " + sentence, style);
  return text.empty() ? text : heading(seen_of_mixtures_heading, style) + text;
}

std::string layer_costs_text(const Plan& plan, const Style& style) {
  const std::vector<std::string> costs = layer_cost_words(plan);
  if (costs.empty()) return {};
  std::string text = heading(layer_cost_heading, style);
  for (const std::string& words : costs) text += bullet(words, style);
  return plan.costs.empty() ? text : text + paragraph(layer_cost_use, style);
}

std::string advice_text(const char* title, const std::vector<Remark>& remarks, const Style& style) {
  if (remarks.empty()) return {};
  std::string text = heading(title, style);
  for (const Remark& one : remarks) text += bullet(one.text + " [" + one.source + "]", style);
  return text;
}

std::string weak_text(const Plan& plan, const std::vector<Liquid>& liquids, const Style& style) {
  std::string text = heading(weak_figures_heading, style);
  for (const std::string& point : weak_point_words(plan)) text += bullet(point, style);
  for (const Liquid& liquid : liquids) {
    const auto& hansen = liquid.solvent->hansen;
    if (hansen && hansen->chosen.standing != Standing::measured)
      text += bullet(fmt::format("{}: its Hansen parameters are {} ({})", liquid.label,
                                 to_word(hansen->chosen.standing), hansen->chosen.source),
                     style);
    if (liquid.solvent->is_blend)
      text += bullet(liquid.label + ": a cut or mixture; its figures are typical, not exact", style);
  }
  return text;
}

std::string sources_text(const Plan& plan, const Style& style) {
  std::string text = heading("Sources", style);
  for (const Source& source : plan.sources)
    text += bullet(source.key + ": " + source.citation + (source.seen.empty() ? "" : " (" + source.seen + ")"), style);
  for (const PlannedLayer& layer : plan.layers)
    if (layer.basis == LayerBasis::own_tests)
      text += bullet(own_tests_of + layer.name + ": " + layer.sphere_source, style);
  return text;
}

std::string closing_text(const Plan& plan, const Edition& edition, const Style& style) {
  std::string text = "\n" + paragraph(law_words(edition.law), style, 0);
  text += paragraph(fmt::format("{}; {} mixtures judged.", edition_words(edition), with_commas(plan.mixtures_judged)),
                    style, 0);
  return text + paragraph(the_swab_decides, style, 0);
}

}  // namespace

std::string plan_title(const Plan& plan) {
  return "Solvent tests for: " + title_of(plan.job.object);
}

std::string plan_text(const Plan& plan, const Bench& bench, const Style& style, const Edition& edition) {
  const bool window = plan.outcome == Outcome::window;
  const std::vector<const JudgedMixture*> mixtures = ladder_mixtures(plan);
  const std::vector<Liquid> liquids = liquids_of(planned_mixtures(plan));
  std::string text = full_title_text(plan, style);
  text += paragraph(verdict_sentence(plan.examination), style);
  for (const std::string& line : consequence_lines(plan.examination)) text += bullet(line, style);
  if (!window)
    text += no_window_text(plan, mixtures, style) + advice_text(other_ways_heading, other_ways_words(plan), style);
  text += layers_text(plan.layers, plan.job.passages, StandIns::see_weak_figures, style);
  text += unjudged_text(plan.layers, plan.first_tests, plan.to_try, style);
  if (window) text += ladder_text(plan, mixtures, style);
  if (window && !plan.lines.front().active && plan.lines.front().effect_given_up > 0.0005)
    text += paragraph(fmt::format("Keeping to {} costs {} of effect on average.",
                                  counted(ladder_bottles(plan).size(), "bottle", "bottles"),
                                  per_cent(plan.lines.front().effect_given_up)),
                      style);
  for (const std::string& line : studio_sentences(plan)) text += paragraph(line, style);
  for (const std::string& line : studio_details(plan)) text += bullet(line, style);
  text += layer_costs_text(plan, style);
  text += measures_text(plan, bench, style) + person_text(bench, style);
  if (window) text += other_lines_text(plan, style);
  text += sightings_text(mixtures, style);
  if (!mixtures.empty()) text += places_text(plan, mixtures, style) + flips_text(plan, mixtures, style);
  text += advice_text(to_watch_heading, watch_words(plan), style);
  text += advice_text("What the model does not see", not_seen_words(), style);
  text += advice_text("Cautions", caution_words(plan.cautions), style);
  if (!liquids.empty()) text += liquids_text(liquids, style);
  text += weak_text(plan, liquids, style);
  if (!plan.left_off.empty()) text += heading("Bottles left off", style);
  for (const std::string& reason : left_off_words(plan.left_off)) text += bullet(reason, style);
  if (!plan.parting.empty()) text += heading("Grades that part into two liquids", style);
  for (const PartingPair& pair : plan.parting)
    text += bullet(parting_words(pair, !plan.job.limits.allow_splitting), style);
  return text + sources_text(plan, style) + closing_text(plan, edition, style);
}

}  // namespace gentlest
