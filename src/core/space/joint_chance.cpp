#include "core/space/joint_chance.hpp"

#include "core/space/lattice.hpp"
#include "core/space/quadrature.hpp"
#include "core/space/sphere_matrix.hpp"

#include <Eigen/Eigenvalues>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

namespace gentlest {

namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

constexpr double reach_in_sd = 4.5;  // beyond this a Gaussian holds 7e-6

struct Node {
  double offset;
  double weight;  // adds up to 1
};

void normalise(std::vector<Node>& nodes) {
  double mass = 0;
  for (const Node& node : nodes) mass += node.weight;
  for (Node& node : nodes) node.weight /= mass;
}

// Off the mean radius. Evenly spaced nodes, by which the error for smooth curves falls faster than any power of the
// step; panels of Gauss and Legendre where the radius is known so badly that the Gaussian is cut off at 0.
std::vector<Node> radius_nodes(double R0, double sd, double width) {
  if (sd <= 0) return {{0, 1}};
  const double scale = 1 / std::hypot(1 / sd, 1 / width);
  std::vector<Node> nodes;
  const auto add = [&](double offset, double share) {
    const double z = offset / sd;
    nodes.push_back({offset, share * std::exp(-z * z / 2)});
  };
  if (R0 > reach_in_sd * sd) {
    const int count = std::min(static_cast<int>(std::ceil(reach_in_sd * sd / (1.3 * scale))), 100);
    for (int i = -count; i <= count; ++i) add(reach_in_sd * sd * i / count, 1);
  } else {
    constexpr std::size_t per_panel = 16;
    const GaussLegendre<per_panel>& rule = gauss_legendre<per_panel>();
    const double highest = R0 + reach_in_sd * sd;
    const int panels = std::clamp(static_cast<int>(std::ceil(highest * 1.6 / (per_panel * 1.2 * scale))), 1, 8);
    const double half = highest / (2 * panels);
    for (int panel = 0; panel < panels; ++panel)
      for (std::size_t i = 0; i < per_panel; ++i) add(half * (2 * panel + 1 + rule.node[i]) - R0, rule.weight[i]);
  }
  normalise(nodes);
  std::erase_if(nodes, [](const Node& node) { return node.weight < 1e-9; });
  return nodes;
}

// ln of the reach factor on a lattice: each place is a product of three Gaussians. Too little to count is 0.
std::vector<double> ln_factors(const LocalReach& reach, const FieldLattice& lattice) {
  constexpr double too_little = 2e-6;
  std::vector<double> sums(lattice.nodes[0] * lattice.nodes[1] * lattice.nodes[2], 0.0);
  for (const LocalReach::Place& place : reach.places) {
    const std::array<double, 3> at = scaled(place.at);
    std::array<std::vector<double>, 3> along;
    for (std::size_t axis = 0; axis < 3; ++axis)
      for (std::size_t i = 0; i < lattice.nodes[axis]; ++i) {
        const double off =
            (lattice.origin[axis] + static_cast<double>(i) * lattice.step[axis] - at[axis]) / reach.length;
        along[axis].push_back(std::exp(-off * off / 2));
      }
    double* sum = sums.data();
    for (const double D : along[0])
      for (const double P : along[1]) {
        const double weight = place.weight * D * P;
        for (const double H : along[2]) *sum++ += weight * H;
      }
  }
  for (double& sum : sums)
    if (std::abs(sum) < too_little) sum = 0;
  return sums;
}

// Runs over the nodes of a lattice: one(number of the node, its coordinates).
template <class One>
void for_each_node(const FieldLattice& lattice, const One& one) {
  const auto coordinate = [&](std::size_t axis, std::size_t i) {
    return lattice.origin[axis] + static_cast<double>(i) * lattice.step[axis];
  };
  std::size_t node = 0;
  for (std::size_t i = 0; i < lattice.nodes[0]; ++i)
    for (std::size_t j = 0; j < lattice.nodes[1]; ++j)
      for (std::size_t k = 0; k < lattice.nodes[2]; ++k)
        one(node++, std::array<double, 3>{coordinate(0, i), coordinate(1, j), coordinate(2, k)});
}

// The levels of s around a value and their weights, cubic; a value on a level needs that one alone.
struct LevelWeights {
  int first;
  std::array<double, 4> weight;
};
LevelWeights levels_around(double in_steps) {
  const double whole = std::floor(in_steps);
  const double t = in_steps - whole;
  return {static_cast<int>(whole) - 1,
          {t * (1 - t) * (t - 2) / 6, (1 - t * t) * (2 - t) / 2, t * (1 + t) * (2 - t) / 2, t * (t * t - 1) / 6}};
}

}  // namespace

