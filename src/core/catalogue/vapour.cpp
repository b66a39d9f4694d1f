#include "gentlest/catalogue/vapour.hpp"

#include <cmath>

namespace gentlest {

namespace {

constexpr double lowest_C = -80;
constexpr double highest_C = 200;
constexpr double reference_K = 298.15;
constexpr double atmosphere_kPa = 101.325;

double antoine_kPa(const Antoine& antoine, double T_K) {
  return std::pow(10, antoine.A - antoine.B / (T_K + antoine.C));
}

// The equation means nothing near and below its pole.
bool antoine_holds(const Antoine& antoine, double T_K) {
  return T_K + antoine.C > 40;
}

bool in_range(const Antoine& antoine, double T_K) {
  return T_K >= antoine.from_K && T_K <= antoine.to_K;
}

// How far the correction at 25 C still counts: wholly at 25 C and below, no more where the equation's range begins. In
// between it fades with 1/T, as an error in the heat of vaporisation does, so the pressure has no step.
double share_of_correction(double T_K, double range_begins_K) {
  if (T_K <= reference_K) return 1;
  return (1 / T_K - 1 / range_begins_K) / (1 / reference_K - 1 / range_begins_K);
}

std::optional<VapourPressure> from_antoine(const Solvent& solvent, double T_K) {
  const Antoine& antoine = solvent.antoine->chosen.value;
  if (!antoine_holds(antoine, T_K)) return std::nullopt;
  VapourPressure pressure{antoine_kPa(antoine, T_K), PressureBasis::equation, solvent.antoine->chosen.source};
  if (in_range(antoine, T_K)) return pressure;
  pressure.basis = PressureBasis::equation_stretched;
  // Above the range the equation is left alone; below it the recorded pressure at 25 C is nearer.
  if (!solvent.vapour_pressure_kPa || T_K > antoine.to_K || antoine.from_K <= reference_K ||
      !antoine_holds(antoine, reference_K))
    return pressure;
  const double correction = solvent.vapour_pressure_kPa->chosen.value / antoine_kPa(antoine, reference_K);
  pressure.kPa *= std::pow(correction, share_of_correction(T_K, antoine.from_K));
  pressure.basis = PressureBasis::equation_through_25;
  pressure.source = solvent.vapour_pressure_kPa->chosen.source;
  return pressure;
}

std::optional<VapourPressure> from_two_points(const Solvent& solvent, double T_K) {
  if (!solvent.vapour_pressure_kPa) return std::nullopt;
  const double at_25 = solvent.vapour_pressure_kPa->chosen.value;
  VapourPressure pressure{at_25, PressureBasis::two_points, solvent.vapour_pressure_kPa->chosen.source};
  if (std::abs(T_K - reference_K) < 1e-9) return pressure;
  if (!solvent.boiling_point_C || !(at_25 > 0)) return std::nullopt;
  const double boiling_K = kelvin(Celsius{solvent.boiling_point_C->chosen.value});
  if (boiling_K < reference_K + 5) return std::nullopt;
  const double slope = std::log(atmosphere_kPa / at_25) / (1 / reference_K - 1 / boiling_K);
  pressure.kPa = at_25 * std::exp(slope * (1 / reference_K - 1 / T_K));
  return pressure;
}

}  // namespace

std::optional<VapourPressure> vapour_pressure(const Solvent& solvent, Celsius temperature) {
  if (!(temperature.value >= lowest_C && temperature.value <= highest_C)) return std::nullopt;
  const double T_K = kelvin(temperature);
  if (solvent.antoine)
    if (const auto pressure = from_antoine(solvent, T_K)) return pressure;
  return from_two_points(solvent, T_K);
}

std::optional<Celsius> temperature_of_pressure(const Solvent& solvent, double kPa) {
  double low = lowest_C;
  double high = highest_C;
  // The pole of the equation can lie inside the range; start where there is a pressure at all.
  while (low < high && !vapour_pressure(solvent, {low})) low += 1;
  const auto below = vapour_pressure(solvent, {low});
  const auto above = vapour_pressure(solvent, {high});
  if (!below || !above || below->kPa > kPa || above->kPa < kPa) return std::nullopt;
  while (high - low > 1e-6) {
    const double middle = (low + high) / 2;
    const auto there = vapour_pressure(solvent, {middle});
    (there && there->kPa < kPa ? low : high) = middle;
  }
  return Celsius{(low + high) / 2};
}

}  // namespace gentlest
