#include "gentlest/space/chance.hpp"

#include "core/space/sphere_matrix.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace gentlest {

namespace {

double normal_density(double z) {
  return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
}

// Mid-points of so many equally likely slices of a standard normal, by Newton's method from one to the next.
std::vector<double> normal_slices(long count) {
  std::vector<double> z(static_cast<std::size_t>(count));
  double at = 0;
  for (long i = count / 2; i < count; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(count);
    for (int step = 0; step < 4; ++step)
      at += (1 - share - 0.5 * std::erfc(at / std::numbers::sqrt2)) * -1 / normal_density(at);
    z[static_cast<std::size_t>(i)] = at;
    z[static_cast<std::size_t>(count - 1 - i)] = -at;
  }
  return z;
}

// Equally likely (dD, dP, dH, R0) in standard deviations: a lattice of Korobov, whose every coordinate runs through all
// slices once. The factor is the best of 60 that were tried on half-spaces and balls of known content.
const std::vector<std::array<double, 4>>& likely_spheres() {
  static const auto all = [] {
    constexpr long count = 8191;
    constexpr long factor = 554;
    const std::vector<double> z = normal_slices(count);
    std::vector<std::array<double, 4>> spheres(count);
    for (long i = 0; i < count; ++i) {
      long at = i;
      for (double& coordinate : spheres[static_cast<std::size_t>(i)]) {
        coordinate = z[static_cast<std::size_t>(at)];
        at = at * factor % count;
      }
    }
    return spheres;
  }();
  return all;
}

}  // namespace

Band RED_band(const Hansen& liquid, const UncertainSphere& sphere, const LocalReach& reach) {
  assert(is_possible(sphere));
  const std::array<double, 3> from = scaled(liquid);
  const std::array<double, 3> centre = scaled(sphere.mean.centre);
  const SphereMatrix root = root_of(covariance_of(sphere));
  const double longer = reach_factor(reach, liquid);
  std::vector<double> reds;
  reds.reserve(likely_spheres().size());
  for (const std::array<double, 4>& z : likely_spheres()) {
    const auto off = [&](std::size_t figure) {
      double sum = 0;
      for (std::size_t k = 0; k <= figure; ++k) sum += z[k] * root[figure][k];
      return sum;
    };
    const double R0 = sphere.mean.R0 + off(3);
    if (R0 <= 0) continue;  // the radius is a Gaussian cut off at 0
    reds.push_back(
        std::hypot(centre[0] - from[0] + off(0), centre[1] - from[1] + off(1), centre[2] - from[2] + off(2)) /
        (R0 * longer));
  }
  const auto at = [&](double share) {
    const auto rank = static_cast<std::ptrdiff_t>(std::lround(share * static_cast<double>(reds.size()) - 0.5));
    std::nth_element(reds.begin(), reds.begin() + rank, reds.end());
    return reds[static_cast<std::size_t>(rank)];
  };
  const double low = at(0.05);
  return {low, at(0.95)};
}

bool holds_the_border(const Band& band) {
  constexpr double half_a_digit = 0.005;
  return band.low < 1 + half_a_digit && band.high >= 1 - half_a_digit;
}

}  // namespace gentlest
