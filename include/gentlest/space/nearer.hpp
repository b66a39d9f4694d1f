// Which of two liquids lies nearer to a range that is only roughly known: the order is often sure where the level is
// not.
#pragma once

#include "gentlest/space/reach.hpp"

namespace gentlest {

/// Share, 0..1, of all that the sphere may be (the equally likely spheres of RED_band) for which the first point has
/// the smaller RED. Precondition: is_possible(sphere).
double share_nearer(const Hansen& first, const Hansen& second, const UncertainSphere& sphere,
                    const LocalReach& reach = {});

}  // namespace gentlest
