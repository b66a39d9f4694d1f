// What the files of this room share. Internal to core.
#pragma once

#include "gentlest/sums/sums.hpp"

#include "core/plan/planned_chance.hpp"

#include <optional>
#include <string>
#include <utility>

namespace gentlest {

/// Decimals of results: parameters and RED, and what lies between 0 and 1.
inline constexpr int parameter_places = 6;
inline constexpr int share_places = 9;

/// Puts sums together and hands out their results as numbers for the next.
class SumSheet {
 public:
  explicit SumSheet(Mixture mixture) : sums_{std::move(mixture), {}, {}, {}, {}} {}

  Term put_in(SumInput input) {
    Term value = input.value;
    sums_.inputs.push_back(std::move(input));
    return value;
  }

  Term reckon(SumStep step, int places) {
    step.result = number(value_of(step.sum), places);
    Term result = step.result;
    sums_.steps.push_back(std::move(step));
    return result;
  }

  /// With the sources of all inputs.
  WorkedSums done(const Catalogue& catalogue);

 private:
  WorkedSums sums_;
};

/// The subject and the table of one layer, and the program's own figures of the mixture on it.
struct LayerSum {
  const PlannedLayer& layer;
  const FieldSubject& subject;
  const ChanceField& field;
  const Outlook& outlook;
};

/// The sums of the point, with its terms.
struct PointTerms {
  Term dD, dP, dH;
};
PointTerms work_point(SumSheet& sheet, const JudgedMixture& judged, const Catalogue& catalogue);

/// Ra, RED and the chance on one layer; hands out the chance.
Term work_layer(SumSheet& sheet, const PointTerms& point, const JudgedMixture& judged, const LayerSum& one,
                const Limits& limits, const Catalogue& catalogue);

/// What is measured; hands out the mixture that the vial then holds.
Mixture work_recipe(SumSheet& sheet, const Mixture& mixture, const Limits& limits);

}  // namespace gentlest
