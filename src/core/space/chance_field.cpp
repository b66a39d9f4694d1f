// The table behind a search: the radial response smoothed by the centre's Gaussian, one coordinate after the other.
#include "core/space/joint_chance.hpp"
#include "core/space/lattice.hpp"
#include "core/space/radial_response.hpp"

#include "gentlest/space/chance.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <utility>

namespace gentlest {

namespace {

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

// All that share a lattice: plain spheres, and those that are summed node by node.
struct Shared {
  std::vector<Ready> plain;
  std::vector<JointChance> joint;
};

// The finest step that one of them needs. A fifth of the blur keeps the cubic within 1e-4; the second bound keeps the
// sums over the lattice exact.
std::array<double, 3> needed_step(const Shared& all) {
  std::array<double, 3> step;
  step.fill(std::numeric_limits<double>::infinity());
  for (const JointChance& one : all.joint) {
    const std::array<double, 3> needed = one.needed_step();
    for (std::size_t i = 0; i < 3; ++i) step[i] = std::min(step[i], needed[i]);
  }
  for (const Ready& one : all.plain) {
    const double width = one.radial.width();
    for (std::size_t i = 0; i < 3; ++i)
      step[i] = std::min(step[i], std::min(0.2 * std::hypot(one.sd[i], width), 0.5 * width));
  }
  return step;
}

FieldLattice lattice_over(const HansenBox& box, const std::array<double, 3>& step) {
  return lattice_between(scaled(box.low), scaled(box.high), step);
}

// Numbers that stand in memory at once while one of the tables is made, at most.
double size_of(const FieldLattice& lattice, const Shared& all) {
  double source = static_cast<double>(lattice.nodes[0]);
  for (const Ready& one : all.plain)
    source =
        std::max(source, static_cast<double>(lattice.nodes[0] + lattice_kernel(one.sd[0], lattice.step[0]).size()));
  return source * static_cast<double>(lattice.nodes[1]) * static_cast<double>(lattice.nodes[2]);
}

constexpr double most_numbers = 6e6;

// Spheres so sharp that no table would hold them: the radial curve takes what blur it can, and the lattice is made
// coarser until it fits.
FieldLattice bounded_lattice(const HansenBox& box, Shared& all) {
  constexpr double longest_kernel = 40;  // standard deviations in steps; the lattice sums stay exact to 1e-4
  for (Ready& one : all.plain) one = blurred(one);
  std::array<double, 3> step = needed_step(all);
  for (const Ready& one : all.plain)
    for (std::size_t i = 0; i < 3; ++i) step[i] = std::max(step[i], one.sd[i] / longest_kernel);
  FieldLattice lattice = lattice_over(box, step);
  while (size_of(lattice, all) > most_numbers) {
    for (double& one : step) one *= 1.05;
    lattice = lattice_over(box, step);
  }
  return lattice;
}

// Before a lattice is laid out: whether it would be far too large, in numbers that cannot overflow.
bool is_too_fine(const HansenBox& box, const Shared& all) {
  const std::array<double, 3> step = needed_step(all);
  const std::array<double, 3> low = scaled(box.low);
  const std::array<double, 3> high = scaled(box.high);
  double numbers = 1;
  for (std::size_t i = 0; i < 3; ++i) {
    double reach = 0;
    for (const Ready& one : all.plain) reach = std::max(reach, i == 0 ? 12 * one.sd[i] : 0.0);
    numbers *= (high[i] - low[i] + reach) / step[i] + 5;
  }
  return numbers > most_numbers;
}

std::vector<double> tabulate(const FieldLattice& lattice, const Sphere& sphere, const Ready& ready) {
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
  return smoothed(lattice, axes, first, [&](double D, double P, double H, std::vector<double>& row) {
    for (std::size_t k = 0; k < row.size(); ++k) {
      const double at = H + static_cast<double>(k) * lattice.step[2];
      row[k] = ready.radial(std::sqrt(D * D + P * P + at * at));
    }
  });
}

}  // namespace

std::vector<ChanceField> chance_fields(const HansenBox& box, const std::vector<FieldSubject>& subjects) {
  Shared all;
  for (const FieldSubject& subject : subjects)
    if (is_joint(subject))
      all.joint.emplace_back(box, subject);
    else
      all.plain.push_back(make_ready(box, subject));
  const FieldLattice lattice = is_too_fine(box, all) ? bounded_lattice(box, all) : lattice_over(box, needed_step(all));
  std::vector<ChanceField> fields;
  std::size_t plain = 0, joint = 0;
  for (const FieldSubject& subject : subjects) {
    ChanceField field;
    field.lattice_ = lattice;
    field.values_ = is_joint(subject) ? all.joint[joint++].tabulate(lattice)
                                      : tabulate(lattice, subject.sphere.mean, all.plain[plain++]);
    field.sphere_ = subject.sphere.mean;
    field.reach_ = subject.reach;
    fields.push_back(std::move(field));
  }
  return fields;
}

ChanceField::ChanceField(const HansenBox& box, const UncertainSphere& sphere, const Response& response, int grade)
    : ChanceField(std::move(chance_fields(box, {{sphere, response, grade}}).front())) {}

FieldPlace place_on(const FieldLattice& lattice, const Hansen& point) {
  return place_at(lattice, scaled(point));
}

double ChanceField::at(const FieldPlace& place) const {
  return std::clamp(value_at(lattice_, values_, place), 0.0, 1.0);
}

}  // namespace gentlest
