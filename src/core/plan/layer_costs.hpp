// What a layer or passage to keep costs: the ladder planned again without it. Internal to core.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <functional>
#include <vector>

namespace gentlest {

/// Of at most three groups of layers, those that threaten most where the ladder ends; only where the ladder without the
/// group has a window and goes clearly further. `task.kept` holds one table for each layer to keep, in their order;
/// `make_filter` gives a search of its own its SearchTask::allowed.
std::vector<LayerCost> layer_costs(const SearchTask& task, const std::vector<PlannedLayer>& layers,
                                   const Ladder& ladder, const LadderGoal& goal,
                                   const std::function<Allowed()>& make_filter, const SearchProgress& progress);

}  // namespace gentlest
