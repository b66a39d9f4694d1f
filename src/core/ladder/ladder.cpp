#include "gentlest/ladder/ladder.hpp"

#include "core/search/bottles.hpp"
#include "core/search/watch.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <optional>

namespace gentlest {

namespace {

constexpr double worth_a_bottle = 0.01;  // one more bottle must give at least this much effect on average

// The fewest bottles that give up hardly more than the largest allowed number does.
BottleChoice choose_bottles(const SearchTask& task, const std::vector<Candidate>& frontier, const LadderGoal& goal) {
  const std::size_t most = std::min(task.shelf.size(), static_cast<std::size_t>(goal.bottles));
  const BottleChoice largest = best_bottles(task, frontier, goal.risk_limit, most);
  const double enough = largest.gap + worth_a_bottle;
  for (std::size_t size = 1; size < most; ++size) {
    const BottleChoice choice = best_bottles(task, frontier, goal.risk_limit, size, enough);
    if (choice.gap <= enough) return choice;
  }
  return largest;
}

bool works(const Candidate& candidate, const LadderGoal& goal) {
  return candidate.verdict.risk <= goal.risk_limit && candidate.verdict.effect >= goal.wanted_effect;
}

// The gentlest that works; nothing where none does.
std::optional<Candidate> first_that_works(const std::vector<Candidate>& climb, const LadderGoal& goal) {
  const auto found =
      std::find_if(climb.begin(), climb.end(), [&](const Candidate& candidate) { return works(candidate, goal); });
  return found == climb.end() ? std::nullopt : std::optional(*found);
}

// Bottles that give up least on average may still miss the one mixture that works. Where so many bottles as are wanted
// hold one, they are taken: the choice of bottles must not close a window that their number leaves open.
BottleChoice choose_bottles_that_work(const SearchTask& task, const std::vector<Candidate>& frontier,
                                      const LadderGoal& goal) {
  BottleChoice choice = choose_bottles(task, frontier, goal);
  if (choice.bottles.empty() || !first_that_works(frontier, goal) ||
      first_that_works(find_frontier_on(task, choice.bottles), goal))
    return choice;
  SearchTask few = task;
  few.parts = std::min(task.parts, goal.bottles);
  const std::optional<Candidate> first = first_that_works(find_frontier(few), goal);
  if (!first) return choice;
  const Composition& mixture = first->composition;
  std::vector<std::uint16_t> bottles(mixture.liquid.begin(), mixture.liquid.begin() + mixture.parts);
  std::sort(bottles.begin(), bottles.end());
  return these_bottles(task, frontier, goal.risk_limit, bottles);
}

// Even steps in effect, and neighbours that are near each other: the cheapest path from the first to the last candidate
// over `rungs` of them.
std::vector<Candidate> spread_evenly(const SearchTask& task, const std::vector<Candidate>& climb, std::size_t rungs) {
  constexpr double weight_of_distance = 0.1;
  constexpr double tie = 1e-9;  // of two ways that cost the same the first is taken, on every machine
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
        if (sum < cost[rung][to] - tie) {
          cost[rung][to] = sum;
          before[rung][to] = from;
        }
      }
  std::vector<Candidate> ladder;
  for (std::size_t rung = rungs, at = count - 1; rung-- > 0; at = before[rung][at]) ladder.push_back(climb[at]);
  std::reverse(ladder.begin(), ladder.end());
  return ladder;
}

// All allowed mixtures of the two bottles, by rising share of the second.
std::vector<Candidate> line_between(const SearchTask& task, std::uint16_t from, std::uint16_t to,
                                    bool ask_allowed = true) {
  std::vector<Candidate> line;
  const int steps = 100 / task.step_percent;
  const auto share = [](int of) { return static_cast<std::uint16_t>(of); };
  for (int i = 0; i <= steps; ++i) {
    Composition one;
    if (i == 0 || i == steps || from == to) {
      one = {{i == 0 ? from : to}, {share(steps)}, 1};
      if (from == to && i > 0) break;
    } else {
      one = from < to ? Composition{{from, to}, {share(steps - i), share(i)}, 2}
                      : Composition{{to, from}, {share(i), share(steps - i)}, 2};
    }
    if (one.parts > task.parts || (ask_allowed ? !is_allowed(task, one) : !keeps_largest_shares(task, one))) continue;
    line.push_back({one, judge(task, point_of(task, one))});
  }
  return line;
}

// What rises, up to the first that works.
std::vector<Candidate> climb_of(const std::vector<Candidate>& line, const LadderGoal& goal) {
  std::vector<Candidate> climb;
  for (const Candidate& one : line) {
    if (!climb.empty() && one.verdict.effect <= climb.back().verdict.effect) continue;
    climb.push_back(one);
    if (one.verdict.effect >= goal.wanted_effect) break;
  }
  return climb;
}

struct Line {
  std::array<std::uint16_t, 2> bottles{};
  int doubt = 0;
  double roughness = 0;  // effect at the start and the largest step of it: both as small as may be
};

std::optional<Line> working_line(const SearchTask& task, const LadderGoal& goal, std::uint16_t from, std::uint16_t to) {
  const std::vector<Candidate> climb = climb_of(line_between(task, from, to, false), goal);
  if (climb.empty() || climb.back().verdict.effect < goal.wanted_effect) return std::nullopt;
  double largest = 0;
  for (std::size_t i = 1; i < climb.size(); ++i)
    largest = std::max(largest, climb[i].verdict.effect - climb[i - 1].verdict.effect);
  return Line{{from, to}, 0, rounded_chance(climb.front().verdict.effect + largest)};
}

}  // namespace

