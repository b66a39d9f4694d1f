// What was seen of liquids on a layer: beside the chance, or, on a layer that has no sphere, instead of it. There it
// stands where a chance would stand and is never made into one: a kind, the observations behind it, and what of the
// mixture they speak of.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/liquids/mixture.hpp"
#include "gentlest/plan/job.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

struct PlannedLayer;

/// "Acts" means by the grade that counts for the layer: affected for one to keep, moved for one to remove. The worse
/// for a layer to keep, the earlier.
enum class Sighting {
  acts,       ///< the very mixture was seen to act, or the one liquid that it is
  part_acts,  ///< one of its liquids was, alone
  may_act,    ///< what was seen leaves it open
  unknown,    ///< nothing was seen of the mixture, nor of some liquid in it
  spares      ///< the very mixture, or each of its liquids alone, was seen not to act
};

/// One observation on a layer's material, read for this layer.
struct SeenRow {
  const Observation* row = nullptr;
  std::vector<const Solvent*> solvents;  ///< of row->parts, in their order
  Sighting says = Sighting::may_act;     ///< acts, may_act or spares
  bool operator==(const SeenRow&) const = default;
};

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

/// What an observation says by this grade. It acts where its weakest grade still counts, spares where its strongest
/// does not; one that is only told in words may act.
Sighting sighting_of(const Observation& seen, int grade);

/// Every observation on the material.
std::vector<SeenRow> rows_on(const Material& material, int grade, const Catalogue& catalogue);

/// Of the rows on one liquid alone, or on one mixture: one that acts decides, then one that may, then one that spares.
Sighting worst_of(const std::vector<SeenRow>& rows);

/// The rows that speak of this liquid alone.
std::vector<SeenRow> rows_of_liquid(const std::vector<SeenRow>& rows, const Solvent& solvent);

/// Of every layer without a sphere, in their order. An observation of the very mixture outranks those of its parts.
std::vector<LayerSighting> sightings_of(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                                        const Catalogue& catalogue);

/// The same of a mixture that was seen as it is, on the layers with a sphere; layers of which nothing was seen left
/// out.
std::vector<VerySighting> very_sightings_of(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                                            const Catalogue& catalogue);
}  // namespace gentlest
