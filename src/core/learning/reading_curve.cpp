// From a reading to what it says of a layer: curves, slips of reading, contact time.
#include "gentlest/learning/learning.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace gentlest {

namespace {

// Place of a RED between the nodes of the tables.
struct Place {
  std::size_t node;
  double t;
};

Place place_of(double RED) {
  constexpr double last = ReadingCurve::nodes_per_unit * ReadingCurve::largest_RED;
  const double position = std::clamp(RED * ReadingCurve::nodes_per_unit, 0.0, last);
  const auto node = std::min(static_cast<std::size_t>(position), static_cast<std::size_t>(last) - 1);
  return {node, position - static_cast<double>(node)};
}

double slip_of(ReadingConfidence confidence, const ReadingNoise& noise) {
  switch (confidence) {
    case ReadingConfidence::low:
      return noise.slip_low_confidence;
    case ReadingConfidence::high:
      return noise.slip_high_confidence;
    default:
      return noise.slip;
  }
}

double radius_factor_of(const Reading& reading, const ReadingNoise& noise) {
  if (!reading.seconds) return 1;
  return std::pow(*reading.seconds / noise.reference_seconds, noise.time_exponent);
}

}  // namespace

ReadingCurve::ReadingCurve(const std::function<LevelChances(double)>& at_least) {
  for (int node = 0; node <= nodes_per_unit * largest_RED; ++node) {
    const LevelChances chances = at_least(static_cast<double>(node) / nodes_per_unit);
    for (std::size_t level = 1; level < reading_levels; ++level)
      tables_[level - 1].push_back(static_cast<float>(chances[level]));
  }
}

double ReadingCurve::at_least(int level, double RED) const {
  assert(level >= 0 && level < static_cast<int>(reading_levels) && RED >= 0);
  if (level <= 0) return 1;
  const std::vector<float>& values = table(level);
  const Place at = place_of(RED);
  const double low = static_cast<double>(values[at.node]);
  return low + at.t * (static_cast<double>(values[at.node + 1]) - low);
}

LevelChances ReadingCurve::chances(double RED) const {
  LevelChances chances{};
  for (int level = 0; level < reading_levels; ++level)
    chances[static_cast<std::size_t>(level)] =
        at_least(level, RED) - (level + 1 < reading_levels ? at_least(level + 1, RED) : 0);
  return chances;
}

ReadingCurve borrowed_curve(const Response& response) {
  return borrowed_curve(std::vector<WeighedResponse>{{response, 1}});
}

ReadingCurve borrowed_curve(const std::vector<WeighedResponse>& responses) {
  std::vector<WeighedResponse> different;
  double total = 0;
  for (WeighedResponse one : responses) {
    one.response.strongest = 1;
    total += one.weight;
    const auto known = std::find_if(different.begin(), different.end(), [&](const WeighedResponse& other) {
      return other.response.stages == one.response.stages;
    });
    if (known == different.end())
      different.push_back(std::move(one));
    else
      known->weight += one.weight;
  }
  assert(total > 0);
  return ReadingCurve([&](double RED) {
    LevelChances chances{};
    chances[0] = 1;
    for (int level = 1; level < reading_levels; ++level)
      for (const WeighedResponse& one : different)
        chances[static_cast<std::size_t>(level)] +=
            one.weight / total * chance_at_most(one.response, reading_levels - level, RED);
    return chances;
  });
}

int level_of_grade(int grade) {
  return std::clamp(reading_levels - grade, 1, reading_levels - 1);
}

LevelChances match_of_level(int level, double slip) {
  LevelChances match{};
  for (int truth = 0; truth < reading_levels; ++truth) {
    const bool at_end = truth == 0 || truth == reading_levels - 1;
    const bool is_neighbour = std::abs(truth - level) == 1;
    double chance = truth == level ? 1 - slip : 0.3 * slip / (reading_levels - 1);
    if (is_neighbour) chance += 0.7 * slip / (at_end ? 1 : 2);
    match[static_cast<std::size_t>(truth)] = chance;
  }
  return match;
}

LevelChances match_of_original(int level, double slip) {
  LevelChances match{};
  for (int truth = 0; truth < reading_levels; ++truth) {
    const int usual_slip = truth == 0 ? 1 : 0;
    double chance = 0.2 * slip / (reading_levels - 2);
    if (level == truth) chance = 1 - slip;
    if (level == usual_slip) chance = 0.8 * slip;
    match[static_cast<std::size_t>(truth)] = chance;
  }
  return match;
}

std::optional<Evidence> evidence_on_removal(const Reading& reading, const Hansen& point, const ReadingNoise& noise) {
  if (!reading.removal || reading.withdrawn) return std::nullopt;
  const int level = static_cast<int>(*reading.removal);
  return Evidence{point, match_of_level(level, slip_of(reading.confidence, noise)), radius_factor_of(reading, noise),
                  reading.at_edge};
}

std::optional<Evidence> evidence_on_original(const Reading& reading, const Hansen& point, const ReadingNoise& noise) {
  const std::optional<int> level = level_on_original(reading);
  if (!level) return std::nullopt;
  return Evidence{point, match_of_original(*level, slip_of(reading.confidence, noise)),
                  radius_factor_of(reading, noise), reading.at_edge, *level > 0};
}

std::optional<int> level_on_original(const Reading& reading) {
  if (reading.withdrawn) return std::nullopt;
  const SwabColour colour = reading.colour;
  const bool may_be_original = colour == SwabColour::original || colour == SwabColour::not_known;
  const OriginalReading read = reading.original.value_or(OriginalReading::nothing_seen);
  if (may_be_original && read == OriginalReading::nothing_seen)
    return static_cast<int>(OriginalReading::colour_on_swab);
  if (!reading.original) return std::nullopt;
  if (read != OriginalReading::colour_on_swab) return static_cast<int>(read);
  if (colour == SwabColour::varnish || colour == SwabColour::dirt) return 0;
  if (colour == SwabColour::retouching) return std::nullopt;  // what became of the layer below nobody saw
  return static_cast<int>(read);
}

}  // namespace gentlest
