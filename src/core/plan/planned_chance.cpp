#include "core/plan/planned_chance.hpp"

namespace gentlest {

int grade_that_counts(const PlannedLayer& layer, const Limits& limits) {
  return layer.role == Role::remove ? limits.effect_grade : limits.risk_grade;
}

std::vector<FieldSubject> make_subjects(const std::vector<PlannedLayer>& layers, const Limits& limits,
                                        const Catalogue& catalogue, const std::vector<Liquid>& liquids) {
  std::vector<FieldSubject> subjects;
  for (const PlannedLayer& layer : layers)
    subjects.push_back(
        {met_by_liquids(layer, liquids), response_of(layer, catalogue), grade_that_counts(layer, limits)});
  return subjects;
}

}  // namespace gentlest
