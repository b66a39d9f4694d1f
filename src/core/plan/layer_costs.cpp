#include "core/plan/layer_costs.hpp"

#include <algorithm>
#include <cassert>
#include <cstddef>

namespace gentlest {

namespace {

constexpr std::size_t most_groups = 3;
constexpr double clearly_further = 0.01;  // of effect: what whole per cents show

// Layers to keep of one material that a sphere judges: without one of them the others would hold the ladder all the
// same.
struct Group {
  std::vector<std::size_t> kept;  // indices into SearchTask::kept
  LayerCost cost;
  std::string material;
  double risk = 0;  // where the ladder ends
};

std::vector<Group> groups_of(const std::vector<PlannedLayer>& layers) {
  std::vector<Group> groups;
  std::size_t kept = 0;
  for (const PlannedLayer& layer : layers) {
    if (layer.role != Role::keep || !layer.sphere) continue;
    auto group = std::find_if(groups.begin(), groups.end(), [&](const Group& one) {
      return !one.material.empty() && one.material == layer.material;
    });
    if (group == groups.end()) group = groups.insert(group, Group{{}, {}, layer.material, 0});
    group->kept.push_back(kept++);
    group->cost.without.push_back(layer.name);
  }
  return groups;
}

// The last rung, else the gentlest mixture that works; nothing where none does.
std::optional<Hansen> where_it_ends(const SearchTask& task, const Ladder& ladder, const LadderGoal& goal) {
  if (!ladder.rungs.empty() && ladder.window) return point_of(task, ladder.rungs.back().composition);
  if (ladder.window) return ladder.lines.front().rungs.back().point;
  for (const Candidate& candidate : ladder.frontier)
    if (candidate.verdict.effect >= goal.wanted_effect) return point_of(task, candidate.composition);
  return std::nullopt;
}

SearchTask with_kept(const SearchTask& task, const Group& group, bool wanted) {
  SearchTask other = task;
  other.kept.clear();
  for (std::size_t i = 0; i < task.kept.size(); ++i) {
    const bool is_in = std::find(group.kept.begin(), group.kept.end(), i) != group.kept.end();
    if (is_in == wanted) other.kept.push_back(task.kept[i]);
  }
  return other;
}

}  // namespace

std::vector<LayerCost> layer_costs(const SearchTask& task, const std::vector<PlannedLayer>& layers,
                                   const Ladder& ladder, const LadderGoal& goal,
                                   const std::function<Allowed()>& make_filter, const SearchProgress& progress) {
  std::vector<Group> groups = groups_of(layers);
  const std::optional<Hansen> end = where_it_ends(task, ladder, goal);
  if (groups.size() < 2 || !end) return {};
  for (Group& group : groups) group.risk = judge(with_kept(task, group, true), *end).risk;
  std::stable_sort(groups.begin(), groups.end(), [](const Group& a, const Group& b) { return a.risk > b.risk; });
  if (groups.size() > most_groups) groups.resize(most_groups);
  const double reached = ladder.window ? last_verdict(ladder).effect : 0;
  std::vector<LayerCost> costs;
  for (Group& group : groups) {
    SearchTask without = with_kept(task, group, false);
    assert(!without.kept.empty());
    without.allowed = make_filter();
    const Ladder other = design_ladder(without, goal, progress);
    if (!other.window || last_verdict(other).effect < reached + clearly_further) continue;
    group.cost.rungs = static_cast<int>(rungs_of(other));
    group.cost.strongest_effect = last_verdict(other).effect;
    costs.push_back(std::move(group.cost));
  }
  std::stable_sort(costs.begin(), costs.end(),
                   [](const LayerCost& a, const LayerCost& b) { return a.strongest_effect > b.strongest_effect; });
  return costs;
}

std::optional<HigherLimit> at_higher_limit(const SearchTask& task, const Ladder& ladder, const LadderGoal& goal,
                                           const std::function<Allowed(double)>& make_filter,
                                           const SearchProgress& progress) {
  constexpr std::size_t few = 4;
  constexpr double more = 0.1;
  const std::size_t rungs = ladder.window ? rungs_of(ladder) : 0;
  if (rungs >= few || task.kept.empty() || goal.risk_limit + more >= 1) return std::nullopt;
  LadderGoal bolder = goal;
  bolder.risk_limit = rounded_chance(goal.risk_limit + more);
  SearchTask other = task;
  other.allowed = make_filter(bolder.risk_limit);
  const Ladder higher = design_ladder(other, bolder, progress);
  if (!higher.window || rungs_of(higher) <= rungs) return std::nullopt;
  return HigherLimit{bolder.risk_limit, static_cast<int>(rungs_of(higher)), last_verdict(higher).effect};
}

}  // namespace gentlest
