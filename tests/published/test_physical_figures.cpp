// Figures of one liquid against each other: what burns, what holds it together, what its label says.
#include "gentlest/catalogue/vapour.hpp"

#include "csv.hpp"
#include "known_exceptions.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <map>
#include <optional>
#include <regex>
#include <sstream>

using namespace gentlest;
using namespace gentlest::test;

namespace {

constexpr double gas_constant = 8.314462618;  // J/(mol K)
constexpr double room_K = 298.15;
constexpr double atmosphere_kPa = 101.325;

std::optional<double> volume_of(const Solvent& solvent) {
  if (solvent.molar_volume_cm3_per_mol) return solvent.molar_volume_cm3_per_mol->chosen.value;
  if (solvent.molar_mass_g_per_mol && solvent.density_g_per_cm3)
    return solvent.molar_mass_g_per_mol->chosen.value / solvent.density_g_per_cm3->chosen.value;
  return std::nullopt;
}

double total_of(const Hansen& point) {
  return std::sqrt(point.dD * point.dD + point.dP * point.dP + point.dH * point.dH);
}

// Hildebrand: the total squared is the heat of vaporisation less R T over the molar volume.
double total_from_heat(double heat_J_per_mol, double volume_cm3) {
  return std::sqrt((heat_J_per_mol - gas_constant * room_K) / volume_cm3);
}

double dippr_106(const Row& row) {
  const double Tr = room_K / number(row, "dippr_Tc_K");
  const double power = number(row, "dippr_C2") + number(row, "dippr_C3") * Tr + number(row, "dippr_C4") * Tr * Tr;
  return number(row, "dippr_C1_J_per_mol") * std::pow(1 - Tr, power);
}

// From the surest column of the table.
double printed_total(const Row& row, double volume_cm3) {
  if (!row.at("crc_kJ_per_mol").empty()) return total_from_heat(1000 * number(row, "crc_kJ_per_mol"), volume_cm3);
  if (!row.at("dippr_Tc_K").empty()) return total_from_heat(dippr_106(row), volume_cm3);
  return number(row, "chemsep_MPa05");
}

// Heat of vaporisation at 25 C from the pressure there and the boiling point: the mean by Clausius and Clapeyron,
// carried to 25 C by Watson 1943 (exponent 0.38) with the critical temperature by Guldberg's rule, 1.5 times the
// boiling point.
std::optional<double> estimated_heat(const Solvent& solvent) {
  if (!solvent.vapour_pressure_kPa || !solvent.boiling_point_C || solvent.boiling_point_C->chosen.value < 31)
    return std::nullopt;
  const double boiling_K = kelvin(Celsius{solvent.boiling_point_C->chosen.value});
  const double mean = gas_constant * std::log(atmosphere_kPa / solvent.vapour_pressure_kPa->chosen.value) /
                      (1 / room_K - 1 / boiling_K);
  const double mean_K = 2 / (1 / room_K + 1 / boiling_K);
  return mean * std::pow((1.5 * boiling_K - room_K) / (1.5 * boiling_K - mean_K), 0.38);
}

// Regulation (EC) 1272/2008, Annex I, table 2.6.1.
std::string by_table_261(double flash_C, std::optional<double> boiling_C) {
  if (flash_C > 60) return "none";
  if (flash_C >= 23) return "H226";
  return boiling_C && *boiling_C <= 35 ? "H224" : "H225";
}

// Flammable statement of every hazard record as the files have it, "none" where it has none; by id.
std::map<std::string, std::string> recorded_classes() {
  const std::regex id_line("^  - id: (\\w+)");
  const std::regex statements_line("^      statements: .*?(H224|H225|H226|\\])");
  std::map<std::string, std::string> classes;
  for (const NamedText& file : shipped_files()) {
    if (file.name.rfind("liquids/", 0) != 0) continue;
    std::istringstream in(file.text);
    std::string id;
    std::smatch match;
    for (std::string line; std::getline(in, line);) {
      if (std::regex_search(line, match, id_line)) id = match[1];
      if (std::regex_search(line, match, statements_line)) classes[id] = match[1] == "]" ? "none" : match[1].str();
    }
  }
  return classes;
}

// Per cent of vapour over the liquid at its flash point.
std::optional<double> vapour_at_flash_percent(const Solvent& solvent) {
  if (!solvent.flash_point_C) return std::nullopt;
  const auto pressure = vapour_pressure(solvent, {solvent.flash_point_C->chosen.value});
  return pressure ? std::optional(100 * pressure->kPa / atmosphere_kPa) : std::nullopt;
}

}  // namespace

// A closed cup flashes where the vapour over the liquid reaches the lower limit: ratio 1. Flash points of one liquid
// differ by 5 degrees between tables, which is a factor of 1.4 in the pressure; lower limits differ by as much, and
// both are kept at their lowest print. Together a factor of 2.
TEST_CASE("at the flash point every vapour holds about its lower explosive limit") {
  expect_in_line(115,
                 Reasons{
                     {"light_petroleum", "a blend: lower ends of printed ranges; reckoned by a stand-in"},
                     {"ligroin", "a blend: lower ends of printed ranges; reckoned by a stand-in"},
                     {"butoxyethoxyethanol", "NFPA 497 prints 78 C, IEC 100 C, which fits; the lower is kept"},
                     {"furfuryl_alcohol", "IEC prints 61 C, NFPA 497 75 C, which fits; the lower is kept"},
                     {"amyl_acetate", "IEC and NFPA 497 both print 25 C; 37 C would fit; the lower is kept"},
                     {"n_pentane", "both tables print -40 C, the end of the test; the vapour burns from -52 C"},
                     {"carbon_disulfide", "both tables print -30 C; the vapour holds the lower limit from -55 C"},
                 },
                 [](const Solvent& solvent) -> std::optional<bool> {
                   const auto percent = vapour_at_flash_percent(solvent);
                   if (!percent || !solvent.explosive_limits) return std::nullopt;
                   const double ratio = *percent / solvent.explosive_limits->chosen.value.lower_percent;
                   return ratio >= 0.5 && ratio <= 2;
                 });
}

