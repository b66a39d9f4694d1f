#include "gentlest/answers/progress.hpp"

#include "core/answers/next_answer.hpp"
#include "core/plan/planned_layers.hpp"
#include "core/plan/unjudged.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/check_job.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>
#include <utility>

namespace gentlest {

namespace {

constexpr double swab_spread = 0.15;  // of R0: how much more or less a swab does than a long soak

LayerBelief belief_of(const PlannedLayer& layer, std::uint64_t seed) {
  LearningSettings settings;
  settings.seed = seed;
  return LayerBelief(prior_of(layer), curve_of(layer), settings);
}

// What the readings teach the beliefs. What the rules make of them is settled by conduct_of, from the same readings.
class Follower {
 public:
  Follower(const Plan& plan, Progress& progress) : plan_(plan), progress_(progress) {}

  void take(const Reading& reading, const SwabTest& test) {
    const std::string& target = progress_.layers[progress_.target].name;
    const bool any_kept = std::any_of(progress_.layers.begin(), progress_.layers.end(),
                                      [](const PlannedLayer& layer) { return layer.role == Role::keep; });
    if (test.is_blank) return;
    if (test.is_aqueous) return leave_out(reading, LeftOutWhy::no_solvent_mixture, reading.mixture);
    if (!test.is_passage_known && any_kept) return leave_out(reading, LeftOutWhy::unknown_passage, reading.passage);
    if (!test.made) return leave_out(reading, LeftOutWhy::unreadable_mixture, test.unreadable);
    const bool speaks_of_target = reading.layer.empty() || reading.layer == target;
    if (!speaks_of_target && !reading.original) return leave_out(reading, LeftOutWhy::other_layer, reading.layer);
    learn(reading, test, speaks_of_target);
    progress_.counted.push_back(reading);
  }

 private:
  void leave_out(const Reading& reading, LeftOutWhy why, const std::string& what) {
    progress_.not_counted.push_back({reading.test, why, what});
  }

  void learn(const Reading& reading, const SwabTest& test, bool speaks_of_target) {
    const ReadingNoise noise;
    const Hansen point = mix(*test.made);
    const std::string under = layer_under(plan_, reading.passage);
    PastTest past{swab_mixture_of(*test.made), reading.at_edge, reading.passage, std::nullopt, std::nullopt, under};
    if (speaks_of_target) past.on_removal = evidence_on_removal(reading, point, noise);
    if (past.on_removal) {
      past.removal = static_cast<int>(*reading.removal);
      progress_.heard[progress_.layers[progress_.target].name].push_back(reading.test);
    }
    past.on_original = evidence_on_original(reading, point, noise);
    past.original = level_on_original(reading);
    if (past.on_original) progress_.heard[under].push_back(reading.test);
    take_in(progress_.task, past);
  }

