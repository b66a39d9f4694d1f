#include "gentlest/answers/progress.hpp"

#include "core/answers/unjudged_readings.hpp"
#include "core/learning/candidates.hpp"
#include "core/plan/planned_layers.hpp"
#include "core/plan/proposal.hpp"
#include "core/plan/unjudged.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/check_job.hpp"
#include "gentlest/vial/evaporation.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

namespace gentlest {

namespace {

constexpr double swab_spread = 0.15;  // of R0: how much more or less a swab does than a long soak

LayerBelief belief_of(const PlannedLayer& layer, std::uint64_t seed) {
  LearningSettings settings;
  settings.seed = seed;
  LayerPrior prior{{{met_by_liquids(layer), 1, layer.material_name, layer.reach}}};
  std::vector<WeighedResponse> responses = {{layer.response, 1}};
  for (const OtherMaterial& other : layer.possible) {
    // Weights need not add up to 1: what has no sphere is not weighed.
    prior.hypotheses.front().weight -= other.share;
    responses.front().weight -= other.share;
    if (!other.sphere) continue;
    prior.hypotheses.push_back({*other.sphere, other.share, other.material_name, other.reach});
    responses.push_back({other.response, other.share});
  }
  if (!layer.own_response)
    for (SphereHypothesis& one : prior.hypotheses)
      one.sphere.R0_sd = std::hypot(one.sphere.R0_sd, swab_spread * one.sphere.mean.R0);
  if (layer.role == Role::keep) prior.stray_share = kept_stray_share;
  return LayerBelief(std::move(prior), borrowed_curve(responses), settings);
}

class Follower {
 public:
  Follower(const Job& job, const Catalogue& catalogue, Progress& progress)
      : job_(job), catalogue_(catalogue), progress_(progress) {}

  void take(const Reading& reading, const std::vector<Liquid>& shelf) {
    const std::string& target = progress_.layers[progress_.target].name;
    const std::string under = kept_under(job_, progress_.layers, reading.passage);
    const bool any_kept = std::any_of(progress_.layers.begin(), progress_.layers.end(),
                                      [](const PlannedLayer& layer) { return layer.role == Role::keep; });
    if (under.empty() && any_kept) return leave_out(reading, LeftOutWhy::unknown_passage, reading.passage);
    std::optional<Mixture> mixture;
    try {
      mixture = parse_mixture(reading.mixture, catalogue_, shelf);
    } catch (const InputError& error) {
      return leave_out(reading, LeftOutWhy::unreadable_mixture, error.faults().front().message);
    }
    const bool speaks_of_target = reading.layer.empty() || reading.layer == target;
    if (!speaks_of_target && !reading.original) return leave_out(reading, LeftOutWhy::other_layer, reading.layer);
    learn(reading, *mixture, speaks_of_target, under);
    progress_.counted.push_back(reading);
  }

 private:
  void leave_out(const Reading& reading, LeftOutWhy why, const std::string& what) {
    progress_.not_counted.push_back({reading.test, why, what});
  }

  void learn(const Reading& reading, const Mixture& mixture, bool speaks_of_target, const std::string& under) {
    const ReadingNoise noise;
    const Hansen point = mix(mixture);
    NextTestTask& task = progress_.task;
    PastTest past{swab_mixture_of(mixture), reading.at_edge, reading.passage, std::nullopt, std::nullopt, under};
    if (speaks_of_target)
      if (const auto evidence = evidence_on_removal(reading, point, noise)) {
        if (task.target) task.target->learn(*evidence);
        progress_.heard[progress_.layers[progress_.target].name].push_back(reading.test);
        past.removal = static_cast<int>(*reading.removal);
        past.radius_factor = evidence->radius_factor;
      }
    if (const auto evidence = evidence_on_original(reading, point, noise)) {
      for (KeptBelief& kept : task.kept)
        if (kept.name == under) kept.belief.learn(*evidence);
      progress_.heard[under].push_back(reading.test);
      past.original = level_on_original(reading);
      past.radius_factor = evidence->radius_factor;
    }
    task.past.push_back(past);
  }

