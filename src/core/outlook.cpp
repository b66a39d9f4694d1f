// What one mixture is believed to do now.
#include "candidates.hpp"

#include <algorithm>
#include <functional>

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

// By the spheres, and as far as luck is the mixture's own by what it did: at the edge to the layers that `passed`
// names, and to the layer to remove.
CandidateOutlook outlook_with(const NextTestTask& task, const Hansen& point,
                              const std::function<bool(const std::string& layer)>& passed, bool moved) {
  const NextTestSettings& set = task.settings;
  const auto closer_to = [&](double goal, double chance) {
    return std::max(chance, chance + set.luck_of_mixture * (goal - chance));
  };
  CandidateOutlook outlook;
  outlook.counts_tests = moved;
  outlook.effect = task.target.chance(point, set.effect_level);
  outlook.good = task.target.share_nearer(point, task.target.curve().RED_where(set.effect_level, set.good_effect));
  if (moved) {
    outlook.effect = closer_to(1 - ReadingNoise{}.slip, outlook.effect);
    outlook.good = closer_to(1 - ReadingNoise{}.slip, outlook.good);
  }
  for (const KeptBelief& kept : task.kept) {
    double risk = kept.belief.chance(point, set.risk_level);
    outlook.good *= 1 - kept.belief.share_nearer(point, harmful_RED(kept, set));
    if (passed(kept.name)) {
      risk += set.luck_of_mixture * (kept.belief.chance_though_passed(point, set.risk_level) - risk);
      outlook.counts_tests = true;
    }
    if (!outlook.riskiest.empty() && risk <= outlook.risk) continue;
    outlook.risk = risk;
    outlook.riskiest = kept.name;
  }
  return outlook;
}

}  // namespace

CandidateOutlook outlook_of(const NextTestTask& task, const Hansen& point) {
  return outlook_with(
      task, point, [](const std::string&) { return false; }, false);
}

CandidateOutlook outlook_counting_tests(const NextTestTask& task, const Hansen& point) {
  if (task.settings.luck_of_mixture <= 0) return outlook_of(task, point);
  return outlook_with(
      task, point, [&](const std::string& layer) { return has_passed_at_edge(task, point, layer); },
      has_moved(task, point));
}

}  // namespace gentlest
