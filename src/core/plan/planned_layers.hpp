// The job's layers by themselves, before any shelf is looked at. Internal to core.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

/// Layers and passages as planned_layers gives them, without `is_target` and `liquid_sd`. Precondition: the job's
/// materials are known.
std::vector<PlannedLayer> layers_as_known(const Job& job, const Catalogue& catalogue);

/// True when no layer to keep has a sphere: no risk can be told.
bool is_risk_open(const std::vector<PlannedLayer>& layers);

}  // namespace gentlest
