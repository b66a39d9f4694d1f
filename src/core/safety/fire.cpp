// Flash point, boiling and explosive limit of a mixture.
#include "gentlest/safety/exposure.hpp"
#include "gentlest/safety/flash_terms.hpp"

#include "gentlest/catalogue/statements.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>

namespace gentlest {

namespace {

// A part's own figure where it has one; a stand-in molecule lends its own where the bottle has none.
template <class Figure>
const Figure* figure_of(const Molecule& molecule, const Mixture& mixture, std::optional<Figure> Solvent::*member) {
  const Solvent& bottle = *mixture.parts()[molecule.part].liquid.solvent;
  const bool is_water = molecule.solvent->family == "water";
  if (!is_water && bottle.*member) return &*(bottle.*member);
  return molecule.solvent->*member ? &*(molecule.solvent->*member) : nullptr;
}

bool flammable_by_record(const Hazards& hazards) {
  return !flame_among(hazards.statements).empty();
}

// Without a flash point a liquid counts as not burning only when its record says so.
bool known_not_to_burn(const Molecule& molecule, const Mixture& mixture) {
  if (molecule.solvent->family == "water") return true;
  const Solvent& bottle = *mixture.parts()[molecule.part].liquid.solvent;
  return !figure_of(molecule, mixture, &Solvent::flash_point_C) && bottle.hazards &&
         !flammable_by_record(*bottle.hazards) && bottle.family == "chlorinated";
}

struct Fuel {
  std::size_t molecule = 0;
  double pressure_at_flash_kPa = 0;
};

// Every molecule that burns with its pressure at its own flash point; nothing, and noted, where one is missing.
std::optional<std::vector<Fuel>> list_fuels(const Breakdown& breakdown, const Mixture& mixture, FlashPoint& answer) {
  std::vector<Fuel> fuels;
  for (std::size_t i = 0; i < breakdown.molecules.size(); ++i) {
    const Molecule& molecule = breakdown.molecules[i];
    if (known_not_to_burn(molecule, mixture)) continue;
    const std::string& label = mixture.parts()[molecule.part].liquid.label;
    const auto* flash = figure_of(molecule, mixture, &Solvent::flash_point_C);
    if (!flash) {
      answer.basis = FlashBasis::no_flash_point;
      answer.missing = {label};
      return std::nullopt;
    }
    const auto pressure = vapour_pressure(*molecule.solvent, {flash->chosen.value});
    if (!pressure) {
      answer.basis = FlashBasis::no_pressure_at_flash;
      answer.missing = {label};
      return std::nullopt;
    }
    fuels.push_back({i, pressure->kPa});
  }
  return fuels;
}

std::optional<double> flash_sum(const VapourModel& model, const std::vector<double>& x, const std::vector<Fuel>& fuels,
                                double temperature_C) {
  const auto partial = model.partial_kPa(x, {temperature_C});
  if (!partial) return std::nullopt;
  double sum = 0;
  for (const Fuel& fuel : fuels) sum += (*partial)[fuel.molecule] / fuel.pressure_at_flash_kPa;
  return sum;
}

std::optional<double> solve_flash(const VapourModel& model, const std::vector<double>& x,
                                  const std::vector<Fuel>& fuels) {
  double low = -60;
  double high = 180;
  while (low < high && !flash_sum(model, x, fuels, low)) low += 1;
  const auto below = flash_sum(model, x, fuels, low);
  const auto above = flash_sum(model, x, fuels, high);
  if (!below || !above || *below > 1 || *above < 1) return std::nullopt;
  while (high - low > 1e-4) {
    const double middle = (low + high) / 2;
    const auto there = flash_sum(model, x, fuels, middle);
    if (!there) return std::nullopt;
    (*there < 1 ? low : high) = middle;
  }
  return (low + high) / 2;
}

void note_lowest_part(FlashPoint& flash, const Mixture& mixture) {
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    if (!solvent.flash_point_C) continue;
    const Celsius own{solvent.flash_point_C->chosen.value};
    if (flash.lowest_part && *flash.lowest_part <= own) continue;
    flash.lowest_part = own;
    flash.lowest_of = part.liquid.label;
  }
}

// The liquid of a single bottle without water: its own printed figures hold.
const Solvent* pure_liquid(const Mixture& mixture) {
  const Liquid& liquid = mixture.parts().front().liquid;
  return mixture.parts().size() == 1 && !(liquid.water_fraction > 0) ? liquid.solvent : nullptr;
}

bool take_recorded(FlashPoint& flash, const Mixture& mixture) {
  const Solvent* pure = pure_liquid(mixture);
  if (!pure || !pure->flash_point_C) return false;
  flash.estimate = Celsius{pure->flash_point_C->chosen.value};
  flash.basis = FlashBasis::recorded;
  return true;
}

}  // namespace

