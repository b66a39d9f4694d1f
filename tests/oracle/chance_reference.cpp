// Slow and plain: what the program tabulates, computed point by point.
#include "oracle/chance_reference.hpp"

#include "core/space/quadrature.hpp"
#include "core/space/radial_response.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace gentlest::test {

namespace {

constexpr double reach_in_sd = 9;

double normal_density(double z) {
  return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
}

// P(low < Z < high) without cancellation in the tails.
double normal_between(double low, double high) {
  if (low > 0) return normal_between(-high, -low);
  return 0.5 * (std::erfc(-high / std::numbers::sqrt2) - std::erfc(-low / std::numbers::sqrt2));
}

// One coordinate of the scaled space: where the centre lies as seen from the liquid, and how surely.
struct Axis {
  double offset;
  double sd;
};

// Places along `axis` where the integrand changes character: by its own Gaussian, and where the ball's cut through the
// remaining coordinates passes over their Gaussian. Panels between neighbours are smooth.
std::vector<double> panel_edges(const Axis& axis, const std::vector<Axis>& rest, double ball) {
  const double low = std::max(-ball, axis.offset - reach_in_sd * axis.sd);
  const double high = std::min(ball, axis.offset + reach_in_sd * axis.sd);
  std::vector<double> edges;
  if (low >= high) return edges;
  edges = {low, high};
  double rest_offset = 0;
  double rest_sd = 0;
  for (const Axis& other : rest) {
    rest_offset = std::hypot(rest_offset, other.offset);
    rest_sd = std::max(rest_sd, other.sd);
  }
  constexpr int steps = 5;
  for (int step = -steps; step <= steps; ++step) {
    const double part = step * reach_in_sd / steps;
    edges.push_back(axis.offset + part * axis.sd);
    const double cut = rest_offset + part * rest_sd;
    if (cut <= 0 || cut >= ball) continue;
    const double place = std::sqrt((ball - cut) * (ball + cut));
    edges.push_back(place);
    edges.push_back(-place);
  }
  std::erase_if(edges, [&](double edge) { return edge < low || edge > high; });
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  return edges;
}

// Chance that the centre lies within `ball` of the liquid, over the axes that remain; the last axis has the largest
// spread and is done in closed form. In the angle theta with y = ball sin(theta) the integrand is smooth up to the rim.
double chance_in_ball(const std::vector<Axis>& axes, double ball) {
  const Axis& axis = axes.front();
  if (axes.size() == 1) {
    if (axis.sd <= 0) return std::abs(axis.offset) < ball ? 1 : 0;
    return normal_between((-ball - axis.offset) / axis.sd, (ball - axis.offset) / axis.sd);
  }
  const std::vector<Axis> rest(axes.begin() + 1, axes.end());
  if (axis.sd <= 0) {
    if (std::abs(axis.offset) >= ball) return 0;
    return chance_in_ball(rest, std::sqrt((ball - axis.offset) * (ball + axis.offset)));
  }
  const std::vector<double> edges = panel_edges(axis, rest, ball);
  double sum = 0;
  for (std::size_t i = 1; i < edges.size(); ++i) {
    const double from = std::asin(std::clamp(edges[i - 1] / ball, -1.0, 1.0));
    const double to = std::asin(std::clamp(edges[i] / ball, -1.0, 1.0));
    sum += integrate<16>(from, to, [&](double theta) {
      const double shrunk = ball * std::cos(theta);
      const double z = (ball * std::sin(theta) - axis.offset) / axis.sd;
      return normal_density(z) / axis.sd * shrunk * chance_in_ball(rest, shrunk);
    });
  }
  return sum;
}

// Offsets and spreads of the three coordinates in the scaled space.
std::array<Axis, 3> scaled_axes(const Hansen& liquid, const Hansen& centre, const Hansen& sd) {
  const std::array<double, 3> from = scaled(liquid);
  const std::array<double, 3> to = scaled(centre);
  const std::array<double, 3> spread = scaled(sd);
  return {Axis{to[0] - from[0], spread[0]}, Axis{to[1] - from[1], spread[1]}, Axis{to[2] - from[2], spread[2]}};
}

}  // namespace

double chance_nearer_than(const Hansen& liquid, const Hansen& centre, const Hansen& sd, double radius) {
  if (radius <= 0) return 0;
  const std::array<Axis, 3> all = scaled_axes(liquid, centre, sd);
  std::vector<Axis> axes(all.begin(), all.end());
  std::stable_sort(axes.begin(), axes.end(), [](const Axis& a, const Axis& b) { return a.sd < b.sd; });
  return std::clamp(chance_in_ball(axes, radius), 0.0, 1.0);
}

namespace {

// Trapezoidal rule over one Gaussian coordinate: for smooth integrands its error falls faster than any power.
struct NormalRule {
  std::vector<double> place;
  std::vector<double> weight;
};

NormalRule normal_rule(const Axis& axis, double longest_step) {
  if (axis.sd <= 0) return {{axis.offset}, {1}};
  const double step = std::min(longest_step, 0.4 * axis.sd);
  const int reach = static_cast<int>(std::ceil(7.5 * axis.sd / step));
  NormalRule rule;
  double mass = 0;
  for (int i = -reach; i <= reach; ++i) {
    rule.place.push_back(axis.offset + i * step);
    rule.weight.push_back(normal_density(i * step / axis.sd));
    mass += rule.weight.back();
  }
  for (double& weight : rule.weight) weight /= mass;
  return rule;
}

double farthest_distance(const std::array<Axis, 3>& axes) {
  double sum = 0;
  for (const Axis& axis : axes) sum = std::hypot(sum, std::abs(axis.offset) + reach_in_sd * axis.sd);
  return sum;
}

}  // namespace

