// Spheres that fit a set of yes-or-no tests as well as the best does, or nearly. Internal to core.
#pragma once

#include "gentlest/fitting/calibration.hpp"

#include <cstdint>
#include <vector>

namespace gentlest {

/// Where a sphere may lie before any test: centre and radius evenly, MPa^0.5. Holds every sphere of the published sets
/// (tests/published/score_sets) with room to spare; where the tests leave a side open the answer runs to this bound.
inline constexpr Hansen lowest_drawn_centre = {12, -8, -8};
inline constexpr Hansen highest_drawn_centre = {25, 30, 30};

/// `count` spheres from the posterior of a sphere whose liquids (grade 1: dissolves; else: does not) answer by a
/// logistic curve in Ra - R0. How soft that curve is, 0.05 to 2 MPa^0.5, is drawn as well. Starts at `best`. By the
/// stretch moves of Goodman and Weare 2010, Comm. App. Math. Comp. Sci. 5, 65 (from memory), which need no scale.
/// Deterministic for a seed.
std::vector<Sphere> draw_spheres(const std::vector<Score>& scores, const Sphere& best, int count, std::uint64_t seed);

}  // namespace gentlest
