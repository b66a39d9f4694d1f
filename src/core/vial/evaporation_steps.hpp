// The integration behind a drift. Internal to core.
#pragma once

#include "gentlest/vial/equilibrium.hpp"

#include <optional>
#include <vector>

namespace gentlest {

/// What is left of one unit of volume.
struct DryingState {
  double evaporated = 0;        ///< share of the volume that has gone
  std::vector<double> amounts;  ///< moles left of each molecule, per cm3 of the mixture at the start
  double time = 0;              ///< relative to the reference
};

/// A mixture on its way; dry_until moves it on.
struct Drying {
  DryingState state;
  std::vector<double> volumes;    ///< molar volumes, cm3
  std::vector<double> pressures;  ///< of the pure liquids, kPa
  std::optional<Activity> activity;
  double reference = 1;  ///< pressure times molar volume of the reference liquid
  double step = 1e-3;    ///< next step to try, in share evaporated
};

/// Nothing when a pure vapour pressure is not known.
std::optional<Drying> start_drying(const Breakdown& breakdown, const VapourModel& model, Celsius temperature,
                                   double reference);

/// Precondition: state.evaporated <= share < 1.
void dry_until(Drying& drying, double share);

}  // namespace gentlest