// Without a printed limit: those of the catalogue's organic liquids run from 0.6 to 7.3 %, with the same factor of 2.
TEST_CASE("at the flash point a vapour without a printed limit holds what burns") {
  expect_in_line(25, Reasons{{"formamide", "the flash point of an open cup, by its vapour of 14 %"}},
                 [](const Solvent& solvent) -> std::optional<bool> {
                   const auto percent = vapour_at_flash_percent(solvent);
                   if (!percent || solvent.explosive_limits) return std::nullopt;
                   return *percent >= 0.3 && *percent <= 12;
                 });
}

// Heats agree within 3 %, molar volumes within 1 %: 0.4 at a total of 20. The three parameters are printed to 0.1 and
// were moved by Hansen by up to 0.5. More than 1 is a disagreement.
TEST_CASE("the total of every Hansen point meets the heat of vaporisation in print") {
  int asked = 0;
  std::set<std::string> out_of_line;
  for (const Row& row : read_table("heats_of_vaporisation.csv")) {
    const Solvent* solvent = shipped_catalogue().find_solvent(row.at("solvent"));
    REQUIRE(solvent);
    REQUIRE(solvent->cas == row.at("cas"));
    const auto volume = volume_of(*solvent);
    if (!solvent->hansen || !volume) continue;
    ++asked;
    if (std::abs(total_of(solvent->hansen->chosen.value) - printed_total(row, *volume)) > 1)
      out_of_line.insert(solvent->id);
  }
  CHECK(asked >= 78);
  expect_exactly(out_of_line, {
                                  {"acetic_acid", "2.2 above; the vapour is paired, its heat is too low"},
                                  {"formic_acid", "3.3 above; the vapour is paired, its heat is too low"},
                                  {"diglyme", "2.0 above; no second set"},
                                  {"triethanolamine", "9 above; no second set"},
                                  {"sulfolane", "1.2 above; the other set is 3 above"},
                                  {"tetrachloroethylene", "1.0 above; the other set likewise"},
                                  {"cyclohexanol", "1.3 below; no second set that differs"},
                                  {"formamide", "1.4 below; no second set"},
                                  {"triacetin", "1.6 below; no second set"},
                              });
}

// Liquids without a heat in print are asked by an estimate. Guldberg's rule is good to 10 %, which is 3 % of the heat;
// a pressure carried far below its equation may be 30 % off, another 4 %. With the scatter above: 2, a tenth of the
// total.
TEST_CASE("the total of every Hansen point meets the heat that pressure and boiling point make") {
  expect_in_line(140,
                 Reasons{
                     {"acetic_acid", "5 below: this way counts the pairs of the liquid, not of the vapour"},
                     {"formic_acid", "5 below: this way counts the pairs of the liquid, not of the vapour"},
                     {"formamide", "2.5 below; no second set"},
                     {"triethanolamine", "10 above; no second set"},
                     {"dipropylene_glycol", "4.5 above; no second set"},
                     {"triethyl_citrate", "3.4 above; pressure carried 82 K below its equation"},
                     {"propoxyethanol", "2.1 above; a point from memory"},
                     {"ethoxyethoxyethanol", "2.1 above"},
                 },
                 [](const Solvent& solvent) -> std::optional<bool> {
                   const auto volume = volume_of(solvent);
                   const auto heat = estimated_heat(solvent);
                   if (!solvent.hansen || !volume || !heat) return std::nullopt;
                   return std::abs(total_of(solvent.hansen->chosen.value) - total_from_heat(*heat, *volume)) <= 2;
                 });
}

TEST_CASE("the flammable class of every record is the one that flash and boiling point ask for") {
  int asked = 0;
  std::set<std::string> out_of_line;
  for (const auto& [id, record] : recorded_classes()) {
    const Solvent* solvent = shipped_catalogue().find_solvent(id);
    REQUIRE(solvent);
    if (!solvent->flash_point_C) {
      if (record != "none") out_of_line.insert(id);
      continue;
    }
    ++asked;
    std::optional<double> boiling;
    if (solvent->boiling_point_C) boiling = solvent->boiling_point_C->chosen.value;
    if (record != by_table_261(solvent->flash_point_C->chosen.value, boiling)) out_of_line.insert(id);
  }
  CHECK(asked >= 120);
  const char* no_class = "the harmonised entry names no flammable class; the flash point asks for one";
  expect_exactly(out_of_line,
                 {
                     {"n_hexanol", no_class},
                     {"furfural", no_class},
                     {"dimethylformamide", no_class},
                     {"propoxyethanol", no_class},
                     {"butoxypropanol", no_class},
                     {"methoxyethyl_acetate", no_class},
                     {"diacetone_alcohol", no_class},
                     {"light_petroleum", no_class},
                     {"ligroin", no_class},
                     {"white_spirit_dearomatised", no_class},
                     {"white_spirit_medium", no_class},
                     {"white_spirit_aromatic", no_class},
                     {"white_spirit", no_class},
                     {"aromatic_naphtha", no_class},
                     {"d4", no_class},
                     {"alpha_pinene", "the Australian entry names no flammable class"},
                     {"butyl_acetate", "harmonised as H226; IEC prints a flash point of 22 C, a degree below H225"},
                 });
}
