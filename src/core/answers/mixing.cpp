#include "gentlest/answers/mixing.hpp"

#include "core/plan/judged_mixture.hpp"

#include <algorithm>
#include <cassert>

namespace gentlest {

namespace {

constexpr int tenth = 10;

// What is looked up at every point of the triangle.
struct Chances {
  const ChanceField* target = nullptr;
  std::vector<const ChanceField*> kept;
};

Chances chances_of(const Plan& plan, const LayerFields& fields) {
  Chances chances;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!fields[i]) continue;
    if (plan.layers[i].is_target) chances.target = &*fields[i];
    if (plan.layers[i].role == Role::keep) chances.kept.push_back(&*fields[i]);
  }
  return chances;
}

Hansen point_of(const std::array<MixingBottle, 3>& bottles, double a, double b) {
  const Hansen& first = bottles[0].liquid.hansen;
  const Hansen& second = bottles[1].liquid.hansen;
  const Hansen& third = bottles[2].liquid.hansen;
  const double c = 1 - a - b;
  return {a * first.dD + b * second.dD + c * third.dD, a * first.dP + b * second.dP + c * third.dP,
          a * first.dH + b * second.dH + c * third.dH};
}

MixingGrid reckon(const std::array<MixingBottle, 3>& bottles, const Chances& chances) {
  MixingGrid grid;
  grid.bottles = bottles;
  for (int j = 0; j <= grid.steps; ++j)
    for (int i = 0; i + j <= grid.steps; ++i) {
      const double steps = grid.steps;
      const Hansen point = point_of(bottles, i / steps, j / steps);
      grid.effect.push_back(rounded_chance((*chances.target)(point)));
      if (chances.kept.empty()) continue;
      double risk = 0;
      for (const ChanceField* field : chances.kept) risk = std::max(risk, rounded_chance((*field)(point)));
      grid.risk.push_back(risk);
    }
  return grid;
}

const Liquid* with_label(const std::vector<Liquid>& liquids, const std::string& label) {
  const auto found =
      std::find_if(liquids.begin(), liquids.end(), [&](const Liquid& liquid) { return liquid.label == label; });
  return found == liquids.end() ? nullptr : &*found;
}

bool holds(const std::vector<MixingBottle>& bottles, const std::string& label) {
  return std::any_of(bottles.begin(), bottles.end(),
                     [&](const MixingBottle& bottle) { return bottle.liquid.label == label; });
}

// Those of the plan's own mixtures, at most three.
std::vector<MixingBottle> bottles_of_plan(const Plan& plan) {
  std::vector<MixingBottle> bottles;
  const auto add = [&](const std::string& label, MixingReason reason, int line) {
    const Liquid* liquid = with_label(plan.shelf, label);
    if (liquid && bottles.size() < 3 && !holds(bottles, label)) bottles.push_back({*liquid, reason, line});
  };
  for (const std::optional<JudgedMixture>* one : {&plan.nearest, &plan.least_risk_that_works})
    if (plan.lines.empty() && *one)
      for (const Part& part : (*one)->mixture.parts()) add(part.liquid.label, MixingReason::ladder, 1);
  // What a later line adds differs more from the ladder's bottles than the gentle stock that it adds to.
  for (std::size_t n = 0; n < plan.lines.size(); ++n)
    for (const std::string& label : plan.lines[n].bottles)
      if (n == 0 || label != plan.lines[n].bottles.front())
        add(label, n == 0 ? MixingReason::ladder : MixingReason::line, static_cast<int>(n + 1));
  for (std::size_t n = 1; n < plan.lines.size(); ++n)
    add(plan.lines[n].bottles.front(), MixingReason::line, static_cast<int>(n + 1));
  return bottles;
}

double gain_of(const std::array<MixingBottle, 3>& bottles, const Chances& chances, double risk_limit) {
  const std::optional<MixingBest> best = best_within(reckon(bottles, chances), risk_limit);
  return best ? best->effect : -1;
}

// The bottle of the shelf that adds most to those chosen; of several alike the first by label.
void add_from_shelf(std::vector<MixingBottle>& bottles, const Plan& plan, const Chances& chances) {
  const Liquid* best = nullptr;
  double most = -2;
  for (const Liquid& liquid : plan.shelf) {
    if (holds(bottles, liquid.label)) continue;
    std::array<MixingBottle, 3> three;
    for (std::size_t k = 0; k < 3; ++k) three[k] = k < bottles.size() ? bottles[k] : MixingBottle{liquid};
    const double gain = gain_of(three, chances, plan.job.limits.risk_limit);
    if (gain <= most) continue;
    best = &liquid;
    most = gain;
  }
  assert(best);
  bottles.push_back({*best, MixingReason::shelf, 1});
}

void find_parting(MixingGrid& grid, const Plan& plan, const Catalogue& catalogue) {
  const int pace = grid.steps / tenth;
  for (int j = 0; j <= grid.steps; j += pace)
    for (int i = 0; i + j <= grid.steps; i += pace) {
      const PhaseAnswer answer = phases_of(mixture_at(grid, i, j), catalogue, Celsius{plan.job.limits.room_C});
      if (answer.phases == Phases::two_liquids) grid.part.emplace_back(i, j);
    }
}

}  // namespace

Mixture mixture_at(const MixingGrid& grid, int i, int j) {
  std::vector<Part> parts;
  const std::array<int, 3> shares = {i, j, grid.steps - i - j};
  for (std::size_t k = 0; k < 3; ++k)
    if (shares[k] > 0) parts.push_back({grid.bottles[k].liquid, static_cast<double>(shares[k]) / grid.steps});
  return Mixture(std::move(parts));
}

std::optional<MixingGrid> mix_three(const Plan& plan, const Catalogue& catalogue, const std::vector<Liquid>& asked) {
  assert(asked.empty() || asked.size() == 3);
  if (!plan.layers[plan.target].sphere || (asked.empty() && plan.shelf.size() < 3)) return std::nullopt;
  std::vector<Liquid> liquids = plan.shelf;
  for (const Liquid& liquid : asked)
    if (!with_label(liquids, liquid.label)) liquids.push_back(liquid);
  const LayerFields fields =
      layer_fields(reach_of(liquids, catalogue), make_subjects(plan.layers, plan.job.limits, liquids));
  const Chances chances = chances_of(plan, fields);
  std::vector<MixingBottle> bottles;
  for (const Liquid& liquid : asked) bottles.push_back({liquid, MixingReason::asked, 1});
  if (asked.empty()) bottles = bottles_of_plan(plan);
  while (bottles.size() < 3) add_from_shelf(bottles, plan, chances);
  MixingGrid grid = reckon({bottles[0], bottles[1], bottles[2]}, chances);
  find_parting(grid, plan, catalogue);
  return grid;
}

std::optional<MixingBest> best_within(const MixingGrid& grid, double risk_limit) {
  std::optional<MixingBest> best;
  for (int j = 0; j <= grid.steps; ++j)
    for (int i = 0; i + j <= grid.steps; ++i) {
      const std::size_t at = grid.at(i, j);
      if (!grid.risk.empty() && passes_limit(grid.risk[at], risk_limit)) continue;
      if (best && grid.effect[at] <= best->effect) continue;
      best = MixingBest{i, j, grid.effect[at], {}};
      if (!grid.risk.empty()) best->risk = grid.risk[at];
    }
  return best;
}

}  // namespace gentlest
