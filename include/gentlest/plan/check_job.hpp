// What contradicts itself in a job, before anything is planned.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/job/job.hpp"

#include <vector>

namespace gentlest {

/// Everything in the job that cannot be planned: unknown names, a layer without material, nothing to remove, nothing to
/// keep, a shelf that is empty or left so by the limits, limits that contradict each other. Empty when it is sound.
std::vector<Diagnostic> check_job(const Job& job, const Catalogue& catalogue);

}  // namespace gentlest
