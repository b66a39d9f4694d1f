// What was seen of liquids on a material, read by a grade that counts. It stands where a chance would stand and is
// never made into one.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <vector>

namespace gentlest {

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

/// What an observation says by this grade. It acts where its weakest grade still counts, spares where its strongest
/// does not; one that is only told in words may act.
Sighting sighting_of(const Observation& seen, int grade);
Sighting sighting_of(const GradeRange& seen, int grade);

/// Every observation on the material.
std::vector<SeenRow> rows_on(const Material& material, int grade, const Catalogue& catalogue);

/// Of the rows on one liquid alone, or on one mixture: one that acts decides, then one that may, then one that spares.
Sighting worst_of(const std::vector<SeenRow>& rows);

/// The rows that speak of this liquid alone.
std::vector<SeenRow> rows_of_liquid(const std::vector<SeenRow>& rows, const Solvent& solvent);

}  // namespace gentlest
