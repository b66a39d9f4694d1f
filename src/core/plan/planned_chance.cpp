#include "core/plan/planned_chance.hpp"

#include "gentlest/plan/limits.hpp"

namespace gentlest {

int grade_that_counts(const PlannedLayer& layer, const Limits& limits) {
  return layer.role == Role::remove ? effect_grade_of(layer.response.strongest, limits)
                                    : risk_grade_of(layer.harm_grade, limits);
}

std::vector<FieldSubject> make_subjects(const std::vector<PlannedLayer>& layers, const Limits& limits,
                                        const std::vector<Liquid>& liquids) {
  std::vector<FieldSubject> subjects;
  for (const PlannedLayer& layer : layers)
    subjects.push_back({met_by_liquids(layer, liquids), layer.response, grade_that_counts(layer, limits), layer.reach});
  return subjects;
}

}  // namespace gentlest