bool is_joint(const FieldSubject& subject) {
  return !(subject.sphere.shared == SphereCovariance{}) || !subject.reach.places.empty();
}

CurveOfRED::CurveOfRED(const Response& response, int grade) {
  const auto chance = [&](double RED) { return chance_at_most(response, grade, RED); };
  for (int i = 0; i <= near_nodes; ++i) near_.push_back(chance(far_from * i / near_nodes));
  far_.push_back(0);
  for (int i = 1; i <= far_nodes; ++i) far_.push_back(chance(far_from * far_nodes / i));
  far_.front() = far_[1];
  double steepest = 0;
  for (std::size_t i = 1; i < near_.size(); ++i)
    steepest = std::max(steepest, (near_[i - 1] - near_[i]) * near_nodes / far_from);
  if (steepest > 0) width_ = 1 / (steepest * std::sqrt(2 * std::numbers::pi));
}

JointChance::JointChance(const HansenBox& box, const FieldSubject& subject)
    : subject_(subject), curve_(subject.response, subject.grade) {
  assert(is_possible(subject.sphere));
  const UncertainSphere& sphere = subject.sphere;
  const SphereMatrix all = covariance_of(sphere);
  for (Eigen::Index i = 0; i < 3; ++i) {
    const auto row = static_cast<std::size_t>(i);
    if (all[3][3] > 0) shift_[i] = all[row][3] / all[3][3];
    for (Eigen::Index j = 0; j < 3; ++j) rest_(i, j) = all[row][static_cast<std::size_t>(j)];
  }
  rest_ -= shift_ * shift_.transpose() * all[3][3];
  const Eigen::SelfAdjointEigenSolver<Matrix3d> solver(rest_);
  axes_ = solver.eigenvectors();
  const Vector3d sds = solver.eigenvalues().cwiseMax(0).cwiseSqrt();
  sd_ = {sds[0], sds[1], sds[2]};
  for (const LocalReach::Place& place : subject.reach.places) {
    const double factor = reach_factor(subject.reach, place.at);
    shortest_ = std::min(shortest_, factor);
    strongest_bend_ = std::max(strongest_bend_, std::abs(std::log(factor)));
  }
  for (std::size_t i = 0; i < 3; ++i) largest_step_ = std::max(largest_step_, scaled(box.high)[i] - scaled(box.low)[i]);
  if (curve_.width() <= 0) return;
  // It counts as far as the centre does not follow it.
  by_radius_ = std::max(0.0, 1 - shift_.norm()) * sphere.R0_sd;
  const std::array<double, 3> middle = scaled(sphere.mean.centre);
  const double low_R = std::max(sphere.mean.R0 - sphere.R0_sd, 0.4 * sphere.mean.R0) * shortest_;
  const double width_in_R = std::hypot(curve_.width() * low_R, sd_[0]) / (1 + shift_.norm());
  for (const Node& radius : radius_nodes(sphere.mean.R0, sphere.R0_sd, width_in_R)) {
    const Vector3d centre = Vector3d(middle[0], middle[1], middle[2]) + shift_ * radius.offset;
    rings_.push_back({1 / (sphere.mean.R0 + radius.offset), turned({centre[0], centre[1], centre[2]}), radius.weight});
  }
}

// Standard deviation of the curve's step over the distance, MPa^0.5, where the radius acts so much larger.
double JointChance::width_at(double factor) const {
  return std::hypot(curve_.width() * subject_.sphere.mean.R0 * factor, by_radius_);
}

std::array<double, 3> JointChance::turned(const std::array<double, 3>& scaled_point) const {
  const Vector3d at = axes_.transpose() * Vector3d(scaled_point[0], scaled_point[1], scaled_point[2]);
  return {at[0], at[1], at[2]};
}

