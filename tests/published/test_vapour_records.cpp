// Every vapour pressure of the catalogue against the boiling point beside it: a unit mistaken for another does not
// pass.
#include "gentlest/catalogue/vapour.hpp"
#include "gentlest/vial/evaporation.hpp"

#include "csv.hpp"
#include "known_exceptions.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gentlest;
using namespace gentlest::test;

namespace {

constexpr double gas_constant = 8.314462618;  // J/(mol K)
constexpr double room_K = 298.15;
constexpr double atmosphere_kPa = 101.325;

double antoine_kPa(const Antoine& antoine, double T_K) {
  return std::pow(10, antoine.A - antoine.B / (T_K + antoine.C));
}

// Clausius and Clapeyron: H = R T^2 d(ln p)/dT.
double heat_of_vaporisation_kJ(const Antoine& antoine, double T_K) {
  return gas_constant * std::log(10) * antoine.B * std::pow(T_K / (T_K + antoine.C), 2) / 1000;
}

bool differs_by_more_than(double factor, double a, double b) {
  return a / b > factor || b / a > factor;
}

}  // namespace

// Inside its range an equation and the recorded pressure come from the same book: 2 %, as between collections
// (test_evaporation.cpp). Below the range it is carried up to 180 K; a heat of vaporisation that is 3 to 5 % off makes
// 35 % of that. The mistake this looks for is a factor of 7.5 (mmHg), 100 (bar) or 1000 (Pa).
TEST_CASE("at 25 C every Antoine equation meets the recorded vapour pressure") {
  expect_in_line(145,
                 Reasons{
                     {"formamide", "carried 93 K below the range; 1.5 times the pressure of Perry"},
                     {"propylene_glycol", "carried 66 K below the range; 1.6 times the pressure of Perry"},
                     {"butanediol", "carried 82 K below the range; 2.5 times the pressure of Perry"},
                     {"phenethyl_alcohol", "carried 108 K below the range; a quarter of the pressure"},
                     {"sulfolane", "carried 66 K below the range; six times the pressure"},
                 },
                 [](const Solvent& solvent) -> std::optional<bool> {
                   if (!solvent.antoine || !solvent.vapour_pressure_kPa) return std::nullopt;
                   const Antoine& antoine = solvent.antoine->chosen.value;
                   const bool in_range = antoine.from_K <= room_K && room_K <= antoine.to_K;
                   return !differs_by_more_than(in_range ? 1.02 : 1.35, antoine_kPa(antoine, room_K),
                                                solvent.vapour_pressure_kPa->chosen.value);
                 });
}

// Near one atmosphere pressures rise by 3 to 4 % a degree, and printed boiling points agree within 3 degrees: 12 %.
TEST_CASE("at the boiling point every Antoine equation gives one atmosphere") {
  expect_in_line(
      145,
      Reasons{
          {"triacetin", "carried 214 K above the range, which ends at 45 C"},
          {"cyclopentanone", "carried 105 K above the range, which ends at 26 C"},
          {"methyl_oleate", "carried 135 K above the range"},
      },
      [](const Solvent& solvent) -> std::optional<bool> {
        if (!solvent.antoine || !solvent.boiling_point_C) return std::nullopt;
        const double boiling_K = kelvin(Celsius{solvent.boiling_point_C->chosen.value});
        const double ours = antoine_kPa(solvent.antoine->chosen.value, boiling_K);
        INFO(solvent.id << ": " << ours << " kPa at its boiling point");
        CHECK_FALSE(differs_by_more_than(4, ours, atmosphere_kPa));  // not even a known one may be off by a unit
        return !differs_by_more_than(1.12, ours, atmosphere_kPa);
      });
}

// n-Pentane has 26, glycerol about 85 kJ/mol.
TEST_CASE("the slope of every Antoine equation is a heat of vaporisation between 25 and 90 kJ/mol") {
  expect_in_line(145, Reasons{}, [](const Solvent& solvent) -> std::optional<bool> {
    if (!solvent.antoine) return std::nullopt;
    const Antoine& antoine = solvent.antoine->chosen.value;
    const double heat = heat_of_vaporisation_kJ(antoine, (antoine.from_K + antoine.to_K) / 2);
    return heat >= 25 && heat <= 90;
  });
}

