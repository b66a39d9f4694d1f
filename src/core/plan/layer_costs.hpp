// What a layer or passage to keep costs, and the risk limit: the ladder planned again without. Internal to core.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace gentlest {

/// Of at most three groups of layers, those that threaten most where the ladder ends; only where the ladder without the
/// group has a window and goes clearly further. `task.kept` holds one table for each layer to keep, in their order;
/// `make_filter` gives a search of its own its SearchTask::allowed.
std::vector<LayerCost> layer_costs(const SearchTask& task, const std::vector<PlannedLayer>& layers,
                                   const Ladder& ladder, const LadderGoal& goal,
                                   const std::function<Allowed()>& make_filter, const SearchProgress& progress);

/// The ladder at a risk limit that is 0.1 higher, where this one has no window or fewer than four rungs and that one
/// has more of them. `make_filter` is given that limit.
std::optional<HigherLimit> at_higher_limit(const SearchTask& task, const Ladder& ladder, const LadderGoal& goal,
                                           const std::function<Allowed(double)>& make_filter,
                                           const SearchProgress& progress);

}  // namespace gentlest
