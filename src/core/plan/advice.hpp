// What to watch, and cautions. Internal to core.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

std::vector<Watch> what_to_watch(const Plan& plan);
std::vector<Caution> advice_cautions(const Plan& plan, const Catalogue& catalogue);

}  // namespace gentlest
