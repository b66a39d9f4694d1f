// Named units for the few numbers whose mix-up could hurt a person or a painting.
// Inside the arithmetic plain doubles are used and the unit stands in the variable's name.
#pragma once

#include <compare>

namespace gentlest {

/// A double that says what it counts. Two quantities of different units do not compare or assign.
template <class Unit>
struct Quantity {
  double value = 0;
  auto operator<=>(const Quantity&) const = default;
};

using Celsius = Quantity<struct CelsiusUnit>;
using Centimetres = Quantity<struct CentimetresUnit>;
using Millilitres = Quantity<struct MillilitresUnit>;

inline constexpr double kelvin_at_zero_Celsius = 273.15;

/// Temperature in kelvin.
constexpr double kelvin(Celsius temperature) {
  return temperature.value + kelvin_at_zero_Celsius;
}

}  // namespace gentlest
