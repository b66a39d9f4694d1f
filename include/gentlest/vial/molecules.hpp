// A mixture of bottles as a mixture of molecules: water in an alcohol counts as water, a petroleum cut as the
// pure liquids that stand for it.
#pragma once

#include "gentlest/liquids/mixture.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One kind of molecule of a mixture, as it came with one bottle.
struct Molecule {
  const Solvent* solvent = nullptr;  ///< whose vapour pressure, groups and flash point are used
  std::size_t part = 0;              ///< index into Mixture::parts(): the bottle it came with
  Hansen hansen;                     ///< what it adds to the Hansen point (a stand-in keeps its bottle's), MPa^0.5
  double volume_fraction = 0;        ///< of the mixture, before mixing
  double mole_fraction = 0;
  double weight_fraction = 0;
  double molar_volume_cm3 = 0;
  double molar_mass_g = 0;
};

/// A bottle that is reckoned as the pure liquids that stand for it.
struct StandInUse {
  struct Share {
    const Solvent* solvent = nullptr;
    double fraction = 0;  ///< by volume; the shares add up to 1
  };
  std::string label;  ///< of the bottle
  std::vector<Share> shares;
};

/// All molecules of a mixture; the three kinds of fractions add up to 1 each.
struct Breakdown {
  std::vector<Molecule> molecules;
  std::vector<StandInUse> stand_ins;
};

/// Nothing when the molar volume or molar mass of any molecule is not known (missing_for_breakdown names it), or when a
/// bottle holds water and the catalogue has none.
std::optional<Breakdown> break_down(const Mixture& mixture, const Catalogue& catalogue);

/// Labels of the bottles whose molar mass or molar volume is not known.
std::vector<std::string> missing_for_breakdown(const Mixture& mixture, const Catalogue& catalogue);

/// Molar volume, cm3/mol: as recorded, else molar mass over density. Nothing when neither is known.
std::optional<double> molar_volume_cm3(const Solvent& solvent);

/// Groups of the molecules in the original or in the modified set, in order; an empty entry where not known.
std::vector<Groups> groups_of(const Breakdown& breakdown);
std::vector<Groups> modified_groups_of(const Breakdown& breakdown, const Catalogue& catalogue);

/// In the order of the molecules.
std::vector<double> mole_fractions(const Breakdown& breakdown);

}  // namespace gentlest