Ladder design_ladder_by_effect(const SearchTask& task, const LadderGoal& goal, const std::vector<int>& doubts) {
  assert(task.kept.empty() && doubts.size() == task.shelf.size());
  std::vector<Line> lines;
  const auto count = static_cast<std::uint16_t>(task.shelf.size());
  for (std::uint16_t from = 0; from < count; ++from)
    for (std::uint16_t to = 0; to < count; ++to) {
      if (goal.bottles < 2 && from != to) continue;
      std::optional<Line> line = working_line(task, goal, from, to);
      if (!line) continue;
      line->doubt = doubts[from] + doubts[to];
      lines.push_back(*line);
    }
  std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
    return a.doubt != b.doubt ? a.doubt < b.doubt : a.roughness < b.roughness;
  });
  Ladder ladder;
  for (const Line& line : lines) {
    const std::vector<Candidate> climb = climb_of(line_between(task, line.bottles[0], line.bottles[1]), goal);
    if (climb.empty() || climb.back().verdict.effect < goal.wanted_effect) continue;
    ladder.window = true;
    ladder.bottles = {line.bottles[0]};
    if (line.bottles[1] != line.bottles[0]) ladder.bottles.push_back(line.bottles[1]);
    ladder.rungs = spread_evenly(task, climb, static_cast<std::size_t>(std::max(goal.rungs, 2)));
    break;
  }
  return ladder;
}

std::size_t rungs_of(const Ladder& ladder) {
  return ladder.rungs.empty() && !ladder.lines.empty() ? ladder.lines.front().rungs.size() : ladder.rungs.size();
}

const Verdict& last_verdict(const Ladder& ladder) {
  assert(rungs_of(ladder) > 0);
  return ladder.rungs.empty() ? ladder.lines.front().rungs.back().verdict : ladder.rungs.back().verdict;
}

