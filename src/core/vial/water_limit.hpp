// How much water an alcohol bears in hydrocarbons: as measured, else by the group method for two liquids, corrected by
// what was measured with others. Internal to core.
#pragma once

#include "gentlest/vial/miscibility.hpp"

#include <optional>

namespace gentlest {

/// The answer that limits of water give. Nothing where none speaks: another alcohol, anything but hydrocarbons beside
/// alcohol and water, groups without figures. Not in full: only phases and basis, fast enough for a search.
std::optional<PhaseAnswer> from_water_limits(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature,
                                             bool in_full);

/// The limit by the group method for two liquids alone, nothing raised: share of water in the alcohol, per cent by
/// volume before mixing, at which so much wet alcohol (per cent) and one hydrocarbon part at 25 C; 0 where they part
/// dry. What stands in the third column of water_limits.yaml. Nothing where figures are missing.
std::optional<double> computed_water_limit(const Solvent& alcohol, const Solvent& hydrocarbon, double wet_percent,
                                           const Catalogue& catalogue);

}  // namespace gentlest
