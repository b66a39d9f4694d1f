#include "gentlest/safety/mixture_hazard.hpp"

#include "core/safety/label_codes.hpp"

#include "gentlest/catalogue/statements.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace gentlest {

namespace {

void finish_label(MixtureLabel& label) {
  std::sort(label.statements.begin(), label.statements.end(),
            [](const LabelStatement& a, const LabelStatement& b) { return a.code < b.code; });
  label.signal_word = signal_word_of(codes_of(label));
  label.pictograms = pictograms_of(codes_of(label));
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

bool is_flame(const std::string& code) {
  return code == "H224" || code == "H225" || code == "H226";
}

// What the stronger statements of a label already say, so that it may be left off: CLP Article 27.
bool is_said_by(const MixtureLabel& label, const std::string& code) {
  constexpr std::array<std::array<const char*, 2>, 5> said = {
      {{"H314", "H315"}, {"H314", "H318"}, {"H314", "H319"}, {"H318", "H319"}, {"H410", "H400"}}};
  const std::vector<std::string> codes = codes_of(label);
  return std::any_of(said.begin(), said.end(), [&](const auto& pair) {
    return code == pair[1] && std::find(codes.begin(), codes.end(), pair[0]) != codes.end();
  });
}

// Undiluted, the record stands whatever the rules of dilution make of it.
void keep_record(MixtureLabel& label, const Hazards& record) {
  const LabelReason as_recorded{LabelRule::recorded};
  for (const auto* list : {&record.statements, &record.supplemental})
    for (const std::string& code : *list) {
      const auto known = std::find_if(label.statements.begin(), label.statements.end(),
                                      [&](const LabelStatement& statement) { return statement.code == code; });
      if (known != label.statements.end())
        known->because = as_recorded;
      else if (!is_flame(code) && !is_said_by(label, code))
        label.statements.push_back({code, as_recorded});
    }
}

// The liquid alone, or nearly, and with its own flash point: its own class counts, not the estimate with its margin.
const Solvent* burns_like(const Mixture& mixture, const FlashPoint& flash) {
  constexpr double nearly_alone = 0.99;
  constexpr double same_C = 1;
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    if (part.liquid.water_fraction > 0 || part.fraction < nearly_alone) continue;
    if (!flash.estimate) return mixture.parts().size() == 1 ? &solvent : nullptr;
    if (solvent.flash_point_C && std::abs(flash.estimate->value - solvent.flash_point_C->chosen.value) <= same_C)
      return &solvent;
  }
  return nullptr;
}

void add_own_flame(MixtureLabel& label, const Solvent& solvent, const std::string& code) {
  if (code.empty()) return;
  if (solvent.hazards && !solvent.hazards->added_flame) {
    label.statements.push_back({code, {LabelRule::recorded}});
    return;
  }
  LabelReason reason{LabelRule::own_flash_point, {{solvent.name, 100}}};
  std::optional<Celsius> flash;
  if (solvent.flash_point_C) {
    flash = Celsius{solvent.flash_point_C->chosen.value};
    reason.figures = {flash->value};
  }
  label.statements.push_back({code, std::move(reason)});
  if (solvent.hazards && !solvent.hazards->added_flame->recorded.empty())
    label.remarks.push_back(
        {LabelRemark::What::severer_flame, solvent.name, {}, solvent.hazards->added_flame->recorded, code, flash});
}

// The worst flame of any part stands in for what is not known.
void add_flame_of_parts(MixtureLabel& label, const Mixture& mixture) {
  std::string worst;
  std::string of;
  for (const Part& part : mixture.parts()) {
    const std::string code = flame_among(known_statements(*part.liquid.solvent));
    if (code.empty() || (!worst.empty() && worst <= code)) continue;
    worst = code;
    of = part.liquid.label;
  }
  if (!worst.empty()) label.statements.push_back({worst, {LabelRule::flame_of_part, {{of, 0}}}});
}

void add_flammability(MixtureLabel& label, const Mixture& mixture, const Catalogue& catalogue) {
  const FlashPoint flash = flash_point(mixture, catalogue);
  if (const Solvent* solvent = burns_like(mixture, flash)) {
    const std::string code = flame_among(known_statements(*solvent));
    if (flash.estimate || !code.empty()) {
      add_own_flame(label, *solvent, code);
      return;
    }
  }
  if (flash.nothing_burns()) return;
  if (!flash.estimate) {
    label.not_known.push_back({LabelGap::What::flame, {}, 0, flash});
    add_flame_of_parts(label, mixture);
    return;
  }
  const auto boils = start_of_boiling(mixture, catalogue);
  // Without a boiling point the more severe category counts.
  const std::string code = flammable_statement(*flash.estimate, boils.value_or(Celsius{0}), !flash.measured());
  if (code.empty()) return;
  label.statements.push_back({code, {LabelRule::flash_point, {}, {}, flash}});
}

MixtureLabel label_without_shares(const Mixture& mixture, const Catalogue& catalogue) {
  MixtureLabel label;
  label.not_known.push_back({LabelGap::What::shares, missing_for_breakdown(mixture, catalogue)});
  return label;
}

}  // namespace

MixtureLabel label_of(const Mixture& mixture, const Catalogue& catalogue) {
  const Solvent& first = *mixture.parts().front().liquid.solvent;
  const bool alone = is_one_recorded_liquid(mixture);
  const auto breakdown = alone ? std::nullopt : break_down(mixture, catalogue);
  if (!alone && !breakdown) return label_without_shares(mixture, catalogue);
  MixtureLabel label = classify(alone ? std::vector<Ingredient>{{first.name, 100, first.hazards, false}}
                                      : ingredients_of(mixture, *breakdown));
  if (alone) keep_record(label, *first.hazards);
  for (const Part& part : mixture.parts())
    if (part.liquid.denatured) label.not_known.push_back({LabelGap::What::denaturant, {part.liquid.label}});
  add_flammability(label, mixture, catalogue);
  finish_label(label);
  return label;
}

}  // namespace gentlest
