// A sphere out of one's own solubility tests of a resin: yes or no, or graded 1 to 6.
// The fit is that of calibration.hpp; here it gets intervals, its misfits, and whether it is the only one.
#pragma once

#include "gentlest/fitting/calibration.hpp"
#include "gentlest/learning/learning.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace gentlest {

/// A liquid on the wrong side of the fitted sphere.
struct Misfit {
  std::string solvent;
  int grade = 0;
  double RED = 0;
  bool operator==(const Misfit&) const = default;
};

struct OwnFit {
  Sphere sphere;
  SphereQuality quality;
  int tests = 0;
  int good = 0;                    ///< liquids that count as dissolving it
  Estimate dD, dP, dH, R0;         ///< middle 90 % of the spheres that the tests leave
  UncertainSphere uncertain;       ///< the same as independent standard deviations, for a job's own_sphere
  std::vector<Misfit> misfits;     ///< worst first
  double R0_low = 0, R0_high = 0;  ///< radii whose sphere fits within 0.01 of the best
  std::vector<FitDoubt> doubts;    ///< why other spheres fit as well; empty: held in place
};

/// Grades up to `good_up_to` (1..5) count as dissolving it. Intervals: 1000 spheres drawn from all that the tests leave
/// likely (a logistic curve in Ra - R0, flat priors within bounds; docs/science.md, "Own tests"). Centre and radius
/// slide together, so the standard deviations of `uncertain` are scaled until the boundary moves as in the draws, over
/// all the places that mixtures of usual liquids reach. Throws InputError (Fault::usage) with fewer than 4 liquids,
/// none good, or a grade outside 1..6.
OwnFit fit_own_sphere(const std::vector<Score>& scores, int good_up_to = 1, std::uint64_t seed = 1);

}  // namespace gentlest
