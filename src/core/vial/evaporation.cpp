#include "gentlest/vial/evaporation.hpp"

#include "core/vial/evaporation_steps.hpp"
#include "core/vial/kept.hpp"
#include "core/vial/water_limit.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr const char* unit_of_time = "butyl_acetate";

// Volume of n-butyl acetate that dries in a unit of time under the same conditions.
std::optional<double> reference_rate(const Catalogue& catalogue, Celsius temperature) {
  const Solvent* reference = catalogue.find_solvent(unit_of_time);
  if (!reference) return std::nullopt;
  const auto pressure = vapour_pressure(*reference, temperature);
  const auto volume = molar_volume_cm3(*reference);
  if (!pressure || !volume) return std::nullopt;
  return pressure->kPa * *volume;
}

DriftPoint point_of(const DryingState& state, const Breakdown& breakdown, std::size_t parts) {
  DriftPoint point;
  point.evaporated = state.evaporated;
  point.time = state.time;
  point.volume_fractions.assign(parts, 0);
  double volume = 0;
  for (std::size_t i = 0; i < state.amounts.size(); ++i) {
    const Molecule& molecule = breakdown.molecules[i];
    const double own = state.amounts[i] * molecule.molar_volume_cm3;
    volume += own;
    point.volume_fractions[molecule.part] += own;
    point.point.dD += own * molecule.hansen.dD;
    point.point.dP += own * molecule.hansen.dP;
    point.point.dH += own * molecule.hansen.dH;
  }
  for (double& fraction : point.volume_fractions) fraction /= volume;
  point.point = {point.point.dD / volume, point.point.dP / volume, point.point.dH / volume};
  return point;
}

// What is left of a mixture, bottle by bottle: each with the water that is left in it. A cut counts as it was.
Mixture what_is_left(const Mixture& mixture, const DryingState& state, const Breakdown& breakdown) {
  constexpr double hardly_any = 1e-9;
  std::vector<Part> parts = mixture.parts();
  std::vector<double> water(parts.size(), 0);
  double volume = 0;
  for (Part& part : parts) part.fraction = 0;
  for (std::size_t i = 0; i < state.amounts.size(); ++i) {
    const Molecule& molecule = breakdown.molecules[i];
    const double own = state.amounts[i] * molecule.molar_volume_cm3;
    volume += own;
    parts[molecule.part].fraction += own;
    if (molecule.solvent->family == "water") water[molecule.part] += own;
  }
  for (std::size_t i = 0; i < parts.size(); ++i)
    if (parts[i].liquid.water_fraction > 0 && parts[i].fraction > 0)
      parts[i].liquid.water_fraction = water[i] / parts[i].fraction;
  std::erase_if(parts, [&](const Part& part) { return part.fraction < hardly_any * volume; });
  double kept = 0;
  for (const Part& part : parts) kept += part.fraction;
  for (Part& part : parts) part.fraction /= kept;
  return Mixture(std::move(parts));
}

// Does what is left part into two liquids, border cases apart, by the modified group method?
bool parts_now(const DryingState& state, const std::optional<Activity>& warmer) {
  if (!warmer) return false;
  std::vector<double> x = state.amounts;
  double sum = 0;
  for (double& amount : x) sum += amount = std::max(amount, 1e-12);
  for (double& amount : x) amount /= sum;
  return is_unstable(*warmer, x);
}

constexpr double last_bits = 1e-9;  // of what differs by less the first counts, on every machine

std::string largest_part(const Mixture& mixture, const DriftPoint& point) {
  std::size_t most = 0;
  for (std::size_t i = 1; i < point.volume_fractions.size(); ++i)
    if (point.volume_fractions[i] > point.volume_fractions[most] + last_bits) most = i;
  return mixture.parts()[most].liquid.label;
}

constexpr int percent_a_step = 5;

std::vector<double> shares_to_report() {
  std::vector<double> shares;
  for (int percent = percent_a_step; percent <= 95; percent += percent_a_step) shares.push_back(percent / 100.0);
  shares.push_back(0.99);
  return shares;
}

// Where a drying mixture goes until judged_until, worked out as far as anybody asked.
class DryingWay {
 public:
  DryingWay(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature)
      : parts_(mixture.parts().size()), breakdown_(break_down(mixture, catalogue)) {
    const auto reference = reference_rate(catalogue, temperature);
    if (!breakdown_ || !reference) return;
    drying_ = start_drying(*breakdown_, VapourModel(*breakdown_, catalogue), temperature, *reference);
    if (!drying_ || breakdown_->molecules.size() > 1) return;
    points_.push_back(breakdown_->molecules.front().hansen);
    drying_.reset();
  }

