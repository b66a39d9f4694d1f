// Which mixtures a job lets be proposed, beyond effect and risk. Internal to core.
#pragma once

#include "gentlest/job.hpp"
#include "gentlest/search.hpp"

#include <map>
#include <mutex>
#include <tuple>
#include <vector>

namespace gentlest {

/// Largest share of each liquid of the shelf, per cent, as the job's bottles say; empty when none of them limits it.
std::vector<int> largest_shares(const std::vector<Liquid>& shelf, const Job& job, const Catalogue& catalogue);

/// True when flash point and label of the mixture keep to the job's limits. What is not known of them counts as
/// breaking the limit, unless the job allows unknown hazards. No limit, no sums.
bool keeps_hazard_limits(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue);

/// False when the mixture parts or breaks a hazard limit, as far as the job minds.
bool may_be_made(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue);

/// True when the job leaves anything to ask `may_be_proposed`.
bool minds_more_than_risk(const Limits& limits);

/// may_be_made, and no drift beyond the risk limit while the mixture dries. Takes up to a millisecond.
bool may_be_proposed(const SearchTask& task, const Composition& composition, const Limits& limits,
                     const Catalogue& catalogue);

/// Remembers what was said of a mixture: the search asks again for every set of bottles, and from several threads.
class ProposalMemory {
 public:
  template <class Ask>
  bool recall(const Composition& composition, Ask&& ask) {
    const auto key = std::make_tuple(composition.parts, composition.liquid, composition.share);
    {
      const std::lock_guard<std::mutex> lock(mutex_);
      const auto known = answers_.find(key);
      if (known != answers_.end()) return known->second;
    }
    const bool answer = ask();
    const std::lock_guard<std::mutex> lock(mutex_);
    answers_.emplace(key, answer);
    return answer;
  }

 private:
  std::mutex mutex_;
  std::map<std::tuple<int, decltype(Composition::liquid), decltype(Composition::share)>, bool> answers_;
};

}  // namespace gentlest
