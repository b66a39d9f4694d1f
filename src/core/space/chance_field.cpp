// The table behind a search: the radial response smoothed by the centre's Gaussian, one coordinate after the other.
#include "core/space/radial_response.hpp"

#include "gentlest/space/chance.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

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

// One axis of the way from the source lattice to the table.
struct Smoothing {
  std::vector<double> kernel;
  std::size_t nodes = 0;   // of the table
  std::size_t source = 0;  // nodes + kernel reach on both sides
};

using Values = std::vector<double>;

// out[i] = sum over k of kernel[k] in[i + k], where every element is a row of `width` numbers.
void smooth_rows(const double* in, double* out, std::size_t width, const Smoothing& axis) {
  for (std::size_t i = 0; i < axis.nodes; ++i)
    for (std::size_t k = 0; k < axis.kernel.size(); ++k) {
      const double weight = axis.kernel[k];
      const double* from = in + (i + k) * width;
      double* to = out + i * width;
      for (std::size_t w = 0; w < width; ++w) to[w] += weight * from[w];
    }
}

// The same for single numbers.
void smooth_line(const double* in, double* out, const Smoothing& axis) {
  for (std::size_t k = 0; k < axis.kernel.size(); ++k) {
    const double weight = axis.kernel[k];
    for (std::size_t i = 0; i < axis.nodes; ++i) out[i] += weight * in[i + k];
  }
}

// Radial response on the source lattice, smoothed at once along H and, slab by slab, along P: the full source never
// stands in memory.
Values sample_and_smooth(const FieldLattice& lattice, const std::array<Smoothing, 3>& axes,
                         const std::array<double, 3>& first, const RadialResponse& radial) {
  const std::size_t width = axes[2].nodes;
  Values slabs(axes[0].source * axes[1].nodes * width);
  Values row(axes[2].source);
  Values slab(axes[1].source * width);
  for (std::size_t i = 0; i < axes[0].source; ++i) {
    const double D = first[0] + static_cast<double>(i) * lattice.step[0];
    std::fill(slab.begin(), slab.end(), 0.0);
    for (std::size_t j = 0; j < axes[1].source; ++j) {
      const double P = first[1] + static_cast<double>(j) * lattice.step[1];
      for (std::size_t k = 0; k < row.size(); ++k) {
        const double H = first[2] + static_cast<double>(k) * lattice.step[2];
        row[k] = radial(std::sqrt(D * D + P * P + H * H));
      }
      smooth_line(row.data(), &slab[j * width], axes[2]);
    }
    smooth_rows(slab.data(), &slabs[i * axes[1].nodes * width], width, axes[1]);
  }
  return slabs;
}

// Farthest that the sampling goes from the centre of the sphere.
double farthest_corner(const HansenBox& box, const UncertainSphere& sphere) {
  const std::array<double, 3> low = scaled(box.low);
  const std::array<double, 3> high = scaled(box.high);
  const std::array<double, 3> centre = scaled(sphere.mean.centre);
  const std::array<double, 3> sd = scaled(sphere.sd);
  double sum = 0;
  for (std::size_t i = 0; i < 3; ++i)
    sum = std::hypot(sum, std::max(std::abs(low[i] - centre[i]), std::abs(high[i] - centre[i])) + 7 * sd[i] + 2);
  return sum;
}

// A subject made ready for a lattice: its radial curve, and what the lattice must still smooth along each axis.
struct Ready {
  RadialResponse radial;
  std::array<double, 3> sd{};
};

Ready make_ready(const HansenBox& box, const FieldSubject& subject) {
  assert(subject.grade >= 1 && subject.grade <= grade_count);
  assert(subject.sphere.mean.R0 > 0 && subject.sphere.R0_sd >= 0);
  constexpr double most_nodes = 20000;
  const double farthest = farthest_corner(box, subject.sphere);
  const double spacing = std::max(subject.sphere.mean.R0 / 150, farthest / most_nodes);
  return {RadialResponse(subject.sphere, subject.response, subject.grade, farthest, spacing),
          scaled(subject.sphere.sd)};
}

// What all axes share of the spread is taken by the radial curve, which makes it that much smoother.
Ready blurred(const Ready& sharp) {
  const double shared = *std::min_element(sharp.sd.begin(), sharp.sd.end());
  if (shared <= 0) return sharp;
  Ready ready{sharp.radial.blurred(shared), {}};
  for (std::size_t i = 0; i < 3; ++i)
    ready.sd[i] = std::sqrt(std::max(sharp.sd[i] * sharp.sd[i] - shared * shared, 0.0));
  return ready;
}

// The finest step that one of them needs. A fifth of the blur keeps the cubic within 1e-4; the second bound keeps the
// sums over the lattice exact.
std::array<double, 3> needed_step(const std::vector<Ready>& all) {
  std::array<double, 3> step;
  step.fill(std::numeric_limits<double>::infinity());
  for (const Ready& one : all) {
    const double width = one.radial.width();
    for (std::size_t i = 0; i < 3; ++i)
      step[i] = std::min(step[i], std::min(0.2 * std::hypot(one.sd[i], width), 0.5 * width));
  }
  return step;
}

