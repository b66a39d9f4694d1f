// Lines of two stocks on shelves that exist nowhere; what each must keep is worked out here anew, mixture by mixture.
#include "gentlest/ladder/ladder.hpp"

#include "invented_shelf.hpp"
#include "near.hpp"
#include "scale.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

// A hydrocarbon and actives of three families.
InventedShelf& dress(InventedShelf& shelf) {
  shelf.set(0, "aliphatic hydrocarbon", {15.3, 0, 0.1});
  for (std::size_t i = 1; i < shelf.liquids.size(); ++i)
    shelf.set_family(i, i % 3 == 0 ? "alcohol" : i % 3 == 1 ? "ketone" : "ester");
  return shelf;
}

double share_of(const Mixture& mixture, const std::string& label) {
  for (const Part& part : mixture.parts())
    if (part.liquid.label == label) return part.fraction;
  return 0;
}

// A point of two stocks by the plain weighted sum.
Hansen between(const Hansen& a, const Hansen& b, double share_of_b) {
  return {a.dD + share_of_b * (b.dD - a.dD), a.dP + share_of_b * (b.dP - a.dP), a.dH + share_of_b * (b.dH - a.dH)};
}

Hansen active_point(const SearchTask& task, const Stocks& stocks) {
  Hansen point;
  for (std::size_t i = 0; i < stocks.active.size(); ++i) {
    const Hansen& liquid = task.shelf[stocks.active[i]].hansen;
    const double share = stocks.quarters[i] / 4.0;
    point = {point.dD + share * liquid.dD, point.dP + share * liquid.dP, point.dH + share * liquid.dH};
  }
  return point;
}

// Mean over 24 levels of risk of what these verdicts give up, the slow way.
double slow_gap(const std::vector<Candidate>& frontier, const std::vector<Verdict>& walk, double risk_limit) {
  double sum = 0;
  for (int level = 1; level <= 24; ++level) {
    double best = 0;
    double here = 0;
    for (const Candidate& one : frontier)
      if (one.verdict.risk <= level * (risk_limit / 24)) best = std::max(best, one.verdict.effect);
    for (const Verdict& one : walk)
      if (one.risk <= level * (risk_limit / 24)) here = std::max(here, one.effect);
    sum += best - here;
  }
  return sum / 24;
}

// All that a line has on its way up to its last rung, on the task's grid.
std::vector<Verdict> way_of(const SearchTask& task, const StockLine& line) {
  std::vector<Verdict> way;
  for (int percent = line.rungs.front().percent; percent <= line.rungs.back().percent; percent += task.step_percent)
    way.push_back(
        judge(task, between(task.shelf[line.stocks.gentle].hansen, active_point(task, line.stocks), percent / 100.0)));
  return way;
}

void check_line(const SearchTask& task, const InventedShelf& shelf, const StockLine& line, const LadderGoal& goal) {
  REQUIRE(line.rungs.size() >= 2);
  CHECK(static_cast<int>(line.rungs.size()) <= goal.rungs);
  CHECK(line.step_percent % task.step_percent == 0);
  const Liquid& gentle = task.shelf[line.stocks.gentle];
  CHECK(gentle.solvent->family == "aliphatic hydrocarbon");
  for (std::size_t i = 0; i < line.rungs.size(); ++i) {
    const LineRung& rung = line.rungs[i];
    if (i > 0) CHECK(rung.percent - line.rungs[i - 1].percent <= line.step_percent);
    if (i > 0) CHECK(rung.percent > line.rungs[i - 1].percent);
    if (i > 1) CHECK(rung.percent == line.rungs[i - 1].percent + line.step_percent);
    if (line.rungs.size() >= 4 && line.rungs.back().percent % line.step_percent == 0)
      CHECK(rung.percent % line.step_percent == line.rungs.front().percent % line.step_percent);
    CHECK(share_of(rung.mixture, gentle.label) == near(1 - rung.percent / 100.0, 1e-9));
    CHECK(distance_Ra(rung.point, between(gentle.hansen, active_point(task, line.stocks), rung.percent / 100.0)) <
          1e-9);
    CHECK(distance_Ra(rung.point, mix(rung.mixture)) < 1e-9);
    CHECK(rung.verdict == judge(task, rung.point));
    CHECK(rung.verdict.risk <= goal.risk_limit);
    if (i == 0) continue;
    CHECK(rung.verdict.effect > line.rungs[i - 1].verdict.effect);
    CHECK(rung.verdict.risk >= line.rungs[i - 1].verdict.risk);
    for (const UncertainSphere* sphere : {&shelf.target, &shelf.kept})
      CHECK(relative_distance_RED(rung.point, sphere->mean) <=
            relative_distance_RED(line.rungs[i - 1].point, sphere->mean) + 1e-9);
  }
}

}  // namespace

