// Gauss-Legendre rules, shared by the chance functions. Internal to core.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace gentlest {

template <std::size_t N>
struct GaussLegendre {
  std::array<double, N> node{};    // in (-1, 1)
  std::array<double, N> weight{};  // adds up to 2
};

/// Nodes by Newton's method on the Legendre polynomial; exact to the last bits for the small N used here.
template <std::size_t N>
GaussLegendre<N> make_gauss_legendre() {
  GaussLegendre<N> rule;
  constexpr double n = static_cast<double>(N);
  for (std::size_t i = 0; i < N; ++i) {
    double x = std::cos(std::numbers::pi * (static_cast<double>(i) + 0.75) / (n + 0.5));
    double slope = 1;
    for (int round = 0; round < 100; ++round) {
      double previous = 1;
      double value = x;
      for (std::size_t k = 2; k <= N; ++k) {
        const double degree = static_cast<double>(k);
        const double next = ((2 * degree - 1) * x * value - (degree - 1) * previous) / degree;
        previous = value;
        value = next;
      }
      slope = n * (x * value - previous) / (x * x - 1);
      const double step = value / slope;
      x -= step;
      if (std::abs(step) < 1e-15) break;
    }
    rule.node[i] = x;
    rule.weight[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return rule;
}

template <std::size_t N>
const GaussLegendre<N>& gauss_legendre() {
  static const GaussLegendre<N> rule = make_gauss_legendre<N>();
  return rule;
}

/// Integral of f over [low, high] by one rule of N nodes.
template <std::size_t N, class F>
double integrate(double low, double high, F&& f) {
  const GaussLegendre<N>& rule = gauss_legendre<N>();
  const double half = (high - low) / 2;
  const double middle = (high + low) / 2;
  double sum = 0;
  for (std::size_t i = 0; i < N; ++i) sum += rule.weight[i] * f(middle + half * rule.node[i]);
  return sum * half;
}

}  // namespace gentlest