double chance_of_grade(const Hansen& liquid, const UncertainSphere& sphere, const Response& response, int grade) {
  const std::array<Axis, 3> axes = scaled_axes(liquid, sphere.mean.centre, sphere.sd);
  const RadialResponse radial(sphere, response, grade, farthest_distance(axes), sphere.mean.R0 / 800);
  const double longest_step = 0.45 * radial.width();
  const NormalRule D = normal_rule(axes[0], longest_step);
  const NormalRule P = normal_rule(axes[1], longest_step);
  const NormalRule H = normal_rule(axes[2], longest_step);
  double chance = 0;
  for (std::size_t i = 0; i < D.place.size(); ++i)
    for (std::size_t j = 0; j < P.place.size(); ++j) {
      const double weight = D.weight[i] * P.weight[j];
      if (weight < 1e-14) continue;
      const double square = D.place[i] * D.place[i] + P.place[j] * P.place[j];
      double row = 0;
      for (std::size_t k = 0; k < H.place.size(); ++k)
        row += H.weight[k] * radial(std::sqrt(square + H.place[k] * H.place[k]));
      chance += weight * row;
    }
  return std::clamp(chance, 0.0, 1.0);
}

namespace {

// Fine enough that a straight line between two nodes is right to 1e-7 for slopes up to 12.
class TableOfRED {
 public:
  TableOfRED(const Response& response, int grade) {
    for (int i = 0; i <= nodes; ++i)
      values_.push_back(chance_at_most(response, grade, std::exp(lowest + i * (highest - lowest) / nodes)));
  }
  double operator()(double square_of_RED) const {
    if (square_of_RED <= 0) return values_.front();
    const double position =
        std::clamp((0.5 * std::log(square_of_RED) - lowest) / (highest - lowest) * nodes, 0.0, nodes - 1e-9);
    const auto node = static_cast<std::size_t>(position);
    return values_[node] + (position - static_cast<double>(node)) * (values_[node + 1] - values_[node]);
  }

 private:
  static constexpr int nodes = 60000;
  static constexpr double lowest = -7, highest = 8;
  std::vector<double> values_;
};

}  // namespace

double chance_by_sums(const Hansen& liquid, const FieldSubject& subject) {
  const UncertainSphere& sphere = subject.sphere;
  const TableOfRED chance(subject.response, subject.grade);
  const std::array<double, 3> from = scaled(liquid), middle = scaled(sphere.mean.centre), sd = scaled(sphere.sd);
  const SphereCovariance& shared = sphere.shared;
  // By R0, dH, dP, 2 dD in turn: each figure by those before it and a deviation of its own.
  const auto safe = [](double square) { return std::sqrt(std::max(square, 0.0)); };
  const double R = sphere.R0_sd;
  const double H_R = R > 0 ? shared.dH_R0 / R : 0;
  const double H = safe(sd[2] * sd[2] - H_R * H_R);
  const double P_R = R > 0 ? shared.dP_R0 / R : 0;
  const double P_H = H > 0 ? (shared.dP_dH - P_R * H_R) / H : 0;
  const double P = safe(sd[1] * sd[1] - P_R * P_R - P_H * P_H);
  const double D_R = R > 0 ? 2 * shared.dD_R0 / R : 0;
  const double D_H = H > 0 ? (2 * shared.dD_dH - D_R * H_R) / H : 0;
  const double D_P = P > 0 ? (2 * shared.dD_dP - D_R * P_R - D_H * P_H) / P : 0;
  const double D = safe(sd[0] * sd[0] - D_R * D_R - D_H * D_H - D_P * D_P);
  const double longer = reach_factor(subject.reach, liquid);
  const NormalRule unit = normal_rule({0, 1}, 0.45);
  const double first = R > 0 ? std::max(-7.0, -sphere.mean.R0 / R) : 0;
  double sum = 0, mass = 0;
  const auto add_radius = [&](double z, double weight) {
    const double radius = (sphere.mean.R0 + z * R) * longer;
    mass += weight;
    const auto over = [&](double deviation, auto&& one) {
      for (std::size_t i = 0; i < unit.place.size(); ++i) {
        if (deviation <= 0 && i > 0) return;
        if (deviation <= 0)
          one(0.0, 1.0);
        else if (unit.weight[i] > 1e-9)
          one(unit.place[i], unit.weight[i]);
      }
    };
    over(H, [&](double h, double by_h) {
      const double dH = middle[2] + H_R * z + H * h - from[2];
      over(P, [&](double p, double by_p) {
        if (by_h * by_p < 1e-10) return;
        const double dP = middle[1] + P_R * z + P_H * h + P * p - from[1];
        double row = 0;
        over(D, [&](double d, double by_d) {
          const double dD = middle[0] + D_R * z + D_H * h + D_P * p + D * d - from[0];
          row += by_d * chance((dD * dD + dP * dP + dH * dH) / (radius * radius));
        });
        sum += weight * by_h * by_p * row;
      });
    });
  };
  if (R <= 0) {
    add_radius(0, 1);
  } else {
    const GaussLegendre<8>& rule = gauss_legendre<8>();
    constexpr int panels = 4;
    const double half = (7 - first) / (2 * panels);
    for (int panel = 0; panel < panels; ++panel)
      for (std::size_t i = 0; i < 8; ++i) {
        const double z = first + half * (2 * panel + 1 + rule.node[i]);
        const double weight = half * rule.weight[i] * normal_density(z);
        if (weight > 1e-10) add_radius(z, weight);
      }
  }
  return sum / mass;
}

}  // namespace gentlest::test
