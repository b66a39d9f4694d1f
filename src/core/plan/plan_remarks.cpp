#include "core/plan/plan_remarks.hpp"

#include <fmt/format.h>

#include <set>

namespace gentlest {

namespace {

std::string weak_words(const PlannedLayer& layer) {
  if (!layer.assumption.empty()) return fmt::format("{} ({}): {}", layer.name, layer.material_name, layer.assumption);
  switch (layer.grade) {
    case SphereGrade::recalled:
      return fmt::format(
          "{} ({}): the sphere was recalled from memory and checked against its own published tests only", layer.name,
          layer.material_name);
    case SphereGrade::unbracketed:
      return fmt::format("{} ({}): published tests do not close the sphere in; centre and radius slide together",
                         layer.name, layer.material_name);
    case SphereGrade::weak:
      return fmt::format("{} ({}): the sphere fits its own published tests badly", layer.name, layer.material_name);
    case SphereGrade::unsupported:
      return fmt::format("{} ({}): published without tests to check it against", layer.name, layer.material_name);
    default:
      return {};
  }
}

// Where mixtures meet a vaguer sphere than the one that was written down.
std::string widened_words(const PlannedLayer& layer) {
  if (!(layer.liquid_sd == Hansen{}))
    return fmt::format(
        "{}: its range is widened by the largest deviation of a liquid on the shelf (dD {:.2g}, dP {:.2g}, dH {:.2g} "
        "MPa^0.5)",
        layer.name, layer.liquid_sd.dD, layer.liquid_sd.dP, layer.liquid_sd.dH);
  if (met_by_liquids(layer) == layer.sphere) return {};
  return fmt::format(
      "{}: deviations of its middle below {} (dD) or {} (dP, dH) MPa^0.5 are taken as that: no liquid's own figures "
      "are "
      "known better",
      layer.name, best_known_sd.dD, best_known_sd.dP);
}

}  // namespace

std::vector<std::string> list_weak_points(const Plan& plan) {
  std::vector<std::string> points;
  for (const PlannedLayer& layer : plan.layers) {
    const std::string words = weak_words(layer);
    if (!words.empty()) points.push_back(words);
    const std::string widened = widened_words(layer);
    if (!widened.empty()) points.push_back(widened);
    for (const OtherMaterial& other : layer.possible)
      points.push_back(fmt::format(
          "{}: may be {} as well ({:.0f} %); the ladder is for {} alone, `gentlest next` weighs both by the readings",
          layer.name, other.material_name, 100 * other.share, layer.material_name));
    if (layer.chosen_because == "recorded, not examined")
      points.push_back(
          fmt::format("{}: taken as the files record it; files are often wrong (Lomax and Fisher 1990: 20 of "
                      "25 paintings)",
                      layer.name));
  }
  for (const Layer& layer : plan.job.layers)
    if (!layer.recorded.empty() && !layer.found.empty() && layer.recorded != layer.found)
      points.push_back(fmt::format("{}: recorded as {}, found to be {}; the plan follows what was found", layer.name,
                                   layer.recorded, layer.found));
  points.push_back(
      "The response curve comes from fresh, pure resins in long contact; a swab's short touch on old paint "
      "does less. Trust the order of the rungs before the size of the numbers: the swab decides");
  for (const Liquid& liquid : plan.shelf)
    if (liquid.solvent->id == "ethanol" && liquid.label == liquid.solvent->name)
      points.push_back("ethanol without a grade is taken as free of water; write its grade, e.g. \"96 %\"");
  return points;
}

namespace {

void cite(std::set<std::string>& keys, const Mixture& mixture) {
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    if (solvent.hansen) keys.insert(solvent.hansen->chosen.source);
    if (solvent.hazards) keys.insert(solvent.hazards->source);
    if (solvent.flash_point_C) keys.insert(solvent.flash_point_C->chosen.source);
    for (const ExposureLimit& limit : solvent.exposure_limits) keys.insert(limit.source);
  }
}

}  // namespace

std::vector<Source> list_sources(const Plan& plan, const Catalogue& catalogue) {
  std::set<std::string> keys = {catalogue.response().source};
  for (const PlannedLayer& layer : plan.layers) keys.insert(layer.sphere_source);
  for (const JudgedMixture* planned : planned_mixtures(plan)) {
    cite(keys, planned->mixture);
    const std::vector<std::string>& phases = planned->fate.phases.sources;
    keys.insert(phases.begin(), phases.end());
  }
  for (const PartingPair& pair : plan.parting) keys.insert(pair.sources.begin(), pair.sources.end());
  for (const Advice& caution : plan.cautions) keys.insert(caution.source);
  std::vector<Source> sources;
  for (const std::string& key : keys)
    if (const Source* source = catalogue.find_source(key)) sources.push_back(*source);
  return sources;
}

}  // namespace gentlest
