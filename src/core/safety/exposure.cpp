// What the air of the room takes up.
#include "gentlest/safety/exposure.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <string_view>

namespace gentlest {

namespace {

constexpr const char* eu_list = "EU";
constexpr std::array<const char*, 4> authorities = {eu_list, "NIOSH REL", "OSHA PEL", "Ontario"};
constexpr double litres_per_mol_at_25 = 24.45;

// A substance is on one list of the EU only, the binding or the indicative one; whoever works there keeps to both.
std::string list_of(const ExposureLimit& limit) {
  return limit.authority == "EU binding" || limit.authority == "EU indicative" ? eu_list : limit.authority;
}

const ExposureLimit* find_limit(const Solvent& solvent, std::string_view list) {
  for (const ExposureLimit& limit : solvent.exposure_limits)
    if (limit.authority == list || list_of(limit) == list) return &limit;
  return nullptr;
}

std::optional<double> ppm_of(const std::optional<double>& ppm, const std::optional<double>& mg, double molar_mass_g) {
  if (ppm) return ppm;
  if (mg && molar_mass_g > 0) return ppm_from_mg_per_m3(*mg, molar_mass_g);
  return std::nullopt;
}

void name_once(std::vector<std::string>& list, const std::string& label) {
  if (std::find(list.begin(), list.end(), label) == list.end()) list.push_back(label);
}

// Lists on which at least one of these solvents has an entry.
std::vector<std::string> lists_of(const std::vector<const Solvent*>& solvents) {
  std::vector<std::string> lists(authorities.begin(), authorities.end());
  for (const Solvent* solvent : solvents)
    for (const ExposureLimit& limit : solvent->exposure_limits) name_once(lists, list_of(limit));
  std::erase_if(lists, [&](const std::string& list) {
    return std::none_of(solvents.begin(), solvents.end(),
                        [&](const Solvent* solvent) { return find_limit(*solvent, list) != nullptr; });
  });
  return lists;
}

// One molecule's vapour against its bottle's limit.
void add_vapour(VapourHazard& hazard, double& ratio, const Molecule& molecule, const Mixture& mixture, double kPa) {
  constexpr double atmosphere_kPa = 101.325;
  if (molecule.solvent->family == "water") return;
  const Liquid& bottle = mixture.parts()[molecule.part].liquid;
  const auto limit = limit_ppm(*bottle.solvent, hazard.authority, molecule.molar_mass_g);
  if (!limit)
    name_once(hazard.without, bottle.label);
  else
    ratio += kPa / atmosphere_kPa * 1e6 / *limit;
}

struct Release {
  const Solvent* solvent = nullptr;
  std::string label;
  std::optional<double> mg_per_m3;
  double molar_mass_g = 0;
};

Release release_of(const UsedLiquid& used, const Room& room, const Catalogue& catalogue) {
  const Solvent& solvent = *used.liquid.solvent;
  Release release{&solvent, used.liquid.label, std::nullopt, 0};
  const Millilitres dry{used.volume.value * (1 - used.liquid.water_fraction)};
  Liquid bottle = used.liquid;
  bottle.water_fraction = 0;
  const auto breakdown = break_down(Mixture({{bottle, 1.0}}), catalogue);
  if (!breakdown) return release;
  double grams = 0;
  double moles = 0;
  for (const Molecule& molecule : breakdown->molecules) {
    grams += molecule.volume_fraction / molecule.molar_volume_cm3 * molecule.molar_mass_g;
    moles += molecule.volume_fraction / molecule.molar_volume_cm3;
  }
  release.molar_mass_g = grams / moles;
  release.mg_per_m3 = release_mg_per_m3(dry, grams, room.volume_m3);
  return release;
}

}  // namespace

double additive_index(const std::vector<double>& concentrations, const std::vector<double>& limits) {
  assert(concentrations.size() == limits.size());
  assert(std::all_of(limits.begin(), limits.end(), [](double limit) { return limit > 0; }));
  double sum = 0;
  for (std::size_t i = 0; i < concentrations.size(); ++i) sum += concentrations[i] / limits[i];
  return sum;
}

double release_mg_per_m3(Millilitres volume, double density_g_per_cm3, double room_m3) {
  assert(room_m3 > 0);
  return 1000 * volume.value * density_g_per_cm3 / room_m3;
}

double mean_after_release(double air_changes_per_hour, double hours) {
  const double exponent = air_changes_per_hour * hours;
  return exponent < 1e-9 ? 1 : -std::expm1(-exponent) / exponent;
}

double ppm_from_mg_per_m3(double mg_per_m3, double molar_mass_g) {
  assert(molar_mass_g > 0);
  return mg_per_m3 * litres_per_mol_at_25 / molar_mass_g;
}

std::optional<double> limit_ppm(const Solvent& solvent, std::string_view authority, double molar_mass_g) {
  const ExposureLimit* limit = find_limit(solvent, authority);
  if (!limit) return std::nullopt;
  if (const auto long_term = ppm_of(limit->long_term_ppm, limit->long_term_mg_per_m3, molar_mass_g)) return long_term;
  if (const auto brief = ppm_of(limit->short_term_ppm, limit->short_term_mg_per_m3, molar_mass_g)) return brief;
  return ppm_of(limit->ceiling_ppm, limit->ceiling_mg_per_m3, molar_mass_g);
}

std::vector<VapourHazard> vapour_hazards(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature) {
  std::vector<const Solvent*> solvents;
  for (const Part& part : mixture.parts()) solvents.push_back(part.liquid.solvent);
  const auto breakdown = break_down(mixture, catalogue);
  std::optional<std::vector<double>> partial;
  if (breakdown) partial = VapourModel(*breakdown, catalogue).partial_kPa(mole_fractions(*breakdown), temperature);
  std::vector<VapourHazard> hazards;
  for (const std::string& authority : lists_of(solvents)) {
    VapourHazard hazard{authority, std::nullopt, {}};
    double ratio = 0;
    if (partial)
      for (std::size_t i = 0; i < breakdown->molecules.size(); ++i)
        add_vapour(hazard, ratio, breakdown->molecules[i], mixture, (*partial)[i]);
    if (partial && hazard.without.empty()) hazard.ratio = ratio;
    hazards.push_back(std::move(hazard));
  }
  return hazards;
}

std::vector<SessionExposure> session_exposure(const std::vector<UsedLiquid>& used, const Room& room,
                                              const Catalogue& catalogue) {
  std::vector<const Solvent*> solvents;
  std::vector<Release> releases;
  for (const UsedLiquid& one : used) {
    if (one.liquid.solvent->family == "water") continue;
    solvents.push_back(one.liquid.solvent);
    releases.push_back(release_of(one, room, catalogue));
  }
  std::vector<SessionExposure> answers;
  for (const std::string& authority : lists_of(solvents)) {
    SessionExposure answer{authority, std::nullopt, std::nullopt, {}};
    std::vector<double> ppm;
    std::vector<double> limits;
    for (const Release& release : releases) {
      const auto limit = limit_ppm(*release.solvent, authority, release.molar_mass_g);
      if (!limit || !release.mg_per_m3) {
        name_once(answer.without, release.label);
        continue;
      }
      ppm.push_back(ppm_from_mg_per_m3(*release.mg_per_m3, release.molar_mass_g));
      limits.push_back(*limit);
    }
    if (answer.without.empty()) {
      answer.index_at_once = additive_index(ppm, limits);
      answer.index = *answer.index_at_once * mean_after_release(room.air_changes_per_hour, room.hours);
    }
    answers.push_back(std::move(answer));
  }
  return answers;
}

}  // namespace gentlest
