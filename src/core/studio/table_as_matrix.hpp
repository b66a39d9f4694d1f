// The tables of the studio as matrices of Eigen, which stays out of public headers. Internal to core.
#pragma once

#include "core/space/sphere_matrix.hpp"

#include <Eigen/Core>

namespace gentlest {

// A table over dD, dP, dH and R0 as the matrix that is reckoned with.
inline Eigen::Matrix4d matrix_of(const SphereMatrix& table) {
  Eigen::Matrix4d matrix;
  for (Eigen::Index i = 0; i < 4; ++i)
    for (Eigen::Index j = 0; j < 4; ++j) matrix(i, j) = table[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
  return matrix;
}

}  // namespace gentlest
