#include "core/conduct/parts.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/learning/learning.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/shelf.hpp"

#include <algorithm>

namespace gentlest {

namespace {

bool is_water(const Mixture& mixture) {
  return std::all_of(mixture.parts().begin(), mixture.parts().end(),
                     [](const Part& part) { return part.liquid.solvent->family == "water"; });
}

std::vector<std::string> all_kept(const Plan& plan) {
  std::vector<std::string> names;
  for (const PlannedLayer& layer : plan.layers)
    if (layer.role == Role::keep) names.push_back(layer.name);
  return names;
}

// A vial made by a step's recipe is that step, though the measure is coarser than the recipe.
Mixture planned_or_made(const std::vector<PlanStep>& steps, const Mixture& made) {
  for (const PlanStep& step : steps)
    if (is_same_mixture(step.mixture, made)) return made;
  for (const PlanStep& step : steps)
    if (is_same_mixture(step.as_measured, made)) return step.mixture;
  return made;
}

SwabTest test_of(const Plan& plan, const std::vector<PlanStep>& steps, const Reading& reading,
                 const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  SwabTest test;
  test.number = reading.test;
  test.date = reading.date;
  test.words = reading.mixture;
  const std::optional<NoMixture> none = no_mixture_from(reading.mixture);
  test.is_aqueous = none == NoMixture::aqueous;
  test.is_blank = none == NoMixture::blank;
  test.place = reading.at_edge ? Place::edge : Place::picture;
  test.passage = reading.passage;
  const PlannedLayer& target = plan.layers[plan.target];
  if (reading.layer.empty() || reading.layer == target.name) test.removal = reading.removal;
  test.original = reading.original;
  test.colour = reading.colour;
  test.signs = reading.signs;
  try {
    if (!none) test.made = parse_mixture(reading.mixture, catalogue, shelf);
    if (test.made) test.mixture = planned_or_made(steps, *test.made);
  } catch (const InputError& error) {
    test.unreadable = error.faults().front().message;  // a harm of it counts all the same, on the careful side
  }
  if (test.mixture && is_water(*test.mixture)) test.is_blank = true;
  test.harmed = is_harm(reading);
  test.seen_after = reading.looked_after;
  const std::string under = layer_under(plan, reading.passage);
  test.is_passage_known = !under.empty();
  const bool is_place_open = reading.passage.empty() || under.empty();
  test.layers = test.harmed && is_place_open ? all_kept(plan) : std::vector<std::string>{under};
  if (under.empty()) test.layers = all_kept(plan);
  const int wanted = level_of_grade(grade_that_counts(target, plan.job.limits));
  test.moved = test.removal && static_cast<int>(*test.removal) >= wanted;
  test.did_nothing = test.removal == RemovalReading::no_effect && left_untouched(test);
  test.is_weak = reading.confidence == ReadingConfidence::low || reading.seconds.value_or(0) > long_contact_s;
  return test;
}

}  // namespace

bool left_untouched(const SwabTest& test) {
  return !test.harmed && test.original.has_value();
}

std::string layer_under(const Plan& plan, const std::string& passage) {
  const auto find = [&](const std::string& name) {
    const auto found = std::find_if(plan.layers.begin(), plan.layers.end(), [&](const PlannedLayer& one) {
      return one.role == Role::keep && (name.empty() || one.name == name);
    });
    return found == plan.layers.end() ? std::string() : found->name;
  };
  const std::string own = find(passage);
  if (!own.empty() || passage.empty()) return own;
  for (const Passage& known : plan.job.passages)
    if (known.name == passage) return find(known.of);
  return {};
}

std::vector<SwabTest> swab_tests(const Plan& plan, const std::vector<PlanStep>& steps,
                                 const std::vector<Reading>& readings, const Catalogue& catalogue) {
  // Names are read over every bottle, left off or not: no limit of the job turns one swab into two liquids.
  std::vector<Liquid> shelf = plan.shelf;
  for (const JobBottle& bottle : plan.left_off)
    if (bottle.liquid) shelf.push_back(*bottle.liquid);
  std::vector<SwabTest> tests;
  for (const Reading& reading : readings) tests.push_back(test_of(plan, steps, reading, shelf, catalogue));
  return tests;
}

}  // namespace gentlest
