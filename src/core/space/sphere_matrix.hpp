// The figures of an uncertain sphere as one matrix, in the scaled space. Internal to core.
#pragma once

#include "gentlest/space/hansen.hpp"

#include <array>

namespace gentlest {

using SphereMatrix = std::array<std::array<double, 4>, 4>;

/// Covariances of (2 dD, dP, dH, R0), MPa.
SphereMatrix covariance_of(const UncertainSphere& sphere);

/// The lower triangle L with L L^T = `matrix` (Cholesky). A figure that the ones before it settle, or that is known
/// exactly, gets no deviation of its own. For a matrix without covariances L holds the very deviations.
SphereMatrix root_of(const SphereMatrix& matrix);

}  // namespace gentlest
