// The arithmetic of parting: stability of one liquid, and the two liquids in equilibrium.
#include "gentlest/vial/miscibility.hpp"

#include <algorithm>
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

// Share of the second liquid for given ratios K = second / first (Rachford and Rice); nothing outside 0..1.
std::optional<double> share_for(const Vector& x, const Vector& K) {
  const auto defect = [&](double share) {
    double sum = 0;
    for (std::size_t i = 0; i < x.size(); ++i) sum += x[i] * (K[i] - 1) / (1 + share * (K[i] - 1));
    return sum;
  };
  double low = 0;
  double high = 1;
  if (!(defect(low) > 0 && defect(high) < 0)) return std::nullopt;
  for (int round = 0; round < 60; ++round) {
    const double middle = (low + high) / 2;
    (defect(middle) > 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

struct MoleSplit {
  Vector first, second;
  double share = 0;  // moles in the second
};

std::optional<MoleSplit> equilibrate(const Activity& activity, const Vector& x, Vector first, Vector second) {
  constexpr int most_rounds = 5000;
  for (int round = 0; round < most_rounds; ++round) {
    const Vector in_first = activity.ln_gamma(first);
    const Vector in_second = activity.ln_gamma(second);
    Vector K(x.size());
    for (std::size_t i = 0; i < x.size(); ++i) K[i] = std::exp(in_first[i] - in_second[i]);
    const auto share = share_for(x, K);
    if (!share) return std::nullopt;
    double change = 0;
    for (std::size_t i = 0; i < x.size(); ++i) {
      const double next = x[i] / (1 + *share * (K[i] - 1));
      change = std::max(change, std::abs(next - first[i]));
      first[i] = next;
      second[i] = K[i] * next;
    }
    first = normalised(std::move(first));
    second = normalised(std::move(second));
    if (change < 1e-11) return MoleSplit{first, second, *share};
  }
  return std::nullopt;
}

// Mole fractions to volume fractions; returns the molar volume of the liquid as well.
std::pair<Vector, double> by_volume(const Vector& x, const Breakdown& breakdown) {
  Vector volumes(x.size());
  for (std::size_t i = 0; i < x.size(); ++i) volumes[i] = x[i] * breakdown.molecules[i].molar_volume_cm3;
  const double sum = std::accumulate(volumes.begin(), volumes.end(), 0.0);
  return {normalised(std::move(volumes)), sum};
}

}  // namespace

bool is_unstable(const Activity& activity, const std::vector<double>& x) {
  return most_favourable(activity, x).distance < 0;
}

std::optional<PhaseSplit> split_phases(const Breakdown& breakdown, const Catalogue& catalogue, Celsius temperature) {
  const auto activity =
      activity_of(modified_groups_of(breakdown, catalogue), catalogue.chemistry().unifac_modified, kelvin(temperature));
  if (!activity) return std::nullopt;
  const Vector x = mole_fractions(breakdown);
  const Trial trial = most_favourable(*activity, x);
  if (!(trial.distance < 0)) return std::nullopt;
  const auto split = equilibrate(*activity, x, x, trial.w);
  if (!split) return std::nullopt;
  const auto [first, first_volume] = by_volume(split->first, breakdown);
  const auto [second, second_volume] = by_volume(split->second, breakdown);
  const double in_second = split->share * second_volume;
  return PhaseSplit{first, second, in_second / (in_second + (1 - split->share) * first_volume)};
}

}  // namespace gentlest