  const Plan& plan_;
  Progress& progress_;
};

}  // namespace

NextTestTask task_before_tests(const Plan& plan) {
  const Limits& limits = plan.job.limits;
  std::vector<KeptBelief> kept;
  std::uint64_t seed = 2;
  for (const PlannedLayer& layer : plan.layers)
    if (layer.role == Role::keep && layer.sphere) kept.push_back({layer.name, belief_of(layer, seed++)});
  const PlannedLayer& target = plan.layers[plan.target];
  std::optional<LayerBelief> belief;
  if (target.sphere) belief = belief_of(target, 1);
  NextTestTask task{std::move(belief), std::move(kept), {}, {}};
  const bool borrowed = std::any_of(plan.layers.begin(), plan.layers.end(), [](const PlannedLayer& one) {
    return one.role == Role::keep && one.sphere && !one.own_response;
  });
  task.settings = settings_within(limits.risk_limit, borrowed);
  task.settings.effect_level = level_of_grade(grade_that_counts(target, limits));
  return task;
}

namespace {

// What was not tried yet and is not closed, for a layer to remove without a sphere.
void fill_first_tests(Progress& progress, const Plan& plan, const Catalogue& catalogue) {
  for (const JudgedMixture& one : liquids_to_try(plan.job, plan.layers, plan.shelf, catalogue)) {
    const bool was_tried =
        std::any_of(progress.conduct.tests.begin(), progress.conduct.tests.end(),
                    [&](const SwabTest& test) { return test.mixture && is_same_mixture(*test.mixture, one.mixture); });
    if (!was_tried && !closed_by(plan, progress.conduct, one.mixture)) progress.to_try.push_back(one);
  }
  progress.first_tests = first_tests_of(progress.layers, progress.to_try, false, catalogue);
}

void judge_proposed(Progress& progress, const Plan& plan, const Catalogue& catalogue) {
  if (!progress.next.mixture) return;
  progress.proposed = judge_mixture(*progress.next.mixture, plan.layers, plan.job.limits, catalogue);
  const Mixture& mixture = *progress.next.mixture;
  progress.cautions = cautions_for(mixture, label_of(mixture, catalogue), catalogue);
  const NextAnswer& next = progress.next;
  const std::optional<std::size_t> step = next.test      ? next.test->step
                                          : next.working ? next.working->step
                                                         : std::nullopt;
  if (step) progress.proposed->origin = progress.conduct.steps[*step].origin;
}

}  // namespace

LayerPrior prior_of(const PlannedLayer& layer) {
  LayerPrior prior{{{met_by_liquids(layer), 1, layer.material_name, layer.reach}}};
  for (const OtherMaterial& other : layer.possible) {
    // Weights need not add up to 1: what has no sphere is not weighed.
    prior.hypotheses.front().weight -= other.share;
    if (other.sphere) prior.hypotheses.push_back({*other.sphere, other.share, other.material_name, other.reach});
  }
  if (!layer.own_response)
    for (SphereHypothesis& one : prior.hypotheses)
      one.sphere.R0_sd = std::hypot(one.sphere.R0_sd, swab_spread * one.sphere.mean.R0);
  if (layer.role == Role::keep) prior.stray_share = kept_stray_share;
  return prior;
}

ReadingCurve curve_of(const PlannedLayer& layer) {
  std::vector<WeighedResponse> responses = {{layer.response, 1}};
  for (const OtherMaterial& other : layer.possible) {
    responses.front().weight -= other.share;
    if (other.sphere) responses.push_back({other.response, other.share});
  }
  return borrowed_curve(responses);
}

SwabMixture swab_mixture_of(const Mixture& mixture) {
  SwabMixture swab{mix(mixture), {}};
  for (const Part& part : mixture.parts()) swab.shares.emplace_back(part.liquid.label, part.fraction);
  return swab;
}

RungRoom room_above(const Mixture& mixture, const Plan& plan, const Progress& progress) {
  const NextTestTask& task = progress.task;
  const double effect = outlook_of(task, swab_mixture_of(mixture)).effect;
  std::vector<CandidateOutlook> stronger;
  for (std::size_t i = 0; i < progress.conduct.steps.size(); ++i) {
    const PlanStep& step = progress.conduct.steps[i];
    if (step.line > 0 || step.origin.kind != OriginKind::rung) continue;
    CandidateOutlook outlook = outlook_of(task, swab_mixture_of(step.mixture));
    if (closure_of(progress.conduct, i)) outlook.risk = 1;
    if (outlook.effect > effect && !is_same_mixture(step.mixture, mixture)) stronger.push_back(outlook);
  }
  std::sort(stronger.begin(), stronger.end(),
            [](const CandidateOutlook& a, const CandidateOutlook& b) { return a.effect < b.effect; });
  const auto first_beyond = std::find_if(stronger.begin(), stronger.end(), [&](const CandidateOutlook& one) {
    return one.risk > plan.job.limits.risk_limit;
  });
  return {static_cast<std::size_t>(first_beyond - stronger.begin()), stronger.size()};
}

std::vector<LearntOfLayer> what_was_learnt(const Progress& progress) {
  const auto tests_of = [&](const std::string& layer) {
    const auto found = progress.heard.find(layer);
    return found == progress.heard.end() ? std::vector<int>() : found->second;
  };
  const std::string& target = progress.layers[progress.target].name;
  std::vector<LearntOfLayer> learnt;
  if (progress.task.target) learnt.push_back(learnt_of(*progress.task.target, target, tests_of(target)));
  for (const KeptBelief& kept : progress.task.kept)
    learnt.push_back(learnt_of(kept.belief, kept.name, tests_of(kept.name)));
  return learnt;
}

Progress take_readings(const Plan& plan, const Catalogue& catalogue, const std::vector<Reading>& readings,
                       NextTestTask before) {
  const std::vector<Reading> current = current_readings(readings);
  Progress progress{plan.layers, plan.target, plan.left_off, {}, {}, std::move(before), {}, {}};
  progress.conduct = conduct_of(plan, current, catalogue);
  Follower follower(plan, progress);
  for (std::size_t i = 0; i < current.size(); ++i) follower.take(current[i], progress.conduct.tests[i]);
  return progress;
}

Progress follow_readings(const Plan& plan, const Catalogue& catalogue, const std::vector<Reading>& readings) {
  Progress progress = take_readings(plan, catalogue, readings, task_before_tests(plan));
  progress.next = choose_next(plan, progress.conduct, progress.task);
  fill_first_tests(progress, plan, catalogue);
  judge_proposed(progress, plan, catalogue);
  return progress;
}

}  // namespace gentlest
