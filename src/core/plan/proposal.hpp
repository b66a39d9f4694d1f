// Which mixtures a job lets be proposed, beyond effect and risk. Internal to core.
#pragma once

#include "core/plan/planned_chance.hpp"

#include "gentlest/job/job.hpp"
#include "gentlest/search/search.hpp"

#include <vector>

namespace gentlest {

/// Largest share of each liquid of the shelf, per cent, as the job's bottles say; empty when none of them limits it.
std::vector<int> largest_shares(const std::vector<Liquid>& shelf, const Job& job, const Catalogue& catalogue);

/// True when flash point and label of the mixture keep to the job's limits. What is not known of them counts as
/// breaking the limit, unless the job allows unknown hazards. No limit, no sums.
bool keeps_hazard_limits(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue);

/// False when the mixture parts or breaks a hazard limit, as far as the job minds.
bool may_be_made(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue);

/// SearchTask::allowed of this job: may_be_made, and no drift beyond the risk limit while the mixture dries. Empty when
/// the job minds neither. Asking takes up to a millisecond, so the answers are remembered: the search asks again for
/// every set of bottles, and from several threads. For tasks over one shelf and its tables; the catalogue outlives it.
Allowed proposal_filter(const Limits& limits, const Catalogue& catalogue);

/// The search of a job over one shelf: tables of the target and of what is kept, largest shares, what may be proposed.
/// `fields`: one table a layer, in their order, nothing for a layer without a sphere.
SearchTask search_task(std::vector<Liquid> shelf, const std::vector<PlannedLayer>& layers, const LayerFields& fields,
                       const Job& job, const Catalogue& catalogue);

}  // namespace gentlest
