#include "gentlest/liquids/grade.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest {

namespace {

using Basis = StrengthBasis;

struct Strength {
  double percent = 0;
  Basis basis = Basis::volume;
};

constexpr std::array dry_words = {"absolute", "anhydrous", "dry"};
constexpr std::array volume_words = {"",    "%",      "vol%",    "vol %",       "vol.%", "vol.-%", "vol.- %",
                                     "vol", "% vol",  "%vol",    "% v/v",       "%v/v",  "v/v",    "% (v/v)",
                                     "°",   "degree", "degrees", "% by volume", "% abv", "%abv",   "\xC2\xBA"};
constexpr std::array weight_words = {"wt%",     "wt %",  "wt.%", "wt.-%",       "% wt",  "% w/w",  "%w/w",     "w/w",
                                     "% (w/w)", "% m/m", "%m/m", "% by weight", "% mas", "% mass", "% by mass"};

bool is_dry_word(std::string_view text) {
  return std::find(dry_words.begin(), dry_words.end(), folded(text)) != dry_words.end();
}

// "95,6 % w/w": the number and what it counts; nothing where the words are something else.
std::optional<Strength> strength_of(std::string_view text) {
  std::size_t end = 0;
  while (end < text.size() && (is_digit(text[end]) || text[end] == '.' || text[end] == ',')) ++end;
  std::string number(text.substr(0, end));
  std::replace(number.begin(), number.end(), ',', '.');
  const std::optional<double> percent = number_from(number);
  if (!percent) return std::nullopt;
  const std::string unit = folded(trimmed(text.substr(end)));
  const auto is_unit = [&](const char* word) { return unit == folded(word); };
  if (std::any_of(volume_words.begin(), volume_words.end(), is_unit)) return Strength{*percent, Basis::volume};
  if (std::any_of(weight_words.begin(), weight_words.end(), is_unit)) return Strength{*percent, Basis::weight};
  return std::nullopt;
}

double density_at(const StrengthTable& table, double mass_percent) {
  const auto above =
      std::find_if(table.points.begin() + 1, table.points.end() - 1,
                   [&](const StrengthTable::Point& point) { return point.mass_percent >= mass_percent; });
  const StrengthTable::Point& low = *(above - 1);
  const double way = (mass_percent - low.mass_percent) / (above->mass_percent - low.mass_percent);
  return low.density_kg_per_m3 + way * (above->density_kg_per_m3 - low.density_kg_per_m3);
}

// Per cent by volume of the mixture, shrunk, as labels state it.
double volume_percent(const StrengthTable& table, double mass_percent) {
  return mass_percent * density_at(table, mass_percent) / table.points.back().density_kg_per_m3;
}

double mass_percent_of(const StrengthTable& table, double percent_by_volume) {
  double low = 0;
  double high = 100;
  for (int round = 0; round < 60; ++round) {
    const double middle = (low + high) / 2;
    (volume_percent(table, middle) < percent_by_volume ? low : high) = middle;
  }
  return (low + high) / 2;
}

// Fraction by volume before mixing.
double water_at(double mass_percent, double water_density, double alcohol_density) {
  const double water = (100 - mass_percent) / water_density;
  return water / (water + mass_percent / alcohol_density);
}

double water_in(const Solvent& alcohol, const Strength& strength, const Catalogue& catalogue) {
  if (strength.percent >= 100) return 0;
  if (const StrengthTable* table = find_strengths(catalogue.chemistry(), alcohol.id)) {
    const double mass = strength.basis == Basis::weight ? strength.percent : mass_percent_of(*table, strength.percent);
    return water_at(mass, table->points.front().density_kg_per_m3, table->points.back().density_kg_per_m3);
  }
  if (strength.basis == Basis::volume) return 1 - strength.percent / 100;
  const Solvent* water = catalogue.find_solvent("water");
  if (!water || !water->density_g_per_cm3 || !alcohol.density_g_per_cm3)
    throw InputError(Fault::usage, fmt::format("the density of {} or of water is not known", alcohol.name),
                     "write the share by volume, e.g. \"96 %\"");
  return water_at(strength.percent, water->density_g_per_cm3->chosen.value, alcohol.density_g_per_cm3->chosen.value);
}

[[noreturn]] void refuse(const Solvent& solvent, std::string_view text) {
  throw InputError(Fault::usage, fmt::format("the grade \"{}\" of {} is not understood", text, solvent.name),
                   solvent.family == "alcohol"
                       ? "write its strength alone, e.g. \"96 %\" (by volume), \"95 % w/w\" or \"absolute\"; what else "
                         "is in it, as in denatured alcohol, is not counted"
                       : "write a purity, e.g. \"99.5 %\", or leave it out");
}

// Words on a bottle that is no alcohol: nothing a reader of mixtures would take for something else.
bool is_plain_word(std::string_view text) {
  return std::none_of(text.begin(), text.end(), [](char c) { return is_digit(c) || c == ',' || c == ';' || c == '%'; });
}

}  // namespace

bool is_grade(std::string_view text) {
  return is_dry_word(trimmed(text)) || strength_of(trimmed(text)).has_value();
}

Grade read_grade(const Solvent& solvent, std::string_view text, const Catalogue& catalogue) {
  const std::string_view stated = trimmed(text);
  if (stated.empty()) return {};
  if (is_dry_word(stated)) return {"absolute", 0};
  const bool is_alcohol = solvent.family == "alcohol";
  const std::optional<Strength> strength = strength_of(stated);
  if (!strength) {
    if (!is_alcohol && is_plain_word(stated)) return {std::string(stated), 0};
    refuse(solvent, stated);
  }
  if (!is_alcohol && !(strength->percent > 0 && strength->percent <= 100)) refuse(solvent, stated);
  if (is_alcohol && !(strength->percent > 50 && strength->percent <= 100))
    throw InputError(Fault::usage, fmt::format("grade \"{}\" of {} is not between 50 and 100 %", stated, solvent.name),
                     "write the share of the alcohol by volume, e.g. \"96 %\", or \"absolute\"");
  return {grade_text(strength->percent, strength->basis), is_alcohol ? water_in(solvent, *strength, catalogue) : 0};
}

std::string grade_within(const Solvent& alcohol, double water_fraction, const Catalogue& catalogue) {
  constexpr int weakest = 51;
  constexpr int strongest = 99;
  for (int percent = weakest; percent <= strongest; ++percent)
    if (water_in(alcohol, {static_cast<double>(percent), Basis::volume}, catalogue) <= water_fraction)
      return grade_of_percent(percent);
  return grade_of_percent(100);
}

}  // namespace gentlest
