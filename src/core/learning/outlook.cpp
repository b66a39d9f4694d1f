// What the next swab with one mixture is believed to do: the spheres, and the luck that it shares with what was tested.
#include "core/learning/luck.hpp"

#include <algorithm>

namespace gentlest {

namespace {

double chance_on_target(const NextTestTask& task, const SwabMixture& mixture, bool at_edge, bool& counts_tests) {
  const LuckQuestion question{mixture, at_edge, task.settings.effect_level, Careful::failure};
  return chance_with_luck(*task.target, question, heard_of_target(task.past), task.settings, counts_tests);
}

double chance_on_kept(const NextTestTask& task, const KeptBelief& kept, const SwabMixture& mixture, bool at_edge,
                      bool& counts_tests) {
  const LuckQuestion question{mixture, at_edge, kept.risk_level, Careful::reaction};
  return chance_with_luck(kept.belief, question, heard_of_kept(task.past, kept.name), task.settings, counts_tests);
}

}  // namespace

bool is_edge_refuted(const std::vector<PastTest>& past) {
  const auto passed_at_edge = [&](const PastTest& harm) {
    return std::any_of(past.begin(), past.end(), [&](const PastTest& test) {
      const bool same_layer = test.layer.empty() || harm.layer.empty() || test.layer == harm.layer;
      return test.at_edge && test.original == 0 && same_layer && is_same(test.mixture.point, harm.mixture.point);
    });
  };
  return std::any_of(past.begin(), past.end(), [&](const PastTest& test) {
    return !test.at_edge && test.original.value_or(0) > 0 && passed_at_edge(test);
  });
}

CandidateOutlook outlook_of(const NextTestTask& task, const SwabMixture& mixture, bool at_edge,
                            const std::vector<std::string>& touched) {
  CandidateOutlook outlook;
  outlook.point = mixture.point;
  outlook.effect = chance_on_target(task, mixture, at_edge, outlook.counts_tests);
  outlook.good = outlook.effect;
  for (const KeptBelief& kept : task.kept) {
    if (!touched.empty() && std::find(touched.begin(), touched.end(), kept.name) == touched.end()) continue;
    const double risk = chance_on_kept(task, kept, mixture, at_edge, outlook.counts_tests);
    outlook.good *= 1 - risk;
    if (!outlook.riskiest.empty() && risk <= outlook.risk) continue;
    outlook.risk = risk;
    outlook.riskiest = kept.name;
  }
  return outlook;
}

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