// A fifth of the blur keeps the cubic within 1e-4. A bend must be followed itself, and so must the step that it makes
// where it is steepest: 0.61 of its height over a length.
std::array<double, 3> JointChance::needed_step() const {
  std::array<double, 3> step;
  step.fill(largest_step_);
  if (curve_.width() <= 0) return step;
  const double width = width_at(shortest_);
  const Matrix3d inverse = (rest_ + width * width * Matrix3d::Identity()).inverse();
  for (Eigen::Index i = 0; i < 3; ++i) step[static_cast<std::size_t>(i)] = 0.2 / std::sqrt(inverse(i, i));
  if (subject_.reach.places.empty()) return step;
  const double relative = std::hypot(width_at(1), sd_[0]) / subject_.sphere.mean.R0;
  const double along_bend = std::clamp(0.22 * relative / (0.61 * std::max(strongest_bend_, 1e-9)), 0.09, 0.15);
  for (double& one : step) one = std::min(one, along_bend * subject_.reach.length);
  return step;
}

// A lattice in the turned space, read by six nodes along each axis: coarser than the search's, for the same error.
struct JointChance::Turned {
  FieldLattice lattice;
  std::vector<double> values;
  double value(const std::array<double, 3>& at) const;
};

namespace {

constexpr std::size_t points = 6;

// Lagrange's weights for nodes -2 ... 3 at t in [0, 1]: each is the product of the distances to the other nodes, over
// what that product is at its own.
std::array<double, points> six_weights(double t) {
  const double a = t + 2, b = t + 1, c = t, d = t - 1, e = t - 2, f = t - 3;
  const double ab = a * b, cd = c * d, ef = e * f;
  return {b * cd * ef / -120, a * cd * ef / 24,  ab * d * ef / -12,
          ab * c * ef / 12,   ab * cd * f / -24, ab * cd * e / 120};
}

// A spread too narrow for the lattice keeps its variance and its fourth moment on five nodes.
std::vector<double> short_kernel(double sd, double step) {
  const double in_steps = sd / step;
  if (in_steps <= 0) return {1};
  const double square = in_steps * in_steps;
  if (in_steps < 0.8) {
    const double second = (3 * square * square - square) / 24;
    const double first = square / 2 - 4 * second;
    return {second, first, 1 - 2 * (first + second), first, second};
  }
  const int reach = static_cast<int>(std::ceil(reach_in_sd * in_steps));
  std::vector<double> weights;
  double mass = 0;
  for (int i = -reach; i <= reach; ++i) {
    weights.push_back(std::exp(-i * i / (2 * square)));
    mass += weights.back();
  }
  for (double& weight : weights) weight /= mass;
  return weights;
}

}  // namespace

double JointChance::Turned::value(const std::array<double, 3>& at) const {
  std::array<std::size_t, 3> first{};
  std::array<std::array<double, points>, 3> weight{};
  for (std::size_t i = 0; i < 3; ++i) {
    const double position = std::clamp((at[i] - lattice.origin[i]) * lattice.inverse_step[i], 2.0,
                                       static_cast<double>(lattice.nodes[i]) - 4);
    first[i] = static_cast<std::size_t>(position) - 2;
    weight[i] = six_weights(position - static_cast<double>(first[i] + 2));
  }
  double sum = 0;
  for (std::size_t i = 0; i < points; ++i) {
    double plane = 0;
    for (std::size_t j = 0; j < points; ++j) {
      const double* row = &values[((first[0] + i) * lattice.nodes[1] + first[1] + j) * lattice.nodes[2] + first[2]];
      double line = 0;
      for (std::size_t k = 0; k < points; ++k) line += weight[2][k] * row[k];
      plane += weight[1][j] * line;
    }
    sum += weight[0][i] * plane;
  }
  return sum;
}

