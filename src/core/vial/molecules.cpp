#include "gentlest/vial/molecules.hpp"

#include <utility>

namespace gentlest {

namespace {

// One molecule before its moles are counted; volume fractions are of the mixture.
Molecule molecule_of(const Solvent& solvent, std::size_t part, const Hansen& hansen, double volume_fraction) {
  Molecule molecule;
  molecule.solvent = &solvent;
  molecule.part = part;
  molecule.hansen = hansen;
  molecule.volume_fraction = volume_fraction;
  if (const auto volume = molar_volume_cm3(solvent)) molecule.molar_volume_cm3 = *volume;
  if (solvent.molar_mass_g_per_mol) molecule.molar_mass_g = solvent.molar_mass_g_per_mol->chosen.value;
  return molecule;
}

bool can_be_counted(const Molecule& molecule) {
  return molecule.molar_volume_cm3 > 0 && molecule.molar_mass_g > 0;
}

// The liquid without its water: itself, or what stands for it where its own figures are not known.
void add_liquid(Breakdown& breakdown, const Liquid& liquid, std::size_t part, double fraction,
                const Catalogue& catalogue) {
  const StandIn* stand_in = find_stand_in(catalogue.chemistry(), liquid.solvent->id);
  if (!stand_in) {
    const Hansen own = liquid.solvent->hansen ? liquid.solvent->hansen->chosen.value : liquid.hansen;
    breakdown.molecules.push_back(molecule_of(*liquid.solvent, part, own, fraction));
    return;
  }
  StandInUse use{liquid.label, {}};
  for (const StandIn::Share& share : stand_in->shares) {
    const Solvent& solvent = *catalogue.find_solvent(share.solvent);
    breakdown.molecules.push_back(molecule_of(solvent, part, liquid.hansen, fraction * share.fraction));
    use.shares.push_back({&solvent, share.fraction});
  }
  breakdown.stand_ins.push_back(std::move(use));
}

// Every molecule with its volume; nothing when water is needed and the catalogue has none.
std::optional<Breakdown> list_molecules(const Mixture& mixture, const Catalogue& catalogue) {
  Breakdown breakdown;
  for (std::size_t i = 0; i < mixture.parts().size(); ++i) {
    const Part& part = mixture.parts()[i];
    const double wet = part.liquid.water_fraction;
    add_liquid(breakdown, part.liquid, i, part.fraction * (1 - wet), catalogue);
    if (!(wet > 0)) continue;
    const Solvent* water = catalogue.find_solvent("water");
    if (!water || !water->hansen) return std::nullopt;
    breakdown.molecules.push_back(molecule_of(*water, i, water->hansen->chosen.value, part.fraction * wet));
  }
  return breakdown;
}

}  // namespace

std::optional<double> molar_volume_cm3(const Solvent& solvent) {
  if (solvent.molar_volume_cm3_per_mol) return solvent.molar_volume_cm3_per_mol->chosen.value;
  if (solvent.molar_mass_g_per_mol && solvent.density_g_per_cm3 && solvent.density_g_per_cm3->chosen.value > 0)
    return solvent.molar_mass_g_per_mol->chosen.value / solvent.density_g_per_cm3->chosen.value;
  return std::nullopt;
}

std::optional<Breakdown> break_down(const Mixture& mixture, const Catalogue& catalogue) {
  std::optional<Breakdown> breakdown = list_molecules(mixture, catalogue);
  if (!breakdown) return std::nullopt;
  double moles = 0;
  double grams = 0;
  for (const Molecule& molecule : breakdown->molecules) {
    if (!can_be_counted(molecule)) return std::nullopt;
    moles += molecule.volume_fraction / molecule.molar_volume_cm3;
    grams += molecule.volume_fraction / molecule.molar_volume_cm3 * molecule.molar_mass_g;
  }
  for (Molecule& molecule : breakdown->molecules) {
    const double own = molecule.volume_fraction / molecule.molar_volume_cm3;
    molecule.mole_fraction = own / moles;
    molecule.weight_fraction = own * molecule.molar_mass_g / grams;
  }
  return breakdown;
}

std::vector<std::string> missing_for_breakdown(const Mixture& mixture, const Catalogue& catalogue) {
  std::vector<std::string> missing;
  const std::optional<Breakdown> breakdown = list_molecules(mixture, catalogue);
  if (!breakdown) return {"water"};
  for (const Molecule& molecule : breakdown->molecules) {
    const std::string& label = mixture.parts()[molecule.part].liquid.label;
    if (!can_be_counted(molecule) && (missing.empty() || missing.back() != label)) missing.push_back(label);
  }
  return missing;
}

std::vector<Groups> groups_of(const Breakdown& breakdown) {
  std::vector<Groups> groups;
  for (const Molecule& molecule : breakdown.molecules) groups.push_back(molecule.solvent->unifac_groups);
  return groups;
}

std::vector<Groups> modified_groups_of(const Breakdown& breakdown, const Catalogue& catalogue) {
  std::vector<Groups> groups;
  for (const Molecule& molecule : breakdown.molecules)
    groups.push_back(modified_groups_of(catalogue.chemistry(), molecule.solvent->id));
  return groups;
}

std::vector<double> mole_fractions(const Breakdown& breakdown) {
  std::vector<double> x;
  for (const Molecule& molecule : breakdown.molecules) x.push_back(molecule.mole_fraction);
  return x;
}

}  // namespace gentlest
