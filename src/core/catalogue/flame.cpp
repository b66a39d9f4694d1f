#include "core/catalogue/flame.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "gentlest/catalogue/vapour.hpp"

#include <algorithm>

namespace gentlest {

namespace {

// As recorded; else by the vapour pressure; else, for a cut, the lowest of what stands for it. A bound for the class;
// where a mixture starts to boil (safety) its vapour tells: petroleum ether at 48 C, not at 36.
std::optional<Celsius> earliest_boiling(const Solvent& solvent, const Catalogue& catalogue) {
  constexpr double atmosphere_kPa = 101.325;
  if (solvent.boiling_point_C) return Celsius{solvent.boiling_point_C->chosen.value};
  if (const auto by_pressure = temperature_of_pressure(solvent, atmosphere_kPa)) return by_pressure;
  const StandIn* stand_in = find_stand_in(catalogue.chemistry(), solvent.id);
  if (!stand_in) return std::nullopt;
  std::optional<Celsius> lowest;
  for (const StandIn::Share& share : stand_in->shares) {
    const Solvent* part = catalogue.find_solvent(share.solvent);
    if (!part || !part->boiling_point_C) return std::nullopt;
    const Celsius boils{part->boiling_point_C->chosen.value};
    if (!lowest || boils < *lowest) lowest = boils;
  }
  return lowest;
}

std::string flame_of(const Solvent& solvent, const Catalogue& catalogue) {
  if (!solvent.flash_point_C) return {};
  const Cited<double>& flash = solvent.flash_point_C->chosen;
  // An estimate bears its margin where nothing better is known; it does not overrule a class that the law names.
  const bool reckoned = (flash.standing == Standing::estimated || flash.standing == Standing::derived) &&
                        !(solvent.hazards && !flame_among(solvent.hazards->statements).empty());
  // Without a boiling point the more severe class counts.
  return flammable_statement({flash.value}, earliest_boiling(solvent, catalogue).value_or(Celsius{0}), reckoned);
}

bool is_flammable_class(const std::string& name) {
  return name.rfind("Flam. Liq.", 0) == 0;
}

void complete(Hazards& hazards, const std::string& code) {
  std::string recorded = flame_among(hazards.statements);
  if (!recorded.empty() && recorded <= code) return;  // H224 is the most severe
  std::erase(hazards.statements, recorded);
  std::erase_if(hazards.classes, is_flammable_class);
  hazards.statements.insert(hazards.statements.begin(), code);
  hazards.classes.insert(hazards.classes.begin(), std::string("Flam. Liq. ") + static_cast<char>(code.back() - 3));
  if (std::find(hazards.pictograms.begin(), hazards.pictograms.end(), "GHS02") == hazards.pictograms.end())
    hazards.pictograms.insert(hazards.pictograms.begin(), "GHS02");
  if (hazards.signal_word != "Danger") hazards.signal_word = signal_word_of({code});
  hazards.added_flame = AddedFlame{code, std::move(recorded)};
}

}  // namespace

void complete_flame(Solvent& solvent, const Catalogue& catalogue) {
  solvent.flame_by_figures = flame_of(solvent, catalogue);
  if (solvent.hazards && !solvent.flame_by_figures.empty()) complete(*solvent.hazards, solvent.flame_by_figures);
}

}  // namespace gentlest
