// What a layer's range throws on the triangle of fd, fp and fh.
#pragma once

#include "gentlest/space/hansen.hpp"
#include "gentlest/space/reach.hpp"

#include <vector>

namespace gentlest {

/// The outline of a solid shadow: all points of the triangle whose ray from the origin of Hansen space meets the
/// sphere. Corners in order round the centre's own fractions; empty where the sphere holds the origin. A sphere that is
/// bent throws the shadow of what lies at RED 1 or less.
std::vector<Teas> shadow_in_triangle(const Sphere& sphere, const LocalReach& reach = {});

}  // namespace gentlest
