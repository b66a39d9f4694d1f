#include "gentlest/liquids/recipe.hpp"

#include "gentlest/base/diagnostic.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

namespace gentlest {

namespace {

double steps_of(const Measuring& measuring) {
  return std::floor(measuring.vial.value / measuring.step.value + 1e-9);
}

int steps_in_vial(std::size_t parts, const Measuring& measuring) {
  check_measurable(parts, measuring);
  return static_cast<int>(steps_of(measuring));
}

// Where the next step is added (direction 1) or taken away (-1): the share that is furthest off on that side.
std::size_t furthest_off(const std::vector<double>& ideal, const std::vector<int>& steps, int direction) {
  std::size_t best = ideal.size();
  double most = 0;
  for (std::size_t i = 0; i < ideal.size(); ++i) {
    if (direction < 0 && steps[i] <= 1) continue;
    const double off = direction * (ideal[i] - steps[i]);
    if (best == ideal.size() || off > most + 1e-9) {
      best = i;
      most = off;
    }
  }
  return best;
}

std::vector<int> whole_steps(const Mixture& mixture, int total) {
  std::vector<double> ideal;
  std::vector<int> steps;
  for (const Part& part : mixture.parts()) {
    ideal.push_back(part.fraction * total);
    steps.push_back(std::max(1, static_cast<int>(std::floor(ideal.back() + 1e-9))));
  }
  int missing = total - std::accumulate(steps.begin(), steps.end(), 0);
  for (; missing > 0; --missing) ++steps[furthest_off(ideal, steps, 1)];
  for (; missing < 0; ++missing) --steps[furthest_off(ideal, steps, -1)];
  return steps;
}

}  // namespace

std::optional<Diagnostic> measuring_fault(std::size_t parts, const Measuring& measuring) {
  const double vial = measuring.vial.value;
  const double step = measuring.step.value;
  const auto fault = [](std::string message, std::string remedy) {
    return Diagnostic{{}, std::move(message), std::move(remedy), {}};
  };
  if (!(vial > 0 && vial <= 1e5) || !(step > 0) || step > vial)
    return fault(fmt::format("a vial of {:.6g} mL cannot be filled in steps of {:.6g} mL", vial, step),
                 "the step must be above 0 and not larger than the vial");
  const double steps = steps_of(measuring);
  if (steps < static_cast<double>(parts))
    return fault(fmt::format("a vial of {:.6g} mL holds {} steps of {:.6g} mL, too few for {} liquids", vial,
                             static_cast<int>(steps), step, parts),
                 "take a larger vial or a finer measure");
  if (steps > 1e6) return fault(fmt::format("steps of {:.6g} mL are too fine", step), "");
  return std::nullopt;
}

void check_measurable(std::size_t parts, const Measuring& measuring) {
  if (auto fault = measuring_fault(parts, measuring)) throw InputError(Fault::usage, {std::move(*fault)});
}

Recipe round_recipe(const Mixture& mixture, const Measuring& measuring) {
  const int total = steps_in_vial(mixture.parts().size(), measuring);
  const std::vector<int> steps = whole_steps(mixture, total);
  std::vector<Part> parts;
  std::vector<RecipeLine> lines;
  double largest_change = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Part& part = mixture.parts()[i];
    const double fraction = static_cast<double>(steps[i]) / total;
    parts.push_back({part.liquid, fraction});
    lines.push_back({part.liquid, steps[i], {steps[i] * measuring.step.value}});
    largest_change = std::max(largest_change, std::abs(fraction - part.fraction));
  }
  return {measuring, std::move(lines), {total * measuring.step.value}, Mixture(std::move(parts)), largest_change};
}

bool is_in_drops(const Measuring& measuring) {
  return std::abs(measuring.step.value - drop_mL) < 1e-9;
}

Millilitres top_up(Millilitres volume, double from, double to) {
  assert(0 <= from && from <= to && to < 1);
  return Millilitres{volume.value * (to - from) / (1 - to)};
}

std::vector<SessionTotal> session_totals(const std::vector<Recipe>& recipes) {
  std::map<std::string, double> totals;
  for (const Recipe& recipe : recipes)
    for (const RecipeLine& line : recipe.lines) totals[line.liquid.label] += line.volume.value;
  std::vector<SessionTotal> list;
  for (const auto& [label, volume] : totals) list.push_back({label, {volume}});
  return list;
}

}  // namespace gentlest
