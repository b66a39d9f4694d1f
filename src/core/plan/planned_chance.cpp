#include "core/plan/planned_chance.hpp"

#include "gentlest/job/limits.hpp"

#include <utility>

namespace gentlest {

int grade_that_counts(const PlannedLayer& layer, const Limits& limits) {
  return layer.role == Role::remove ? effect_grade_of(layer.response.strongest, limits)
                                    : risk_grade_of(layer.harm_grade, layer.response.strongest, limits);
}

LayerSubjects make_subjects(const std::vector<PlannedLayer>& layers, const Limits& limits,
                            const std::vector<Liquid>& liquids) {
  LayerSubjects subjects(layers.size());
  for (std::size_t i = 0; i < layers.size(); ++i)
    if (layers[i].sphere)
      subjects[i] = FieldSubject{met_by_liquids(layers[i], liquids), layers[i].response,
                                 grade_that_counts(layers[i], limits), layers[i].reach};
  return subjects;
}

LayerFields layer_fields(const HansenBox& box, const LayerSubjects& subjects) {
  std::vector<FieldSubject> given;
  for (const std::optional<FieldSubject>& subject : subjects)
    if (subject) given.push_back(*subject);
  LayerFields fields(subjects.size());
  if (given.empty()) return fields;
  std::vector<ChanceField> made = chance_fields(box, given);
  std::size_t next = 0;
  for (std::size_t i = 0; i < subjects.size(); ++i)
    if (subjects[i]) fields[i] = std::move(made[next++]);
  return fields;
}

}  // namespace gentlest
