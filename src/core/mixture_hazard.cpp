#include "gentlest/mixture_hazard.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

namespace gentlest {

namespace {

bool starts(const std::string& code, const char* start) {
  return code.rfind(start, 0) == 0;
}

template <std::size_t N>
bool any_of(const MixtureLabel& label, const std::array<const char*, N>& starts_of) {
  return std::any_of(label.statements.begin(), label.statements.end(), [&](const LabelStatement& statement) {
    return std::any_of(starts_of.begin(), starts_of.end(),
                       [&](const char* start) { return starts(statement.code, start); });
  });
}

constexpr std::array danger = {"H224", "H225", "H300", "H301", "H304", "H310", "H311", "H314", "H318",
                               "H330", "H331", "H334", "H340", "H350", "H360", "H370", "H372"};
constexpr std::array warning = {"H226", "H302", "H312", "H332", "H315", "H317", "H319", "H335", "H336",
                                "H341", "H351", "H361", "H371", "H373", "H400", "H410", "H420"};
constexpr std::array flame = {"H224", "H225", "H226"};
constexpr std::array skull = {"H300", "H301", "H310", "H311", "H330", "H331"};
constexpr std::array corrosion = {"H314", "H318"};
constexpr std::array body = {"H304", "H334", "H340", "H341", "H350", "H351",
                             "H360", "H361", "H370", "H371", "H372", "H373"};
constexpr std::array nature = {"H400", "H410", "H411"};
constexpr std::array exclamation_always = {"H335", "H336", "H420", "H317"};
constexpr std::array exclamation_harmful = {"H302", "H312", "H332"};
constexpr std::array exclamation_irritant = {"H315", "H319"};

// Which pictogram yields to which: CLP Article 26 (from memory).
void finish_label(MixtureLabel& label) {
  std::sort(label.statements.begin(), label.statements.end(),
            [](const LabelStatement& a, const LabelStatement& b) { return a.code < b.code; });
  label.signal_word = any_of(label, danger) ? "Danger" : any_of(label, warning) ? "Warning" : "";
  const bool has_skull = any_of(label, skull);
  const bool has_corrosion = any_of(label, corrosion);
  std::set<std::string> pictograms;
  if (any_of(label, flame)) pictograms.insert("GHS02");
  if (has_corrosion) pictograms.insert("GHS05");
  if (has_skull) pictograms.insert("GHS06");
  if (any_of(label, body)) pictograms.insert("GHS08");
  if (any_of(label, nature)) pictograms.insert("GHS09");
  if (any_of(label, exclamation_always) || (any_of(label, exclamation_harmful) && !has_skull) ||
      (any_of(label, exclamation_irritant) && !has_corrosion && !has_skull))
    pictograms.insert("GHS07");
  label.pictograms.assign(pictograms.begin(), pictograms.end());
}

// Bottles by weight; the water of the alcohols together as one ingredient.
std::vector<Ingredient> ingredients_of(const Mixture& mixture, const Breakdown& breakdown) {
  std::vector<Ingredient> ingredients;
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    ingredients.push_back({solvent.name, 0, solvent.hazards, solvent.family == "water" && !solvent.hazards});
  }
  Ingredient water{"water", 0, std::nullopt, true};
  for (const Molecule& molecule : breakdown.molecules) {
    const bool in_alcohol =
        molecule.solvent->family == "water" && mixture.parts()[molecule.part].liquid.solvent->family != "water";
    (in_alcohol ? water : ingredients[molecule.part]).weight_percent += 100 * molecule.weight_fraction;
  }
  if (water.weight_percent > 0) ingredients.push_back(std::move(water));
  return ingredients;
}

bool is_one_recorded_liquid(const Mixture& mixture) {
  const Liquid& liquid = mixture.parts().front().liquid;
  return mixture.parts().size() == 1 && !(liquid.water_fraction > 0) && liquid.solvent->hazards;
}

MixtureLabel label_as_recorded(const Solvent& solvent) {
  MixtureLabel label = classify({{solvent.name, 100, solvent.hazards, false}});
  label.statements.clear();
  for (const auto* list : {&solvent.hazards->statements, &solvent.hazards->supplemental})
    for (const std::string& code : *list) label.statements.push_back({code, "as recorded for the pure liquid"});
  finish_label(label);
  if (!solvent.hazards->signal_word.empty()) label.signal_word = solvent.hazards->signal_word;
  if (!solvent.hazards->pictograms.empty()) label.pictograms = solvent.hazards->pictograms;
  return label;
}

void add_flammability(MixtureLabel& label, const Mixture& mixture, const Catalogue& catalogue) {
  const FlashPoint flash = flash_point(mixture, catalogue);
  if (flash.nothing_burns) return;
  if (!flash.estimate) {
    label.not_known.push_back("how easily it catches fire: " + flash.because);
    return;
  }
  const auto boils = start_of_boiling(mixture, catalogue);
  // Without a boiling point the more severe category counts.
  const std::string code = flammable_statement(*flash.estimate, boils.value_or(Celsius{0}), !flash.measured);
  if (code.empty()) return;
  label.statements.push_back({code, fmt::format("flash point {:.0f} C, {}", flash.estimate->value, flash.because)});
}

}  // namespace

MixtureLabel label_of(const Mixture& mixture, const Catalogue& catalogue) {
  if (is_one_recorded_liquid(mixture)) return label_as_recorded(*mixture.parts().front().liquid.solvent);
  const auto breakdown = break_down(mixture, catalogue);
  if (!breakdown) {
    MixtureLabel label;
    label.not_known.push_back(
        fmt::format("shares by weight, because molar mass or volume of {} is not known: no rule "
                    "of the label can be decided",
                    fmt::join(missing_for_breakdown(mixture, catalogue), ", ")));
    return label;
  }
  MixtureLabel label = classify(ingredients_of(mixture, *breakdown));
  add_flammability(label, mixture, catalogue);
  finish_label(label);
  return label;
}

}  // namespace gentlest
