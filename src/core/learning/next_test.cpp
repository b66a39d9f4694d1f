#include "gentlest/learning/next_test.hpp"

#include <algorithm>

namespace gentlest {

NextTestSettings settings_within(double risk_limit, bool has_borrowed_curve) {
  constexpr double usual_risk_limit = 0.25;  // at which the caps are as they stand in NextTestSettings
  NextTestSettings settings;
  for (double* cap : {&settings.picture_risk, &settings.edge_risk, &settings.picture_risk_when_surprised,
                      &settings.edge_risk_when_surprised})
    *cap = std::min(*cap * risk_limit / usual_risk_limit, 1.0);
  if (has_borrowed_curve) settings.luck_of_mixture = 0.8;
  return settings;
}

double surprise_of(const NextTestTask& task) {
  Surprise sum = task.target->surprise();
  for (const KeptBelief& kept : task.kept) {
    sum.excess += kept.belief.surprise().excess;
    sum.variance += kept.belief.surprise().variance;
  }
  return sum.in_deviations();
}

}  // namespace gentlest
