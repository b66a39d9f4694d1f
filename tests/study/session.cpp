#include "study/session.hpp"

#include "core/base/random_numbers.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest::study {

namespace {

// A mixture's own number, the same in every list: from its place, so that equal mixtures have equal luck.
std::uint64_t number_of(const StudyMixture& mixture) {
  const auto whole = [](double value) { return static_cast<std::uint64_t>(std::llround((value + 100) * 1e4)); };
  return (whole(mixture.point.dD) * 4000037u + whole(mixture.point.dP)) * 4000037u + whole(mixture.point.dH);
}

// Swabs one mixture and books what truly happened.
SwabOutcome test_mixture(const World& world, const Painting& painting, const TruePlaces& places,
                         const StudyMixture& mixture, bool at_edge, Session& session) {
  const Hansen point = places.of(mixture);
  const SwabOutcome outcome = swab(world, painting, point, number_of(mixture), at_edge);
  ++session.tests;
  if (at_edge) {
    ++session.edge_tests;
    session.harmed_edge = session.harmed_edge || outcome.harm > 0;
    return outcome;
  }
  session.harmed = session.harmed || outcome.harm > 0;
  session.largest_true_risk = std::max(session.largest_true_risk, true_risk(world, painting, point));
  session.found = session.found || (outcome.removal_read >= 3 && outcome.harm_read == 0);
  return outcome;
}

void report(const World& world, const Painting& painting, const Hansen& point, Session& session) {
  session.reported = true;
  session.reported_effect = true_effect(world, painting, point);
  session.reported_risk = true_risk(world, painting, point);
}

bool lies_within(double value, const Estimate& estimate) {
  return value >= estimate.low && value <= estimate.high;
}

}  // namespace

Bench make_bench(const Catalogue& catalogue) {
  Bench bench;
  bench.liquids = allowed_liquids(catalogue);
  bench.candidates = candidate_mixtures(bench.liquids);
  bench.thirteen = thirteen_mixtures(catalogue, bench.liquids);
  bench.ten_percent = ten_percent_ladders(catalogue, bench.liquids);
  return bench;
}

TruePlaces::TruePlaces(const Bench& bench, const World& world, const Painting& painting) {
  RandomNumbers random(painting.luck + 77);
  for (const Solvent* liquid : bench.liquids) {
    Hansen point = liquid->hansen->chosen.value;
    point.dD += world.liquid_error * random.normal();
    point.dP += world.liquid_error * random.normal();
    point.dH += world.liquid_error * random.normal();
    liquids_.push_back(point);
  }
}

Hansen TruePlaces::of(const StudyMixture& mixture) const {
  Hansen point;
  for (const auto& [liquid, fraction] : mixture.parts) {
    point.dD += fraction * liquids_[liquid].dD;
    point.dP += fraction * liquids_[liquid].dP;
    point.dH += fraction * liquids_[liquid].dH;
  }
  return point;
}

bool has_window(const Bench& bench, const TruePlaces& places, const Painting& painting) {
  return std::any_of(bench.candidates.begin(), bench.candidates.end(), [&](const StudyMixture& mixture) {
    const Hansen point = places.of(mixture);
    return relative_distance_RED(point, painting.varnish) <= 0.9 && relative_distance_RED(point, painting.paint) >= 1.1;
  });
}

Session walk_ladders(const Bench& bench, const World& world, const Painting& painting,
                     const std::vector<std::vector<StudyMixture>>& ladders, bool switches) {
  const TruePlaces places(bench, world, painting);
  Session session;
  session.has_window = has_window(bench, places, painting);
  int harm_readings = 0;
  for (const std::vector<StudyMixture>& ladder : ladders) {
    for (const StudyMixture& rung : ladder) {
      const SwabOutcome outcome = test_mixture(world, painting, places, rung, false, session);
      if (outcome.harm_read > 0) {
        ++harm_readings;
        break;
      }
      if (outcome.removal_read < 3) continue;
      report(world, painting, places.of(rung), session);
      return session;
    }
    if (harm_readings >= (switches ? 2 : 1)) return session;
  }
  return session;
}

