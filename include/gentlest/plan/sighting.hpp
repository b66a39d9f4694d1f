// What was seen of liquids on a layer: beside the chance, or, on a layer that has no sphere, instead of it. There it
// stands where a chance would stand and is never made into one: a kind, the observations behind it, and what of the
// mixture they speak of.
#pragma once

#include "gentlest/catalogue/sighting.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

struct PlannedLayer;

/// One liquid of a mixture; the water in a bottle counts as one of its own.
struct PartSighting {
  const Solvent* solvent = nullptr;
  double fraction = 0;                ///< of the volume before mixing
  Sighting seen = Sighting::unknown;  ///< acts, may_act, unknown or spares
  std::vector<SeenRow> rows;          ///< of this liquid alone, those first that decide
};

/// A mixture on one layer without a sphere.
struct LayerSighting {
  std::size_t layer = 0;  ///< index into the planned layers
  std::string name;
  Role role = Role::keep;
  Sighting seen = Sighting::unknown;
  std::vector<SeenRow> of_mixture;  ///< of the very mixture: the same liquids, each share within 2.5 points of per cent
  std::vector<PartSighting> parts;  ///< by falling fraction
};

/// What was seen of a very mixture (as LayerSighting::of_mixture, or a liquid alone) on a layer that a sphere judges:
/// it stands beside the chance and outranks it.
struct VerySighting {
  std::string layer;
  Role role = Role::keep;
  std::vector<SeenRow> rows;  ///< at least one
};

/// Of every layer without a sphere, in their order. An observation of the very mixture outranks those of its parts.
std::vector<LayerSighting> sightings_of(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                                        const Catalogue& catalogue);

/// The same of a mixture that was seen as it is, on the layers with a sphere; layers of which nothing was seen left
/// out.
std::vector<VerySighting> very_sightings_of(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                                            const Catalogue& catalogue);
}  // namespace gentlest
