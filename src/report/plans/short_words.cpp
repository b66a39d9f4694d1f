#include "report/plans/short_words.hpp"

#include "report/bottle/danger_words.hpp"
#include "report/form/format.hpp"
#include "report/form/table.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/phrases/fate.hpp"
#include "report/phrases/likelihood.hpp"
#include "report/phrases/sighting_words.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

std::string quoted(const std::string& name) {
  return "\"" + name + "\"";
}

// More than three are counted, not named.
std::vector<std::string> few(std::vector<std::string> names) {
  constexpr std::size_t named = 3;
  if (names.size() <= named) return names;
  const std::size_t others = names.size() - 2;
  names.resize(2);
  names.push_back(fmt::format("{} others", others));
  return names;
}

std::string range_word(const PlannedLayer& layer) {
  if (!layer.sphere && layer.seen.empty()) return "NOT JUDGED, nothing is known of it: test it first with a dry swab";
  if (!layer.sphere) return "NOT JUDGED but by what was seen elsewhere";
  if (layer.basis == LayerBasis::own_tests) return "range from your own tests";
  switch (layer.grade) {
    case SphereGrade::fitted:
      return "range known";
    case SphereGrade::recalled:
      return "range from memory";
    case SphereGrade::unbracketed:
    case SphereGrade::weak:
    case SphereGrade::unsupported:
      return "range roughly known";
    case SphereGrade::assumed:
      return "range borrowed";
  }
  return {};
}

int place_in_list(const PlannedLayer& layer) {
  if (layer.is_target) return 0;
  return is_kept_unjudged(layer) ? 1 : 2;
}

std::vector<std::string> names_where(const std::vector<PlannedLayer>& layers, bool (*holds)(const PlannedLayer&)) {
  std::vector<std::string> names;
  for (const PlannedLayer& layer : layers)
    if (holds(layer)) names.push_back(quoted(layer.name));
  return names;
}

std::vector<std::string> kept_names(const Plan& plan) {
  return names_where(plan.layers,
                     [](const PlannedLayer& layer) { return layer.role == Role::keep && layer.sphere.has_value(); });
}

std::string first_words(const FirstToAct& first) {
  if (first.from == 0) return "Which rung acts first: most likely none.";
  std::string text = first.from == first.to ? fmt::format("Which rung acts first: {}", first.from)
                                            : fmt::format("Which rung acts first: {} to {}", first.from, first.to);
  return text + (first.perhaps_none ? " most likely, perhaps none." : " most likely.");
}

// All passages in one line, each with what the job notes of it.
std::string passages_line(const Plan& plan) {
  std::vector<std::string> names;
  for (const Watch& watch : plan.watch) {
    if (watch.kind != WatchKind::passage) continue;
    const Passage& passage = plan.job.passages[watch.passage];
    names.push_back(quoted(passage.name) + (passage.note.empty() ? "" : " (" + passage.note + ")"));
  }
  return names.empty() ? std::string() : "test each passage by itself: " + joined(few(names));
}

bool holds_family(const Mixture& mixture, bool (*is_one)(const Solvent&)) {
  return std::any_of(mixture.parts().begin(), mixture.parts().end(),
                     [&](const Part& part) { return is_one(*part.liquid.solvent); });
}

// Of the mixtures of the plan, not of whatever the shelf could make.
bool may_part_here(const Plan& plan) {
  const std::vector<const JudgedMixture*> mixtures = planned_mixtures(plan);
  return std::any_of(mixtures.begin(), mixtures.end(), [](const JudgedMixture* judged) {
    return holds_family(judged->mixture, is_hydrocarbon_or_cut) &&
           holds_family(judged->mixture, [](const Solvent& solvent) { return solvent.family == "alcohol"; });
  });
}

std::string closed_words(const Plan& plan) {
  switch (what_closes_window(plan)) {
    case WindowClosedBy::layer:
      return fmt::format("What stands in the way: \"{}\", for which the mildest mixture that would work is too risky.",
                         plan.least_risk_that_works->riskiest);
    case WindowClosedBy::shelf:
      return "What stands in the way: the shelf. None of its mixtures is likely enough to move it, at whatever risk.";
    case WindowClosedBy::sightings:
      return "What stands in the way: every bottle was seen to act, alone, on a layer to keep.";
    case WindowClosedBy::examination:
      return "What stands in the way: the examination. It leaves no bottle of the shelf.";
    case WindowClosedBy::other_limits:
      return "What stands in the way: the other limits of the job. They leave no mixture at all.";
  }
  return {};
}

}  // namespace

std::string likelihood_cell(const std::optional<double>& chance) {
  return chance ? likelihood_bar(*chance) + " " + likelihood_word(*chance) : not_known;
}

std::string layer_line(const PlannedLayer& layer) {
  return fmt::format("{} {}: {}; {}{}", role_word(layer.role), quoted(layer.name), material_in_words(layer),
                     range_word(layer), layer.flags.empty() ? "" : "; " + flags_text(layer.flags));
}

std::vector<std::string> layer_lines(const Plan& plan) {
  std::vector<const PlannedLayer*> layers;
  for (const PlannedLayer& layer : plan.layers) layers.push_back(&layer);
  std::stable_sort(layers.begin(), layers.end(),
                   [](const PlannedLayer* a, const PlannedLayer* b) { return place_in_list(*a) < place_in_list(*b); });
  std::vector<std::string> lines;
  for (const PlannedLayer* layer : layers) lines.push_back(layer_line(*layer));
  return lines;
}

