#include "gentlest/conduct/conduct.hpp"

#include "core/conduct/parts.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

std::vector<std::size_t> harms_in(const std::vector<SwabTest>& tests) {
  std::vector<std::size_t> harms;
  for (std::size_t i = 0; i < tests.size(); ++i)
    if (tests[i].harmed) harms.push_back(i);
  return harms;
}

// Harm on a passage closes it. Where the job names none, the picture goes on with what is gentler.
std::vector<PassageState> passages_of(const Plan& plan, const Conduct& conduct) {
  std::vector<PassageState> passages;
  for (const Passage& passage : plan.job.passages)
    passages.push_back({passage.name, layer_under(plan, passage.name), std::nullopt, passage.is_left_out});
  if (passages.empty()) passages.push_back({{}, layer_under(plan, {}), std::nullopt, false});
  for (const std::size_t by : conduct.harms)
    for (PassageState& one : passages)
      if (!one.name.empty() && !one.closed_by && conduct.tests[by].place == Place::picture &&
          conduct.tests[by].passage == one.name)
        one.closed_by = by;
  return passages;
}

int edge_tests_left(const Plan& plan, const std::vector<SwabTest>& tests) {
  const auto made =
      std::count_if(tests.begin(), tests.end(), [](const SwabTest& test) { return test.place == Place::edge; });
  return std::max(plan.job.limits.edge_tests - static_cast<int>(made), 0);
}

// A mixture that passed at the edge harmed the picture.
std::optional<std::size_t> edge_refuted(const Conduct& conduct) {
  for (const std::size_t by : conduct.harms) {
    const SwabTest& harm = conduct.tests[by];
    if (harm.place != Place::picture || !(harm.mixture || harm.is_aqueous)) continue;
    for (std::size_t i = 0; i < by; ++i) {
      const SwabTest& before = conduct.tests[i];
      if (before.place == Place::edge && left_untouched(before) && is_same_swab_mixture(before, harm)) return by;
    }
  }
  return std::nullopt;
}

}  // namespace

Conduct conduct_of(const Plan& plan, const std::vector<Reading>& readings, const Catalogue& catalogue) {
  Conduct conduct;
  conduct.steps = plan_steps(plan);
  conduct.tests = swab_tests(plan, conduct.steps, readings, catalogue);
  conduct.harms = harms_in(conduct.tests);
  conduct.closures = closures_of(plan, conduct);
  conduct.passages = passages_of(plan, conduct);
  conduct.edge_tests_left = edge_tests_left(plan, conduct.tests);
  conduct.edge_refuted_by = edge_refuted(conduct);
  conduct.end = end_of(plan, conduct);
  conduct.working = working_mixtures(plan, conduct);
  conduct.open = open_tests(plan, conduct);
  return conduct;
}

bool is_same_mixture(const Mixture& a, const Mixture& b) {
  constexpr double nearly = 0.01;
  return a.parts().size() == b.parts().size() && std::all_of(a.parts().begin(), a.parts().end(), [&](const Part& part) {
           return std::any_of(b.parts().begin(), b.parts().end(), [&](const Part& other) {
             return other.liquid.label == part.liquid.label && std::abs(other.fraction - part.fraction) <= nearly;
           });
         });
}

bool is_closed(const PassageState& passage) {
  return passage.is_left_out || passage.closed_by.has_value();
}

std::optional<std::size_t> step_of(const Conduct& conduct, const Mixture& mixture) {
  for (std::size_t i = 0; i < conduct.steps.size(); ++i)
    if (is_same_mixture(conduct.steps[i].mixture, mixture)) return i;
  return std::nullopt;
}

const Closure* closure_of(const Conduct& conduct, std::size_t step, const std::string& layer) {
  const auto found = std::find_if(conduct.closures.begin(), conduct.closures.end(), [&](const Closure& one) {
    return one.step == step && (one.layer.empty() || layer.empty() || one.layer == layer);
  });
  return found == conduct.closures.end() ? nullptr : &*found;
}

}  // namespace gentlest
