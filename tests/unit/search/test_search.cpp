#include "gentlest/ladder/ladder.hpp"
#include "gentlest/search/search.hpp"

#include "invented_shelf.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

TEST_CASE("number of mixtures, by hand and as published in the design study") {
  CHECK(count_mixtures(3, 1, 20) == 3);
  CHECK(count_mixtures(3, 2, 20) == 3 + 3 * 19);
  CHECK(count_mixtures(3, 3, 20) == 231);  // all points of a triangle grid with 21 points a side
  CHECK(count_mixtures(100, 3, 20) == 27650700 + 94050 + 100);
  CHECK(count_mixtures(100, 4, 20) == 3827411875ULL);
}

TEST_CASE("enumeration visits every mixture once and shares always add up") {
  std::set<std::vector<int>> seen;
  std::uint64_t visits = 0;
  for_each_composition({0, 1, 2, 3, 4}, 4, 10, [&](const Composition& composition) {
    ++visits;
    int sum = 0;
    std::vector<int> key;
    for (std::size_t i = 0; i < static_cast<std::size_t>(composition.parts); ++i) {
      sum += composition.share[i];
      key.push_back(composition.liquid[i]);
      key.push_back(composition.share[i]);
    }
    CHECK(sum == 10);
    seen.insert(key);
  });
  CHECK(visits == count_mixtures(5, 4, 10));
  CHECK(seen.size() == visits);
}

TEST_CASE("the frontier is what comparing every mixture with every other leaves") {
  const InventedShelf shelf(6, 3);
  const SearchTask task = shelf.task(3, 10);
  std::vector<Verdict> all;
  for_each_composition({0, 1, 2, 3, 4, 5}, 3, 10, [&](const Composition& composition) {
    all.push_back(judge(task, point_of(task, composition)));
  });
  std::vector<std::pair<double, double>> plain;
  for (const Verdict& verdict : all)
    if (std::none_of(all.begin(), all.end(), [&](const Verdict& other) { return beats(other, verdict); }))
      plain.emplace_back(verdict.risk, verdict.effect);
  std::sort(plain.begin(), plain.end());
  plain.erase(std::unique(plain.begin(), plain.end()), plain.end());
  std::vector<std::pair<double, double>> found;
  for (const Candidate& candidate : find_frontier(task))
    found.emplace_back(candidate.verdict.risk, candidate.verdict.effect);
  CHECK(found == plain);
}

TEST_CASE("of equal mixtures the one with fewer parts stands for all") {
  InventedShelf shelf(3, 5);
  shelf.liquids[2].hansen = {(shelf.liquids[0].hansen.dD + shelf.liquids[1].hansen.dD) / 2,
                             (shelf.liquids[0].hansen.dP + shelf.liquids[1].hansen.dP) / 2,
                             (shelf.liquids[0].hansen.dH + shelf.liquids[1].hansen.dH) / 2};
  const SearchTask task = shelf.task(2, 50);
  for (const Candidate& candidate : find_frontier(task)) {
    const bool the_pair = candidate.composition.parts == 2 && candidate.composition.liquid[0] == 0 &&
                          candidate.composition.liquid[1] == 1;
    CHECK_FALSE(the_pair);  // liquid 2 alone is the same point
  }
}

TEST_CASE("ladder: in order, within the limit, on few bottles, steps near even") {
  const InventedShelf shelf(8, 11);
  const SearchTask task = shelf.task(3, 5);
  const LadderGoal goal{3, 7, 0.25, 0.5};
  const Ladder ladder = design_ladder(task, goal);
  REQUIRE(ladder.rungs.size() == 7);
  CHECK(ladder.bottles.size() <= 3);
  for (std::size_t i = 0; i < ladder.rungs.size(); ++i) {
    const Candidate& rung = ladder.rungs[i];
    CHECK(rung.verdict.risk <= goal.risk_limit);
    for (std::size_t part = 0; part < static_cast<std::size_t>(rung.composition.parts); ++part)
      CHECK(std::count(ladder.bottles.begin(), ladder.bottles.end(), rung.composition.liquid[part]) == 1);
    if (i == 0) continue;
    CHECK(rung.verdict.effect > ladder.rungs[i - 1].verdict.effect);
    CHECK(rung.verdict.risk > ladder.rungs[i - 1].verdict.risk);
  }
}