FieldLattice lattice_over(const HansenBox& box, const std::array<double, 3>& step) {
  const std::array<double, 3> low = scaled(box.low);
  const std::array<double, 3> high = scaled(box.high);
  FieldLattice lattice;
  for (std::size_t i = 0; i < 3; ++i) {
    lattice.step[i] = step[i];
    lattice.inverse_step[i] = 1 / step[i];
    lattice.origin[i] = low[i] - step[i];  // one node of padding below
    lattice.nodes[i] = static_cast<std::size_t>(std::ceil((high[i] - low[i]) / step[i])) + 4;
  }
  return lattice;
}

// Numbers that stand in memory at once while one of the tables is made, at most.
double size_of(const FieldLattice& lattice, const std::vector<Ready>& all) {
  double source = 0;
  for (const Ready& one : all)
    source =
        std::max(source, static_cast<double>(lattice.nodes[0] + lattice_kernel(one.sd[0], lattice.step[0]).size()));
  return source * static_cast<double>(lattice.nodes[1]) * static_cast<double>(lattice.nodes[2]);
}

constexpr double most_numbers = 6e6;

// Spheres so sharp that no table would hold them: the radial curve takes what blur it can, and the lattice is made
// coarser until it fits.
FieldLattice bounded_lattice(const HansenBox& box, std::vector<Ready>& all) {
  constexpr double longest_kernel = 40;  // standard deviations in steps; the lattice sums stay exact to 1e-4
  for (Ready& one : all) one = blurred(one);
  std::array<double, 3> step = needed_step(all);
  for (const Ready& one : all)
    for (std::size_t i = 0; i < 3; ++i) step[i] = std::max(step[i], one.sd[i] / longest_kernel);
  FieldLattice lattice = lattice_over(box, step);
  while (size_of(lattice, all) > most_numbers) {
    for (double& one : step) one *= 1.05;
    lattice = lattice_over(box, step);
  }
  return lattice;
}

// Before a lattice is laid out: whether it would be far too large, in numbers that cannot overflow.
bool is_too_fine(const HansenBox& box, const std::vector<Ready>& all) {
  const std::array<double, 3> step = needed_step(all);
  const std::array<double, 3> low = scaled(box.low);
  const std::array<double, 3> high = scaled(box.high);
  double numbers = 1;
  for (std::size_t i = 0; i < 3; ++i) {
    double reach = 0;
    for (const Ready& one : all) reach = std::max(reach, i == 0 ? 12 * one.sd[i] : 0.0);
    numbers *= (high[i] - low[i] + reach) / step[i] + 5;
  }
  return numbers > most_numbers;
}

Values tabulate(const FieldLattice& lattice, const Sphere& sphere, const Ready& ready) {
  const std::array<double, 3> centre = scaled(sphere.centre);
  const std::array<double, 3>& sd = ready.sd;
  std::array<Smoothing, 3> axes;
  std::array<double, 3> first{};
  for (std::size_t i = 0; i < 3; ++i) {
    axes[i].kernel = lattice_kernel(sd[i], lattice.step[i]);
    axes[i].nodes = lattice.nodes[i];
    axes[i].source = lattice.nodes[i] + axes[i].kernel.size() - 1;
    const std::size_t half = axes[i].kernel.size() / 2;
    first[i] = lattice.origin[i] - centre[i] - static_cast<double>(half) * lattice.step[i];
  }
  const Values slabs = sample_and_smooth(lattice, axes, first, ready.radial);
  const std::size_t slab = axes[1].nodes * axes[2].nodes;
  Values values(axes[0].nodes * slab);
  smooth_rows(slabs.data(), values.data(), slab, axes[0]);
  return values;
}

}  // namespace

std::vector<ChanceField> chance_fields(const HansenBox& box, const std::vector<FieldSubject>& subjects) {
  std::vector<Ready> all;
  for (const FieldSubject& subject : subjects) all.push_back(make_ready(box, subject));
  const FieldLattice lattice = is_too_fine(box, all) ? bounded_lattice(box, all) : lattice_over(box, needed_step(all));
  std::vector<ChanceField> fields;
  for (std::size_t i = 0; i < subjects.size(); ++i) {
    ChanceField field;
    field.lattice_ = lattice;
    field.values_ = tabulate(lattice, subjects[i].sphere.mean, all[i]);
    fields.push_back(std::move(field));
  }
  return fields;
}

ChanceField::ChanceField(const HansenBox& box, const UncertainSphere& sphere, const Response& response, int grade)
    : ChanceField(std::move(chance_fields(box, {{sphere, response, grade}}).front())) {}

FieldPlace place_on(const FieldLattice& lattice, const Hansen& point) {
  const std::array<double, 3> at = scaled(point);
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

double ChanceField::at(const FieldPlace& place) const {
  const std::size_t row_length = lattice_.nodes[2];
  const std::size_t slab_size = lattice_.nodes[1] * row_length;
  const double* first = &values_[place.first[0] * slab_size + place.first[1] * row_length + place.first[2]];
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
  return std::clamp(sum, 0.0, 1.0);
}

}  // namespace gentlest
