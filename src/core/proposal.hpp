// Which mixtures a plan may propose. Internal to core.
#pragma once

#include "gentlest/catalogue.hpp"
#include "gentlest/job.hpp"
#include "gentlest/search.hpp"

#include <map>
#include <mutex>
#include <tuple>

namespace gentlest {

/// Mixtures that part, or whose risk passes the limit while they dry, are not proposed unless the job says so.
/// Remembers what was said of a mixture: the search asks again for every set of bottles, and from several threads. One
/// filter serves one task, since compositions are in steps of the task's grid. Limits and catalogue must outlive it.
class ProposalFilter {
 public:
  ProposalFilter(const Limits& limits, const Catalogue& catalogue) : limits_(limits), catalogue_(catalogue) {}
  ProposalFilter(const ProposalFilter&) = delete;
  ProposalFilter& operator=(const ProposalFilter&) = delete;

  /// For SearchTask::allowed; empty where the job lets everything through. Task and filter must outlive it.
  std::function<bool(const Composition&)> of(const SearchTask& task);

 private:
  bool recall(const SearchTask& task, const Composition& composition);
  bool may_be_proposed(const SearchTask& task, const Composition& composition) const;

  const Limits& limits_;
  const Catalogue& catalogue_;
  std::mutex mutex_;
  std::map<std::tuple<int, decltype(Composition::liquid), decltype(Composition::share)>, bool> answers_;
};

}  // namespace gentlest
