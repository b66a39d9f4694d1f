#include "report/screen/layer_cost_words.hpp"

#include "report/form/format.hpp"

namespace gentlest {

namespace {

std::string reach_words(std::size_t rungs, double strongest_effect) {
  return counted(rungs, "rung", "rungs") + " up to " + per_cent(strongest_effect);
}

}  // namespace

const char* const layer_cost_use =
    "Such a ladder is only for work that stays off what it leaves out: plan that part by itself.";

std::vector<std::string> layer_cost_words(const Plan& plan) {
  std::vector<std::string> words;
  for (const LayerCost& cost : plan.costs) {
    std::string text = "without " + joined(cost.without) + ": " +
                       reach_words(static_cast<std::size_t>(cost.rungs), cost.strongest_effect);
    if (!ladder_rungs(plan).empty())
      text += ", not " + reach_words(ladder_rungs(plan).size(), *ladder_rungs(plan).back().effect);
    words.push_back(std::move(text));
  }
  return words;
}

}  // namespace gentlest
