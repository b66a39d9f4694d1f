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

}  // namespace gentlest::test
