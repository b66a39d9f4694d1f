// Simulated paintings for the study of docs/study.md: the truth that a policy does not see, and what its swabs read.
// Nothing here shows that Hansen spheres describe real varnish removal; policies are compared inside the model.
#pragma once

#include "gentlest/learning/learning.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace gentlest::study {

/// How swabs act, the same for truth and planner. Levels at RED: removal 1.12, 1.045, 0.97, 0.90 and harm 1.00, 0.93,
/// 0.86, 0.80, each a logistic of width 0.05. "Softens" at 1.12, "removes" at 0.97 and harm at 1.00 are those of the
/// prototype study; the levels between are ours. All assumed.
ReadingCurve removal_curve();
ReadingCurve harm_curve();

/// What varies between runs.
struct World {
  std::string name;
  UncertainSphere varnish, paint;     ///< what a planner believes
  Hansen varnish_shift, paint_shift;  ///< the truth lies off by this, MPa^0.5
  double varnish_R0_factor = 1, paint_R0_factor = 1;
  double misread = 0.02;         ///< share of readings that are wrong
  double liquid_error = 0;       ///< sd of each liquid's true parameters about the published ones, MPa^0.5
  double edge_difference = 0.5;  ///< sd of the paint's centre and R0 at the edge against the picture, MPa^0.5
  ReadingCurve removal = removal_curve(), harm = harm_curve();  ///< known to the planner
  bool luck_of_mixture = false;  ///< a mixture has the same luck at the edge as on the picture
};

World base_world();
World hard_world();
/// base_world with one assumption wrong each, and four at once.
std::vector<World> wrong_worlds(const World& from);

/// The same with the response curve that jobs borrow, whose scatter goes with the mixture.
World job_curve_world(World from, const Response& response);

/// A painting that exists: true spheres, and its own luck.
struct Painting {
  Sphere varnish, paint, edge_paint;
  std::uint64_t luck = 0;
};
Painting make_painting(const World& world, std::uint64_t seed, std::size_t number);

/// What really happened under a swab, and what was read.
struct SwabOutcome {
  int removal = 0, harm = 0;
  int removal_read = 0, harm_read = 0;
};
/// The same swab number on the same painting with the same mixture has the same outcome for every policy.
SwabOutcome swab(const World& world, const Painting& painting, const Hansen& true_point, std::uint64_t mixture,
                 bool at_edge);

/// True chances of a mixture on the picture.
double true_effect(const World& world, const Painting& painting, const Hansen& true_point);
double true_risk(const World& world, const Painting& painting, const Hansen& true_point);

}  // namespace gentlest::study