TEST_CASE("the chosen bottles give up no more than any other choice of as many") {
  const InventedShelf shelf(7, 13);
  const SearchTask task = shelf.task(2, 10);
  const LadderGoal goal{2, 5, 0.3, 0.3};
  const Ladder ladder = design_ladder(task, goal);
  REQUIRE(ladder.bottles.size() == 2);
  // Best effect within the limit, averaged over 24 levels of risk, found the slow way for every pair.
  const auto mean_best = [&](const std::vector<std::uint16_t>& bottles) {
    const std::vector<Candidate> frontier = find_frontier_on(task, bottles);
    double sum = 0;
    for (int level = 1; level <= 24; ++level) {
      double best = 0;
      for (const Candidate& candidate : frontier)
        if (candidate.verdict.risk <= level * (goal.risk_limit / 24)) best = std::max(best, candidate.verdict.effect);
      sum += best;
    }
    return sum / 24;
  };
  const double ours = mean_best(ladder.bottles);
  for (std::uint16_t a = 0; a < 7; ++a)
    for (std::uint16_t b = static_cast<std::uint16_t>(a + 1); b < 7; ++b) CHECK(mean_best({a, b}) <= ours + 1e-9);
}

TEST_CASE("no mixture within the limit: no rungs, and the frontier is still told") {
  const InventedShelf shelf(5, 17);
  const Ladder ladder = design_ladder(shelf.task(2, 10), {3, 7, 1e-12, 0.5});
  CHECK_FALSE(ladder.window);
  CHECK(ladder.rungs.empty());
  CHECK_FALSE(ladder.frontier.empty());
}

TEST_CASE("refused mixtures leave the frontier of the others, as trying every mixture finds it") {
  const InventedShelf shelf(5, 23);
  SearchTask task = shelf.task(3, 10);
  // Refuse about a third, by a rule that has nothing to do with effect or risk.
  const auto allowed = [](const Composition& composition) {
    return (composition.liquid[0] + 3 * composition.share[0] + composition.parts) % 3 != 0;
  };
  std::vector<Verdict> all;
  for_each_composition({0, 1, 2, 3, 4}, 3, 10, [&](const Composition& composition) {
    if (allowed(composition)) all.push_back(judge(task, point_of(task, composition)));
  });
  std::vector<std::pair<double, double>> plain;
  for (const Verdict& verdict : all)
    if (std::none_of(all.begin(), all.end(), [&](const Verdict& other) { return beats(other, verdict); }))
      plain.emplace_back(verdict.risk, verdict.effect);
  std::sort(plain.begin(), plain.end());
  plain.erase(std::unique(plain.begin(), plain.end()), plain.end());
  task.allowed = [&](const SearchTask&, const Composition& composition) { return allowed(composition); };
  std::vector<std::pair<double, double>> found;
  for (const Candidate& candidate : find_frontier(task)) {
    CHECK(allowed(candidate.composition));
    found.emplace_back(candidate.verdict.risk, candidate.verdict.effect);
  }
  CHECK(found == plain);
  for (const Candidate& rung : design_ladder(task, {3, 6, 0.3, 0.3}).rungs) CHECK(allowed(rung.composition));
}

TEST_CASE("a copied task asks its condition for itself, not for the task it was copied from") {
  const InventedShelf shelf(4, 29);
  SearchTask task = shelf.task(2, 10);
  int for_itself = 0, for_another = 0;
  const SearchTask* asking = nullptr;
  task.allowed = [&](const SearchTask& of, const Composition&) {
    ++(&of == asking ? for_itself : for_another);
    return true;
  };
  SearchTask fine = task;
  fine.step_percent = 5;
  for (const SearchTask* one : {&task, &fine}) {
    asking = one;
    find_frontier_on(*one, {0, 1, 2});
    find_frontier(*one);
  }
  CHECK(for_itself > 0);
  CHECK(for_another == 0);
}

TEST_CASE("everything refused: no rungs and no window") {
  const InventedShelf shelf(4, 29);
  SearchTask task = shelf.task(2, 10);
  task.allowed = [](const SearchTask&, const Composition&) { return false; };
  const Ladder ladder = design_ladder(task, {2, 5, 0.9, 0.1});
  CHECK(ladder.rungs.empty());
  CHECK_FALSE(ladder.window);
}
