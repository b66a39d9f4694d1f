// From planned layers to chances: what is looked up. Shared by the plan and by mixtures judged one at a time.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

/// What is looked up for every planned layer, in their order. `liquids`: those of a mixture that may not stand on the
/// job's shelf.
std::vector<FieldSubject> make_subjects(const std::vector<PlannedLayer>& layers, const Limits& limits,
                                        const std::vector<Liquid>& liquids = {});

}  // namespace gentlest