TEST_CASE("lines: even steps from a hydrocarbon, rising, within the limit, never past a layer, of several families") {
  const LadderGoal goal{3, 7, 0.3, 0.45, 3};
  int found = 0;
  int fellows = 0;
  int with_stock = 0;
  for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(cases(120)); ++seed) {
    InventedShelf shelf(8, seed);
    const SearchTask task = dress(shelf).task(3, 5);
    const std::vector<Candidate> frontier = find_frontier(task);
    const std::vector<StockLine> lines = design_lines(task, frontier, goal);
    INFO("seed " << seed);
    CHECK(lines.size() <= 3);
    std::set<std::string> families;
    for (const StockLine& line : lines) {
      check_line(task, shelf, line, goal);
      CHECK(families.insert(task.shelf[line.stocks.active.front()].solvent->family).second);
      CHECK(line.effect_given_up >= -1e-12);
      CHECK(line.effect_given_up == near(slow_gap(frontier, way_of(task, line), goal.risk_limit), 1e-9));
      CHECK(line.works == (line.rungs.back().verdict.effect >= goal.wanted_effect));
      CHECK(line.rungs.back().verdict.effect >= goal.wanted_effect / (lines.front().works ? 1 : 2));
      with_stock += line.stocks.active.size() > 1 ? 1 : 0;
    }
    found += lines.empty() ? 0 : 1;
    fellows += lines.size() > 1 ? 1 : 0;
  }
  CHECK(found * 4 > cases(120));
  CHECK(fellows > 0);
  CHECK((with_stock > 0 || cases(120) < 120));  // rare: none among the few that the sanitizers look at
}

TEST_CASE("no pair of bottles gives up clearly less than the first line") {
  const LadderGoal goal{2, 7, 0.3, 0.4, 3};
  int compared = 0;
  for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(cases(60)); ++seed) {
    InventedShelf shelf(7, seed);
    const SearchTask task = dress(shelf).task(2, 10);
    const std::vector<Candidate> frontier = find_frontier(task);
    const std::vector<StockLine> lines = design_lines(task, frontier, goal);
    INFO("seed " << seed);
    double best = 2;
    for (std::uint16_t active = 1; active < task.shelf.size(); ++active) {
      // The way up to the risk limit or past a layer, and of its strides those whose last rung works.
      std::vector<Verdict> way;
      std::vector<double> before;
      for (int percent = 0; percent <= 100; percent += 10) {
        const Hansen point = between(task.shelf[0].hansen, task.shelf[active].hansen, percent / 100.0);
        const Verdict verdict = judge(task, point);
        const std::vector<double> now = {relative_distance_RED(point, shelf.target.mean),
                                         relative_distance_RED(point, shelf.kept.mean)};
        if (verdict.risk > goal.risk_limit) break;
        if (!way.empty() && (verdict.effect <= way.back().effect || verdict.risk < way.back().risk ||
                             now[0] > before[0] + 1e-9 || now[1] > before[1] + 1e-9))
          break;
        way.push_back(verdict);
        before = now;
      }
      if (way.size() < 2 || way.back().effect < goal.wanted_effect) continue;
      best = std::min(best, slow_gap(frontier, way, goal.risk_limit));
    }
    if (best > 1) {
      CHECK((lines.empty() || !lines.front().works));
      continue;
    }
    if (lines.empty() || !lines.front().works) continue;  // a window that only a share between the strides would reach
    ++compared;
    // 0.01 for hazards to decide, and what the stride leaves out at the end of the way.
    CHECK(lines.front().effect_given_up >= best - 1e-9);
    for (const StockLine& line : lines) CHECK(line.effect_given_up >= best - 1e-9);
  }
  CHECK(compared > cases(60) / 10);
}

TEST_CASE("a line ends where it would pass a layer, though effect and risk there are low again") {
  InventedShelf shelf(2, 3);
  shelf.set(0, "aliphatic hydrocarbon", {16, 0, 0});
  shelf.set(1, "alcohol", {16, 24, 24});
  shelf.target = {{{16, 8, 8}, 6}, {0.5, 0.5, 0.5}, 0.3};  // nearest at a third of the way
  shelf.kept = {{{16, 14, 2}, 2}, {0.5, 0.5, 0.5}, 0.3};   // nearest there as well: (14 + 2) / 48 of the way
  const SearchTask task = shelf.task(2, 5);
  const std::vector<StockLine> lines = design_lines(task, find_frontier(task), {2, 10, 0.9, 0.3, 1});
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].rungs.front().percent == 0);
  CHECK(lines[0].rungs.back().percent == 35);  // 40 % is farther from both again
}

