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
const Candidate* where_it_ends(const Ladder& ladder, const LadderGoal& goal) {
  if (ladder.window) return &ladder.rungs.back();
  for (const Candidate& candidate : ladder.frontier)
    if (candidate.verdict.effect >= goal.wanted_effect) return &candidate;
  return nullptr;
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
  const Candidate* end = where_it_ends(ladder, goal);
  if (groups.size() < 2 || !end) return {};
  const Hansen point = point_of(task, end->composition);
  for (Group& group : groups) group.risk = judge(with_kept(task, group, true), point).risk;
  std::stable_sort(groups.begin(), groups.end(), [](const Group& a, const Group& b) { return a.risk > b.risk; });
  if (groups.size() > most_groups) groups.resize(most_groups);
  const double reached = ladder.window ? end->verdict.effect : 0;
  std::vector<LayerCost> costs;
  for (Group& group : groups) {
    SearchTask without = with_kept(task, group, false);
    assert(!without.kept.empty());
    without.allowed = make_filter();
    const Ladder other = design_ladder(without, goal, progress);
    if (!other.window || other.rungs.back().verdict.effect < reached + clearly_further) continue;
    group.cost.rungs = static_cast<int>(other.rungs.size());
    group.cost.strongest_effect = other.rungs.back().verdict.effect;
    costs.push_back(std::move(group.cost));
  }
  std::stable_sort(costs.begin(), costs.end(),
                   [](const LayerCost& a, const LayerCost& b) { return a.strongest_effect > b.strongest_effect; });
  return costs;
}

}  // namespace gentlest
