// What one mixture is believed to do now.
#include "core/learning/candidates.hpp"

#include <algorithm>

namespace gentlest {

namespace {

// Moved the layer each time that it was put on the picture.
bool has_moved(const NextTestTask& task, const Hansen& point) {
  bool moved = false;
  for (const PastTest& test : task.past) {
    if (test.at_edge || !test.moved.has_value() || !is_same(test.point, point)) continue;
    if (!*test.moved) return false;
    moved = true;
  }
  return moved;
}

// By the spheres, and for the share of the luck that is the mixture's own by what it did before.
CandidateOutlook outlook_with(const NextTestTask& task, const Hansen& point, double luck) {
  const NextTestSettings& set = task.settings;
  CandidateOutlook outlook;
  outlook.point = point;
  outlook.effect = task.target->chance(point, set.effect_level);
  outlook.good = task.target->share_nearer(point, task.target->curve().RED_where(set.effect_level, set.good_effect));
  if (luck > 0 && has_moved(task, point)) {
    outlook.counts_tests = true;
    for (double* chance : {&outlook.effect, &outlook.good})
      *chance = std::max(*chance, *chance + luck * (1 - ReadingNoise{}.slip - *chance));
  }
  for (const KeptBelief& kept : task.kept) {
    double risk = kept.belief.chance(point, kept.risk_level);
    outlook.good *= 1 - kept.belief.share_nearer(point, harmful_RED(kept, set));
    if (luck > 0 && has_passed_at_edge(task, point, kept.name)) {
      outlook.counts_tests = true;
      risk += luck * (kept.belief.chance_though_passed(point, kept.risk_level) - risk);
    }
    if (!outlook.riskiest.empty() && risk <= outlook.risk) continue;
    outlook.risk = risk;
    outlook.riskiest = kept.name;
  }
  return outlook;
}

}  // namespace

CandidateOutlook outlook_of(const NextTestTask& task, const Hansen& point) {
  return outlook_with(task, point, 0);
}

CandidateOutlook outlook_counting_tests(const NextTestTask& task, const Hansen& point) {
  return outlook_with(task, point, task.settings.luck_of_mixture);
}

}  // namespace gentlest
