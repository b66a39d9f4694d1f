#include "report/phrases/layer_cost_words.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

TEST_CASE("what a glaze costs is one line: the ladder without it, and the one there is") {
  Plan plan;
  CHECK(layer_cost_words(plan).empty());
  plan.costs = {{{"red glaze"}, 7, 0.58}, {{"red glaze", "green glaze"}, 1, 0.5}};
  CHECK(layer_cost_words(plan) == std::vector<std::string>{"without red glaze: 7 rungs up to 58 %",
                                                           "without red glaze, green glaze: 1 rung up to 50 %"});
  plan.rungs.resize(3);
  plan.rungs.back().effect = 0.51;
  CHECK(layer_cost_words(plan).front() == "without red glaze: 7 rungs up to 58 %, not 3 rungs up to 51 %");
}
