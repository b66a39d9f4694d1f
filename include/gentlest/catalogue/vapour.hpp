// Vapour pressure of a pure liquid, and how it was had: a figure outside the range of its equation says so.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <optional>
#include <string>

namespace gentlest {

/// Where a vapour pressure comes from, from the surest to the weakest.
enum class PressureBasis {
  equation,             ///< Antoine constants inside their range
  equation_through_25,  ///< below their range: the curve moved so that it meets the recorded pressure at 25 C
  equation_stretched,   ///< outside their range, with nothing to check it by
  two_points            ///< a line of ln p over 1/T through the pressure at 25 C and the boiling point, or 25 C alone
};

struct VapourPressure {
  double kPa = 0;  ///< above 0
  PressureBasis basis = PressureBasis::equation;
  std::string source;  ///< key of sources.yaml
  bool operator==(const VapourPressure&) const = default;
};

/// Vapour pressure of the pure liquid. Nothing when the catalogue holds neither Antoine constants nor a pressure at
/// 25 C together with a boiling point (at 25 C itself the pressure alone is enough). Range: -80 to 200 C; nothing
/// outside.
/// Sources: Antoine's equation as in Poling, Prausnitz, O'Connell 2001, App. A; the straight line of ln p over 1/T is
/// Clausius and Clapeyron's law with a constant heat of vaporisation.
std::optional<VapourPressure> vapour_pressure(const Solvent& solvent, Celsius temperature);

/// Temperature at which the pure liquid's vapour pressure is `kPa`, by bisection on vapour_pressure to 1e-6 C. Nothing
/// when the pressure is not known or the answer lies outside -80 to 200 C.
std::optional<Celsius> temperature_of_pressure(const Solvent& solvent, double kPa);

}  // namespace gentlest
