#include "proposal.hpp"

#include "gentlest/evaporation.hpp"
#include "gentlest/miscibility.hpp"

namespace gentlest {

std::function<bool(const Composition&)> ProposalFilter::of(const SearchTask& task) {
  if (limits_.allow_splitting && limits_.allow_drift) return {};
  return [this, &task](const Composition& composition) { return recall(task, composition); };
}

bool ProposalFilter::recall(const SearchTask& task, const Composition& composition) {
  const auto key = std::make_tuple(composition.parts, composition.liquid, composition.share);
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    const auto known = answers_.find(key);
    if (known != answers_.end()) return known->second;
  }
  const bool answer = may_be_proposed(task, composition);
  const std::lock_guard<std::mutex> lock(mutex_);
  answers_.emplace(key, answer);
  return answer;
}

bool ProposalFilter::may_be_proposed(const SearchTask& task, const Composition& composition) const {
  const Mixture mixture = mixture_of(task, composition);
  const Celsius room{limits_.room_C};
  if (!limits_.allow_splitting && phases_of(mixture, catalogue_, room).phases == Phases::two_liquids) return false;
  if (limits_.allow_drift || judge(task, point_of(task, composition)).risk > limits_.risk_limit) return true;
  return !drifts_to(mixture, catalogue_, room, [&](const Hansen& point) {
            return judge(task, point).risk > limits_.risk_limit;
          }).value_or(false);
}

}  // namespace gentlest