TEST_CASE("a share that is not allowed ends the line; what is not allowed at its beginning moves it up") {
  InventedShelf shelf(8, 11);
  SearchTask task = dress(shelf).task(2, 5);
  const LadderGoal goal{2, 7, 0.5, 0.2, 1};
  const std::vector<StockLine> free = design_lines(task, find_frontier(task), goal);
  REQUIRE_FALSE(free.empty());
  const Stocks stocks = free[0].stocks;
  const int last = free[0].rungs.back().percent;
  REQUIRE(last >= 30);
  const auto percent_of = [&](const Composition& composition) {
    for (std::size_t i = 0; i < static_cast<std::size_t>(composition.parts); ++i)
      if (composition.liquid[i] == stocks.active.front()) return composition.share[i] * 5;
    return 0;
  };
  task.allowed = [&](const SearchTask&, const Composition& one) { return percent_of(one) != 25; };
  for (const StockLine& line : design_lines(task, find_frontier(task), goal))
    if (line.stocks == stocks) CHECK(line.rungs.back().percent <= 20);
  task.allowed = [&](const SearchTask&, const Composition& one) {
    return one.parts > 1 && percent_of(one) >= 10 && percent_of(one) <= last;
  };
  const std::vector<StockLine> late = design_lines(task, find_frontier(task), goal);
  REQUIRE_FALSE(late.empty());
  CHECK(late[0].stocks == stocks);
  CHECK(late[0].rungs.front().percent == 10);
  task.allowed = {};
  task.most_percent.assign(task.shelf.size(), 20);
  task.most_percent[stocks.gentle] = 100;
  for (const StockLine& line : design_lines(task, find_frontier(task), {2, 7, 0.5, 0.05, 3}))
    CHECK(line.rungs.back().percent <= 20);
}

TEST_CASE("a second stock of two liquids comes where it gains, and only within the limits") {
  InventedShelf shelf(3, 3);
  shelf.set(0, "petroleum fraction", {16, 0, 0});
  shelf.set(1, "ketone", {16, 22, 0});
  shelf.set(2, "alcohol", {16, 0, 22});
  shelf.target = {{{16, 10, 10}, 5}, {0.5, 0.5, 0.5}, 0.3};
  shelf.kept = {{{24, 10, 10}, 3}, {0.5, 0.5, 0.5}, 0.3};
  SearchTask task = shelf.task(3, 5);
  const std::vector<Candidate> frontier = find_frontier(task);
  const LadderGoal goal{3, 7, 0.9, 0.3, 3};
  const std::vector<StockLine> lines = design_lines(task, frontier, goal);
  REQUIRE_FALSE(lines.empty());
  CHECK(lines[0].reason == LineReason::third_bottle);
  CHECK(lines[0].stocks == Stocks{0, {1, 2}, {2, 2}});
  for (const LineRung& rung : lines[0].rungs) {
    CHECK(share_of(rung.mixture, task.shelf[1].label) == near(rung.percent / 200.0, 1e-9));
    CHECK(share_of(rung.mixture, task.shelf[2].label) == near(rung.percent / 200.0, 1e-9));
  }
  LadderGoal two = goal;
  two.bottles = 2;
  for (const StockLine& line : design_lines(task, frontier, two)) {
    CHECK(line.stocks.active.size() == 1);
    CHECK(lines[0].effect_given_up < line.effect_given_up - worth_a_third_bottle);
  }
  task.parts = 2;
  for (const StockLine& line : design_lines(task, frontier, goal)) CHECK(line.stocks.active.size() == 1);
}

TEST_CASE("with a goal of no lines the ladder is the walk over the frontier; else one or the other") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    InventedShelf shelf(7, seed);
    const SearchTask task = dress(shelf).task(3, 10);
    const Ladder walk = design_ladder(task, {3, 6, 0.3, 0.4, 0});
    const Ladder ladder = design_ladder(task, {3, 6, 0.3, 0.4, 2});
    INFO("seed " << seed);
    CHECK(walk.lines.empty());
    CHECK(ladder.window == walk.window);
    CHECK(ladder.lines.size() <= (ladder.rungs.empty() ? 2U : 1U));
    if (!ladder.rungs.empty()) CHECK(ladder.rungs == walk.rungs);
    if (!ladder.window) {
      CHECK(ladder.lines.empty());
      continue;
    }
    CHECK(ladder.rungs.empty() == (!ladder.lines.empty() && ladder.lines.front().works));
    CHECK(last_verdict(ladder).effect >= 0.4);
    CHECK(rungs_of(ladder) == (ladder.rungs.empty() ? ladder.lines.front().rungs.size() : ladder.rungs.size()));
  }
}