Ladder design_ladder(const SearchTask& task, const LadderGoal& goal, const SearchProgress& progress) {
  Ladder ladder;
  ladder.frontier = find_frontier(task, progress);
  if (ladder.frontier.empty() || ladder.frontier.front().verdict.risk > goal.risk_limit) return ladder;
  const std::uint64_t all = count_mixtures(task.shelf.size(), task.parts, 100 / task.step_percent);
  Pulse pulse(progress, all);
  pulse.settle(all);
  SearchTask watched = task;
  if (progress) watched.beat = [&pulse] { pulse.beat(); };
  watched.allowed = watch(task, watched.beat).allowed;
  std::vector<StockLine> lines = design_lines(watched, ladder.frontier, goal);
  if (!lines.empty() && lines.front().works) {
    ladder.window = true;
    ladder.lines = std::move(lines);
    return ladder;
  }
  const BottleChoice choice = choose_bottles_that_work(watched, ladder.frontier, goal);
  if (choice.bottles.empty()) return ladder;
  ladder.bottles = choice.bottles;
  ladder.effect_given_up = choice.gap;
  std::vector<Candidate> climb = find_frontier_on(watched, choice.bottles);
  std::erase_if(climb, [&](const Candidate& candidate) { return candidate.verdict.risk > goal.risk_limit; });
  ladder.window = climb.back().verdict.effect >= goal.wanted_effect;
  ladder.rungs = spread_evenly(task, climb, static_cast<std::size_t>(std::max(goal.rungs, 2)));
  if (static_cast<int>(lines.size()) == goal.lines && !lines.empty()) lines.pop_back();  // the walk is one of them
  if (ladder.window) ladder.lines = std::move(lines);
  return ladder;
}

std::vector<FineStep> finer_steps(const SearchTask& task, const Ladder& ladder, const Candidate& weaker,
                                  const Candidate& stronger, int count) {
  SearchTask fine = task;
  fine.step_percent = 1;
  const auto on_fine_grid = [&](Candidate rung) {
    for (std::uint16_t& share : rung.composition.share) share = static_cast<std::uint16_t>(share * task.step_percent);
    return rung;
  };
  std::vector<Candidate> climb = task.kept.empty() ? line_between(fine, ladder.bottles.front(), ladder.bottles.back())
                                                   : find_frontier_on(fine, ladder.bottles);
  std::erase_if(climb, [&](const Candidate& candidate) {
    return candidate.verdict.effect <= weaker.verdict.effect || candidate.verdict.effect >= stronger.verdict.effect ||
           candidate.verdict.risk > stronger.verdict.risk;
  });
  climb.insert(climb.begin(), on_fine_grid(weaker));
  climb.push_back(on_fine_grid(stronger));
  const std::vector<Candidate> spread = spread_evenly(fine, climb, static_cast<std::size_t>(std::max(count, 0)) + 2);
  std::vector<FineStep> steps;
  for (std::size_t i = 1; i + 1 < spread.size(); ++i)
    steps.push_back(
        {mixture_of(fine, spread[i].composition), point_of(fine, spread[i].composition), spread[i].verdict});
  return steps;
}

SeriesQuality quality_of(const std::vector<Hansen>& points, const std::vector<Verdict>& verdicts,
                         const LadderGoal& goal) {
  assert(points.size() == verdicts.size());
  SeriesQuality quality;
  quality.steps = static_cast<int>(verdicts.size());
  double sum = 0;
  double squares = 0;
  for (std::size_t i = 0; i < verdicts.size(); ++i) {
    const Verdict& verdict = verdicts[i];
    if (verdict.risk > goal.risk_limit) {
      ++quality.beyond_limit;
    } else {
      if (verdict.effect > quality.strongest_effect) {
        quality.strongest_effect = verdict.effect;
        quality.risk_at_strongest = verdict.risk;
      }
      if (quality.first_that_works < 0 && verdict.effect >= goal.wanted_effect)
        quality.first_that_works = static_cast<int>(i);
    }
    if (i == 0) continue;
    const double rise = verdict.effect - verdicts[i - 1].effect;
    quality.falls += rise < 0 ? 1 : 0;
    quality.largest_rise = std::max(quality.largest_rise, rise);
    quality.longest_Ra = std::max(quality.longest_Ra, distance_Ra(points[i - 1], points[i]));
    sum += rise;
    squares += rise * rise;
  }
  if (verdicts.size() < 2) return quality;
  const double rises = static_cast<double>(verdicts.size() - 1);
  quality.unevenness = std::sqrt(std::max(squares / rises - (sum / rises) * (sum / rises), 0.0));
  return quality;
}

}  // namespace gentlest
