#include "core/space/lattice.hpp"

#include <cmath>

namespace gentlest {

FieldLattice lattice_between(const std::array<double, 3>& low, const std::array<double, 3>& high,
                             const std::array<double, 3>& step) {
  FieldLattice lattice;
  for (std::size_t i = 0; i < 3; ++i) {
    lattice.step[i] = step[i];
    lattice.inverse_step[i] = 1 / step[i];
    lattice.origin[i] = low[i] - step[i];  // one node of padding below
    lattice.nodes[i] = static_cast<std::size_t>(std::ceil((high[i] - low[i]) / step[i])) + 4;
  }
  return lattice;
}

FieldPlace place_at(const FieldLattice& lattice, const std::array<double, 3>& at) {
  FieldPlace place;
  for (std::size_t i = 0; i < 3; ++i) {
    const double position = std::clamp((at[i] - lattice.origin[i]) * lattice.inverse_step[i], 1.0,
                                       static_cast<double>(lattice.nodes[i]) - 3);
    const auto whole = static_cast<std::size_t>(position);
    const double t = position - static_cast<double>(whole);
    place.first[i] = whole - 1;
    place.weight[i] = {t * (1 - t) * (t - 2) / 6, (1 - t * t) * (2 - t) / 2, t * (1 + t) * (2 - t) / 2,
                       t * (t * t - 1) / 6};
  }
  return place;
}

double value_at(const FieldLattice& lattice, const std::vector<double>& values, const FieldPlace& place) {
  const std::size_t row_length = lattice.nodes[2];
  const std::size_t slab_size = lattice.nodes[1] * row_length;
  const double* first = &values[place.first[0] * slab_size + place.first[1] * row_length + place.first[2]];
  const std::array<double, 4>& h = place.weight[2];
  double sum = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    double plane = 0;
    for (std::size_t j = 0; j < 4; ++j) {
      const double* row = first + i * slab_size + j * row_length;
      plane += place.weight[1][j] * (h[0] * row[0] + h[1] * row[1] + h[2] * row[2] + h[3] * row[3]);
    }
    sum += place.weight[0][i] * plane;
  }
  return sum;
}

std::vector<double> lattice_kernel(double sd, double step) {
  const double in_steps = sd / step;
  if (in_steps <= 0) return {1};
  if (in_steps < 0.8) {
    const double side = in_steps * in_steps / 2;
    return {side, 1 - 2 * side, side};
  }
  const int reach = static_cast<int>(std::ceil(6 * in_steps));
  std::vector<double> weights;
  double mass = 0;
  for (int i = -reach; i <= reach; ++i) {
    const double z = i / in_steps;
    weights.push_back(std::exp(-z * z / 2));
    mass += weights.back();
  }
  for (double& weight : weights) weight /= mass;
  return weights;
}

Smoothing smoothing_along(const FieldLattice& lattice, std::size_t axis, double sd) {
  Smoothing smoothing;
  smoothing.kernel = lattice_kernel(sd, lattice.step[axis]);
  smoothing.nodes = lattice.nodes[axis];
  smoothing.source = lattice.nodes[axis] + smoothing.kernel.size() - 1;
  return smoothing;
}

void smooth_rows(const double* in, double* out, std::size_t width, const Smoothing& axis) {
  for (std::size_t i = 0; i < axis.nodes; ++i)
    for (std::size_t k = 0; k < axis.kernel.size(); ++k) {
      const double weight = axis.kernel[k];
      const double* from = in + (i + k) * width;
      double* to = out + i * width;
      for (std::size_t w = 0; w < width; ++w) to[w] += weight * from[w];
    }
}

void smooth_line(const double* in, double* out, const Smoothing& axis) {
  for (std::size_t k = 0; k < axis.kernel.size(); ++k) {
    const double weight = axis.kernel[k];
    for (std::size_t i = 0; i < axis.nodes; ++i) out[i] += weight * in[i + k];
  }
}

}  // namespace gentlest
