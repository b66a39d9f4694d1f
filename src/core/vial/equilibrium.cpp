#include "gentlest/vial/equilibrium.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>
#include <set>

namespace gentlest {

VapourModel::VapourModel(const Breakdown& breakdown, const Catalogue& catalogue)
    : groups_(groups_of(breakdown)), table_(&catalogue.chemistry().unifac) {
  for (const Molecule& molecule : breakdown.molecules) solvents_.push_back(molecule.solvent);
  knows_activity_ = missing_for_activity(groups_, *table_).empty();
}

std::optional<std::vector<double>> VapourModel::pure_kPa(Celsius temperature) const {
  std::vector<double> pressures;
  for (const Solvent* solvent : solvents_) {
    const auto pressure = vapour_pressure(*solvent, temperature);
    if (!pressure) return std::nullopt;
    pressures.push_back(pressure->kPa);
  }
  return pressures;
}

std::optional<Activity> VapourModel::activity_at(Celsius temperature) const {
  if (!knows_activity_) return std::nullopt;
  return Activity(groups_, *table_, kelvin(temperature));
}

std::vector<double> VapourModel::ln_gamma(const std::vector<double>& x, Celsius temperature) const {
  const auto activity = activity_at(temperature);
  return activity ? activity->ln_gamma(x) : std::vector<double>(x.size(), 0);
}

std::optional<std::vector<double>> VapourModel::partial_kPa(const std::vector<double>& x, Celsius temperature) const {
  assert(x.size() == solvents_.size());
  auto pressures = pure_kPa(temperature);
  if (!pressures) return std::nullopt;
  const std::vector<double> ln_gammas = ln_gamma(x, temperature);
  for (std::size_t i = 0; i < x.size(); ++i) (*pressures)[i] *= x[i] * std::exp(ln_gammas[i]);
  return pressures;
}

std::vector<UncertainPressure> VapourModel::uncertain_pressures(Celsius temperature) const {
  std::vector<UncertainPressure> uncertain;
  std::set<std::string> named;
  for (const Solvent* solvent : solvents_) {
    const auto pressure = vapour_pressure(*solvent, temperature);
    if (!pressure || pressure->basis == PressureBasis::equation || !named.insert(solvent->name).second) continue;
    uncertain.push_back({solvent, pressure->basis});
  }
  return uncertain;
}

std::vector<std::string> VapourModel::sources(Celsius temperature) const {
  std::set<std::string> keys;
  if (knows_activity_ && solvents_.size() > 1) keys.insert(table_->source);
  for (const Solvent* solvent : solvents_)
    if (const auto pressure = vapour_pressure(*solvent, temperature)) keys.insert(pressure->source);
  return {keys.begin(), keys.end()};
}

std::vector<std::string> missing_for_vapour(const VapourModel& model, Celsius temperature) {
  std::vector<std::string> missing;
  for (const Solvent* solvent : model.solvents())
    if (!vapour_pressure(*solvent, temperature)) missing.push_back(solvent->name);
  return missing;
}

namespace {

std::optional<double> total_kPa(const VapourModel& model, const std::vector<double>& x, double temperature_C) {
  const auto partial = model.partial_kPa(x, {temperature_C});
  if (!partial) return std::nullopt;
  return std::accumulate(partial->begin(), partial->end(), 0.0);
}

}  // namespace

std::optional<Celsius> boiling_point(const VapourModel& model, const std::vector<double>& x, double kPa) {
  double low = -80;
  double high = 200;
  // Some equations have no value far below room temperature; start where all have one.
  while (low < high && !total_kPa(model, x, low)) low += 1;
  const auto below = total_kPa(model, x, low);
  const auto above = total_kPa(model, x, high);
  if (!below || !above || *below > kPa || *above < kPa) return std::nullopt;
  while (high - low > 1e-6) {
    const double middle = (low + high) / 2;
    const auto there = total_kPa(model, x, middle);
    if (!there) return std::nullopt;
    (*there < kPa ? low : high) = middle;
  }
  return Celsius{(low + high) / 2};
}

}  // namespace gentlest
