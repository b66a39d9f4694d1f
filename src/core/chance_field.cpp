// The table behind a search: the radial response smoothed by the centre's Gaussian, one coordinate after the other.
#include "radial_response.hpp"

#include "gentlest/chance.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

// Weights of the centre's Gaussian on the lattice. A spread too narrow for the lattice keeps its variance on three
// nodes.
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

// out[i] = sum over k of kernel[k] in[i + k], for lines that lie `stride` apart in memory.
void smooth_line(const double* in, double* out, std::size_t count, std::size_t stride_in, std::size_t stride_out,
                 const std::vector<double>& kernel) {
  for (std::size_t i = 0; i < count; ++i) {
    double sum = 0;
    for (std::size_t k = 0; k < kernel.size(); ++k) sum += kernel[k] * in[(i + k) * stride_in];
    out[i * stride_out] = sum;
  }
}

struct Lattice {
  std::array<double, 3> step{};
  std::array<std::size_t, 3> nodes{};  // of the finished table
  std::array<std::vector<double>, 3> kernel;
  std::array<std::size_t, 3> source{};  // nodes + kernel reach on both sides
};

using Values = std::vector<double>;

// Radial response on the source lattice, row by row, smoothed at once along H: the full source never stands in memory.
Values sample_and_smooth_H(const Lattice& lattice, const std::array<double, 3>& first, const RadialResponse& radial) {
  Values rows(lattice.source[0] * lattice.source[1] * lattice.nodes[2]);
  Values row(lattice.source[2]);
  for (std::size_t i = 0; i < lattice.source[0]; ++i) {
    const double D = first[0] + static_cast<double>(i) * lattice.step[0];
    for (std::size_t j = 0; j < lattice.source[1]; ++j) {
      const double P = first[1] + static_cast<double>(j) * lattice.step[1];
      for (std::size_t k = 0; k < row.size(); ++k) {
        const double H = first[2] + static_cast<double>(k) * lattice.step[2];
        row[k] = radial(std::sqrt(D * D + P * P + H * H));
      }
      smooth_line(row.data(), &rows[(i * lattice.source[1] + j) * lattice.nodes[2]], lattice.nodes[2], 1, 1,
                  lattice.kernel[2]);
    }
  }
  return rows;
}

Values smooth_P(const Lattice& lattice, const Values& in) {
  const std::size_t width = lattice.nodes[2];
  Values out(lattice.source[0] * lattice.nodes[1] * width);
  for (std::size_t i = 0; i < lattice.source[0]; ++i)
    for (std::size_t k = 0; k < width; ++k)
      smooth_line(&in[i * lattice.source[1] * width + k], &out[i * lattice.nodes[1] * width + k], lattice.nodes[1],
                  width, width, lattice.kernel[1]);
  return out;
}

Values smooth_D(const Lattice& lattice, const Values& in) {
  const std::size_t slab = lattice.nodes[1] * lattice.nodes[2];
  Values out(lattice.nodes[0] * slab);
  for (std::size_t jk = 0; jk < slab; ++jk)
    smooth_line(&in[jk], &out[jk], lattice.nodes[0], slab, slab, lattice.kernel[0]);
  return out;
}

double farthest_corner(const std::array<double, 3>& low, const std::array<double, 3>& high,
                       const std::array<double, 3>& sd) {
  double sum = 0;
  for (std::size_t i = 0; i < 3; ++i)
    sum = std::hypot(sum, std::max(std::abs(low[i]), std::abs(high[i])) + 7 * sd[i] + 2);
  return sum;
}

}  // namespace

ChanceField::ChanceField(const HansenBox& box, const UncertainSphere& sphere, const Response& response, int grade) {
  const std::array<double, 3> centre = scaled(sphere.mean.centre);
  const std::array<double, 3> sd = scaled(sphere.sd);
  std::array<double, 3> low = scaled(box.low);
  std::array<double, 3> high = scaled(box.high);
  for (std::size_t i = 0; i < 3; ++i) {
    low[i] -= centre[i];
    high[i] -= centre[i];
  }
  const RadialResponse radial(sphere, response, grade, farthest_corner(low, high, sd), sphere.mean.R0 / 150);
  Lattice lattice;
  std::array<double, 3> first_source{};
  for (std::size_t i = 0; i < 3; ++i) {
    // A fifth of the blur keeps the cubic within 1e-4; the second bound keeps the sums over the lattice exact.
    lattice.step[i] = std::min(0.2 * std::hypot(sd[i], radial.width()), 0.5 * radial.width());
    lattice.nodes[i] = static_cast<std::size_t>(std::ceil((high[i] - low[i]) / lattice.step[i])) + 4;
    lattice.kernel[i] = lattice_kernel(sd[i], lattice.step[i]);
    lattice.source[i] = lattice.nodes[i] + lattice.kernel[i].size() - 1;
    origin_[i] = low[i] - lattice.step[i];  // one node of padding below
    first_source[i] = origin_[i] - static_cast<double>(lattice.kernel[i].size() / 2) * lattice.step[i];
    inverse_step_[i] = 1 / lattice.step[i];
    nodes_[i] = lattice.nodes[i];
  }
  values_ = smooth_D(lattice, smooth_P(lattice, sample_and_smooth_H(lattice, first_source, radial)));
  for (std::size_t i = 0; i < 3; ++i) origin_[i] += centre[i];
}

double ChanceField::operator()(const Hansen& point) const {
  const std::array<double, 3> place = scaled(point);
  std::array<std::size_t, 3> cell{};
  std::array<std::array<double, 4>, 3> weight{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double position =
        std::clamp((place[i] - origin_[i]) * inverse_step_[i], 1.0, static_cast<double>(nodes_[i]) - 3);
    const double whole = std::floor(position);
    const double t = position - whole;
    cell[i] = static_cast<std::size_t>(whole) - 1;
    weight[i] = {t * (1 - t) * (t - 2) / 6, (1 - t * t) * (2 - t) / 2, t * (1 + t) * (2 - t) / 2, t * (t * t - 1) / 6};
  }
  double sum = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    const double* slab = &values_[(cell[0] + i) * nodes_[1] * nodes_[2]];
    double plane = 0;
    for (std::size_t j = 0; j < 4; ++j) {
      const double* row = slab + (cell[1] + j) * nodes_[2] + cell[2];
      plane += weight[1][j] *
               (weight[2][0] * row[0] + weight[2][1] * row[1] + weight[2][2] * row[2] + weight[2][3] * row[3]);
    }
    sum += weight[0][i] * plane;
  }
  return std::clamp(sum, 0.0, 1.0);
}

}  // namespace gentlest
