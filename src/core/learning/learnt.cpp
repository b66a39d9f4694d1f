// What was learnt of a layer: the figures before and after, side by side.
#include "gentlest/learning/learning.hpp"

namespace gentlest {

namespace {

constexpr double mostly_stray = 0.5;
constexpr double learnt_below = 0.75;  // of the width held before
constexpr double open_above = 0.9;

LearntFigure figure_of(const Estimate& now, const Estimate& before) {
  const double was = before.high - before.low;
  LearntFigure figure{now, was > 0 ? (now.high - now.low) / was : 1, Narrowing::little};
  if (figure.width_left < learnt_below) figure.narrowing = Narrowing::learnt;
  if (figure.width_left > open_above) figure.narrowing = Narrowing::open;
  return figure;
}

void add_figures(LearntOfLayer& learnt, const LayerBelief& belief) {
  LearningSettings settings;
  settings.particles = belief.particles().size();
  const LayerBelief before(belief.prior(), belief.curve(), settings);
  learnt.dD = figure_of(belief.dD(), before.dD());
  learnt.dP = figure_of(belief.dP(), before.dP());
  learnt.dH = figure_of(belief.dH(), before.dH());
  learnt.R0 = figure_of(belief.R0(), before.R0());
}

void add_hypotheses(LearntOfLayer& learnt, const LayerBelief& belief) {
  const std::vector<double> chances = belief.hypothesis_chances();
  learnt.stray_chance = chances.back();
  learnt.is_stray = learnt.stray_chance > mostly_stray;
  const std::vector<SphereHypothesis>& hypotheses = belief.prior().hypotheses;
  if (hypotheses.size() < 2) return;
  for (std::size_t i = 0; i < hypotheses.size(); ++i) learnt.hypotheses.push_back({hypotheses[i].what, chances[i]});
}

}  // namespace

LearntOfLayer learnt_of(const LayerBelief& belief, const std::string& layer, const std::vector<int>& tests) {
  LearntOfLayer learnt;
  learnt.layer = layer;
  learnt.is_tested = !belief.seen().empty();
  if (!learnt.is_tested) return learnt;
  add_figures(learnt, belief);
  add_hypotheses(learnt, belief);
  for (std::size_t i = 0; i < belief.predicted().size(); ++i)
    if (belief.surprises()[i].in_deviations() > surprising_deviations)
      learnt.surprising.push_back({tests.at(i), belief.predicted()[i]});
  learnt.effective_particles = belief.effective_particles();
  learnt.particles = belief.particles().size();
  return learnt;
}

}  // namespace gentlest
