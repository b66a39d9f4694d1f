#include "gentlest/plan/sighting.hpp"

#include "gentlest/liquids/pure_shares.hpp"
#include "gentlest/plan/plan.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace gentlest {

namespace {

Sighting verdict_of(const LayerSighting& sighting, bool one_liquid) {
  if (!sighting.of_mixture.empty() && worst_of(sighting.of_mixture) != Sighting::may_act)
    return worst_of(sighting.of_mixture);
  Sighting worst = sighting.of_mixture.empty() ? Sighting::spares : Sighting::may_act;
  for (const PartSighting& part : sighting.parts) {
    const bool is_whole = one_liquid && &part == &sighting.parts.front();
    worst = std::min(worst, part.seen == Sighting::acts && !is_whole ? Sighting::part_acts : part.seen);
  }
  return worst;
}

}  // namespace

std::vector<LayerSighting> sightings_of(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                                        const Catalogue& catalogue) {
  std::vector<LayerSighting> sightings;
  const std::vector<PureShare> shares = pure_shares(mixture, catalogue);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (layers[i].sphere) continue;
    LayerSighting sighting{i, layers[i].name, layers[i].role, Sighting::unknown, {}, {}};
    sighting.of_mixture = rows_of_mixture(layers[i].seen, shares);
    for (const PureShare& share : shares) {
      std::vector<SeenRow> rows = rows_of_liquid(layers[i].seen, *share.solvent);
      const Sighting seen = worst_of(rows);
      sighting.parts.push_back({share.solvent, share.fraction, seen, std::move(rows)});
    }
    sighting.seen = verdict_of(sighting, mixture.parts().size() == 1);
    sightings.push_back(std::move(sighting));
  }
  return sightings;
}

std::vector<VerySighting> very_sightings_of(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                                            const Catalogue& catalogue) {
  std::vector<VerySighting> sightings;
  const std::vector<PureShare> shares = pure_shares(mixture, catalogue);
  for (const PlannedLayer& layer : layers) {
    if (!layer.sphere) continue;
    std::vector<SeenRow> rows = rows_of_mixture(layer.observed, shares);
    // A little water in a bottle's grade does not make another liquid of it.
    if (rows.empty() && mixture.parts().size() == 1)
      rows = rows_of_liquid(layer.observed, *mixture.parts().front().liquid.solvent);
    if (!rows.empty()) sightings.push_back({layer.name, layer.role, std::move(rows)});
  }
  return sightings;
}

}  // namespace gentlest
