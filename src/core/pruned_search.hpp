// The complete search by bounds, whatever the size of the task. Internal to core: callers use find_frontier.
#pragma once

#include "gentlest/search.hpp"

#include <vector>

namespace gentlest {

/// Precondition: the task's tables share their lattice and the shelf is not empty.
std::vector<Candidate> find_frontier_by_pruning(const SearchTask& task, const SearchProgress& progress = {});

}  // namespace gentlest