std::vector<std::string> order_words(const Plan& plan) {
  std::vector<std::string> sentences;
  const std::optional<LadderOrder> order = order_of(plan);
  const std::string target = quoted(plan.layers[plan.target].name);
  if (order && order->effect_rises && order->risk_rises)
    sentences.push_back(fmt::format("Order certain: each rung does more than the one before{}.",
                                    any_unjudged(plan.layers) ? ", to what is judged" : ""));
  else if (order && order->effect_rises)
    sentences.push_back(
        fmt::format("Order certain: each rung does more to {} than the one before{}.", target,
                    kept_names(plan).empty() ? "" : "; to what stays that is not certain between all rungs"));
  else if (order)
    sentences.push_back(
        fmt::format("Order not certain between all rungs on {}: go back one where one does less.", target));
  if (const std::optional<FirstToAct> first = first_to_act(plan)) sentences.push_back(first_words(*first));
  if (const std::optional<GentlerThan> gentler = gentler_than(plan)) {
    const bool all = gentler->up_to == static_cast<int>(ladder_rungs(plan).size());
    const std::string which = all                   ? "All rungs are"
                              : gentler->up_to == 1 ? std::string("Rung 1 is")
                                                    : fmt::format("Rungs 1 to {} are", gentler->up_to);
    sentences.push_back(
        fmt::format("{} gentler on {} than {} alone.", which, joined(few(kept_names(plan))), gentler->label));
  }
  return sentences;
}

std::vector<std::string> own_watch_words(const Plan& plan) {
  std::vector<std::string> words;
  for (Watch watch : plan.watch) {
    if (watch.kind != WatchKind::flag) continue;
    watch.names = few(watch.names);
    words.push_back(words_of(watch, plan).text);
  }
  const std::string passages = passages_line(plan);
  if (!passages.empty()) words.push_back(passages);
  if (may_part_here(plan)) words.emplace_back("alcohol in a hydrocarbon can part: a cloudy vial is not this recipe");
  return words;
}

std::vector<std::string> short_weak_words(const std::vector<PlannedLayer>& layers) {
  std::vector<std::string> words;
  const std::vector<std::string> open = names_where(layers, [](const PlannedLayer& layer) { return !layer.sphere; });
  if (!open.empty()) words.push_back(joined(few(open)) + ": no word here speaks of it.");
  const std::vector<std::string> borrowed = names_where(layers, [](const PlannedLayer& layer) {
    return layer.sphere && layer.grade == SphereGrade::assumed && layer.basis != LayerBasis::own_tests;
  });
  const bool curve = std::any_of(layers.begin(), layers.end(),
                                 [](const PlannedLayer& layer) { return layer.sphere && !layer.own_response; });
  if (!borrowed.empty())
    words.push_back(
        fmt::format("Weak: the range of {} is borrowed from {}; trust the order of the rungs, not the level.",
                    joined(few(borrowed)), borrowed.size() == 1 ? "another material" : "other materials"));
  else if (curve)
    words.emplace_back(
        "Weak: how strongly a swab acts is borrowed from fresh resins; trust the order of the rungs, not the level.");
  const std::vector<std::string> files =
      names_where(layers, [](const PlannedLayer& layer) { return layer.basis == LayerBasis::recorded; });
  if (!files.empty())
    words.push_back(joined(few(files)) + ": as the files record it, not examined; files are often wrong.");
  for (const PlannedLayer& layer : layers)
    if (!layer.possible.empty())
      words.push_back(fmt::format("\"{}\" may be {} as well.", layer.name, layer.possible.front().material_name));
  return words;
}

std::vector<std::string> short_no_rungs_words(const Plan& plan) {
  const PlannedLayer& target = plan.layers[plan.target];
  if (plan.outcome == Outcome::no_ladder)
    return {fmt::format("No ladder: nobody has published what moves {} ({}), so no mixture can be put in order.",
                        quoted(target.name), material_in_words(target)),
            plan.to_try.empty()
                ? "What is left: the first tests by hand."
                : "What is left: the liquids below, which were seen to act on it and not on what stays."};
  const std::string limit =
      plan.by_effect_alone ? std::string()
                           : fmt::format(" within your risk limit of {}", setting_per_cent(plan.job.limits.risk_limit));
  return {fmt::format("No rung: no mixture of this shelf is likely enough to move {}{}.", quoted(target.name), limit),
          closed_words(plan)};
}

std::vector<std::string> seen_marks(const JudgedMixture& judged) {
  std::vector<std::string> acts, spares, marks;
  for (const VerySighting& very : judged.very)
    (worst_of(very.rows) == Sighting::acts ? acts : spares).push_back(quoted(very.layer));
  if (!acts.empty()) marks.push_back("seen elsewhere to act on " + joined(few(acts)));
  if (!spares.empty()) marks.push_back("seen elsewhere: little or nothing on " + joined(few(spares)));
  for (const std::string& warning : sighting_warnings(judged)) marks.push_back("seen elsewhere on " + warning);
  return marks;
}

std::vector<std::string> short_marks(const JudgedMixture& judged, double risk_limit) {
  std::vector<std::string> marks = short_fate_marks(judged, risk_limit);
  for (const std::string& mark : seen_marks(judged)) marks.push_back(mark);
  return marks;
}

std::string screen_ending(const std::string& more, const Style& style, const Edition& edition) {
  return paragraph(fmt::format("{} {}.", more, edition_words(edition)), style, 0) +
         paragraph(std::string(plan_is_no_permission) + " " + the_swab_decides, style, 0);
}

}  // namespace gentlest
