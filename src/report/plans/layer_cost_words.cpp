#include "report/plans/layer_cost_words.hpp"

#include "report/form/format.hpp"

#include <optional>

namespace gentlest {

namespace {

std::string reach_words(std::size_t rungs, double strongest_effect) {
  return counted(rungs, "rung", "rungs") + " up to " + per_cent(strongest_effect);
}

}  // namespace

const char* const layer_cost_use =
    "Such a ladder is only for work that stays off what it leaves out: plan that part by itself.";

std::vector<std::string> layer_cost_words(const Plan& plan) {
  const std::string instead =
      ladder_rungs(plan).empty() ? ""
                                 : ", not " + reach_words(ladder_rungs(plan).size(), *ladder_rungs(plan).back().effect);
  std::vector<std::string> words;
  for (const LayerCost& cost : plan.costs)
    words.push_back("without " + joined(cost.without) + ": " +
                    reach_words(static_cast<std::size_t>(cost.rungs), cost.strongest_effect) + instead);
  if (const std::optional<HigherLimit>& higher = plan.at_higher_limit)
    words.push_back("at a risk limit of " + setting_per_cent(higher->risk_limit) + ": " +
                    reach_words(static_cast<std::size_t>(higher->rungs), higher->strongest_effect) + instead);
  return words;
}

}  // namespace gentlest
