#include "core/vial/evaporation_steps.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>

namespace gentlest {

namespace {

// A molecule of which less than this share is left has gone; what it would still add is below any figure shown.
constexpr double gone = 1e-12;
constexpr double ln_of_gone = -600;

using Vector = std::vector<double>;

// Unknowns: ln of the amount of each molecule, then the time. Logarithms keep amounts positive and make the end of a
// fast liquid a straight line instead of a stiff decay.
Vector slope(const Drying& drying, const Vector& unknowns) {
  const std::size_t count = drying.volumes.size();
  Vector x(count);
  double moles = 0;
  for (std::size_t i = 0; i < count; ++i) moles += x[i] = std::exp(unknowns[i]);
  for (double& share : x) share /= moles;
  const Vector ln_gamma = drying.activity ? drying.activity->ln_gamma(x) : Vector(count, 0);
  Vector push(count);  // gamma p: flux per mole fraction
  double volume_flux = 0;
  for (std::size_t i = 0; i < count; ++i) {
    push[i] = drying.pressures[i] * std::exp(ln_gamma[i]);
    volume_flux += x[i] * push[i] * drying.volumes[i];
  }
  Vector result(count + 1);
  for (std::size_t i = 0; i < count; ++i) result[i] = unknowns[i] <= ln_of_gone ? 0 : -push[i] / (moles * volume_flux);
  result[count] = drying.reference / volume_flux;
  return result;
}

// Coefficients of Dormand and Prince 1980, J. Comput. Appl. Math. 6, 19 (from memory; tests compare closed forms).
constexpr std::array<std::array<double, 6>, 6> stage = {
    {{1.0 / 5},
     {3.0 / 40, 9.0 / 40},
     {44.0 / 45, -56.0 / 15, 32.0 / 9},
     {19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729},
     {9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656},
     {35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84}}};
constexpr std::array<double, 7> error_weight = {71.0 / 57600,      0,          -71.0 / 16695, 71.0 / 1920,
                                                -17253.0 / 339200, 22.0 / 525, -1.0 / 40};

struct Attempt {
  Vector unknowns;
  Vector slope;      // there: the first of the next step
  double error = 0;  // largest difference between the fifth and fourth order answers
};

Attempt try_step(const Drying& drying, const Vector& from, const Vector& slope_there, double step) {
  std::array<Vector, 7> slopes;
  slopes[0] = slope_there;
  Vector there = from;
  for (std::size_t s = 0; s < 6; ++s) {
    there = from;
    for (std::size_t k = 0; k <= s; ++k)
      for (std::size_t i = 0; i < there.size(); ++i) there[i] += step * stage[s][k] * slopes[k][i];
    slopes[s + 1] = slope(drying, there);
  }
  Attempt attempt{there, slopes[6], 0};
  for (std::size_t i = 0; i < there.size(); ++i) {
    double error = 0;
    for (std::size_t k = 0; k < 7; ++k) error += step * error_weight[k] * slopes[k][i];
    attempt.error = std::max(attempt.error, std::abs(error));
  }
  return attempt;
}

// Holds molecules that have gone where they are, so that their ever faster logarithms do not shorten the steps. True
// when one has gone just now.
bool drop_gone(Drying& drying, Vector& unknowns) {
  double most = unknowns[0];
  for (std::size_t i = 0; i < drying.volumes.size(); ++i) most = std::max(most, unknowns[i]);
  bool dropped = false;
  for (std::size_t i = 0; i < drying.volumes.size(); ++i)
    if (unknowns[i] < most + std::log(gone) && unknowns[i] != ln_of_gone) {
      unknowns[i] = ln_of_gone;
      dropped = true;
    }
  return dropped;
}

}  // namespace

std::optional<Drying> start_drying(const Breakdown& breakdown, const VapourModel& model, Celsius temperature,
                                   double reference) {
  const auto pressures = model.pure_kPa(temperature);
  if (!pressures) return std::nullopt;
  Drying drying;
  drying.pressures = *pressures;
  drying.activity = model.activity_at(temperature);
  drying.reference = reference;
  for (const Molecule& molecule : breakdown.molecules) {
    drying.volumes.push_back(molecule.molar_volume_cm3);
    drying.state.amounts.push_back(molecule.volume_fraction / molecule.molar_volume_cm3);
  }
  return drying;
}

void dry_until(Drying& drying, double share) {
  assert(drying.state.evaporated <= share && share < 1);
  constexpr double tolerance = 1e-8;
  DryingState& state = drying.state;
  const std::size_t count = drying.volumes.size();
  Vector unknowns(count + 1);
  for (std::size_t i = 0; i < count; ++i)
    unknowns[i] = std::max(std::log(std::max(state.amounts[i], 1e-300)), ln_of_gone);
  unknowns[count] = state.time;
  Vector slope_here = slope(drying, unknowns);
  while (state.evaporated < share) {
    const double left = share - state.evaporated;
    const double step = std::min(drying.step, left);
    const Attempt attempt = try_step(drying, unknowns, slope_here, step);
    const bool usable = std::isfinite(attempt.error);
    const double factor = usable ? 0.9 * std::pow(tolerance / std::max(attempt.error, 1e-16), 0.2) : 0.1;
    if (usable && attempt.error <= tolerance) {
      unknowns = attempt.unknowns;
      slope_here = attempt.slope;
      state.evaporated = step == left ? share : state.evaporated + step;
      if (drop_gone(drying, unknowns)) slope_here = slope(drying, unknowns);
    }
    if (step == drying.step || factor < 1) drying.step = step * std::clamp(factor, 0.1, 5.0);
  }
  for (std::size_t i = 0; i < count; ++i) state.amounts[i] = std::exp(unknowns[i]);
  state.time = unknowns[count];
}

}  // namespace gentlest
