#include "gentlest/answers/progress.hpp"

#include "core/learning/candidates.hpp"
#include "core/plan/proposal.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/limits.hpp"
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
    prior.hypotheses.push_back({other.sphere, other.share, other.material_name, other.reach});
    prior.hypotheses.front().weight -= other.share;
    responses.push_back({other.response, other.share});
    responses.front().weight -= other.share;
  }
  if (!layer.own_response)
    for (SphereHypothesis& one : prior.hypotheses)
      one.sphere.R0_sd = std::hypot(one.sphere.R0_sd, swab_spread * one.sphere.mean.R0);
  if (layer.role == Role::keep) prior.stray_share = kept_stray_share;
  return LayerBelief(std::move(prior), borrowed_curve(responses), settings);
}

// Name of the kept belief that a reading under this passage speaks of; empty when there is none.
std::string kept_name(const Job& job, const std::vector<KeptBelief>& kept, const std::string& passage) {
  if (kept.empty()) return {};
  if (passage.empty()) return kept.front().name;
  const auto is_kept = [&](const std::string& name) {
    return std::any_of(kept.begin(), kept.end(), [&](const KeptBelief& one) { return one.name == name; });
  };
  if (is_kept(passage)) return passage;
  for (const Passage& known : job.passages)
    if (known.name == passage && is_kept(known.of)) return known.of;
  return {};
}

class Follower {
 public:
  Follower(const Job& job, const Catalogue& catalogue, Progress& progress)
      : job_(job), catalogue_(catalogue), progress_(progress) {}

  void take(const Reading& reading, const std::vector<Liquid>& shelf) {
    const std::string& target = progress_.layers[progress_.target].name;
    const std::string under = kept_name(job_, progress_.task.kept, reading.passage);
    if (under.empty() && !progress_.task.kept.empty())
      return leave_out(reading, LeftOutWhy::unknown_passage, reading.passage);
    Hansen point;
    try {
      point = mix(parse_mixture(reading.mixture, catalogue_, shelf));
    } catch (const InputError& error) {
      return leave_out(reading, LeftOutWhy::unreadable_mixture, error.faults().front().message);
    }
    const bool speaks_of_target = reading.layer.empty() || reading.layer == target;
    if (!speaks_of_target && !reading.original) return leave_out(reading, LeftOutWhy::other_layer, reading.layer);
    learn(reading, point, speaks_of_target, under);
    progress_.counted.push_back(reading);
  }

 private:
  void leave_out(const Reading& reading, LeftOutWhy why, const std::string& what) {
    progress_.not_counted.push_back({reading.test, why, what});
  }

  void learn(const Reading& reading, const Hansen& point, bool speaks_of_target, const std::string& under) {
    const ReadingNoise noise;
    NextTestTask& task = progress_.task;
    PastTest past{point, reading.at_edge, reading.passage, std::nullopt, std::nullopt, under};
    if (speaks_of_target)
      if (const auto evidence = evidence_on_removal(reading, point, noise)) {
        task.target.learn(*evidence);
        progress_.heard[progress_.layers[progress_.target].name].push_back(reading.test);
        past.moved = static_cast<int>(*reading.removal) >= task.settings.effect_level;
      }
    if (const auto evidence = evidence_on_original(reading, point, noise)) {
      int risk_level = level_of_grade(risk_grade_of({}, job_.limits));
      for (const KeptBelief& kept : task.kept)
        if (kept.name == under) risk_level = kept.risk_level;
      for (KeptBelief& kept : task.kept)
        if (kept.name == under) kept.belief.learn(*evidence);
      progress_.heard[under].push_back(reading.test);
      // What the evidence rests on decides, not the bare word: a colour that was varnish is no harm.
      const double harmless = evidence->match[0];
      past.affected = harmless < *std::max_element(evidence->match.begin() + risk_level, evidence->match.end());
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
    if (layer.role == Role::keep)
      kept.push_back({layer.name, belief_of(layer, seed++), level_of_grade(grade_that_counts(layer, job.limits))});
  NextTestTask task{std::move(points), belief_of(layers[target], 1), std::move(kept), {}, {}, {}};
  for (const Passage& passage : job.passages) task.passages.push_back(passage.name);
  const bool borrowed = std::any_of(layers.begin(), layers.end(), [](const PlannedLayer& one) {
    return one.role == Role::keep && !one.own_response;
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

RungRoom room_above(const Hansen& point, const Plan& plan, const Progress& progress) {
  const NextTestTask& task = progress.task;
  const double effect = outlook_of(task, point).effect;
  std::vector<CandidateOutlook> stronger;
  for (const JudgedMixture& rung : plan.rungs) {
    CandidateOutlook outlook = outlook_of(task, rung.point);
    const bool harmed = std::any_of(task.past.begin(), task.past.end(), [&](const PastTest& test) {
      return test.affected.value_or(false) && is_same(test.point, rung.point);
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
  std::vector<LearntOfLayer> learnt = {learnt_of(progress.task.target, target, tests_of(target))};
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
  std::vector<Mixture> mixtures = allowed_mixtures(usable_liquids(bottles), job, catalogue);
  NextTestTask task = make_task(job, layers, at, mixtures);
  Progress progress{
      std::move(layers), at, std::move(mixtures), bottles_left_off(bottles), {}, {}, std::move(task), {}, {}, {}};
  Follower follower(job, catalogue, progress);
  const std::vector<Liquid> shelf = all_liquids(bottles);
  for (const Reading& reading : current_readings(readings)) follower.take(reading, shelf);
  progress.next = choose_next_test(progress.task, drift_question(progress.mixtures, job, catalogue));
  progress.mixture = mixture_of_next(progress, catalogue, shelf);
  return progress;
}

}  // namespace gentlest
