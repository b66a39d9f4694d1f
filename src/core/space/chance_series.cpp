// The distribution of a weighted sum of three noncentral chi-squares as a mixture of central ones (Ruben 1962).
#include "gentlest/space/chance.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace gentlest {

namespace {

// sum of weight_j * (Z_j + shift_j)^2 over three standard normals.
struct QuadraticForm {
  std::array<double, 3> weight{};
  std::array<double, 3> shift_squared{};
};

// Chi-square distribution functions for 3, 5, 7, ... degrees of freedom, each from the one before.
class ChiSquares {
 public:
  explicit ChiSquares(double y)
      : y_(y),
        density_(std::sqrt(y / (2 * std::numbers::pi)) * std::exp(-y / 2)),
        below_(std::erf(std::sqrt(y / 2)) - 2 * density_) {}
  double below() const { return below_; }
  void next() {
    density_ *= y_ / freedom_;
    freedom_ += 2;
    below_ = std::max(below_ - 2 * density_, 0.0);
  }

 private:
  double y_;
  double density_;  // of freedom_ degrees, with which two more degrees are reached
  double freedom_ = 3;
  double below_;
};

std::optional<BoundedChance> ruben_series(const QuadraticForm& form, double limit) {
  constexpr std::size_t most_terms = 400;
  constexpr double good_enough = 2e-9;
  constexpr double rounding = 1e-12;
  const double beta = 0.95 * *std::min_element(form.weight.begin(), form.weight.end());
  std::array<double, 3> power{};
  std::array<double, 3> gamma{};
  double log_first = 0;
  for (std::size_t j = 0; j < 3; ++j) {
    gamma[j] = 1 - beta / form.weight[j];
    power[j] = 1;
    log_first += 0.5 * std::log(beta / form.weight[j]) - 0.5 * form.shift_squared[j];
  }
  if (log_first < -650 || limit / beta > 1300) return {};  // too small for a double
  ChiSquares chi(limit / beta);
  std::vector<double> a = {std::exp(log_first)};
  std::vector<double> g;
  double mass = a[0];
  double sum = a[0] * chi.below();
  for (std::size_t k = 1; k < most_terms; ++k) {
    chi.next();
    double term = 0;
    for (std::size_t j = 0; j < 3; ++j) {
      term += static_cast<double>(k) * form.shift_squared[j] * beta / form.weight[j] * power[j];
      power[j] *= gamma[j];
      term += power[j];
    }
    g.push_back(term);
    double next = 0;
    for (std::size_t r = 0; r < k; ++r) next += g[k - 1 - r] * a[r];
    a.push_back(next / (2 * static_cast<double>(k)));
    mass += a.back();
    sum += a.back() * chi.below();
    // All terms are positive and add up to 1; later ones weigh at most as much as this one.
    const double rest = std::max(1 - mass, 0.0) * chi.below();
    if (rest < good_enough) return BoundedChance{std::clamp(sum + rest / 2, 0.0, 1.0), rest / 2 + rounding};
  }
  return {};
}

}  // namespace

BoundedChance quick_chance_nearer_than(const Hansen& liquid, const Hansen& centre, const Hansen& sd, double radius) {
  constexpr double quadrature_error = 1e-10;
  if (radius <= 0) return {0, 0};
  const std::array<double, 3> from = scaled(liquid);
  const std::array<double, 3> to = scaled(centre);
  const std::array<double, 3> spread = scaled(sd);
  if (*std::min_element(spread.begin(), spread.end()) > 0) {
    QuadraticForm form;
    for (std::size_t j = 0; j < 3; ++j) {
      form.weight[j] = spread[j] * spread[j];
      form.shift_squared[j] = (to[j] - from[j]) * (to[j] - from[j]) / form.weight[j];
    }
    if (const auto found = ruben_series(form, radius * radius)) return *found;
  }
  return {chance_nearer_than(liquid, centre, sd, radius), quadrature_error};
}

}  // namespace gentlest
