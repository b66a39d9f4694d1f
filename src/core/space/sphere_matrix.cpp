#include "core/space/sphere_matrix.hpp"

#include <cmath>
#include <cstddef>

namespace gentlest {

SphereMatrix covariance_of(const UncertainSphere& sphere) {
  const std::array<double, 3> sd = scaled(sphere.sd);
  const SphereCovariance& shared = sphere.shared;
  SphereMatrix matrix{};
  for (std::size_t i = 0; i < 3; ++i) matrix[i][i] = sd[i] * sd[i];
  matrix[3][3] = sphere.R0_sd * sphere.R0_sd;
  const auto put = [&](std::size_t i, std::size_t j, double value) { matrix[i][j] = matrix[j][i] = value; };
  put(0, 1, 2 * shared.dD_dP);
  put(0, 2, 2 * shared.dD_dH);
  put(1, 2, shared.dP_dH);
  put(0, 3, 2 * shared.dD_R0);
  put(1, 3, shared.dP_R0);
  put(2, 3, shared.dH_R0);
  return matrix;
}

SphereMatrix root_of(const SphereMatrix& matrix) {
  constexpr double last_bits = 1e-12;
  SphereMatrix root{};
  for (std::size_t j = 0; j < root.size(); ++j) {
    double left = matrix[j][j];
    for (std::size_t k = 0; k < j; ++k) left -= root[j][k] * root[j][k];
    if (!(left > last_bits * matrix[j][j])) continue;
    root[j][j] = std::sqrt(left);
    for (std::size_t i = j + 1; i < root.size(); ++i) {
      double shared = matrix[i][j];
      for (std::size_t k = 0; k < j; ++k) shared -= root[i][k] * root[j][k];
      root[i][j] = shared / root[j][j];
    }
  }
  return root;
}

}  // namespace gentlest