// Trouton's rule: at the boiling point the entropy of vaporisation is 85 to 88 J/(mol K), up to 110 where hydrogen
// bonds break. Between 25 C and the boiling point the mean heat is larger, the more so the higher the liquid boils: 80
// to 160. A factor of 1000 in the pressure moves this by 57 (boiling at 330 C) or more, and needs no equation.
TEST_CASE("between 25 C and the boiling point every vapour pressure rises as Trouton's rule asks") {
  expect_in_line(
      150, Reasons{{"ligroin", "a blend: the lower ends of the printed ranges of pressure and of boiling point"}},
      [](const Solvent& solvent) -> std::optional<bool> {
        if (!solvent.vapour_pressure_kPa || !solvent.boiling_point_C || solvent.boiling_point_C->chosen.value < 31)
          return std::nullopt;
        const double boiling_K = kelvin(Celsius{solvent.boiling_point_C->chosen.value});
        const double mean_heat = gas_constant * std::log(atmosphere_kPa / solvent.vapour_pressure_kPa->chosen.value) /
                                 (1 / room_K - 1 / boiling_K);
        const double entropy = mean_heat / boiling_K;
        return entropy >= 80 && entropy <= 160;
      });
}

// Triacetin in pascals is the mistake that began this; the card is rounded, and a third above the measured points.
TEST_CASE(
    "vapour pressures printed for single temperatures are met within a tenth, triacetin's card within a quarter") {
  int asked = 0;
  for (const Row& row : read_table("vapour_pressure_points.csv")) {
    const Solvent* solvent = shipped_catalogue().find_solvent(row.at("solvent"));
    REQUIRE(solvent);
    const auto ours = vapour_pressure(*solvent, {number(row, "T_C")});
    REQUIRE(ours);
    ++asked;
    INFO(solvent->id << " at " << row.at("T_C") << " C: " << ours->kPa << ", printed " << row.at("kPa"));
    CHECK_FALSE(differs_by_more_than(row.at("source") == "S" ? 1.25 : 1.15, ours->kPa, number(row, "kPa")));
  }
  CHECK(asked == 23);
}

// Rates of pure liquids, n-butyl acetate = 1, from pressure and volume: within 2.7 of print (test_evaporation.cpp).
// They are measured by weighing and so bear the pressure out, however that was had.
TEST_CASE("every recorded evaporation rate is the one that the vapour pressure makes") {
  expect_in_line(30,
                 Reasons{
                     {"methyl_acetate", "printed as about 3.1; acetone, of the same pressure, has 5.6"},
                     {"propylene_carbonate", "printed as about 0.01, the smallest step of that guide"},
                     {"butoxyethoxyethyl_acetate", "printed as about 0.04"},
                 },
                 [](const Solvent& solvent) -> std::optional<bool> {
                   if (!solvent.evaporation_rate || solvent.is_blend) return std::nullopt;
                   const auto ours = evaporation_rate(solvent, shipped_catalogue());
                   if (!ours) return std::nullopt;
                   return !differs_by_more_than(2.7, *ours, solvent.evaporation_rate->chosen.value);
                 });
}

// The correction at 25 C fades toward the range of the equation, however large it is.
TEST_CASE("no vapour pressure makes a step where the range of its equation begins") {
  int asked = 0;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (!solvent.antoine) continue;
    const double begins_C = solvent.antoine->chosen.value.from_K - kelvin_at_zero_Celsius;
    const auto below = vapour_pressure(solvent, {begins_C - 0.001});
    const auto above = vapour_pressure(solvent, {begins_C + 0.001});
    if (!below || !above) continue;
    ++asked;
    INFO(solvent.id << " at " << begins_C << " C");
    CHECK(below->kPa == Approx(above->kPa).epsilon(0.001));
  }
  CHECK(asked >= 145);
}
