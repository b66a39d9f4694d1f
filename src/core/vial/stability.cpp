// The arithmetic of parting: is one liquid stable?
#include "gentlest/vial/miscibility.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace gentlest {

namespace {

using Vector = std::vector<double>;

struct Trial {
  Vector w;             // composition of the trial liquid
  double distance = 0;  // of the tangent plane; negative: parting gains
};

Vector normalised(Vector amounts) {
  const double sum = std::accumulate(amounts.begin(), amounts.end(), 0.0);
  for (double& amount : amounts) amount /= sum;
  return amounts;
}

// Lowest tangent-plane distance on the way from a start: amounts W follow ln W = d - ln gamma(w).
Trial descend(const Activity& activity, const Vector& d, Vector w) {
  constexpr int most_rounds = 400;
  Trial best{w, 0};
  for (int round = 0; round < most_rounds; ++round) {
    const Vector ln_gamma = activity.ln_gamma(w);
    Vector amounts(w.size());
    for (std::size_t i = 0; i < w.size(); ++i) amounts[i] = std::exp(d[i] - ln_gamma[i]);
    const double sum = std::accumulate(amounts.begin(), amounts.end(), 0.0);
    const Vector next = normalised(std::move(amounts));
    double change = 0;
    for (std::size_t i = 0; i < w.size(); ++i) change = std::max(change, std::abs(next[i] - w[i]));
    w = next;
    best = {w, -std::log(sum)};
    if (change < 1e-10) break;
  }
  return best;
}

// The most favourable of the trials from near each pure component; distance 0 where the liquid is stable.
Trial most_favourable(const Activity& activity, const Vector& x) {
  constexpr double gain_that_counts = 1e-9;
  Vector d = activity.ln_gamma(x);
  for (std::size_t i = 0; i < x.size(); ++i) d[i] += std::log(x[i]);
  Trial best;
  for (std::size_t start = 0; start < x.size(); ++start) {
    Vector w(x.size(), 0.02 / static_cast<double>(x.size()));
    w[start] += 0.98;
    const Trial trial = descend(activity, d, normalised(std::move(w)));
    if (trial.distance < -gain_that_counts && trial.distance < best.distance) best = trial;
  }
  return best;
}

}  // namespace

bool is_unstable(const Activity& activity, const std::vector<double>& x) {
  assert(x.size() == activity.size());
  assert(std::all_of(x.begin(), x.end(), [](double one) { return one > 0; }));
  return most_favourable(activity, x).distance < 0;
}

}  // namespace gentlest