// F(y, s) over a box of the turned space. So sharp a curve that the table would grow without bound is sampled more
// coarsely.
JointChance::Turned JointChance::tabulate_turned(const std::array<double, 3>& low, const std::array<double, 3>& high,
                                                 double ln_factor) const {
  constexpr double most_numbers = 1e6;
  constexpr double longest_kernel = 30;  // standard deviations in steps
  const double width = width_at(std::exp(ln_factor));
  std::array<double, 3> step;
  for (std::size_t i = 0; i < 3; ++i)
    step[i] = std::max(std::min(0.33 * std::hypot(sd_[i], width), 0.5 * width), sd_[i] / longest_kernel);
  const auto numbers = [&] {
    double product = 1;
    for (std::size_t i = 0; i < 3; ++i) product *= (high[i] - low[i] + 2 * reach_in_sd * sd_[i]) / step[i] + 7;
    return product;
  };
  while (numbers() > most_numbers)
    for (double& one : step) one *= 1.05;
  Turned table;
  std::array<Smoothing, 3> axes;
  std::array<double, 3> first{};
  for (std::size_t i = 0; i < 3; ++i) {
    table.lattice.step[i] = step[i];
    table.lattice.inverse_step[i] = 1 / step[i];
    table.lattice.origin[i] = low[i] - 2 * step[i];
    table.lattice.nodes[i] = static_cast<std::size_t>(std::ceil((high[i] - low[i]) / step[i])) + points;
    axes[i].kernel = short_kernel(sd_[i], step[i]);
    axes[i].nodes = table.lattice.nodes[i];
    axes[i].source = axes[i].nodes + axes[i].kernel.size() - 1;
    const std::size_t half = axes[i].kernel.size() / 2;
    first[i] = table.lattice.origin[i] - static_cast<double>(half) * step[i];
  }
  const double inverse_factor = std::exp(-ln_factor);
  table.values = smoothed(table.lattice, axes, first, [&](double a, double b, double c, std::vector<double>& row) {
    std::fill(row.begin(), row.end(), 0.0);
    for (const Ring& ring : rings_) {
      const double x = a - ring.centre[0], y = b - ring.centre[1];
      const double off_axis = x * x + y * y;
      const double inverse_reach = ring.inverse_R * inverse_factor;
      for (std::size_t k = 0; k < row.size(); ++k) {
        const double z = c + static_cast<double>(k) * step[2] - ring.centre[2];
        row[k] += ring.weight * curve_(std::sqrt(off_axis + z * z) * inverse_reach);
      }
    }
  });
  return table;
}

std::vector<double> JointChance::tabulate(const FieldLattice& lattice) const {
  const std::vector<double> ln_factor = ln_factors(subject_.reach, lattice);
  std::vector<double> values(ln_factor.size(), 0.0);
  if (curve_.width() <= 0) {
    std::fill(values.begin(), values.end(), curve_(1));
    return values;
  }
  const auto [least, most] = std::minmax_element(ln_factor.begin(), ln_factor.end());
  const double level_step =
      0.2 * std::hypot(curve_.width(), std::hypot(by_radius_, sd_[0]) / (subject_.sphere.mean.R0 * std::exp(*most)));
  const int lowest = levels_around(*least / level_step).first;
  const int highest = levels_around(*most / level_step).first + 3;
  struct Box {
    std::array<double, 3> low, high;
    bool is_empty = true;
  };
  std::vector<Box> boxes(static_cast<std::size_t>(highest - lowest) + 1);
  for_each_node(lattice, [&](std::size_t node, const std::array<double, 3>& point) {
    const std::array<double, 3> at = turned(point);
    const LevelWeights levels = levels_around(ln_factor[node] / level_step);
    for (std::size_t i = 0; i < 4; ++i) {
      if (levels.weight[i] == 0) continue;
      Box& box = boxes[static_cast<std::size_t>(levels.first - lowest) + i];
      for (std::size_t axis = 0; axis < 3; ++axis) {
        box.low[axis] = box.is_empty ? at[axis] : std::min(box.low[axis], at[axis]);
        box.high[axis] = box.is_empty ? at[axis] : std::max(box.high[axis], at[axis]);
      }
      box.is_empty = false;
    }
  });
  for (int level = lowest; level <= highest; ++level) {
    const Box& box = boxes[static_cast<std::size_t>(level - lowest)];
    if (box.is_empty) continue;
    const Turned table = tabulate_turned(box.low, box.high, level * level_step);
    for_each_node(lattice, [&](std::size_t node, const std::array<double, 3>& point) {
      const LevelWeights levels = levels_around(ln_factor[node] / level_step);
      const int place = level - levels.first;
      if (place < 0 || place > 3 || levels.weight[static_cast<std::size_t>(place)] == 0) return;
      values[node] += levels.weight[static_cast<std::size_t>(place)] * table.value(turned(point));
    });
  }
  return values;
}

}  // namespace gentlest
