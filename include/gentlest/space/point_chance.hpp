// The chance at single points, without a table: for a few hundred mixtures on many materials, where a table for each
// would take longer than the answer. A search reads tables (space/chance.hpp).
#pragma once

#include "gentlest/space/chance.hpp"

#include <array>
#include <vector>

namespace gentlest {

/// The response curve averaged over 509 equally likely spheres on a fixed lattice (no random numbers). Differs from
/// ChanceField by less than 0.015 (tests/unit/space/test_point_chance.cpp).
class PointChance {
 public:
  /// Precondition: is_possible(subject.sphere).
  explicit PointChance(const FieldSubject& subject);

  /// Chance that a liquid at this point acts as strongly as the subject's grade or stronger, 0..1.
  double operator()(const Hansen& point) const;

 private:
  struct One {
    std::array<double, 3> centre{};  // in the scaled space
    double inverse_R0 = 0;
  };
  std::vector<One> spheres_;
  std::vector<double> curve_;  // over RED from 0 to `farthest_RED`
  LocalReach reach_;
};

}  // namespace gentlest
