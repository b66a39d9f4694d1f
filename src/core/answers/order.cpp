#include "gentlest/answers/order.hpp"

#include "gentlest/space/nearer.hpp"

#include <algorithm>

namespace gentlest {

namespace {

constexpr double tail = 0.1;  // of the cases on either side of the middle 80 %

bool certainly_nearer(const Hansen& first, const Hansen& second, const PlannedLayer& layer) {
  return share_nearer(first, second, met_by_liquids(layer), layer.reach) >= certain_from;
}

bool rises_on(const PlannedLayer& layer, const std::vector<JudgedMixture>& rungs) {
  for (std::size_t i = 1; i < rungs.size(); ++i)
    if (!certainly_nearer(rungs[i].point, rungs[i - 1].point, layer)) return false;
  return true;
}

std::vector<const PlannedLayer*> judged_and_kept(const Plan& plan) {
  std::vector<const PlannedLayer*> kept;
  for (const PlannedLayer& layer : plan.layers)
    if (layer.role == Role::keep && layer.sphere) kept.push_back(&layer);
  return kept;
}

// Rungs 1 to this one are certainly gentler on all of these than the liquid.
int gentler_up_to(const Hansen& liquid, const std::vector<JudgedMixture>& rungs,
                  const std::vector<const PlannedLayer*>& kept) {
  int up_to = 0;
  for (const JudgedMixture& rung : rungs) {
    for (const PlannedLayer* layer : kept)
      if (!certainly_nearer(liquid, rung.point, *layer)) return up_to;
    ++up_to;
  }
  return up_to;
}

}  // namespace

std::optional<LadderOrder> order_of(const Plan& plan) {
  const std::vector<JudgedMixture>& rungs = ladder_rungs(plan);
  const PlannedLayer& target = plan.layers[plan.target];
  if (rungs.size() < 2 || !target.sphere) return std::nullopt;
  const std::vector<const PlannedLayer*> kept = judged_and_kept(plan);
  LadderOrder order;
  order.effect_rises = rises_on(target, rungs);
  order.risk_rises = !kept.empty() && std::all_of(kept.begin(), kept.end(),
                                                  [&](const PlannedLayer* layer) { return rises_on(*layer, rungs); });
  return order;
}

std::optional<FirstToAct> first_to_act(const Plan& plan) {
  const std::optional<LadderOrder> order = order_of(plan);
  if (!order || !order->effect_rises) return std::nullopt;
  const std::vector<JudgedMixture>& rungs = ladder_rungs(plan);
  FirstToAct first;
  for (std::size_t i = rungs.size(); i-- > 0;) {
    const double acted = rungs[i].effect.value_or(0);
    if (acted >= tail) first.from = static_cast<int>(i + 1);
    if (acted >= 1 - tail) first.to = static_cast<int>(i + 1);
  }
  first.perhaps_none = first.to == 0;
  if (first.perhaps_none) first.to = static_cast<int>(rungs.size());
  return first;
}

std::optional<GentlerThan> gentler_than(const Plan& plan) {
  const std::vector<const PlannedLayer*> kept = judged_and_kept(plan);
  const std::vector<JudgedMixture>& rungs = ladder_rungs(plan);
  if (kept.empty() || rungs.empty()) return std::nullopt;
  std::optional<GentlerThan> best;
  for (const Liquid& liquid : plan.shelf) {
    if (is_hydrocarbon_or_cut(*liquid.solvent)) continue;
    const std::vector<std::string>& bottles = ladder_bottles(plan);
    const bool is_on_ladder = std::find(bottles.begin(), bottles.end(), liquid.label) != bottles.end();
    const int up_to = is_on_ladder ? 0 : gentler_up_to(liquid.hansen, rungs, kept);
    if (up_to > 0 && (!best || up_to > best->up_to)) best = GentlerThan{liquid.label, up_to};
  }
  return best;
}

}  // namespace gentlest
