#include "gentlest/space/point_chance.hpp"

#include "core/space/likely_quadruples.hpp"
#include "core/space/sphere_matrix.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace gentlest {

namespace {

constexpr double farthest_RED = 12;
constexpr std::size_t steps_of_RED = 2400;

const std::vector<std::array<double, 4>>& few_likely_spheres() {
  static const auto all = likely_quadruples(509, 144);
  return all;
}

}  // namespace

PointChance::PointChance(const FieldSubject& subject) : reach_(subject.reach) {
  assert(is_possible(subject.sphere));
  const std::array<double, 3> middle = scaled(subject.sphere.mean.centre);
  const SphereMatrix root = root_of(covariance_of(subject.sphere));
  for (const std::array<double, 4>& z : few_likely_spheres()) {
    const auto off = [&](std::size_t figure) {
      double sum = 0;
      for (std::size_t k = 0; k <= figure; ++k) sum += z[k] * root[figure][k];
      return sum;
    };
    const double R0 = subject.sphere.mean.R0 + off(3);
    if (R0 <= 0) continue;  // the radius is a Gaussian cut off at 0
    spheres_.push_back({{middle[0] + off(0), middle[1] + off(1), middle[2] + off(2)}, 1 / R0});
  }
  for (std::size_t i = 0; i <= steps_of_RED + 1; ++i)
    curve_.push_back(chance_at_most(subject.response, subject.grade,
                                    farthest_RED * static_cast<double>(i) / static_cast<double>(steps_of_RED)));
}

double PointChance::operator()(const Hansen& point) const {
  const std::array<double, 3> at = scaled(point);
  const double nearer = 1 / reach_factor(reach_, point);
  const double per_RED = static_cast<double>(steps_of_RED) / farthest_RED;
  double sum = 0;
  for (const One& one : spheres_) {
    const double Ra = std::sqrt((at[0] - one.centre[0]) * (at[0] - one.centre[0]) +
                                (at[1] - one.centre[1]) * (at[1] - one.centre[1]) +
                                (at[2] - one.centre[2]) * (at[2] - one.centre[2]));
    const double step = std::min(Ra * one.inverse_R0 * nearer, farthest_RED) * per_RED;
    const auto first = static_cast<std::size_t>(step);
    const double beyond = step - static_cast<double>(first);
    sum += curve_[first] + beyond * (curve_[first + 1] - curve_[first]);
  }
  return sum / static_cast<double>(spheres_.size());
}

}  // namespace gentlest