  const Job& job_;
  const Catalogue& catalogue_;
  Progress& progress_;
};

// A mixture that worked need not be one that would be proposed (thinned out, off the grid, of another bottle).
std::optional<Mixture> mixture_of_next(const Progress& progress, const Catalogue& catalogue,
                                       const std::vector<Liquid>& shelf) {
  const NextTest& next = progress.next;
  if (next.worked) return parse_mixture(progress.counted[*next.worked].mixture, catalogue, shelf);
  if (!next.mixture || !next.mixture->candidate) return std::nullopt;
  return progress.mixtures[*next.mixture->candidate];
}

NextTestTask make_task(const Job& job, const std::vector<PlannedLayer>& layers, std::size_t target,
                       const std::vector<Mixture>& mixtures) {
  std::vector<Hansen> points;
  for (const Mixture& mixture : mixtures) points.push_back(mix(mixture));
  std::vector<KeptBelief> kept;
  std::uint64_t seed = 2;
  for (const PlannedLayer& layer : layers)
    if (layer.role == Role::keep && layer.sphere)
      kept.push_back({layer.name, belief_of(layer, seed++), level_of_grade(grade_that_counts(layer, job.limits))});
  std::optional<LayerBelief> belief;
  if (layers[target].sphere) belief = belief_of(layers[target], 1);
  NextTestTask task{std::move(points), std::move(belief), std::move(kept), {}, {}, {}};
  for (const Passage& passage : job.passages) task.passages.push_back(passage.name);
  const bool borrowed = std::any_of(layers.begin(), layers.end(), [](const PlannedLayer& one) {
    return one.role == Role::keep && one.sphere && !one.own_response;
  });
  task.settings = settings_within(job.limits.risk_limit, borrowed);
  task.settings.effect_level = level_of_grade(grade_that_counts(layers[target], job.limits));
  task.settings.most_at_edge = job.limits.edge_tests;
  return task;
}

// The ladder's rule, by what is believed now: no mixture whose risk passes the limit while it dries. Mixtures whose
// drying is not known are let through, as there.
DriftQuestion drift_question(const std::vector<Mixture>& mixtures, const Job& job, const Catalogue& catalogue) {
  if (job.limits.allow_drift) return {};
  return [&](std::size_t candidate, const std::function<bool(const Hansen&)>& is_beyond) {
    return drifts_to(mixtures[candidate], catalogue, Celsius{job.limits.room_C}, is_beyond).value_or(false);
  };
}

// No figure bounds the way up where no layer to keep has a sphere: the ladder is walked rung by rung.
void walk_the_ladder(NextTestSettings& settings) {
  settings.step = 1;
  settings.least_promise = 0;
  settings.promise_when_surprised = 0;
}

// What no figure speaks of is touched first where harm matters least.
void put_at_edge_first(Progress& progress) {
  NextTest& next = progress.next;
  const NextTestTask& task = progress.task;
  if (next.step != NextStep::try_mixture && next.step != NextStep::confirm) return;
  if (is_risk_open(progress.layers)) next.reason = NextReason::next_rung;
  if (std::none_of(progress.layers.begin(), progress.layers.end(), is_kept_unjudged)) return;
  const auto made =
      std::count_if(task.past.begin(), task.past.end(), [](const PastTest& test) { return test.at_edge; });
  if (made >= task.settings.most_at_edge || has_passed_at_edge(task, next.mixture->point)) return;
  next.step = NextStep::try_at_edge;
  next.reason = NextReason::layer_not_judged;
}

// Without a sphere of the layer to remove: harm still closes, and the first tests stand in the place of a choice.
NextTest next_by_hand(const NextTestTask& task) {
  NextTest next;
  const auto harmed = std::count_if(task.past.begin(), task.past.end(), [](const PastTest& test) {
    return !test.at_edge && test.original.value_or(0) > 0;
  });
  next.step = harmed >= 2 ? NextStep::closed : NextStep::not_judged;
  next.reason = harmed >= 2 ? NextReason::harmed_twice : NextReason::target_not_judged;
  return next;
}

std::vector<Mixture> mixtures_for(const Job& job, const Catalogue& catalogue, const std::vector<PlannedLayer>& layers,
                                  std::size_t target, const Shelf& bottles,
                                  const std::vector<UnjudgedReading>& unjudged) {
  if (!layers[target].sphere) return {};
  const std::vector<Liquid> usable = usable_liquids(bottles);
  if (!is_risk_open(layers)) return allowed_mixtures(usable, job, catalogue);
  return next_rungs(rungs_by_effect(job, layers, usable, catalogue), unjudged, all_liquids(bottles), catalogue);
}

}  // namespace

std::vector<Mixture> allowed_mixtures(const std::vector<Liquid>& shelf, const Job& job, const Catalogue& catalogue) {
  const Limits& limits = job.limits;
  SearchTask task;
  task.most_percent = largest_shares(shelf, job, catalogue);
  task.shelf = shelf;
  task.parts = limits.parts;
  task.step_percent = limits.step_percent;
  std::vector<std::uint16_t> all(shelf.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<std::uint16_t>(i);
  std::set<std::tuple<long, long, long>> taken;
  std::vector<Mixture> mixtures;
  for_each_composition(all, limits.parts, 100 / limits.step_percent, [&](const Composition& composition) {
    const std::array<double, 3> place = scaled(point_of(task, composition));
    const auto cell = [&](std::size_t axis) { return static_cast<long>(std::floor(place[axis])); };
    const std::tuple<long, long, long> here{cell(0), cell(1), cell(2)};
    if (taken.count(here) == 1 || !keeps_largest_shares(task, composition)) return;
    Mixture mixture = mixture_of(task, composition);
    if (!may_be_made(mixture, limits, catalogue)) return;
    taken.insert(here);
    mixtures.push_back(std::move(mixture));
  });
  return mixtures;
}

SwabMixture swab_mixture_of(const Mixture& mixture) {
  SwabMixture swab{mix(mixture), {}};
  for (const Part& part : mixture.parts()) swab.shares.emplace_back(part.liquid.label, part.fraction);
  return swab;
}

RungRoom room_above(const Hansen& point, const Plan& plan, const Progress& progress) {
  const NextTestTask& task = progress.task;
  const double effect = outlook_of(task, {point}).effect;
  std::vector<CandidateOutlook> stronger;
  for (const JudgedMixture& rung : ladder_rungs(plan)) {
    CandidateOutlook outlook = outlook_of(task, swab_mixture_of(rung.mixture));
    const bool harmed = std::any_of(task.past.begin(), task.past.end(), [&](const PastTest& test) {
      return test.original.value_or(0) > 0 && is_same(test.mixture.point, rung.point);
    });
    if (harmed) outlook.risk = 1;
    if (outlook.effect > effect && !is_same(rung.point, point)) stronger.push_back(outlook);
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

Progress follow_readings(const Job& job, const Catalogue& catalogue, const std::vector<Reading>& readings,
                         const std::string& target) {
  std::vector<Diagnostic> faults = check_job(job, catalogue);
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  std::vector<PlannedLayer> layers = planned_layers(job, catalogue, target);
  const Shelf bottles = shelf_of(job, catalogue);
  std::size_t at = 0;
  while (!layers[at].is_target) ++at;
  const std::vector<Liquid> shelf = all_liquids(bottles);
  const std::vector<Reading> current = current_readings(readings);
  std::vector<UnjudgedReading> unjudged = unjudged_readings(job, layers, current, shelf, catalogue);
  std::vector<Mixture> mixtures = mixtures_for(job, catalogue, layers, at, bottles, unjudged);
  const std::size_t closed = close_harmful(mixtures, unjudged, shelf, catalogue);
  NextTestTask task = make_task(job, layers, at, mixtures);
  Progress progress{
      std::move(layers), at, std::move(mixtures), bottles_left_off(bottles), {}, {}, std::move(task), {}, {}, {}};
  progress.unjudged = std::move(unjudged);
  progress.closed = closed;
  if (is_risk_open(progress.layers)) walk_the_ladder(progress.task.settings);
  Follower follower(job, catalogue, progress);
  for (const Reading& reading : current) follower.take(reading, shelf);
  if (progress.task.target)
    progress.next = choose_next_test(progress.task, drift_question(progress.mixtures, job, catalogue));
  else
    progress.next = next_by_hand(progress.task);
  put_at_edge_first(progress);
  fill_first_tests(progress, job, usable_liquids(bottles), catalogue);
  progress.mixture = mixture_of_next(progress, catalogue, shelf);
  const bool all_judged = std::all_of(progress.layers.begin(), progress.layers.end(),
                                      [](const PlannedLayer& layer) { return layer.sphere.has_value(); });
  if (progress.mixture && !all_judged)
    progress.proposed = judge_mixture(*progress.mixture, progress.layers, job.limits, catalogue);
  return progress;
}

}  // namespace gentlest
