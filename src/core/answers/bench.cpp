#include "gentlest/answers/bench.hpp"

#include "gentlest/catalogue/statements.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

// The chance never rises with RED, so the ends of the band of RED give those of the chance.
std::optional<Band> chance_band(const std::optional<Outlook>& outlook, const PlannedLayer& layer, const Plan& plan) {
  if (!outlook) return std::nullopt;
  const int grade = grade_that_counts(layer, plan.job.limits);
  return Band{chance_at_most(layer.response, grade, outlook->RED_band.high),
              chance_at_most(layer.response, grade, outlook->RED_band.low)};
}

std::optional<Millilitres> top_up_of(const Origin& origin, const Plan& plan) {
  if (origin.kind != OriginKind::rung || origin.line != 1 || origin.number < 2) return std::nullopt;
  const std::vector<int>& percent = plan.lines.front().active_percent;
  const auto at = static_cast<std::size_t>(origin.number - 1);
  if (at >= percent.size() || percent[at] == 100) return std::nullopt;
  return top_up(Millilitres{plan.job.limits.vial_mL}, percent[at - 1] / 100.0, percent[at] / 100.0);
}

void add_bottles(const Plan& plan, Bench& bench) {
  std::vector<Liquid> used;
  for (const JudgedMixture* judged : planned_mixtures(plan)) add_liquids(used, judged->mixture);
  for (const Liquid& liquid : used) {
    if (!liquid.solvent->hazards) bench.without_record.push_back(liquid.label);
    if (any_is(known_statements(*liquid.solvent), {"H340", "H350", "H360"})) bench.gravest.push_back(liquid.label);
  }
  for (const Liquid& bottle : plan.shelf) {
    const bool is_used =
        std::any_of(used.begin(), used.end(), [&](const Liquid& one) { return one.label == bottle.label; });
    if (!is_used) bench.not_needed.push_back(bottle.label);
  }
}

void add_session(const std::vector<Recipe>& recipes, const Catalogue& catalogue, Bench& bench) {
  std::vector<UsedLiquid> used;
  for (const Recipe& recipe : recipes)
    for (const RecipeLine& line : recipe.lines) used.push_back({line.liquid, line.volume});
  if (!used.empty()) bench.session = session_exposure(used, Room{}, catalogue);
  std::vector<PersonHazard> hazards;
  for (const BenchMixture& mixture : bench.mixtures) hazards.push_back(mixture.person);
  bench.vapour_list = list_for_all(hazards);
}

}  // namespace

const JudgedMixture& as_made(const BenchMixture& mixture) {
  return mixture.as_measured ? *mixture.as_measured : mixture.judged;
}

std::vector<std::optional<Band>> chance_bands(const JudgedMixture& judged, const Plan& plan) {
  std::vector<std::optional<Band>> bands;
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    bands.push_back(chance_band(judged.outlooks[i], plan.layers[i], plan));
  return bands;
}

BenchMixture bench_mixture(const JudgedMixture& judged, const Plan& plan, const Catalogue& catalogue) {
  const Limits& limits = plan.job.limits;
  Recipe recipe = round_recipe(judged.mixture, {Millilitres{limits.vial_mL}, Millilitres{limits.measure_mL}});
  BenchMixture ready{judged, std::move(recipe), {}, {}, {}, false};
  const Mixture& made = ready.recipe.as_measured;
  constexpr double no_change = 1e-9;
  if (ready.recipe.largest_change > no_change) {
    ready.as_measured = judge_mixture(made, plan.layers, limits, catalogue);
    ready.as_measured->origin = judged.origin;
  }
  ready.label = label_of(made, catalogue);
  ready.person = person_hazard(made, ready.label, catalogue, Celsius{limits.room_C});
  ready.contact = contact_for(judged.mixture, plan, catalogue);
  ready.beyond_limit = is_beyond_limit(as_made(ready), limits);
  ready.chance_bands = chance_bands(as_made(ready), plan);
  return ready;
}

Bench prepare_bench(const Plan& plan, const Catalogue& catalogue) {
  Bench bench;
  std::vector<Recipe> recipes;
  for (const JudgedMixture* planned : ladder_mixtures(plan)) {
    bench.mixtures.push_back(bench_mixture(*planned, plan, catalogue));
    bench.mixtures.back().top_up = top_up_of(planned->origin, plan);
    if (!bench.mixtures.back().beyond_limit) recipes.push_back(bench.mixtures.back().recipe);
  }
  bench.totals = session_totals(recipes);
  bench.cautions = plan.cautions;
  add_bottles(plan, bench);
  add_session(recipes, catalogue, bench);
  return bench;
}

}  // namespace gentlest
