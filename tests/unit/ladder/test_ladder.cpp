// Finer steps between two rungs, and the figures by which any series is judged.
#include "gentlest/ladder/ladder.hpp"

#include "invented_shelf.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using namespace gentlest::test;

TEST_CASE("finer steps lie between the rungs, rise, and stay on the ladder's bottles") {
  const InventedShelf shelf(8, 11);
  const SearchTask task = shelf.task(3, 5);
  const Ladder ladder = design_ladder(task, {3, 5, 0.25, 0.5});
  REQUIRE(ladder.rungs.size() == 5);
  const Candidate& weaker = ladder.rungs.front();
  const Candidate& stronger = ladder.rungs.back();
  const std::vector<FineStep> steps = finer_steps(task, ladder, weaker, stronger, 4);
  REQUIRE(steps.size() == 4);
  double before = weaker.verdict.effect;
  const double even = (stronger.verdict.effect - weaker.verdict.effect) / 5;
  for (const FineStep& step : steps) {
    CHECK(step.verdict.effect > before);
    CHECK(step.verdict.effect - before < 3 * even);
    CHECK(step.verdict.effect < stronger.verdict.effect);
    CHECK(step.verdict.risk <= stronger.verdict.risk);
    CHECK(step.verdict == judge(task, step.point));
    before = step.verdict.effect;
    for (const Part& part : step.mixture.parts())
      CHECK(std::any_of(ladder.bottles.begin(), ladder.bottles.end(),
                        [&](std::uint16_t bottle) { return task.shelf[bottle].label == part.liquid.label; }));
  }
  CHECK(finer_steps(task, ladder, weaker, weaker, 4).empty());
  CHECK(finer_steps(task, ladder, weaker, stronger, 0).empty());
}

TEST_CASE("where the shelf has a mixture that works within the limit, the fewness of bottles closes no window") {
  int by_a_hair = 0;
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    const InventedShelf shelf(8, seed);
    const SearchTask task = shelf.task(2, 10);
    const std::vector<Candidate> frontier = find_frontier(task);
    for (std::size_t i = 0; i < frontier.size(); i += 3) {
      // The limits for which this very mixture of the whole shelf is the only one that will do.
      const LadderGoal goal{2, 5, frontier[i].verdict.risk, frontier[i].verdict.effect};
      const Ladder ladder = design_ladder(task, goal);
      INFO("seed " << seed << ", mixture " << i);
      CHECK(ladder.window);
      REQUIRE_FALSE(ladder.rungs.empty());
      CHECK(ladder.rungs.back().verdict.effect >= goal.wanted_effect);
      CHECK(ladder.rungs.back().verdict.risk <= goal.risk_limit);
      CHECK(ladder.bottles.size() <= 2);
      by_a_hair += ladder.effect_given_up > 0.01 ? 1 : 0;
    }
  }
  CHECK(by_a_hair > 0);  // else no case was hard
}

TEST_CASE("quality of a series, by hand") {
  const std::vector<Hansen> points = {{16, 0, 0}, {16, 3, 4}, {16, 3, 5}, {17, 3, 5}};
  const std::vector<Verdict> verdicts = {{0.1, 0.05, 0}, {0.4, 0.1, 0}, {0.3, 0.2, 0}, {0.9, 0.6, 0}};
  const SeriesQuality quality = quality_of(points, verdicts, {3, 7, 0.3, 0.4});
  CHECK(quality.steps == 4);
  CHECK(quality.falls == 1);
  CHECK(quality.beyond_limit == 1);
  CHECK(quality.largest_rise == Approx(0.6));
  CHECK(quality.longest_Ra == Approx(5));
  CHECK(quality.strongest_effect == 0.4);
  CHECK(quality.risk_at_strongest == 0.1);
  CHECK(quality.first_that_works == 1);
  // Rises 0.3, -0.1, 0.6: mean 0.8/3, mean square 0.46/3.
  CHECK(quality.unevenness == Approx(std::sqrt(0.46 / 3 - 0.64 / 9)));
  CHECK(quality_of({}, {}, {}) == SeriesQuality{});
}
