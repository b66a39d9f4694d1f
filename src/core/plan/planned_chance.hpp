// From planned layers to chances: what is looked up. Shared by the plan and by mixtures judged one at a time.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <optional>
#include <vector>

namespace gentlest {

/// What is looked up for every planned layer, in their order; nothing for one without a sphere. `liquids`: those of a
/// mixture that may not stand on the job's shelf.
using LayerSubjects = std::vector<std::optional<FieldSubject>>;
LayerSubjects make_subjects(const std::vector<PlannedLayer>& layers, const Limits& limits,
                            const std::vector<Liquid>& liquids = {});

/// One table for each subject, in their order, all on one lattice.
using LayerFields = std::vector<std::optional<ChanceField>>;
LayerFields layer_fields(const HansenBox& box, const LayerSubjects& subjects);

}  // namespace gentlest
