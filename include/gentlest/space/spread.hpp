// How RED spreads over what is not known of a sphere, in a handful of figures that a person can reckon on with.
#pragma once

#include "gentlest/space/reach.hpp"

#include <cstddef>
#include <vector>

namespace gentlest {

/// RED in the middle of each of `count` equally likely slices, rising, from the equally likely spheres of RED_band: the
/// mean of a smooth function of these is close to its mean over the whole sphere. Precondition: is_possible(sphere),
/// count at least 1.
std::vector<double> RED_middles(const Hansen& liquid, const UncertainSphere& sphere, const LocalReach& reach,
                                std::size_t count);

}  // namespace gentlest
