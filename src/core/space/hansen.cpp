#include "gentlest/space/hansen.hpp"

#include "core/space/sphere_matrix.hpp"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace gentlest {

double total(const Hansen& point) {
  return std::hypot(point.dD, point.dP, point.dH);
}

std::array<double, 3> scaled(const Hansen& point) {
  return {2 * point.dD, point.dP, point.dH};
}

double distance_Ra(const Hansen& a, const Hansen& b) {
  return std::hypot(2 * (a.dD - b.dD), a.dP - b.dP, a.dH - b.dH);
}

double relative_distance_RED(const Hansen& liquid, const Sphere& sphere) {
  assert(sphere.R0 > 0);
  return distance_Ra(liquid, sphere.centre) / sphere.R0;
}

bool is_possible(const UncertainSphere& sphere) {
  constexpr double rounding = 1e-6;
  const bool is_usual = sphere.mean.R0 > 0 && sphere.sd.dD >= 0 && sphere.sd.dP >= 0 && sphere.sd.dH >= 0 &&
                        sphere.R0_sd >= 0 && std::isfinite(sphere.sd.dD + sphere.sd.dP + sphere.sd.dH + sphere.R0_sd);
  if (!is_usual) return false;
  if (sphere.shared == SphereCovariance{}) return true;
  const SphereMatrix covariance = covariance_of(sphere);
  Eigen::Matrix4d matrix;
  for (int i = 0; i < 4; ++i)
    for (int j = 0; j < 4; ++j) matrix(i, j) = covariance[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
  if (!matrix.allFinite()) return false;
  const Eigen::Vector4d values = Eigen::SelfAdjointEigenSolver<Eigen::Matrix4d>(matrix).eigenvalues();
  return values[0] >= -rounding * values[3];
}

UncertainSphere seen_from(const UncertainSphere& sphere, const Hansen& liquid_sd) {
  assert(liquid_sd.dD >= 0 && liquid_sd.dP >= 0 && liquid_sd.dH >= 0);
  UncertainSphere seen = sphere;
  seen.sd = {std::hypot(sphere.sd.dD, liquid_sd.dD), std::hypot(sphere.sd.dP, liquid_sd.dP),
             std::hypot(sphere.sd.dH, liquid_sd.dH)};
  return seen;
}

Teas teas_fractions(const Hansen& point) {
  const double dD = std::max(point.dD, 0.0);
  const double dP = std::max(point.dP, 0.0);
  const double dH = std::max(point.dH, 0.0);
  assert(dD + dP + dH > 0);
  const double per_cent = 100 / (dD + dP + dH);
  return {dD * per_cent, dP * per_cent, dH * per_cent};
}

}  // namespace gentlest
