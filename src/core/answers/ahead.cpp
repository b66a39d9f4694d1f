#include "gentlest/answers/ahead.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

bool is_climb(Purpose purpose) {
  return purpose == Purpose::climb || purpose == Purpose::climb_two || purpose == Purpose::from_edge ||
         purpose == Purpose::between;
}

BenchMixture vial_of(const PlanStep& step, const Plan& plan, const Catalogue& catalogue) {
  JudgedMixture judged = judge_mixture(step.mixture, plan.layers, plan.job.limits, catalogue);
  judged.origin = step.origin;
  return bench_mixture(judged, plan, catalogue);
}

// Rungs above the proposed one on its line, gentle to strong.
void add_rungs_above(std::vector<TestAhead>& ahead, const Plan& plan, const Progress& progress,
                     const Catalogue& catalogue) {
  const Conduct& conduct = progress.conduct;
  const PlanStep& from = conduct.steps[*progress.next.test->step];
  for (std::size_t i = 0; i < conduct.steps.size(); ++i) {
    const PlanStep& step = conduct.steps[i];
    if (step.line != from.line || step.origin.kind != OriginKind::rung || step.height <= from.height) continue;
    if (closure_of(conduct, i)) continue;
    BenchMixture vial = vial_of(step, plan, catalogue);
    if (!vial.beyond_limit) ahead.push_back({std::move(vial), i, std::nullopt, {}, AheadIf::borne_without_gain});
  }
}

// The working mixture on what is left of the passages.
void add_passages(std::vector<TestAhead>& ahead, const Progress& progress) {
  const OpenTest& proposed = *progress.next.test;
  if (proposed.purpose == Purpose::step_back) return;
  const BenchMixture vial = ahead.front().mixture;
  for (const OpenTest& test : progress.conduct.open)
    if (is_same_mixture(test.mixture, proposed.mixture) && test.passage != proposed.passage)
      ahead.push_back({vial, test.step, test.place, test.passage, AheadIf::worked});
}

bool holds(const std::vector<BenchMixture>& vials, const Mixture& mixture) {
  return std::any_of(vials.begin(), vials.end(),
                     [&](const BenchMixture& vial) { return is_same_mixture(vial.judged.mixture, mixture); });
}

}  // namespace

bool is_struck_out(const Progress& progress, std::size_t step) {
  const bool is_proposed = progress.next.test && progress.next.test->step == step;
  return closure_of(progress.conduct, step) != nullptr && !is_proposed;
}

std::vector<TestAhead> tests_ahead(const Plan& plan, const Progress& progress, const Catalogue& catalogue) {
  std::vector<TestAhead> ahead;
  const NextAnswer& next = progress.next;
  if (next.kind == NextKind::not_judged)
    for (const JudgedMixture& one : progress.to_try)
      ahead.push_back({bench_mixture(one, plan, catalogue), std::nullopt, std::nullopt, {}, AheadIf::now});
  if (next.kind != NextKind::test) return ahead;
  ahead.push_back({bench_mixture(*progress.proposed, plan, catalogue), next.test->step, next.test->place,
                   next.test->passage, AheadIf::now});
  if (!is_climb(next.test->purpose))
    add_passages(ahead, progress);
  else if (next.test->step)
    add_rungs_above(ahead, plan, progress, catalogue);
  return ahead;
}

std::vector<BenchMixture> vials_ahead(const Plan& plan, const Progress& progress, const Bench& bench,
                                      const Catalogue& catalogue) {
  std::vector<BenchMixture> vials;
  const NextKind kind = progress.next.kind;
  if (progress.proposed && (kind == NextKind::test || kind == NextKind::found || kind == NextKind::unsure))
    vials.push_back(bench_mixture(*progress.proposed, plan, catalogue));
  if (kind == NextKind::not_judged)
    for (const JudgedMixture& one : progress.to_try) vials.push_back(bench_mixture(one, plan, catalogue));
  if (kind != NextKind::test) return vials;
  for (const TestAhead& test : tests_ahead(plan, progress, catalogue))
    if (!holds(vials, test.mixture.judged.mixture)) vials.push_back(test.mixture);
  for (const BenchMixture& mixture : bench.mixtures) {
    if (mixture.beyond_limit || holds(vials, mixture.judged.mixture)) continue;
    if (!closed_by(plan, progress.conduct, mixture.judged.mixture)) vials.push_back(mixture);
  }
  return vials;
}

}  // namespace gentlest