void prepare(Learner& learner, const Bench& bench, const World& world) {
  LearningSettings learning;
  learning.particles = learner.particles;
  learning.rough = learner.rough;
  const auto prior = [&](const UncertainSphere& sphere, double stray_share) {
    return LayerPrior{{{sphere, 1, "as recorded"}}, stray_share, learner.stray_factor};
  };
  std::vector<Hansen> points;
  for (const StudyMixture& mixture : bench.candidates) points.push_back(mixture.point);
  LayerBelief varnish(prior(world.varnish, learner.stray_share), world.removal, learning);
  learning.seed = 2;
  LayerBelief paint(prior(world.paint, learner.paint_stray_share), world.harm, learning);
  learner.start =
      NextTestTask{std::move(points), std::move(varnish), {{"paint", std::move(paint)}}, {}, {}, learner.settings};
  learner.first = choose_next_test(*learner.start);
}

Session learn_session(const Bench& bench, const World& world, const Painting& painting, const Learner& learner,
                      std::vector<Prediction>* predictions, std::vector<Coverage>* coverage) {
  const TruePlaces places(bench, world, painting);
  NextTestTask task = *learner.start;
  Session session;
  session.has_window = has_window(bench, places, painting);
  Coverage covered;
  covered.least_effective = 1;
  while (true) {
    const NextTest next = task.past.empty() ? learner.first : choose_next_test(task);
    if (next.step == NextStep::found)
      report(world, painting, places.of(bench.candidates[next.mixture->candidate.value()]), session);
    const bool tests =
        next.step == NextStep::try_mixture || next.step == NextStep::confirm || next.step == NextStep::try_at_edge;
    if (!tests) break;
    const bool at_edge = next.step == NextStep::try_at_edge;
    const StudyMixture& mixture = bench.candidates[next.mixture->candidate.value()];
    const SwabOutcome outcome = test_mixture(world, painting, places, mixture, at_edge, session);
    if (predictions && !at_edge)
      predictions->push_back({next.mixture->effect, next.mixture->risk, outcome.removal >= 3, outcome.harm > 0,
                              next.step == NextStep::confirm});
    PastTest past{{mixture.point}, at_edge, "", std::nullopt, outcome.harm_read};
    if (!at_edge) past.removal = outcome.removal_read;
    if (!at_edge) task.target->learn({mixture.point, match_of_level(outcome.removal_read, learner.slip), 1, false});
    task.kept.front().belief.learn({mixture.point, match_of_original(outcome.harm_read, learner.slip), 1, at_edge});
    task.past.push_back(past);
    if (!coverage) continue;
    const Hansen true_point = places.of(mixture);
    covered.varnish =
        lies_within(relative_distance_RED(true_point, painting.varnish), task.target->RED_estimate(mixture.point));
    covered.paint = lies_within(relative_distance_RED(true_point, painting.paint),
                                task.kept.front().belief.RED_estimate(mixture.point));
    const auto count = static_cast<double>(learner.particles);
    covered.least_effective = std::min({covered.least_effective, task.target->effective_particles() / count,
                                        task.kept.front().belief.effective_particles() / count});
  }
  if (coverage && session.tests > 0) coverage->push_back(covered);
  return session;
}

Session ask_oracle(const Bench& bench, const World& world, const Painting& painting) {
  const TruePlaces places(bench, world, painting);
  Session session;
  session.has_window = has_window(bench, places, painting);
  const StudyMixture* best = nullptr;
  double highest = -1;
  for (const StudyMixture& mixture : bench.candidates) {
    const Hansen point = places.of(mixture);
    const double promise = true_effect(world, painting, point) * (1 - true_risk(world, painting, point));
    if (promise <= highest) continue;
    highest = promise;
    best = &mixture;
  }
  const SwabOutcome outcome = test_mixture(world, painting, places, *best, false, session);
  if (outcome.removal_read >= 3 && outcome.harm_read == 0) report(world, painting, places.of(*best), session);
  return session;
}

}  // namespace gentlest::study
