#include "report/plans/studio_words.hpp"

#include "report/form/format.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/words.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gentlest {

namespace {

std::string chances_of(const JudgedMixture& judged) {
  const std::string effect = judged.effect ? "moves " + per_cent(*judged.effect) : "effect not known";
  return effect + (judged.risk ? ", harms " + per_cent(*judged.risk) : ", risk not known");
}

std::string both_ways(const JudgedMixture& with_studio, const JudgedMixture& without) {
  return fmt::format("{}: {}; now {}", origin_name(with_studio.origin), chances_of(without), chances_of(with_studio));
}

// Root mean square Hansen distance of the centre from its middle.
double spread_of(const UncertainSphere& sphere) {
  return std::sqrt(4 * sphere.sd.dD * sphere.sd.dD + sphere.sd.dP * sphere.sd.dP + sphere.sd.dH * sphere.sd.dH);
}

}  // namespace

std::string in_hansen_distance(double distance) {
  return fixed(distance, 1) + " in Hansen distance";
}

std::string sphere_figures(const UncertainSphere& sphere) {
  const Hansen& centre = sphere.mean.centre;
  return fmt::format("dD {}, dP {}, dH {}, R0 {}", fixed(centre.dD, 1), fixed(centre.dP, 1), fixed(centre.dH, 1),
                     fixed(sphere.mean.R0, 1));
}

std::vector<std::string> studio_sentences(const Plan& plan) {
  std::vector<std::string> moved;
  for (const PlannedLayer& layer : plan.layers)
    if (layer.studio)
      moved.push_back(fmt::format("\"{}\" begins {} off, by {}", layer.name, in_hansen_distance(layer.studio->moved),
                                  finished_paintings(*layer.studio)));
  if (moved.empty()) return {};
  std::vector<std::string> sentences = {"From the studio: " + joined(moved, "; ") + "."};
  const std::vector<const JudgedMixture*> mixtures = ladder_mixtures(plan);
  if (!plan.without_studio.empty())
    sentences.push_back("Without it " + both_ways(*mixtures.back(), plan.without_studio.back()) + ".");
  return sentences;
}

std::vector<std::string> studio_details(const Plan& plan) {
  std::vector<std::string> lines;
  for (const PlannedLayer& layer : plan.layers) {
    if (!layer.studio) continue;
    const UncertainSphere& before = *layer.without_studio;
    lines.push_back(
        fmt::format("{} ({}): {}, which lie {} from their middle. Middle: {}, spread {}; without them {}, spread {}.",
                    layer.name, layer.material_name, finished_paintings(*layer.studio),
                    in_hansen_distance(layer.studio->between), sphere_figures(*layer.sphere),
                    fixed(spread_of(*layer.sphere), 1), sphere_figures(before), fixed(spread_of(before), 1)));
  }
  const std::vector<const JudgedMixture*> mixtures = ladder_mixtures(plan);
  for (std::size_t i = 0; i < plan.without_studio.size(); ++i)
    lines.push_back("without the studio " + both_ways(*mixtures[i], plan.without_studio[i]));
  return lines;
}

Json studio_json(const Plan& plan) {
  Json list = Json::array();
  for (const PlannedLayer& layer : plan.layers) {
    if (!layer.studio) continue;
    const auto figures = [](const UncertainSphere& sphere) {
      return Json({{"dD", computed_value(sphere.mean.centre.dD)},
                   {"dP", computed_value(sphere.mean.centre.dP)},
                   {"dH", computed_value(sphere.mean.centre.dH)},
                   {"R0", computed_value(sphere.mean.R0)},
                   {"spread", computed_value(spread_of(sphere))}});
    };
    list.push_back({{"layer", layer.name},
                    {"material", layer.material},
                    {"paintings", layer.studio->paintings},
                    {"moved", computed_value(layer.studio->moved)},
                    {"between_paintings", computed_value(layer.studio->between)},
                    {"now", figures(*layer.sphere)},
                    {"without", figures(*layer.without_studio)}});
  }
  return list;
}

}  // namespace gentlest
