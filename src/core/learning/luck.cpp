#include "core/learning/luck.hpp"

#include "core/learning/particles.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace gentlest {

namespace {

constexpr double nearest_repeat = 0.05;  // MPa^0.5; closer than this two mixtures count as the same
constexpr double counts_wholly = 0.05;   // share of the volume from which on a bottle counts wholly
constexpr double least_shared = 0.01;    // of the luck; less is not worth the sum

// Part of the bottles of two mixtures that both hold.
double common_bottles(const SwabMixture& a, const SwabMixture& b) {
  std::map<std::string, std::pair<double, double>> bottles;
  for (const auto& [label, share] : a.shares) bottles[label].first = std::min(1.0, share / counts_wholly);
  for (const auto& [label, share] : b.shares) bottles[label].second = std::min(1.0, share / counts_wholly);
  double both = 0, either = 0;
  for (const auto& [label, counts] : bottles) {
    both += std::min(counts.first, counts.second);
    either += std::max(counts.first, counts.second);
  }
  return either > 0 ? both / either : 0;
}

bool hold_same_bottles(const SwabMixture& a, const SwabMixture& b) {
  return a.shares.size() == b.shares.size() && common_bottles(a, b) > 0.999;
}

// Bounds of u in every particle, and how far they hold for the mixture in question.
struct LuckBounds {
  double shared = 0;
  bool is_same_place = false, is_careful = false;  ///< of equally near ones these come first
  std::vector<float> low, high;
};

std::vector<float> chances_of(const LayerBelief& belief, const Hansen& point, double radius_factor, bool at_edge,
                              int level) {
  if (level <= 0) return std::vector<float>(belief.particles().size(), 1);
  if (level >= reading_levels) return std::vector<float>(belief.particles().size(), 0);
  const double acts = radius_factor * belief.radius_factor_at(point);
  return values_over(belief.particles(), {point, {}, acts, at_edge, false}, belief.curve().table(level));
}

double mean_of(const LayerBelief& belief, const std::vector<float>& values) {
  double sum = 0;
  for (std::size_t i = 0; i < values.size(); ++i)
    sum += static_cast<double>(belief.particles().weight[i]) * static_cast<double>(values[i]);
  return sum;
}

// Of the same bottles a weaker mixture shares a failure wholly, and a stronger one a success.
double shared_with(const LuckQuestion& question, const HeardLuck& heard, double chance, double chance_there,
                   double reach) {
  const SwabMixture& there = heard.test->mixture;
  const bool follows = heard.level >= question.level ? chance >= chance_there : chance <= chance_there;
  if (follows && hold_same_bottles(question.mixture, there)) return 1;
  return shared_luck(question.mixture, there, reach);
}

std::vector<LuckBounds> bounds_of(const LayerBelief& belief, const LuckQuestion& question,
                                  const std::vector<HeardLuck>& heard, double reach, double chance) {
  std::vector<LuckBounds> bounds;
  for (const HeardLuck& one : heard) {
    const PastTest& test = *one.test;
    const auto there = [&](int level) {
      return chances_of(belief, test.mixture.point, one.radius_factor, test.at_edge, level);
    };
    const double shared = shared_with(question, one, chance, mean_of(belief, there(question.level)), reach);
    if (shared < least_shared) continue;
    // A harm never makes anything safer, however slight it was.
    const bool is_harm = question.careful == Careful::reaction && one.level > 0;
    const bool is_careful = is_harm || (question.careful == Careful::failure && one.level < question.level);
    bounds.push_back({shared, test.at_edge == question.at_edge, is_careful,
                      there(is_harm ? reading_levels : one.level + 1), there(one.level)});
  }
  std::stable_sort(bounds.begin(), bounds.end(), [](const LuckBounds& a, const LuckBounds& b) {
    return std::tie(a.shared, a.is_same_place, a.is_careful) > std::tie(b.shared, b.is_same_place, b.is_careful);
  });
  return bounds;
}

// Chance that u lies below `chance`, where it lies between the bounds.
float chance_between(float chance, float low, float high) {
  return std::clamp((chance - low) / (high - low), 0.0F, 1.0F);
}

// Bounds that leave nothing between them contradict each other. Then the test that is nearer counts, and a harm always.
void narrow(float& low, float& high, float there_low, float there_high, Careful careful) {
  const float lower = std::max(low, there_low), higher = std::min(high, there_high);
  if (lower < higher) {
    low = lower;
    high = higher;
  } else if (careful == Careful::reaction && there_high < high && there_high > 0) {
    low = 0;
    high = there_high;
  }
}

}  // namespace

bool is_same(const Hansen& a, const Hansen& b) {
  return distance_Ra(a, b) < nearest_repeat;
}

double shared_luck(const SwabMixture& a, const SwabMixture& b, double reach) {
  if (is_same(a.point, b.point)) return 1;
  const double apart = distance_Ra(a.point, b.point) / reach;
  return std::exp(-apart) * common_bottles(a, b);
}

// The nearest tests bound the luck first: the part that is shared with them alone, then with the next as well ...
double chance_with_luck(const LayerBelief& belief, const LuckQuestion& question, const std::vector<HeardLuck>& heard,
                        const NextTestSettings& settings, bool& counts_tests) {
  const std::vector<float> chances = chances_of(belief, question.mixture.point, 1, question.at_edge, question.level);
  const double alone = mean_of(belief, chances);
  const double luck = settings.luck_of_mixture * (1 - ReadingNoise{}.slip);
  if (luck <= 0 || heard.empty()) return alone;
  const std::vector<LuckBounds> bounds = bounds_of(belief, question, heard, settings.luck_reach, alone);
  if (bounds.empty()) return alone;
  counts_tests = true;
  std::vector<float> low(chances.size(), 0), high(chances.size(), 1), values(chances.size());
  double sum = (1 - luck * bounds.front().shared) * alone;
  for (std::size_t k = 0; k < bounds.size(); ++k) {
    for (std::size_t i = 0; i < low.size(); ++i)
      narrow(low[i], high[i], bounds[k].low[i], bounds[k].high[i], question.careful);
    const double part = luck * (bounds[k].shared - (k + 1 < bounds.size() ? bounds[k + 1].shared : 0));
    if (part <= 0) continue;
    for (std::size_t i = 0; i < low.size(); ++i) values[i] = chance_between(chances[i], low[i], high[i]);
    sum += part * mean_of(belief, values);
  }
  return sum;
}

}  // namespace gentlest
