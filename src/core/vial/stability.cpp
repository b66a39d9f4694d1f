// The arithmetic of parting: is one liquid stable?
#include "gentlest/vial/miscibility.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace gentlest {

namespace {

using Vector = std::vector<double>;

// Parting must gain more than the last bits of the sums.
constexpr double gain_that_counts = 1e-9;

Vector normalised(Vector amounts) {
  const double sum = std::accumulate(amounts.begin(), amounts.end(), 0.0);
  for (double& amount : amounts) amount /= sum;
  return amounts;
}

double dot(const Vector& a, const Vector& b) {
  return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

// How far the last step may be stretched: successive steps shrink by one factor, whose sum to the end is known. Source:
// Orbach and Crowe 1971, Can. J. Chem. Eng. 49, 509 (dominant eigenvalue; from memory).
double stretch_of(const Vector& step, const Vector& before) {
  const double length = dot(before, before);
  const double factor = length > 0 ? dot(step, before) / length : 0;
  return factor > 0 && factor < 0.99 ? 1 / (1 - factor) : 1;
}

// Does a way from this start reach a liquid below the tangent plane? Amounts W follow ln W = d - ln gamma(w).
bool reaches_gain(const Activity& activity, const Vector& d, Vector w) {
  constexpr int most_rounds = 400;
  constexpr int rounds_to_a_stretch = 5;
  const std::size_t count = w.size();
  Vector ln_amounts(count);
  std::transform(w.begin(), w.end(), ln_amounts.begin(), [](double one) { return std::log(one); });
  Vector step(count);
  Vector before(count, 0);
  for (int round = 1; round <= most_rounds; ++round) {
    const Vector ln_gamma = activity.ln_gamma(w);
    double distance = 0;  // of w from the tangent plane; negative: parting gains
    for (std::size_t i = 0; i < count; ++i) {
      if (w[i] > 0) distance += w[i] * (std::log(w[i]) + ln_gamma[i] - d[i]);
      step[i] = d[i] - ln_gamma[i] - ln_amounts[i];
    }
    if (distance < -gain_that_counts) return true;
    const double stretch = round % rounds_to_a_stretch == 0 ? stretch_of(step, before) : 1;
    Vector amounts(count);
    for (std::size_t i = 0; i < count; ++i) amounts[i] = std::exp(ln_amounts[i] += stretch * step[i]);
    const Vector next = normalised(std::move(amounts));
    double change = 0;
    for (std::size_t i = 0; i < count; ++i) change = std::max(change, std::abs(next[i] - w[i]));
    w = next;
    std::swap(before, step);
    if (stretch == 1 && change < 1e-10) return false;
  }
  return false;
}

}  // namespace

bool is_unstable(const Activity& activity, const std::vector<double>& x) {
  assert(x.size() == activity.size());
  assert(std::all_of(x.begin(), x.end(), [](double one) { return one > 0; }));
  Vector d = activity.ln_gamma(x);
  for (std::size_t i = 0; i < x.size(); ++i) d[i] += std::log(x[i]);
  for (std::size_t start = 0; start < x.size(); ++start) {
    Vector w(x.size(), 0.02 / static_cast<double>(x.size()));
    w[start] += 0.98;
    if (reaches_gain(activity, d, normalised(std::move(w)))) return true;
  }
  return false;
}

}  // namespace gentlest
