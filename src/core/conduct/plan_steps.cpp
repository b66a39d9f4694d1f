#include "core/conduct/parts.hpp"

#include "gentlest/liquids/recipe.hpp"
#include "gentlest/space/reach.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace gentlest {

namespace {

constexpr double same_share = 0.006;  // what is measured into a vial is no nearer to a recipe

double share_of(const Mixture& mixture, const std::string& label) {
  for (const Part& part : mixture.parts())
    if (part.liquid.label == label) return part.fraction;
  return 0;
}

Mixture half_way(const Mixture& a, const Mixture& b) {
  std::map<std::string, Part> parts;
  for (const Mixture* one : {&a, &b})
    for (const Part& part : one->parts()) {
      Part& sum = parts.try_emplace(part.liquid.label, Part{part.liquid, 0}).first->second;
      sum.fraction += part.fraction / 2;
    }
  std::vector<Part> both;
  for (const auto& [label, part] : parts) both.push_back(part);
  return Mixture(std::move(both));
}

Mixture measured(const Plan& plan, const Mixture& mixture) {
  const Measuring measuring{Millilitres{plan.job.limits.vial_mL}, Millilitres{plan.job.limits.measure_mL}};
  if (measuring_fault(mixture.parts().size(), measuring)) return mixture;
  return round_recipe(mixture, measuring).as_measured;
}

// Share of the active stock, where the mixture is one of the line's two stocks and nothing else.
std::optional<double> active_share(const LadderLine& line, const Mixture& mixture) {
  double share = 0;
  double gentle = 0;
  for (const Part& part : mixture.parts()) {
    if (std::find(line.bottles.begin(), line.bottles.end(), part.liquid.label) == line.bottles.end())
      return std::nullopt;
    if (share_of(*line.active, part.liquid.label) > 0)
      share += part.fraction;
    else
      gentle += part.fraction;
  }
  for (const Part& part : line.active->parts())
    if (std::abs(share_of(mixture, part.liquid.label) - share * part.fraction) > same_share) return std::nullopt;
  return share + gentle > 1 - same_share ? std::optional(share) : std::nullopt;
}

double active_share_of_rung(const LadderLine& line, std::size_t rung) {
  return active_share(line, line.rungs[rung].mixture).value_or(0);
}

}  // namespace

std::optional<double> RED_to(const PlannedLayer& layer, const Hansen& point) {
  if (!layer.sphere) return std::nullopt;
  return relative_distance_RED(point, layer.sphere->mean, layer.reach);
}

std::vector<PlanStep> plan_steps(const Plan& plan) {
  std::vector<PlanStep> steps;
  for (std::size_t line = 0; line < plan.lines.size(); ++line) {
    const std::vector<JudgedMixture>& rungs = plan.lines[line].rungs;
    for (std::size_t i = 0; i < rungs.size(); ++i) {
      const auto height = static_cast<double>(i + 1);
      steps.push_back({rungs[i].mixture, measured(plan, rungs[i].mixture), rungs[i].origin, line, height});
      if (i + 1 == rungs.size()) continue;
      Origin half = rungs[i].origin;
      half.kind = OriginKind::half_step;
      const Mixture middle = half_way(rungs[i].mixture, rungs[i + 1].mixture);
      PlanStep between{middle, measured(plan, middle), half, line, height + 0.5};
      // What the measure makes of it must be neither of the rungs.
      const auto is_rung = [&](const JudgedMixture& rung) {
        return is_same_mixture(between.as_measured, rung.mixture) ||
               is_same_mixture(between.as_measured, measured(plan, rung.mixture));
      };
      if (!is_rung(rungs[i]) && !is_rung(rungs[i + 1])) steps.push_back(std::move(between));
    }
  }
  return steps;
}

std::optional<double> height_on(const Plan& plan, std::size_t line, const Mixture& mixture) {
  const LadderLine& on = plan.lines[line];
  if (on.active && on.rungs.size() > 1) {
    const std::optional<double> share = active_share(on, mixture);
    if (!share) return std::nullopt;
    const double first = active_share_of_rung(on, 0);
    const double step = active_share_of_rung(on, 1) - first;
    const double height = 1 + (*share - first) / step;
    const double nearest = std::round(2 * height) / 2;
    return std::abs(height - nearest) * step <= same_share ? nearest : height;
  }
  for (std::size_t i = 0; i < on.rungs.size(); ++i) {
    const auto height = static_cast<double>(i + 1);
    if (is_same_mixture(on.rungs[i].mixture, mixture)) return height;
    if (i + 1 < on.rungs.size() && is_same_mixture(half_way(on.rungs[i].mixture, on.rungs[i + 1].mixture), mixture))
      return height + 0.5;
  }
  return std::nullopt;
}

}  // namespace gentlest
