// A sphere that nobody published, moved until it agrees with what was observed.
//
// Prior: a stand-in's sphere, its deviations widened. Each observation says that the grade of a liquid lies in a range;
// its likelihood is the response curve's chance of that range, with a small chance of a slip, to the power of a weight.
// Besides centre and radius there is a reach (space/reach.hpp): a Gaussian field over Hansen space, 0 on average, that
// lengthens or shortens ln R0 near the liquids that were seen. All are drawn together by elliptical slice sampling
// (Murray, Adams and MacKay 2010, AISTATS; from memory), which needs no tuning. Deterministic: the seed is an input.
#pragma once

#include "gentlest/space/hansen.hpp"
#include "gentlest/space/reach.hpp"
#include "gentlest/space/response.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace gentlest {

/// One observation as a fit needs it: at this point the grade lay between `strongest` and `weakest` (1..6).
struct GradedAction {
  Hansen point;
  int strongest = 1;
  int weakest = grade_count;
  double weight = 1;      ///< power of its likelihood, 0..1
  double ln_further = 0;  ///< added to ln RED: a contact so short that the liquid acts as if further off
  bool operator==(const GradedAction&) const = default;
};

/// What a fit starts from. Our choices; docs/observations.md has what others gave.
struct ConditioningSettings {
  double prior_widening = 1.5;  ///< of the stand-in's deviations
  double reach_sd = 0.3;        ///< of the field that bends ln R0; 0: the sphere stays round
  double reach_length = 3;      ///< over which that field fades, MPa^0.5
  double slip = 0.05;           ///< chance that an observation is about something else
  int draws = 20000;            ///< kept; a tenth more are thrown away first
  std::uint64_t seed = 1;
  bool operator==(const ConditioningSettings&) const = default;
};

struct ConditionedSphere {
  UncertainSphere sphere;
  LocalReach reach;
  double effective_draws = 0;  ///< draws of ln likelihood, less what they repeat of each other
};

/// The sphere after the observations: mean, deviations and covariances of the draws, and the mean of the field as
/// weights at the points seen. `stands`: the sphere is a published one and keeps its centre, radius and deviations;
/// only the reach is fitted. Without observations the (widened) prior. Precondition: prior.mean.R0 > 0.
ConditionedSphere condition_sphere(const UncertainSphere& prior, bool stands, const Response& response,
                                   const std::vector<GradedAction>& seen, const ConditioningSettings& settings);

/// Chances of the six grades at a point, averaged over what is not known of the sphere (4095 equally likely spheres on
/// a fixed lattice; the error is below 0.002). They add up to 1.
std::array<double, grade_count> expected_grades(const ConditionedSphere& sphere, const Response& response,
                                                const Hansen& point, double ln_further = 0);

}  // namespace gentlest
