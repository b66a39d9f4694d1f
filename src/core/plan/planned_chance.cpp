#include "core/plan/planned_chance.hpp"

#include "gentlest/job/limits.hpp"

#include <list>
#include <mutex>
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

namespace {

LayerFields tabulated(const HansenBox& box, const LayerSubjects& subjects) {
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

}  // namespace

LayerFields layer_fields(const HansenBox& box, const LayerSubjects& subjects) {
  // The last ones are kept: they take a third of a plan's time, and whoever tries another limit on the same painting
  // and the same shelf asks for the very same, with pictures of series and single mixtures in between. About 1 MB a
  // shelf.
  struct Kept {
    HansenBox box;
    LayerSubjects subjects;
    LayerFields fields;
  };
  constexpr std::size_t most_kept = 16;
  static std::mutex mutex;
  static std::list<Kept> kept;  // the last asked for first
  {
    const std::lock_guard<std::mutex> lock(mutex);
    for (auto one = kept.begin(); one != kept.end(); ++one) {
      if (!(one->box == box && one->subjects == subjects)) continue;
      kept.splice(kept.begin(), kept, one);
      return one->fields;
    }
  }
  LayerFields fields = tabulated(box, subjects);
  const std::lock_guard<std::mutex> lock(mutex);
  kept.push_front({box, subjects, fields});
  if (kept.size() > most_kept) kept.pop_back();
  return fields;
}

}  // namespace gentlest
