// What is known of one layer: particles drawn from the prior, weighted by the readings, drawn again and moved.
#include "gentlest/learning/learning.hpp"

#include "core/learning/particles.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

namespace gentlest {

namespace {

// Chance of the reading, given those of the levels.
double match_with(const Evidence& evidence, const LevelChances& chances) {
  double sum = 0;
  for (std::size_t level = 0; level < chances.size(); ++level) sum += evidence.match[level] * chances[level];
  return std::max(sum, 1e-12);
}

int likeliest_level(const LevelChances& match) {
  return static_cast<int>(std::max_element(match.begin(), match.end()) - match.begin());
}

// ln chance of the evidence over RED.
std::vector<float> tabulate_log_match(const ReadingCurve& curve, const Evidence& evidence) {
  std::vector<float> table;
  for (int node = 0; node <= ReadingCurve::nodes_per_unit * ReadingCurve::largest_RED; ++node) {
    const LevelChances chances = curve.chances(static_cast<double>(node) / ReadingCurve::nodes_per_unit);
    table.push_back(static_cast<float>(std::log(match_with(evidence, chances))));
  }
  return table;
}

std::vector<float> reweighted(const std::vector<float>& weight, const std::vector<float>& log_factor, double share) {
  const float highest = *std::max_element(log_factor.begin(), log_factor.end());
  std::vector<float> out(weight.size());
  double sum = 0;
  for (std::size_t i = 0; i < weight.size(); ++i) {
    out[i] = weight[i] * std::exp(static_cast<float>(share) * (log_factor[i] - highest));
    sum += static_cast<double>(out[i]);
  }
  for (float& w : out) w = static_cast<float>(static_cast<double>(w) / sum);
  return out;
}

// Largest share of the evidence, up to `most`, that leaves a third of the particles effective.
double bearable_share(const ParticleCloud& cloud, const std::vector<float>& log_factor, double most) {
  const double least = static_cast<double>(cloud.size()) / 3;
  const auto effective = [&](double share) { return effective_number(reweighted(cloud.weight, log_factor, share)); };
  if (effective(most) >= least) return most;
  double low = 0, high = most;
  for (int step = 0; step < 20; ++step) {
    const double middle = (low + high) / 2;
    (effective(middle) >= least ? low : high) = middle;
  }
  return low;
}

Estimate estimate_from(std::vector<std::pair<double, double>> value_and_weight) {
  std::sort(value_and_weight.begin(), value_and_weight.end());
  Estimate estimate;
  double reached = 0;
  bool has_low = false, has_high = false;
  for (const auto& [value, weight] : value_and_weight) {
    estimate.mean += value * weight;
    reached += weight;
    if (!has_low && reached >= 0.05) estimate.low = value;
    if (!has_high && reached >= 0.95) estimate.high = value;
    has_low = has_low || reached >= 0.05;
    has_high = has_high || reached >= 0.95;
  }
  if (!has_high && !value_and_weight.empty()) estimate.high = value_and_weight.back().first;
  return estimate;
}

template <class Figure>
Estimate estimate_over(const ParticleCloud& cloud, const Figure& figure) {
  std::vector<std::pair<double, double>> values;
  values.reserve(cloud.size());
  for (std::size_t i = 0; i < cloud.size(); ++i) values.emplace_back(figure(i), static_cast<double>(cloud.weight[i]));
  return estimate_from(std::move(values));
}

}  // namespace

LayerBelief::LayerBelief(LayerPrior prior, ReadingCurve curve, LearningSettings settings)
    : prior_(std::move(prior)), curve_(std::move(curve)), settings_(settings) {
  if (prior_.hypotheses.empty() || settings_.particles < 2)
    throw std::invalid_argument("a belief needs a hypothesis and particles");
  RandomNumbers random(settings_.seed);
  cloud_ = SpherePrior(prior_).draw(settings_.particles, random);
}

double LayerBelief::radius_factor_at(const Hansen& point) const {
  double sum = 0, total = 0;
  for (const SphereHypothesis& one : prior_.hypotheses) {
    if (!one.reach.places.empty()) sum += one.weight * std::log(reach_factor(one.reach, point));
    total += one.weight;
  }
  return sum == 0 ? 1 : std::exp(sum / total);
}

void LayerBelief::learn(const Evidence& read) {
  Evidence evidence = read;
  evidence.radius_factor *= radius_factor_at(read.point);
  log_match_.push_back(tabulate_log_match(curve_, evidence));
  seen_.push_back(evidence);
  note_surprise();
  double taken = 0;
  while (taken < 1) {
    const std::vector<float> log_factor = log_chances_of(seen_.size() - 1);
    const double share = std::max(bearable_share(cloud_, log_factor, 1 - taken), 0.01);
    cloud_.weight = reweighted(cloud_.weight, log_factor, std::min(share, 1 - taken));
    taken = std::min(1.0, taken + share);
    take_in(taken);
  }
}

double Surprise::in_deviations() const {
  return variance > 0 ? excess / std::sqrt(variance) : 0;
}

Surprise LayerBelief::surprise() const {
  Surprise sum;
  for (const Surprise& one : surprises_) {
    sum.excess += one.excess;
    sum.variance += one.variance;
  }
  return sum;
}

// Of the levels at one sphere, as far as the luck is not that of tests before it.
LevelChances LayerBelief::chances_of(std::size_t test, const std::array<double, 3>& centre, double inverse_R0,
                                     double inverse_R0_edge) const {
  const auto at_least = [&](const Evidence& evidence, int level) {
    if (level <= 0 || level >= reading_levels) return level <= 0 ? 1.0 : 0.0;
    const std::array<double, 3> point = scaled(evidence.point);
    const double Ra = std::hypot(centre[0] - point[0], centre[1] - point[1], centre[2] - point[2]);
    const double RED = Ra * (evidence.at_edge ? inverse_R0_edge : inverse_R0) / evidence.radius_factor;
    return static_cast<double>(look_up(curve_.table(level), static_cast<float>(RED)));
  };
  const Evidence& evidence = seen_[test];
  LevelChances alone{1, 0, 0, 0, 0};
  for (int level = 1; level < reading_levels; ++level)
    alone[static_cast<std::size_t>(level)] = at_least(evidence, level);
  const double shared = evidence.shared.empty() ? 0 : evidence.shared.front().share;
  LevelChances sum{};
  for (std::size_t level = 0; level < alone.size(); ++level) sum[level] = (1 - shared) * alone[level];
  double low = 0, high = 1;
  for (std::size_t k = 0; k < evidence.shared.size(); ++k) {
    const Evidence& before = seen_[evidence.shared[k].test];
    const int read = likeliest_level(before.match);
    const double lower = std::max(low, at_least(before, read + 1));
    const double higher = std::min(high, at_least(before, read));
    // A test that contradicts nearer ones does not share their luck.
    if (lower < higher) {
      low = lower;
      high = higher;
    }
    const double next = k + 1 < evidence.shared.size() ? evidence.shared[k + 1].share : 0;
    for (std::size_t level = 0; level < alone.size(); ++level)
      sum[level] += (evidence.shared[k].share - next) * std::clamp((alone[level] - low) / (high - low), 0.0, 1.0);
  }
  for (std::size_t level = 0; level + 1 < sum.size(); ++level) sum[level] -= sum[level + 1];
  return sum;
}

// ln chance of the reading, at every particle.
std::vector<float> LayerBelief::log_chances_of(std::size_t test) const {
  const Evidence& evidence = seen_[test];
  if (evidence.shared.empty()) return values_over(cloud_, evidence, log_match_[test]);
  std::vector<float> values(cloud_.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    const std::array<double, 3> centre = {static_cast<double>(cloud_.x[i]), static_cast<double>(cloud_.y[i]),
                                          static_cast<double>(cloud_.z[i])};
    const LevelChances chances = chances_of(test, centre, static_cast<double>(cloud_.inverse_R0[i]),
                                            static_cast<double>(cloud_.inverse_R0_edge[i]));
    values[i] = static_cast<float>(std::log(match_with(evidence, chances)));
  }
  return values;
}

void LayerBelief::note_surprise() {
  const Evidence& evidence = seen_.back();
  LevelChances mean_chances{};
  double predicted = 0;
  for (std::size_t i = 0; i < cloud_.size(); ++i) {
    const std::array<double, 3> centre = {static_cast<double>(cloud_.x[i]), static_cast<double>(cloud_.y[i]),
                                          static_cast<double>(cloud_.z[i])};
    const LevelChances chances = chances_of(seen_.size() - 1, centre, static_cast<double>(cloud_.inverse_R0[i]),
                                            static_cast<double>(cloud_.inverse_R0_edge[i]));
    const auto weight = static_cast<double>(cloud_.weight[i]);
    for (std::size_t level = 0; level < chances.size(); ++level) mean_chances[level] += weight * chances[level];
    predicted += weight * match_with(evidence, chances);
  }
  predicted_.push_back(predicted);
  surprises_.emplace_back();
  if (evidence.is_harm) return;
  // A twentieth of all readings is taken to slip, anywhere: keeps a level that cannot be from counting without bound.
  double mean = 0, square = 0;
  for (const double here : mean_chances) {
    const double chance = 0.95 * std::max(here, 0.0) + 0.05 / reading_levels;
    mean -= chance * std::log(chance);
    square += chance * std::log(chance) * std::log(chance);
  }
  surprises_.back() = {-std::log(std::max(predicted, 1e-12)) - mean, square - mean * mean};
}

// After a stage of the last evidence: draws again and moves where too few particles carry the weight.
void LayerBelief::take_in(double share) {
  const auto count = static_cast<double>(cloud_.size());
  if (effective_particles() >= settings_.least_effective_share * count) return;
  // A seed of its own for every stage, so that the path does not depend on how often numbers were drawn before.
  RandomNumbers random(settings_.seed + 1000003 * seen_.size() + static_cast<std::uint64_t>(share * 1e6));
  cloud_ = draw_evenly(cloud_, cloud_.size(), random.uniform());
  const SpherePrior prior(prior_);
  const LogDensity target = [&](const Particle& at) {
    const std::array<double, 3> centre = {static_cast<double>(at.x), static_cast<double>(at.y),
                                          static_cast<double>(at.z)};
    const double R0 = 1 / static_cast<double>(at.inverse_R0);
    double sum = std::log(std::max(prior.density(centre, R0), 1e-300)) +
                 prior.log_density_of_edge(1 / static_cast<double>(at.inverse_R0_edge), R0);
    for (std::size_t k = 0; k < seen_.size(); ++k) {
      const double part = k + 1 == seen_.size() ? share : 1;
      if (!seen_[k].shared.empty()) {
        sum += part * std::log(match_with(seen_[k], chances_of(k, centre, static_cast<double>(at.inverse_R0),
                                                               static_cast<double>(at.inverse_R0_edge))));
        continue;
      }
      const std::array<double, 3> point = scaled(seen_[k].point);
      const double Ra = std::hypot(centre[0] - point[0], centre[1] - point[1], centre[2] - point[2]);
      const float inverse_R0 = seen_[k].at_edge ? at.inverse_R0_edge : at.inverse_R0;
      const auto RED = static_cast<float>(Ra * static_cast<double>(inverse_R0) / seen_[k].radius_factor);
      sum += part * static_cast<double>(look_up(log_match_[k], RED));
    }
    return sum;
  };
  move_particles(cloud_, target, settings_.moves, random);
}

double LayerBelief::chance(const Hansen& point, int level) const {
  return mean_over(cloud_, point, radius_factor_at(point), curve_.table(level));
}

Estimate LayerBelief::chance_estimate(const Hansen& point, int level) const {
  const std::vector<float> chances =
      values_over(cloud_, {point, {}, radius_factor_at(point), false}, curve_.table(level));
  return estimate_over(cloud_, [&](std::size_t i) { return static_cast<double>(chances[i]); });
}

Estimate LayerBelief::RED_estimate(const Hansen& point) const {
  const std::array<double, 3> place = scaled(point);
  const double longer = radius_factor_at(point);
  return estimate_over(cloud_, [&](std::size_t i) {
    return std::hypot(static_cast<double>(cloud_.x[i]) - place[0], static_cast<double>(cloud_.y[i]) - place[1],
                      static_cast<double>(cloud_.z[i]) - place[2]) *
           static_cast<double>(cloud_.inverse_R0[i]) / longer;
  });
}

Estimate LayerBelief::dD() const {
  return estimate_over(cloud_, [&](std::size_t i) { return static_cast<double>(cloud_.x[i]) / 2; });
}
Estimate LayerBelief::dP() const {
  return estimate_over(cloud_, [&](std::size_t i) { return static_cast<double>(cloud_.y[i]); });
}
Estimate LayerBelief::dH() const {
  return estimate_over(cloud_, [&](std::size_t i) { return static_cast<double>(cloud_.z[i]); });
}
Estimate LayerBelief::R0() const {
  return estimate_over(cloud_, [&](std::size_t i) { return 1 / static_cast<double>(cloud_.inverse_R0[i]); });
}

double LayerBelief::effective_particles() const {
  return effective_number(cloud_.weight);
}

std::vector<double> LayerBelief::hypothesis_chances() const {
  const SpherePrior prior(prior_);
  std::vector<double> chances(prior_.hypotheses.size() + 1);
  for (std::size_t i = 0; i < cloud_.size(); ++i) {
    const std::array<double, 3> centre = {static_cast<double>(cloud_.x[i]), static_cast<double>(cloud_.y[i]),
                                          static_cast<double>(cloud_.z[i])};
    const std::vector<double> shares = prior.shares(centre, 1 / static_cast<double>(cloud_.inverse_R0[i]));
    for (std::size_t k = 0; k < shares.size(); ++k)
      (k % 2 == 0 ? chances[k / 2] : chances.back()) += static_cast<double>(cloud_.weight[i]) * shares[k];
  }
  return chances;
}

}  // namespace gentlest
