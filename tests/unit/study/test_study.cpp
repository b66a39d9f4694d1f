// A small run of the study (tests/study): truths are what they say, the same every time, and testing by the program
// harms less than the ladder by hand.
#include "study/figures.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"
#include "shipped.hpp"

#include <algorithm>
#include <cmath>

using namespace gentlest;
using namespace gentlest::study;

namespace {

const Bench& bench() {
  static const Bench made = make_bench(test::shipped_catalogue());
  return made;
}

double share_harmed(const Truth& truth, const Ground& ground, const SwabMixture& mixture) {
  double harmed = 0, all = 0;
  for (const Painting& painting : make_paintings(truth, ground, 5)) {
    harmed += swab(truth, ground, painting, mixture, false, 1).harm > 0 ? 1 : 0;
    ++all;
  }
  return harmed / all;
}

}  // namespace

TEST_CASE("what the beliefs say before any swab is what happens in the model's own truth") {
  const Ground ground = borrowed_ground(bench(), 3000, 4000);
  for (const std::size_t rung : {std::size_t{1}, std::size_t{4}}) {
    const SwabMixture& mixture = bench().lines.front()[rung];
    const double seen = share_harmed(all_truths().front(), ground, mixture);
    CHECK(seen == test::near(outlook_of(ground.start, mixture).risk, 0.025));
  }
}

TEST_CASE("luck is even over the paintings, alike between neighbours, and its own where it is rough") {
  const SwabMixture& here = bench().step_mixtures[4];
  const SwabMixture& near = bench().step_mixtures[5];
  double mean = 0, square = 0, apart = 0, apart_rough = 0;
  constexpr int count = 2000;
  for (std::uint64_t seed = 1; seed <= count; ++seed) {
    const double luck = LuckField(seed, false).of(here);
    mean += luck / count;
    square += luck * luck / count;
    apart += std::abs(luck - LuckField(seed, false).of(near)) / count;
    apart_rough += std::abs(LuckField(seed, true).of(here) - LuckField(seed, true).of(near)) / count;
  }
  CHECK(mean == test::near(0.5, 0.03));
  CHECK(square == test::near(1.0 / 3, 0.03));
  CHECK(apart < 0.15);
  CHECK(apart_rough == test::near(1.0 / 3, 0.03));  // of two independent even numbers
}

TEST_CASE("where there is no window no mixture is good") {
  const Ground ground = borrowed_ground(bench(), 60, 200);
  const std::vector<Truth> truths = all_truths();
  const auto none = std::find_if(truths.begin(), truths.end(), [](const Truth& one) { return one.has_no_window; });
  REQUIRE(none != truths.end());
  int windows = 0;
  for (const Painting& painting : make_paintings(*none, ground, 5))
    windows += has_window(bench(), *none, ground, painting) ? 1 : 0;
  CHECK(windows == 0);
}

TEST_CASE("testing as the program says harms less than the printed ladder by hand, the same every time") {
  const Ground ground = borrowed_ground(bench(), 60, 400);
  const Truth plain = all_truths().front();
  std::vector<Session> next, again, ladder;
  for (const Painting& painting : make_paintings(plain, ground, 31)) {
    next.push_back(follow(bench(), plain, ground, painting));
    if (again.size() < 5) again.push_back(follow(bench(), plain, ground, painting));
    ladder.push_back(walk(bench(), plain, ground, painting, bench().lines.front(), 0));
  }
  const Row ours = row_of("next", next), by_hand = row_of("ladder", ladder);
  CHECK(ours.harmed.percent < by_hand.harmed.percent);
  CHECK(ours.good.percent >= 75);
  CHECK(ours.found.percent > 40);
  for (std::size_t i = 0; i < again.size(); ++i) {
    CHECK(again[i].tests == next[i].tests);
    CHECK(again[i].ending == next[i].ending);
  }
}

TEST_CASE("shares carry their standard errors") {
  CHECK(share_of(0, 0).of == 0);
  CHECK(share_of(30, 300).percent == Approx(10));
  CHECK(share_of(30, 300).error == Approx(100 * std::sqrt(0.1 * 0.9 / 300)));
}