  std::optional<bool> reaches(const std::function<bool(const Hansen&)>& is_beyond) {
    if (!drying_ && points_.empty()) return std::nullopt;
    for (std::size_t i = 0; i < points_.size() || step(); ++i)
      if (is_beyond(points_[i])) return true;
    return false;
  }

 private:
  // One more point; false where the way is at its end, and what made it is let go.
  bool step() {
    if (!drying_) return false;
    const double share = static_cast<double>(percent_a_step * (points_.size() + 1)) / 100.0;
    if (share > judged_until + 1e-9) {
      drying_.reset();
      breakdown_.reset();
      return false;
    }
    dry_until(*drying_, share);
    points_.push_back(point_of(drying_->state, *breakdown_, parts_).point);
    return true;
  }

  std::size_t parts_ = 0;
  std::optional<Breakdown> breakdown_;
  std::optional<Drying> drying_;  // while there is more to come
  std::vector<Hansen> points_;
};

}  // namespace

std::optional<Drift> evaporate(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  const auto breakdown = break_down(mixture, catalogue);
  const auto reference = reference_rate(catalogue, temperature);
  if (!breakdown || !reference) return std::nullopt;
  const VapourModel model(*breakdown, catalogue);
  auto drying = start_drying(*breakdown, model, temperature, *reference);
  if (!drying) return std::nullopt;
  const auto warmer = activity_of(modified_groups_of(*breakdown, catalogue), catalogue.chemistry().unifac_modified,
                                  kelvin(temperature) + border_margin_K);
  Drift drift;
  drift.temperature = temperature;
  drift.ideal = !model.knows_activity() && breakdown->molecules.size() > 1;
  drift.stand_ins = breakdown->stand_ins;
  drift.uncertain_pressures = model.uncertain_pressures(temperature);
  drift.sources = model.sources(temperature);
  // The same judgement as of the mixture itself: limits of water first, where they speak.
  const auto parts = [&](const DryingState& state) {
    if (const auto answer = from_water_limits(what_is_left(mixture, state, *breakdown), catalogue, temperature, false))
      return answer->phases == Phases::two_liquids;
    return parts_now(state, warmer);
  };
  const auto note = [&](const DryingState& state) {
    drift.path.push_back(point_of(state, *breakdown, mixture.parts().size()));
    if (!drift.parts_at && state.evaporated <= judged_until && parts(state)) drift.parts_at = state.evaporated;
  };
  note(drying->state);
  for (const double share : shares_to_report()) {
    dry_until(*drying, share);
    note(drying->state);
  }
  drift.last = largest_part(mixture, drift.path.back());
  return drift;
}

std::optional<bool> drifts_to(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature,
                              const std::function<bool(const Hansen&)>& is_beyond) {
  static Kept<DryingWay> kept;
  return kept.answer(
      vial_key(mixture, catalogue, temperature), [&] { return DryingWay(mixture, catalogue, temperature); },
      [&](DryingWay& way) { return way.reaches(is_beyond); });
}

std::vector<MissingFigure> missing_for_drift(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  using What = MissingFigure::What;
  std::vector<MissingFigure> missing;
  for (const std::string& label : missing_for_breakdown(mixture, catalogue))
    missing.push_back({What::amount, label, temperature});
  if (const auto breakdown = break_down(mixture, catalogue))
    for (const std::string& name : missing_for_vapour(VapourModel(*breakdown, catalogue), temperature))
      missing.push_back({What::vapour_pressure, name, temperature});
  if (!reference_rate(catalogue, temperature)) missing.push_back({What::unit_of_time, {}, temperature});
  return missing;
}

DriftRisk judge_drift(const Drift& drift, const std::function<double(const Hansen&)>& chance, double limit) {
  DriftRisk risk;
  double before = 0;
  double before_at = 0;
  for (const DriftPoint& point : drift.path) {
    if (point.evaporated > judged_until + 1e-9) break;
    const double here = chance(point.point);
    if (point.evaporated == 0) risk.at_start = here;
    // Past the last bits: what stays where it is is worst where it begins, on every machine.
    if (here > risk.worst + last_bits) {
      risk.worst = here;
      risk.worst_at = point.evaporated;
    }
    if (!risk.beyond_limit_at && here > limit) {
      const double part = point.evaporated == 0 ? 0 : (limit - before) / (here - before);
      risk.beyond_limit_at = before_at + part * (point.evaporated - before_at);
    }
    before = here;
    before_at = point.evaporated;
  }
  return risk;
}

std::optional<double> evaporation_rate(const Solvent& solvent, const Catalogue& catalogue, Celsius temperature) {
  const auto reference = reference_rate(catalogue, temperature);
  const auto pressure = vapour_pressure(solvent, temperature);
  const auto volume = molar_volume_cm3(solvent);
  if (!reference || !pressure || !volume) return std::nullopt;
  return pressure->kPa * *volume / *reference;
}

}  // namespace gentlest
