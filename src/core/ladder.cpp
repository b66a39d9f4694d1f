#include "gentlest/ladder.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

namespace gentlest {

namespace {

constexpr std::size_t level_count = 24;
constexpr double worth_a_bottle = 0.01;  // one more bottle must give at least this much effect on average

// Best effect among mixtures whose risk stays within each of the levels, evenly spaced up to the risk limit.
using Profile = std::array<double, level_count>;

void raise(Profile& profile, const Verdict& verdict, double risk_limit) {
  const double spacing = risk_limit / static_cast<double>(level_count);
  for (std::size_t i = level_count; i-- > 0 && verdict.risk <= static_cast<double>(i + 1) * spacing;)
    profile[i] = std::max(profile[i], verdict.effect);
}

bool would_raise(const Profile& profile, const Verdict& verdict, double risk_limit) {
  Profile raised = profile;
  raise(raised, verdict, risk_limit);
  return raised != profile;
}

void raise(Profile& profile, const Profile& other) {
  for (std::size_t i = 0; i < level_count; ++i) profile[i] = std::max(profile[i], other[i]);
}

double mean_gap(const Profile& best, const Profile& profile) {
  double sum = 0;
  for (std::size_t i = 0; i < level_count; ++i) sum += best[i] - profile[i];
  return sum / static_cast<double>(level_count);
}

// Which liquids a composition uses, as a key: parts in shelf order, unused places at the end.
using Support = std::array<std::uint16_t, most_parts>;

Support support_of(const std::uint16_t* liquids, std::size_t count) {
  Support support;
  support.fill(std::numeric_limits<std::uint16_t>::max());
  std::copy_n(liquids, count, support.begin());
  return support;
}

struct Survey {
  std::vector<Candidate> frontier;
  std::map<Support, Profile> profiles;
  Profile best{};
};

// Calls visit with every choice of `size` out of `count` positions.
template <class Visit>
void for_each_subset(std::size_t count, std::size_t size, Visit&& visit) {
  std::vector<std::uint16_t> chosen(size);
  std::iota(chosen.begin(), chosen.end(), std::uint16_t{0});
  while (true) {
    visit(chosen);
    std::size_t place = size;
    while (place > 0 && chosen[place - 1] == count - size + place - 1) --place;
    if (place == 0) return;
    ++chosen[place - 1];
    for (std::size_t i = place; i < size; ++i) chosen[i] = static_cast<std::uint16_t>(chosen[i - 1] + 1);
  }
}

// What these bottles can do: the best of all mixtures whose liquids are among them.
Profile profile_on(const std::vector<std::uint16_t>& bottles, int parts, const std::map<Support, Profile>& profiles) {
  Profile profile{};
  const std::size_t most = std::min(bottles.size(), static_cast<std::size_t>(parts));
  for (std::size_t size = 1; size <= most; ++size)
    for_each_subset(bottles.size(), size, [&](const std::vector<std::uint16_t>& places) {
      std::array<std::uint16_t, most_parts> liquids{};
      for (std::size_t i = 0; i < size; ++i) liquids[i] = bottles[places[i]];
      const auto found = profiles.find(support_of(liquids.data(), size));
      if (found != profiles.end()) raise(profile, found->second);
    });
  return profile;
}

struct BottleChoice {
  std::vector<std::uint16_t> bottles;
  double gap = std::numeric_limits<double>::infinity();
};

BottleChoice best_bottles(const SearchTask& task, std::size_t size, const std::map<Support, Profile>& profiles,
                          const Profile& best) {
  BottleChoice choice;
  for_each_subset(task.shelf.size(), size, [&](const std::vector<std::uint16_t>& bottles) {
    const double gap = mean_gap(best, profile_on(bottles, task.parts, profiles));
    if (gap < choice.gap - 1e-12) choice = {bottles, gap};
  });
  return choice;
}

// The fewest bottles that give up hardly more than the largest allowed number does.
BottleChoice choose_bottles(const SearchTask& task, int most_bottles, const Survey& survey) {
  const std::size_t most = std::min(task.shelf.size(), static_cast<std::size_t>(most_bottles));
  std::vector<BottleChoice> choices;
  for (std::size_t size = 1; size <= most; ++size)
    choices.push_back(best_bottles(task, size, survey.profiles, survey.best));
  for (const BottleChoice& choice : choices)
    if (choice.gap <= choices.back().gap + worth_a_bottle) return choice;
  return choices.back();
}

// One pass over all mixtures: the frontier, and what every set of liquids can do.
Survey survey_shelf(const SearchTask& task, double risk_limit, const SearchProgress& progress) {
  Survey survey;
  Support current{};
  Profile* profile = nullptr;
  survey.frontier = find_frontier(task, progress, [&](const Composition& composition, const Verdict& verdict) {
    if (verdict.risk > risk_limit) return;
    const Support support = support_of(composition.liquid.data(), static_cast<std::size_t>(composition.parts));
    if (!profile || support != current) {
      profile = &survey.profiles[support];
      current = support;
    }
    if (!task.allowed)
      raise(*profile, verdict, risk_limit);
    else if (would_raise(*profile, verdict, risk_limit) && task.allowed(composition, verdict))
      raise(*profile, verdict, risk_limit);
  });
  for (const auto& [support, own] : survey.profiles) raise(survey.best, own);
  return survey;
}

// Even steps in effect, and neighbours that are near each other: the cheapest path from the first to the last candidate
// over `rungs` of them.
std::vector<Candidate> spread_evenly(const SearchTask& task, const std::vector<Candidate>& climb, std::size_t rungs) {
  constexpr double weight_of_distance = 0.1;
  const std::size_t count = climb.size();
  if (count <= rungs) return climb;
  const double step = (climb.back().verdict.effect - climb.front().verdict.effect) / static_cast<double>(rungs - 1);
  std::vector<Hansen> points;
  for (const Candidate& candidate : climb) points.push_back(point_of(task, candidate.composition));
  const double length = std::max(distance_Ra(points.front(), points.back()) / static_cast<double>(rungs - 1), 1e-6);
  const auto cost_of_step = [&](std::size_t from, std::size_t to) {
    const double uneven = (climb[to].verdict.effect - climb[from].verdict.effect) / step - 1;
    const double far = distance_Ra(points[from], points[to]) / length;
    return uneven * uneven + weight_of_distance * far * far;
  };
  const double never = std::numeric_limits<double>::infinity();
  std::vector<std::vector<double>> cost(rungs, std::vector<double>(count, never));
  std::vector<std::vector<std::size_t>> before(rungs, std::vector<std::size_t>(count, 0));
  cost[0][0] = 0;
  for (std::size_t rung = 1; rung < rungs; ++rung)
    for (std::size_t to = rung; to < count; ++to)
      for (std::size_t from = rung - 1; from < to; ++from) {
        if (cost[rung - 1][from] == never) continue;
        const double sum = cost[rung - 1][from] + cost_of_step(from, to);
        if (sum < cost[rung][to]) {
          cost[rung][to] = sum;
          before[rung][to] = from;
        }
      }
  std::vector<Candidate> ladder;
  for (std::size_t rung = rungs, at = count - 1; rung-- > 0; at = before[rung][at]) ladder.push_back(climb[at]);
  std::reverse(ladder.begin(), ladder.end());
  return ladder;
}

}  // namespace

Ladder design_ladder(const SearchTask& task, const LadderGoal& goal, const SearchProgress& progress) {
  Survey survey = survey_shelf(task, goal.risk_limit, progress);
  Ladder ladder;
  ladder.frontier = std::move(survey.frontier);
  if (survey.profiles.empty()) return ladder;
  const BottleChoice choice = choose_bottles(task, goal.bottles, survey);
  ladder.bottles = choice.bottles;
  ladder.effect_given_up = choice.gap;
  std::vector<Candidate> climb = find_frontier_on(task, choice.bottles);
  std::erase_if(climb, [&](const Candidate& candidate) { return candidate.verdict.risk > goal.risk_limit; });
  if (climb.empty()) return ladder;
  ladder.window = climb.back().verdict.effect >= goal.wanted_effect;
  ladder.rungs = spread_evenly(task, climb, static_cast<std::size_t>(std::max(goal.rungs, 2)));
  return ladder;
}

}  // namespace gentlest
