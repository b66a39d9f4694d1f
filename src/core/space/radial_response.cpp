#include "core/space/radial_response.hpp"

#include "core/space/quadrature.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace gentlest {

namespace {

constexpr double whole_reach_in_sd = 9;  // beyond this a Gaussian holds less than 1e-18

struct WeightedRadius {
  double radius;
  double weight;  // adds up to 1
};

// Equally good for a radius known exactly (one node) and for one known hardly at all (truncated at 0).
std::vector<WeightedRadius> radius_rule(double mean, double sd) {
  if (sd <= 0) return {{mean, 1}};
  constexpr std::size_t nodes = 8;
  constexpr int panels = 12;
  const GaussLegendre<nodes>& rule = gauss_legendre<nodes>();
  const double low = std::max(0.0, mean - whole_reach_in_sd * sd);
  const double half = (mean + whole_reach_in_sd * sd - low) / (2 * panels);
  std::vector<WeightedRadius> radii;
  double mass = 0;
  for (int panel = 0; panel < panels; ++panel) {
    const double middle = low + half * (2 * panel + 1);
    for (std::size_t i = 0; i < nodes; ++i) {
      const double radius = middle + half * rule.node[i];
      const double z = (radius - mean) / sd;
      const double weight = rule.weight[i] * std::exp(-z * z / 2);
      radii.push_back({radius, weight});
      mass += weight;
    }
  }
  for (WeightedRadius& node : radii) node.weight /= mass;
  std::erase_if(radii, [](const WeightedRadius& node) { return node.weight < 1e-17; });
  return radii;
}

}  // namespace

RadialResponse::RadialResponse(const UncertainSphere& sphere, const Response& response, int grade, double farthest,
                               double spacing)
    : inverse_spacing_(1 / spacing) {
  const std::vector<WeightedRadius> radii = radius_rule(sphere.mean.R0, sphere.R0_sd);
  const auto count = static_cast<std::size_t>(std::ceil(farthest * inverse_spacing_)) + 4;
  values_.resize(count);
  for (std::size_t i = 1; i < count; ++i) {
    const double distance = static_cast<double>(i - 1) * spacing;
    double sum = 0;
    for (const WeightedRadius& node : radii)
      sum += node.weight * chance_at_most(response, grade, distance / node.radius);
    values_[i] = sum;
  }
  values_[0] = values_[2];  // even in the distance
  double steepest = 0;
  for (std::size_t i = 2; i < count; ++i)
    steepest = std::max(steepest, (values_[i - 1] - values_[i]) * inverse_spacing_);
  width_ = steepest > 0 ? 1 / (steepest * std::sqrt(2 * std::numbers::pi)) : farthest;
}

// A shell of radius rho around the sphere's middle weighs, seen from a distance r through a Gaussian of sd b,
// rho / (r b sqrt(2 pi)) (exp(-(rho - r)^2 / 2 b^2) - exp(-(rho + r)^2 / 2 b^2)); the weights are made to add up to 1.
RadialResponse RadialResponse::blurred(double blur) const {
  assert(blur > 0);
  constexpr double reach = 7;
  const double step = std::min(blur / 16, width_ / 3);
  const double spacing = blur / 25;
  const double farthest = static_cast<double>(values_.size() - 4) / inverse_spacing_;
  RadialResponse out;
  out.inverse_spacing_ = 1 / spacing;
  out.values_.resize(static_cast<std::size_t>(std::ceil(farthest / spacing)) + 4);
  for (std::size_t i = 1; i < out.values_.size(); ++i) {
    const double r = std::max(static_cast<double>(i - 1) * spacing, blur / 1000);
    const double first = std::max(std::ceil((r - reach * blur) / step), 1.0);
    double sum = 0, mass = 0;
    for (double rho = first * step; rho <= r + reach * blur; rho += step) {
      const double near = (rho - r) / blur;
      const double weight = rho * std::exp(-near * near / 2) * -std::expm1(-2 * rho * r / (blur * blur));
      sum += weight * (*this)(rho);
      mass += weight;
    }
    out.values_[i] = sum / mass;
  }
  out.values_[0] = out.values_[2];
  // A small ball is low once blurred, so its slope says nothing of how fine it is.
  out.width_ = std::hypot(width_, blur);
  return out;
}

double RadialResponse::operator()(double distance) const {
  const double position = distance * inverse_spacing_;
  const auto cell = static_cast<std::size_t>(position);
  if (cell + 3 >= values_.size()) return values_.back();
  const double t = position - static_cast<double>(cell);
  const double* v = &values_[cell];  // nodes -1, 0, 1, 2 around the point
  return v[0] * (t * (1 - t) * (t - 2) / 6) + v[1] * ((1 - t * t) * (2 - t) / 2) + v[2] * (t * (1 + t) * (2 - t) / 2) +
         v[3] * (t * (t * t - 1) / 6);
}

}  // namespace gentlest
