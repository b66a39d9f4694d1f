#include "core/fitting/sphere_draws.hpp"

#include "core/base/random_numbers.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace gentlest {

namespace {

constexpr std::size_t figures = 5;
using Place = std::array<double, figures>;  // centre in the scaled space, R0, ln of the softness

constexpr double softest = 2, hardest = 0.05;  // MPa^0.5
constexpr double smallest_drawn_R0 = 0.1;

const Place& lowest() {
  static const Place place = {2 * lowest_drawn_centre.dD, lowest_drawn_centre.dP, lowest_drawn_centre.dH,
                              smallest_drawn_R0, std::log(hardest)};
  return place;
}

const Place& highest() {
  static const Place place = {2 * highest_drawn_centre.dD, highest_drawn_centre.dP, highest_drawn_centre.dH,
                              largest_fitted_R0, std::log(softest)};
  return place;
}

struct Test {
  std::array<double, 3> point;
  bool dissolves;
};

double log_posterior(const std::vector<Test>& tests, const Place& at) {
  for (std::size_t i = 0; i < figures; ++i)
    if (at[i] < lowest()[i] || at[i] > highest()[i]) return -std::numeric_limits<double>::infinity();
  const double softness = std::exp(at[4]);
  double sum = 0;
  for (const Test& test : tests) {
    const double Ra = std::hypot(test.point[0] - at[0], test.point[1] - at[1], test.point[2] - at[2]);
    const double wrong = (test.dissolves ? Ra - at[3] : at[3] - Ra) / softness;
    sum -= wrong > 30 ? wrong : std::log1p(std::exp(wrong));
  }
  return sum;
}

struct Walker {
  Place at{};
  double log_chance = 0;
};

std::vector<Walker> start_at(const Sphere& best, const std::vector<Test>& tests, std::size_t count,
                             RandomNumbers& random) {
  const std::array<double, 3> centre = scaled(best.centre);
  std::vector<Walker> walkers(count);
  for (Walker& walker : walkers) {
    for (std::size_t i = 0; i < 3; ++i) walker.at[i] = centre[i] + random.normal();
    walker.at[3] = best.R0 + random.normal();
    walker.at[4] = lowest()[4] + random.uniform() * (highest()[4] - lowest()[4]);
    for (std::size_t i = 0; i < figures; ++i) {
      const double room = 0.01 * random.uniform() * (highest()[i] - lowest()[i]);
      walker.at[i] = std::clamp(walker.at[i], lowest()[i] + room, highest()[i] - room);
    }
    walker.log_chance = log_posterior(tests, walker.at);
  }
  return walkers;
}

// Each walker steps along the line to another one.
void sweep(std::vector<Walker>& walkers, const std::vector<Test>& tests, RandomNumbers& random) {
  constexpr double longest = 2;
  const auto count = static_cast<double>(walkers.size());
  for (std::size_t i = 0; i < walkers.size(); ++i) {
    const auto step = 1 + static_cast<std::size_t>(random.uniform() * (count - 1));
    const Walker& other = walkers[(i + step) % walkers.size()];
    const double root = (longest - 1) * random.uniform() + 1;
    const double stretch = root * root / longest;
    Walker moved;
    for (std::size_t k = 0; k < figures; ++k) moved.at[k] = other.at[k] + stretch * (walkers[i].at[k] - other.at[k]);
    moved.log_chance = log_posterior(tests, moved.at);
    const double log_ratio =
        (static_cast<double>(figures) - 1) * std::log(stretch) + moved.log_chance - walkers[i].log_chance;
    if (std::log(random.uniform()) < log_ratio) walkers[i] = moved;
  }
}

}  // namespace

std::vector<Sphere> draw_spheres(const std::vector<Score>& scores, const Sphere& best, int count, std::uint64_t seed) {
  constexpr std::size_t walker_count = 40;
  constexpr int sweeps_before = 400;
  constexpr int sweeps_between = 20;
  std::vector<Test> tests;
  for (const Score& score : scores) tests.push_back({scaled(score.hansen), score.grade == 1});
  RandomNumbers random(seed);
  std::vector<Walker> walkers = start_at(best, tests, walker_count, random);
  for (int i = 0; i < sweeps_before; ++i) sweep(walkers, tests, random);
  std::vector<Sphere> drawn;
  while (drawn.size() < static_cast<std::size_t>(count)) {
    for (int i = 0; i < sweeps_between; ++i) sweep(walkers, tests, random);
    for (const Walker& walker : walkers)
      drawn.push_back({{walker.at[0] / 2, walker.at[1], walker.at[2]}, walker.at[3]});
  }
  drawn.resize(static_cast<std::size_t>(count));
  return drawn;
}

}  // namespace gentlest
