#include "core/plan/proposal.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "gentlest/safety/mixture_hazard.hpp"
#include "gentlest/vial/evaporation.hpp"
#include "gentlest/vial/miscibility.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <mutex>
#include <tuple>
#include <utility>

namespace gentlest {

namespace {

bool keeps_flash_point(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue) {
  if (!limits.lowest_flash_point_C) return true;
  const FlashPoint flash = flash_point(mixture, catalogue);
  if (flash.nothing_burns()) return true;
  if (!flash.estimate) return limits.allow_unknown_hazards;
  return flash.estimate->value >= *limits.lowest_flash_point_C;
}

bool is_avoided(const std::string& code, const std::vector<std::string>& avoided) {
  return std::any_of(avoided.begin(), avoided.end(),
                     [&](const std::string& start) { return code.rfind(start, 0) == 0; });
}

bool any_part_carries(const Mixture& mixture, const std::vector<std::string>& avoided) {
  return std::any_of(mixture.parts().begin(), mixture.parts().end(), [&](const Part& part) {
    const std::vector<std::string> known = known_statements(*part.liquid.solvent);
    return std::any_of(known.begin(), known.end(), [&](const std::string& code) { return is_avoided(code, avoided); });
  });
}

bool keeps_label(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue) {
  if (limits.avoid_label.empty()) return true;
  const MixtureLabel label = label_of(mixture, catalogue);
  if (!label.complete() && !limits.allow_unknown_hazards) return false;
  // Where no rule could be decided, what a part carries counts for the whole.
  if (!label.complete() && label.statements.empty()) return !any_part_carries(mixture, limits.avoid_label);
  return std::none_of(label.statements.begin(), label.statements.end(),
                      [&](const LabelStatement& statement) { return is_avoided(statement.code, limits.avoid_label); });
}

}  // namespace

std::vector<int> largest_shares(const std::vector<Liquid>& shelf, const Job& job, const Catalogue& catalogue) {
  std::vector<int> shares(shelf.size(), 100);
  bool any = false;
  for (const ShelfBottle& bottle : job.shelf) {
    if (bottle.at_most_percent >= 100) continue;
    const Meaning<Solvent> named = catalogue.meaning_of_solvent(bottle.solvent);
    if (!named.record || !named.record->hansen) continue;
    const std::string label = make_liquid(named, bottle.grade, catalogue).label;
    for (std::size_t i = 0; i < shelf.size(); ++i) {
      if (shelf[i].label != label) continue;
      shares[i] = bottle.at_most_percent;
      any = true;
    }
  }
  return any ? shares : std::vector<int>();
}

bool keeps_hazard_limits(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue) {
  return keeps_flash_point(mixture, limits, catalogue) && keeps_label(mixture, limits, catalogue);
}

bool may_be_made(const Mixture& mixture, const Limits& limits, const Catalogue& catalogue) {
  if (!limits.allow_splitting &&
      verdict_on_phases(mixture, catalogue, Celsius{limits.room_C}).phases == Phases::two_liquids)
    return false;
  return keeps_hazard_limits(mixture, limits, catalogue);
}

namespace {

bool may_be_proposed(const SearchTask& task, const Composition& composition, const Limits& limits,
                     const Catalogue& catalogue) {
  const Mixture mixture = mixture_of(task, composition);
  if (!may_be_made(mixture, limits, catalogue)) return false;
  if (limits.allow_drift || judge(task, point_of(task, composition)).risk > limits.risk_limit) return true;
  return !drifts_to(mixture, catalogue, Celsius{limits.room_C}, [&](const Hansen& point) {
            return judge(task, point).risk > limits.risk_limit;
          }).value_or(false);
}

class ProposalMemory {
 public:
  template <class Ask>
  bool recall(int steps, const Composition& composition, Ask&& ask) {
    const auto key = std::make_tuple(steps, composition.parts, composition.liquid, composition.share);
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
  std::map<std::tuple<int, int, decltype(Composition::liquid), decltype(Composition::share)>, bool> answers_;
};

}  // namespace

Allowed proposal_filter(const Limits& limits, const Catalogue& catalogue) {
  const bool minds_hazards = limits.lowest_flash_point_C || !limits.avoid_label.empty();
  if (limits.allow_splitting && limits.allow_drift && !minds_hazards) return {};
  return [limits, &catalogue, memory = std::make_shared<ProposalMemory>()](const SearchTask& task,
                                                                           const Composition& composition) {
    return memory->recall(steps_of(task), composition,
                          [&] { return may_be_proposed(task, composition, limits, catalogue); });
  };
}

SearchTask search_task(std::vector<Liquid> shelf, const std::vector<PlannedLayer>& layers, const LayerFields& fields,
                       const Job& job, const Catalogue& catalogue) {
  SearchTask task;
  task.parts = job.limits.parts;
  task.step_percent = job.limits.step_percent;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (!fields[i]) continue;
    if (layers[i].is_target) task.target.push_back(*fields[i]);
    if (layers[i].role == Role::keep) task.kept.push_back(*fields[i]);
  }
  task.most_percent = largest_shares(shelf, job, catalogue);
  task.allowed = proposal_filter(job.limits, catalogue);
  task.shelf = std::move(shelf);
  return task;
}

}  // namespace gentlest
