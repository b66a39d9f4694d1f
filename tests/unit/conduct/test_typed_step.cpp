#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/conduct/typed_step.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

TEST_CASE("a step of the plan is known by its name", "[typed]") {
  for (const char* text : {"rung 3", "Rung 3", "3", " rung  3 ", "line 1 rung 3", "rung 3 of line 1", "line 1, rung 3"})
    CHECK(typed_step(text) == TypedStep{1, 3});
  for (const char* text : {"rung 3.5", "rung 3,5", "3.5", "3,5"}) CHECK(typed_step(text) == TypedStep{1, 3.5});
  for (const char* text : {"line 2 rung 4", "rung 4 line 2", "rung 4 on line 2", "line 2, rung 4"})
    CHECK(typed_step(text) == TypedStep{2, 4});
  for (const char* text : {"", "rung", "rung three", "line 2", "rung 3 4", "rung 3 rung 4", "line 1.5 rung 2",
                           "acetone", "acetone 3", "-3", "rung -3"}) {
    INFO(text);
    CHECK_FALSE(typed_step(text).has_value());
  }
}

TEST_CASE("a step's mixture is that of the plan, half steps half way; what is none is told with those that are",
          "[typed]") {
  const Plan plan =
      make_plan(load_job("gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n"
                         "  - {name: paint, role: keep, found: oil_paint_old}\nshelf: [isooctane, acetone]\n",
                         "job.yaml", shipped_catalogue()),
                shipped_catalogue());
  REQUIRE(plan.lines.size() == 1);
  REQUIRE(plan.lines[0].rungs.size() > 2);
  const auto share_of_acetone = [](const Mixture& mixture) {
    double share = 0;
    for (const Part& part : mixture.parts())
      if (part.liquid.label == "acetone") share = part.fraction;
    return share;
  };
  const double second = share_of_acetone(plan.lines[0].rungs[1].mixture);
  const double third = share_of_acetone(plan.lines[0].rungs[2].mixture);
  CHECK(to_text(mixture_of_step(plan, {1, 2})) == to_text(plan.lines[0].rungs[1].mixture));
  CHECK(share_of_acetone(mixture_of_step(plan, {1, 2.5})) == Approx((second + third) / 2));
  for (const TypedStep& wrong : {TypedStep{1, 99}, TypedStep{2, 1}, TypedStep{1, 0}, TypedStep{1, 1.25}})
    CHECK_THROWS_AS(mixture_of_step(plan, wrong), InputError);
}
