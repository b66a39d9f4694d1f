#include "gentlest/bench.hpp"

#include "planned_chance.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

HansenBox box_of(const Drift& drift) {
  HansenBox box{drift.path.front().point, drift.path.front().point};
  for (const DriftPoint& step : drift.path) {
    box.low = {std::min(box.low.dD, step.point.dD), std::min(box.low.dP, step.point.dP),
               std::min(box.low.dH, step.point.dH)};
    box.high = {std::max(box.high.dD, step.point.dD), std::max(box.high.dP, step.point.dP),
                std::max(box.high.dH, step.point.dH)};
  }
  return box;
}

double largest_kept(const std::vector<PlannedLayer>& layers, const std::vector<ChanceField>& fields,
                    const Hansen& point) {
  double largest = 0;
  for (std::size_t i = 0; i < layers.size(); ++i)
    if (layers[i].role == Role::keep) largest = std::max(largest, fields[i](point));
  return largest;
}

std::vector<double> risks_while_drying(const Drift& drift, const Plan& plan, const Catalogue& catalogue) {
  const std::vector<ChanceField> fields =
      chance_fields(box_of(drift), make_subjects(plan.layers, plan.job.limits, catalogue));
  std::vector<double> risks;
  for (const DriftPoint& step : drift.path) risks.push_back(largest_kept(plan.layers, fields, step.point));
  return risks;
}

// The chance never rises with RED, so the ends of the band of RED give those of the chance.
Band chance_band(const Outlook& outlook, const PlannedLayer& layer, const Plan& plan, const Catalogue& catalogue) {
  const Response& response = response_of(layer, catalogue);
  const int grade = grade_that_counts(layer, plan.job.limits);
  return {chance_at_most(response, grade, outlook.RED_band.high),
          chance_at_most(response, grade, outlook.RED_band.low)};
}

BenchMixture prepare(const PlannedMixture& planned, const Plan& plan, const Catalogue& catalogue) {
  const Limits& limits = plan.job.limits;
  Recipe recipe = round_recipe(planned.judged->mixture, {Millilitres{limits.vial_mL}, Millilitres{limits.measure_mL}});
  BenchMixture ready{planned.name, planned.judged, std::move(recipe), {}, {}, {}, {}};
  const Mixture& made = ready.recipe.as_measured;
  constexpr double no_change = 1e-9;
  if (ready.recipe.largest_change > no_change) ready.as_measured = judge_mixture(made, plan.layers, limits, catalogue);
  ready.label = label_of(made, catalogue);
  if (const std::optional<Drift>& drift = as_made(ready).fate.drift)
    ready.drying_risk = risks_while_drying(*drift, plan, catalogue);
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    ready.chance_bands.push_back(chance_band(as_made(ready).outlooks[i], plan.layers[i], plan, catalogue));
  return ready;
}

}  // namespace

const JudgedMixture& as_made(const BenchMixture& mixture) {
  return mixture.as_measured ? *mixture.as_measured : *mixture.judged;
}

std::vector<PlannedMixture> planned_mixtures(const Plan& plan) {
  std::vector<PlannedMixture> mixtures;
  auto step = plan.finer.begin();
  for (std::size_t i = 0; i < plan.rungs.size(); ++i) {
    const std::string rung = std::to_string(i + 1);
    mixtures.push_back({rung, &plan.rungs[i]});
    for (; step != plan.finer.end() && step->after_rung == static_cast<int>(i + 1); ++step)
      mixtures.push_back({rung + "." + std::to_string(step->number), &step->judged});
  }
  if (plan.nearest) mixtures.push_back({"strongest within the risk limit", &*plan.nearest});
  if (plan.least_risk_that_works)
    mixtures.push_back({"least risk that reaches the effect", &*plan.least_risk_that_works});
  return mixtures;
}

Bench prepare_bench(const Plan& plan, const Catalogue& catalogue) {
  Bench bench;
  std::vector<Recipe> recipes;
  for (const PlannedMixture& planned : planned_mixtures(plan)) {
    bench.mixtures.push_back(prepare(planned, plan, catalogue));
    recipes.push_back(bench.mixtures.back().recipe);
  }
  bench.totals = session_totals(recipes);
  bench.published = compare_published(plan, catalogue);
  bench.cautions = plan.cautions;
  return bench;
}

}  // namespace gentlest
