// From planned layers to chances: which grade counts, and what is looked up. Shared by the plan and the bench.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <optional>
#include <vector>

namespace gentlest {

/// Grades up to this one count as "moved" for a layer to remove, as "affected" for one to keep.
int grade_that_counts(const PlannedLayer& layer, const Limits& limits);

/// What is looked up for every planned layer, in their order; nothing for one without a sphere. `liquids`: those of a
/// mixture that may not stand on the job's shelf.
using LayerSubjects = std::vector<std::optional<FieldSubject>>;
LayerSubjects make_subjects(const std::vector<PlannedLayer>& layers, const Limits& limits, const Catalogue& catalogue,
                            const std::vector<Liquid>& liquids = {});

/// One table for each subject, in their order, all on one lattice.
using LayerFields = std::vector<std::optional<ChanceField>>;
LayerFields layer_fields(const HansenBox& box, const LayerSubjects& subjects);

}  // namespace gentlest
