// The complete search by bounds, whatever the size of the task. Internal to core: callers use find_frontier.
#pragma once

#include "gentlest/search/search.hpp"

#include <functional>
#include <vector>

namespace gentlest {

/// Precondition: the task's tables share their lattice and the shelf is not empty.
std::vector<Candidate> find_frontier_by_pruning(const SearchTask& task, const SearchProgress& progress = {});

/// Visits every mixture that no step of the frontier beats by `tolerance` in effect and whose risk stays within the
/// limit. Keeps to the task's largest shares; `allowed` is not asked, the visitor may where it matters. Tasks may run
/// at once: make_visitor is called beforehand for each task and gives its own visitor.
using Visitor = std::function<void(const Composition&, const Verdict&)>;
void visit_near_frontier(const SearchTask& task, const std::vector<Candidate>& frontier, double tolerance,
                         double risk_limit, const std::function<Visitor()>& make_visitor);

}  // namespace gentlest
