// Where observations bend a sphere: near liquids whose action was seen the radius acts longer or shorter.
#pragma once

#include "gentlest/space/hansen.hpp"

#include <vector>

namespace gentlest {

/// A radius that is not the same in every direction. At a point x of Hansen space it acts larger by
///     exp(sum over the places of weight * exp(-Ra(x, at)^2 / (2 length^2))),
/// which fades to 1 a few lengths away from every place. How it is fitted: docs/observations.md.
struct LocalReach {
  struct Place {
    Hansen at;          ///< point of a liquid whose action was seen, MPa^0.5
    double weight = 0;  ///< no unit; above 0 the radius acts longer there
    bool operator==(const Place&) const = default;
  };
  std::vector<Place> places;  ///< none: the sphere is round
  double length = 1;          ///< MPa^0.5, positive
  bool operator==(const LocalReach&) const = default;
};

/// By how much the radius acts larger at this point, above 0; exactly 1 without places.
double reach_factor(const LocalReach& reach, const Hansen& point);

/// RED = Ra / (R0 * reach_factor), no unit: what counts wherever a sphere may be bent.
double relative_distance_RED(const Hansen& liquid, const Sphere& sphere, const LocalReach& reach);

}  // namespace gentlest
