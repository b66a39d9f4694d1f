// Which of two liquids lies nearer, held against the normal distribution: the points nearer to a than to b are a half
// space, and the share of a Gaussian in it has a closed form.
#include "gentlest/answers/order.hpp"
#include "gentlest/space/nearer.hpp"
#include "gentlest/space/response.hpp"

#include <catch2/catch.hpp>
#include "demo_plan.hpp"
#include "near.hpp"

#include <array>
#include <cmath>

namespace gentlest {

namespace {

double share_by_normal(const Hansen& a, const Hansen& b, const UncertainSphere& sphere) {
  const std::array<double, 3> from = scaled(a), to = scaled(b), centre = scaled(sphere.mean.centre),
                              sd = scaled(sphere.sd);
  double mean = 0;
  double variance = 0;
  for (std::size_t k = 0; k < 3; ++k) {
    const double across = to[k] - from[k];
    mean += across * (centre[k] - (from[k] + to[k]) / 2);
    variance += across * across * sd[k] * sd[k];
  }
  return std::erfc(mean / std::sqrt(2 * variance)) / 2;
}

}  // namespace

TEST_CASE("the share of spheres to which a liquid lies nearer is that of a Gaussian in a half space") {
  const UncertainSphere sphere{{{17, 6, 8}, 7}, {0.8, 1.5, 2.0}, 0.9};
  for (const Hansen& b : {Hansen{15, 3, 4}, Hansen{18, 9, 9}, Hansen{17, 6, 12}, Hansen{14, 0, 0}})
    for (const Hansen& a : {Hansen{16, 5, 7}, Hansen{15, 4, 12}})
      CHECK(share_nearer(a, b, sphere) == test::near(share_by_normal(a, b, sphere), 0.005));
}

TEST_CASE("what is known better than the level is said only where it is certain") {
  Plan plan = test::demo_plan();
  REQUIRE(plan.outcome == Outcome::window);
  REQUIRE(order_of(plan));
  CHECK(order_of(plan)->effect_rises);
  CHECK(order_of(plan)->risk_rises);
  const std::optional<FirstToAct> first = first_to_act(plan);
  REQUIRE(first);
  const auto& rungs = plan.lines.front().rungs;
  CHECK(*rungs[static_cast<std::size_t>(first->from - 1)].effect >= 0.1);
  if (first->from > 1) CHECK(*rungs[static_cast<std::size_t>(first->from - 2)].effect < 0.1);
  CHECK(first->perhaps_none == (*rungs.back().effect < 0.9));
  const std::optional<GentlerThan> gentler = gentler_than(plan);
  REQUIRE(gentler);
  for (const std::string& bottle : plan.lines.front().bottles) CHECK(bottle != gentler->label);
  // A ladder turned round certainly falls, and says nothing of a first rung.
  std::swap(plan.lines.front().rungs.front(), plan.lines.front().rungs.back());
  CHECK_FALSE(order_of(plan)->effect_rises);
  CHECK_FALSE(first_to_act(plan));
}

}  // namespace gentlest
