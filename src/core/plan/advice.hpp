// The sentences of a plan: what to watch, what the model does not see, cautions, other ways. Internal to core.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

std::vector<Advice> advice_to_watch(const Plan& plan);
std::vector<Advice> advice_not_seen();
std::vector<Advice> advice_cautions(const Plan& plan, const Catalogue& catalogue);
std::vector<Advice> advice_other_ways();

}  // namespace gentlest
