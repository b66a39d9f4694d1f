// A plan where some layer has no sphere: what to test first, and a ladder where no risk can be told. Internal to core.
#pragma once

#include "core/plan/planned_chance.hpp"

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

/// Known or suspected of the layer or of a passage that is judged like it.
bool is_sensitive_to_water(const PlannedLayer& layer);

/// How little is known of what each liquid of the shelf spares: one for every layer to keep without a sphere on which
/// it was not seen to do nothing.
std::vector<int> doubts_of(const std::vector<Liquid>& shelf, const std::vector<PlannedLayer>& layers,
                           const Catalogue& catalogue);

/// The ladder's rungs where no layer to keep has a sphere, gentle to strong; none without a window.
std::vector<Mixture> rungs_by_effect(const Job& job, const std::vector<PlannedLayer>& layers,
                                     const std::vector<Liquid>& shelf, const Catalogue& catalogue);

/// Bottles seen to act on the layer to remove, alone, that spare the layers to keep as far as is known: risk within the
/// limit, not seen to act on those without a sphere. Least doubt first, then least risk.
std::vector<JudgedMixture> liquids_to_try(const Job& job, const std::vector<PlannedLayer>& layers,
                                          const std::vector<Liquid>& shelf, const Catalogue& catalogue);

/// In the order of the work; `has_rungs`: there is a ladder to begin with. Empty where every layer has a sphere.
std::vector<FirstTest> first_tests_of(const std::vector<PlannedLayer>& layers, const std::vector<JudgedMixture>& to_try,
                                      bool has_rungs, const Catalogue& catalogue);

}  // namespace gentlest
