// Which mixtures work: the layer moved as wanted on the picture, the original untouched, nothing later against it.
#include "core/conduct/parts.hpp"

#include <algorithm>

namespace gentlest {

namespace {

bool is_success(const SwabTest& test) {
  return test.place == Place::picture && test.mixture && test.moved && left_untouched(test) && test.is_passage_known;
}

bool has_harmed(const Conduct& conduct, const Mixture& mixture) {
  return std::any_of(conduct.harms.begin(), conduct.harms.end(), [&](std::size_t by) {
    const SwabTest& harm = conduct.tests[by];
    return harm.mixture && is_same_mixture(*harm.mixture, mixture);
  });
}

WorkingMixture gather(const Plan& plan, const Conduct& conduct, const Mixture& mixture) {
  WorkingMixture working{mixture, step_of(conduct, mixture), {}, {}, {}, {}, {}, {}, true};
  std::vector<std::string> spared;
  for (std::size_t i = 0; i < conduct.tests.size(); ++i) {
    const SwabTest& test = conduct.tests[i];
    if (test.place != Place::picture || !test.mixture || !is_same_mixture(*test.mixture, mixture)) continue;
    if (is_success(test)) {
      working.tests.push_back(i);
      if (!working.closed_by) working.closed_by = closed_by(plan, conduct, mixture, test.layers.front());
      if (!test.is_weak) working.needs_second_spot = false;
    } else if (test.removal && !test.moved) {
      working.otherwise.push_back(i);
    }
    if (left_untouched(test)) spared.push_back(test.passage);
  }
  // Two weak successes speak for each other.
  if (working.tests.size() > 1) working.needs_second_spot = false;
  for (const PassageState& passage : conduct.passages) {
    if (passage.name.empty()) continue;
    const bool is_passed = std::find(spared.begin(), spared.end(), passage.name) != spared.end();
    (is_closed(passage) ? working.closed : is_passed ? working.passed : working.untested).push_back(passage.name);
  }
  return working;
}

bool is_contradicted(const WorkingMixture& working) {
  return !working.otherwise.empty() && working.otherwise.back() > working.tests.front();
}

}  // namespace

std::vector<WorkingMixture> working_mixtures(const Plan& plan, const Conduct& conduct) {
  std::vector<WorkingMixture> all;
  for (const SwabTest& test : conduct.tests) {
    if (!is_success(test) || has_harmed(conduct, *test.mixture)) continue;
    const bool is_known = std::any_of(
        all.begin(), all.end(), [&](const WorkingMixture& one) { return is_same_mixture(one.mixture, *test.mixture); });
    if (!is_known) all.push_back(gather(plan, conduct, *test.mixture));
  }
  const PlannedLayer& target = plan.layers[plan.target];
  std::stable_sort(all.begin(), all.end(), [&](const WorkingMixture& a, const WorkingMixture& b) {
    return RED_to(target, mix(a.mixture)).value_or(0) > RED_to(target, mix(b.mixture)).value_or(0);
  });
  return all;
}

const WorkingMixture* working_now(const Conduct& conduct) {
  for (const WorkingMixture& one : conduct.working)
    if (!is_contradicted(one) && !one.closed_by) return &one;
  return nullptr;
}

}  // namespace gentlest