FlashPoint flash_point(const Mixture& mixture, const Catalogue& catalogue) {
  FlashPoint flash;
  note_lowest_part(flash, mixture);
  if (take_recorded(flash, mixture)) return flash;
  const auto breakdown = break_down(mixture, catalogue);
  if (!breakdown) {
    flash.basis = FlashBasis::no_amount;
    flash.missing = missing_for_breakdown(mixture, catalogue);
    return flash;
  }
  const auto fuels = list_fuels(*breakdown, mixture, flash);
  if (!fuels) return flash;
  if (fuels->empty()) {
    flash.basis = FlashBasis::nothing_burns;
    return flash;
  }
  const VapourModel model(*breakdown, catalogue);
  const auto estimate = solve_flash(model, mole_fractions(*breakdown), *fuels);
  if (!estimate) return flash;
  flash.estimate = Celsius{*estimate};
  flash.basis = FlashBasis::activity;
  if (!model.knows_activity() && flash.lowest_part) {
    flash.estimate = std::min(*flash.estimate, *flash.lowest_part);
    flash.basis = FlashBasis::ideal;
  }
  return flash;
}

std::optional<std::vector<FlashTerm>> flash_terms(const Mixture& mixture, const Catalogue& catalogue) {
  FlashPoint ignored;
  const auto breakdown = break_down(mixture, catalogue);
  if (!breakdown || take_recorded(ignored, mixture)) return std::nullopt;
  const auto fuels = list_fuels(*breakdown, mixture, ignored);
  if (!fuels || fuels->empty()) return std::nullopt;
  const VapourModel model(*breakdown, catalogue);
  const std::vector<double> x = mole_fractions(*breakdown);
  const auto estimate = solve_flash(model, x, *fuels);
  if (!estimate) return std::nullopt;
  const std::vector<double> ln_gamma = model.ln_gamma(x, {*estimate});
  std::vector<FlashTerm> terms;
  for (const Fuel& fuel : *fuels) {
    const Molecule& molecule = breakdown->molecules[fuel.molecule];
    const auto& flash = figure_of(molecule, mixture, &Solvent::flash_point_C)->chosen;
    terms.push_back({molecule.solvent, molecule.mole_fraction, std::exp(ln_gamma[fuel.molecule]),
                     *vapour_pressure(*molecule.solvent, {*estimate}), Celsius{flash.value}, flash.source,
                     flash.standing, *vapour_pressure(*molecule.solvent, {flash.value})});
  }
  return terms;
}

double le_chatelier(const std::vector<double>& vapour_shares, const std::vector<double>& limits_percent) {
  assert(vapour_shares.size() == limits_percent.size());
  assert(std::all_of(limits_percent.begin(), limits_percent.end(), [](double limit) { return limit > 0; }));
  const double all = std::accumulate(vapour_shares.begin(), vapour_shares.end(), 0.0);
  double sum = 0;
  for (std::size_t i = 0; i < vapour_shares.size(); ++i) sum += vapour_shares[i] / all / limits_percent[i];
  return 1 / sum;
}

std::optional<double> lower_explosive_limit(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  const auto breakdown = break_down(mixture, catalogue);
  if (!breakdown) return std::nullopt;
  const auto partial = VapourModel(*breakdown, catalogue).partial_kPa(mole_fractions(*breakdown), temperature);
  if (!partial) return std::nullopt;
  std::vector<double> shares;
  std::vector<double> limits;
  for (std::size_t i = 0; i < breakdown->molecules.size(); ++i) {
    const Molecule& molecule = breakdown->molecules[i];
    const auto* own = figure_of(molecule, mixture, &Solvent::explosive_limits);
    if (!own && known_not_to_burn(molecule, mixture)) continue;
    if (!own || !(own->chosen.value.lower_percent > 0)) return std::nullopt;
    shares.push_back((*partial)[i]);
    limits.push_back(own->chosen.value.lower_percent);
  }
  if (shares.empty()) return std::nullopt;
  return le_chatelier(shares, limits);
}

std::optional<Celsius> start_of_boiling(const Mixture& mixture, const Catalogue& catalogue) {
  if (const Solvent* pure = pure_liquid(mixture); pure && pure->boiling_point_C)
    return Celsius{pure->boiling_point_C->chosen.value};
  const auto breakdown = break_down(mixture, catalogue);
  if (!breakdown) return std::nullopt;
  return boiling_point(VapourModel(*breakdown, catalogue), mole_fractions(*breakdown));
}

}  // namespace gentlest
