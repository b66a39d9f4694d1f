#include "report/plans/layer_cost_words.hpp"

#include "io/job_file.hpp"

#include "shipped.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

TEST_CASE("what a glaze costs is one line: the ladder without it, and the one there is") {
  Plan plan;
  CHECK(layer_cost_words(plan).empty());
  plan.costs = {{{"red glaze"}, 7, 0.58}, {{"red glaze", "green glaze"}, 1, 0.5}};
  CHECK(layer_cost_words(plan) == std::vector<std::string>{"without red glaze: 7 rungs up to 58 %",
                                                           "without red glaze, green glaze: 1 rung up to 50 %"});
  const Plan demo = make_plan(load_job(demo_job_text(), "demo", shipped_catalogue()), shipped_catalogue());
  plan.lines = {demo.lines.front()};
  plan.lines.front().rungs.assign(ladder_rungs(demo).begin(), ladder_rungs(demo).begin() + 3);
  plan.lines.front().rungs.back().effect = 0.51;
  CHECK(layer_cost_words(plan).front() == "without red glaze: 7 rungs up to 58 %, not 3 rungs up to 51 %");
  plan.at_higher_limit = HigherLimit{0.35, 4, 0.62};
  CHECK(layer_cost_words(plan).back() == "at a risk limit of 35 %: 4 rungs up to 62 %, not 3 rungs up to 51 %");
}