TEST_CASE("finer steps on a line are smaller steps of share, strictly between the rungs") {
  InventedShelf shelf(8, 11);
  const SearchTask task = dress(shelf).task(3, 5);
  const std::vector<StockLine> lines = design_lines(task, find_frontier(task), {3, 5, 0.3, 0.4, 3});
  REQUIRE_FALSE(lines.empty());
  for (const StockLine& line : lines) {
    const LineRung& weaker = line.rungs[line.rungs.size() - 2];
    const LineRung& stronger = line.rungs.back();
    const std::vector<LineRung> steps = finer_steps(task, line, weaker, stronger, 3);
    REQUIRE(steps.size() == 3);
    int before = weaker.percent;
    for (const LineRung& step : steps) {
      CHECK(step.percent > before);
      CHECK(std::abs(step.percent - before - line.step_percent / 4.0) <= 1);
      CHECK(step.percent < stronger.percent);
      CHECK(share_of(step.mixture, task.shelf[line.stocks.gentle].label) == near(1 - step.percent / 100.0, 1e-9));
      CHECK(step.verdict == judge(task, step.point));
      before = step.percent;
    }
    SearchTask strict = task;
    strict.allowed = [&](const SearchTask& of, const Composition& one) {
      return of.step_percent == 1 && one.share[0] % 2 == 0;
    };
    for (const LineRung& step : finer_steps(strict, line, weaker, stronger, 99))
      CHECK(step.percent * (line.stocks.active.size() > 1 ? 4 : 1) % 2 == 0);
    CHECK(finer_steps(task, line, weaker, stronger, 0).empty());
    CHECK(finer_steps(task, line, weaker, stronger, 99).size() == static_cast<std::size_t>(line.step_percent - 1));
  }
}

TEST_CASE("an aromatic cut is no gentle stock, and without a hydrocarbon the least polar liquid is one") {
  InventedShelf shelf(3, 3);
  shelf.set(0, "petroleum fraction", {18, 1, 1});  // nearer to the layer to remove than what is gentle
  shelf.set(1, "petroleum fraction", {15.7, 0, 0});
  shelf.set(2, "ketone", {16, 12, 7});
  shelf.target = {{{17, 9, 6}, 5}, {0.5, 0.5, 0.5}, 0.3};
  shelf.kept = {{{24, 10, 10}, 3}, {0.5, 0.5, 0.5}, 0.3};
  const LadderGoal goal{2, 7, 0.9, 0.3, 3};
  for (const bool is_gentle_there : {true, false}) {
    if (!is_gentle_there) shelf.set(1, "ether", {15.7, 1, 1.5});
    const SearchTask task = shelf.task(2, 5);
    const std::vector<StockLine> lines = design_lines(task, find_frontier(task), goal);
    REQUIRE_FALSE(lines.empty());
    for (const StockLine& line : lines) CHECK(line.stocks.gentle == (is_gentle_there ? 1 : 0));
  }
}

namespace {

// A ketone and an ester at one place.
void set_two_alike(InventedShelf& shelf) {
  shelf.set(0, "aliphatic hydrocarbon", {16, 0, 0});
  shelf.set(1, "ketone", {16, 12, 7});
  shelf.set(2, "ester", {16, 12, 7});
  shelf.target = {{{17, 9, 6}, 5}, {0.5, 0.5, 0.5}, 0.3};
  shelf.kept = {{{24, 10, 10}, 3}, {0.5, 0.5, 0.5}, 0.3};
}

}  // namespace

TEST_CASE("of lines as near to the best the one with fewer hazards comes first, and no record is none") {
  InventedShelf shelf(3, 3);
  set_two_alike(shelf);
  const auto first = [&] {
    const SearchTask task = shelf.task(2, 5);
    return design_lines(task, find_frontier(task), {2, 7, 0.9, 0.3, 3}).at(0).stocks.active.front();
  };
  CHECK(first() == 1);  // all the same: by label
  shelf.set_statements(2, {"H319", "H336"});
  CHECK(first() == 2);  // of the other nothing is known
  shelf.set_statements(1, {"H225", "H319", "H336"});
  CHECK(first() == 2);
  shelf.set_statements(1, {"H319"});
  CHECK(first() == 1);
}

TEST_CASE("asked for the healthier, the worst statement for the person decides before their number") {
  InventedShelf shelf(3, 3);
  set_two_alike(shelf);
  shelf.set_statements(1, {"H351"});
  shelf.set_statements(2, {"H225", "H319", "H336"});
  const auto first = [&](bool healthier) {
    const SearchTask task = shelf.task(2, 5);
    LadderGoal goal{2, 7, 0.9, 0.3, 3};
    goal.prefer_healthier = healthier;
    return design_lines(task, find_frontier(task), goal).at(0).stocks.active.front();
  };
  CHECK(first(false) == 1);  // fewer statements
  CHECK(first(true) == 2);   // none of them grave
}
