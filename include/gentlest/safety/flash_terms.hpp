// The terms of the equation behind a flash point, for whoever wants to see it add up.
#pragma once

#include "gentlest/safety/exposure.hpp"

#include <optional>
#include <vector>

namespace gentlest {

/// One kind of molecule that burns: x gamma p(T) / p(own flash point), which adds up to 1 over all of them at the flash
/// point of the mixture.
struct FlashTerm {
  const Solvent* solvent = nullptr;  ///< whose figures are used; of a petroleum cut one that stands for it
  double mole_fraction = 0;
  double gamma = 1;         ///< activity coefficient at T
  VapourPressure at_flash;  ///< of the pure liquid at T
  Celsius own_flash_point;
  std::string own_flash_source;
  Standing own_flash_standing = Standing::measured;
  VapourPressure at_own_flash;  ///< of the pure liquid at its own flash point
};

/// At the estimate of flash_point(mixture). Nothing where that is recorded or not known.
std::optional<std::vector<FlashTerm>> flash_terms(const Mixture& mixture, const Catalogue& catalogue);

}  // namespace gentlest
