#include "gentlest/space/reach.hpp"

#include <cassert>
#include <cmath>

namespace gentlest {

double reach_factor(const LocalReach& reach, const Hansen& point) {
  if (reach.places.empty()) return 1;
  assert(reach.length > 0);
  double sum = 0;
  for (const LocalReach::Place& place : reach.places) {
    const double in_lengths = distance_Ra(point, place.at) / reach.length;
    sum += place.weight * std::exp(-in_lengths * in_lengths / 2);
  }
  return std::exp(sum);
}

double relative_distance_RED(const Hansen& liquid, const Sphere& sphere, const LocalReach& reach) {
  return relative_distance_RED(liquid, sphere) / reach_factor(reach, liquid);
}

}  // namespace gentlest
