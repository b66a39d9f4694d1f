#include "gentlest/space/chance.hpp"

#include "gentlest/space/nearer.hpp"
#include "gentlest/space/spread.hpp"

#include "core/space/likely_quadruples.hpp"
#include "core/space/sphere_matrix.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace gentlest {

namespace {

// (dD, dP, dH, R0) in standard deviations. The factor is the best of 60 that were tried on half-spaces and balls of
// known content.
const std::vector<std::array<double, 4>>& likely_spheres() {
  static const auto all = likely_quadruples(8191, 554);
  return all;
}

// RED of the liquid to each of the likely spheres, in their order.
std::vector<double> likely_REDs(const Hansen& liquid, const UncertainSphere& sphere, const LocalReach& reach) {
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
  return reds;
}

}  // namespace

Band RED_band(const Hansen& liquid, const UncertainSphere& sphere, const LocalReach& reach) {
  std::vector<double> reds = likely_REDs(liquid, sphere, reach);
  const auto at = [&](double share) {
    const auto rank = static_cast<std::ptrdiff_t>(std::lround(share * static_cast<double>(reds.size()) - 0.5));
    std::nth_element(reds.begin(), reds.begin() + rank, reds.end());
    return reds[static_cast<std::size_t>(rank)];
  };
  const double low = at(0.05);
  return {low, at(0.95)};
}

double share_nearer(const Hansen& first, const Hansen& second, const UncertainSphere& sphere, const LocalReach& reach) {
  const std::vector<double> of_first = likely_REDs(first, sphere, reach);
  const std::vector<double> of_second = likely_REDs(second, sphere, reach);
  std::size_t nearer = 0;
  for (std::size_t i = 0; i < of_first.size(); ++i)
    if (of_first[i] < of_second[i]) ++nearer;
  return static_cast<double>(nearer) / static_cast<double>(of_first.size());
}

std::vector<double> RED_middles(const Hansen& liquid, const UncertainSphere& sphere, const LocalReach& reach,
                                std::size_t count) {
  assert(count >= 1);
  std::vector<double> reds = likely_REDs(liquid, sphere, reach);
  std::sort(reds.begin(), reds.end());
  std::vector<double> middles;
  for (std::size_t i = 0; i < count; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(count);
    middles.push_back(reds[static_cast<std::size_t>(share * static_cast<double>(reds.size()))]);
  }
  return middles;
}

bool holds_the_border(const Band& band) {
  constexpr double half_a_digit = 0.005;
  return band.low < 1 + half_a_digit && band.high >= 1 - half_a_digit;
}

}  // namespace gentlest
