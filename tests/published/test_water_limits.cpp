// The water that ethanol bears in hydrocarbons: published compositions on the border, the group method as a general
// library computes it, and what the strength on a bottle means.
#include "csv.hpp"
#include "shipped_mixtures.hpp"

#include "core/vial/water_limit.hpp"
#include "gentlest/liquids/grade.hpp"
#include "gentlest/vial/evaporation.hpp"
#include "gentlest/vial/miscibility.hpp"
#include "gentlest/vial/molecules.hpp"

#include "report/bottle/vial_words.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <cmath>
#include <utility>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const Solvent& solvent(const std::string& id) {
  return *shipped_catalogue().find_solvent(id);
}

double volume_of(const std::string& id, double mass) {
  return mass / solvent(id).molar_mass_g_per_mol->chosen.value * molar_volume_cm3(solvent(id)).value();
}

// The published composition with so much more water in its alcohol, per cent by volume.
PhaseAnswer beside_the_border(const Row& row, double more_percent) {
  const double ethanol = volume_of("ethanol", number(row, "ethanol"));
  const double water = volume_of("water", number(row, "water"));
  const double other = volume_of(row.at("hydrocarbon"), number(row, "other"));
  const double all = ethanol + water + other;
  const double wet = (ethanol + water) / all;
  const double share = water / (ethanol + water) + more_percent / 100;
  const Mixture mixture({{make_liquid(solvent("ethanol"), "", shipped_catalogue()), wet * (1 - share)},
                         {make_liquid(solvent("water"), "", shipped_catalogue()), wet * share},
                         {make_liquid(solvent(row.at("hydrocarbon")), "", shipped_catalogue()), 1 - wet}});
  return phases_of(mixture, shipped_catalogue(), Celsius{number(row, "temperature_C")});
}

// So much wet ethanol, so much water in it, the rest of these hydrocarbons; all by volume before mixing.
Mixture wet_ethanol(double wet_percent, double water_percent, const std::string& others) {
  std::vector<Part> parts = mixture_from(others).parts();
  for (Part& part : parts) part.fraction *= 1 - wet_percent / 100;
  const double water = wet_percent * water_percent / 1e4;
  parts.push_back({make_liquid(solvent("ethanol"), "", shipped_catalogue()), wet_percent / 100 - water});
  parts.push_back({make_liquid(solvent("water"), "", shipped_catalogue()), water});
  return Mixture(std::move(parts));
}

Phases phases_in(const std::string& text) {
  return phases_of(mixture_from(text), shipped_catalogue()).phases;
}

}  // namespace

TEST_CASE("published border: a little more water parts the mixture, a little less leaves it one liquid") {
  int compared = 0;
  for (const Row& row : read_table("water_limits.csv")) {
    INFO(row.at("hydrocarbon") << " at " << row.at("temperature_C") << " C, ethanol " << row.at("ethanol"));
    CHECK(beside_the_border(row, 0.7).phases == Phases::two_liquids);
    CHECK(beside_the_border(row, -0.7).phases == Phases::one_liquid);
    CHECK(beside_the_border(row, 0).phases == Phases::near_border);
    CHECK(beside_the_border(row, 0).basis == PhasesBasis::measured);
    ++compared;
  }
  CHECK(compared == 28);
}

TEST_CASE("the group method for two liquids gives what a general library gives") {
  for (const Row& row : read_table("water_limit_models.csv"))
    for (const auto& [share, limit] : row) {
      if (share == "hydrocarbon") continue;
      INFO(row.at("hydrocarbon") << " at " << share);
      const auto own = computed_water_limit(solvent("ethanol"), solvent(row.at("hydrocarbon")), std::stod(share),
                                            shipped_catalogue());
      REQUIRE(own);
      CHECK(std::abs(*own - std::stod(limit)) < 0.06);
    }
}

TEST_CASE("limits that correct others carry what the method gives at each point") {
  int compared = 0;
  for (const WaterLimit& limit : shipped_catalogue().chemistry().water_limits)
    for (const WaterLimit::Point& point : limit.points) {
      if (!point.computed_percent) continue;
      INFO(limit.other << " at " << point.wet_percent);
      const auto own =
          computed_water_limit(solvent(limit.alcohol), solvent(limit.other), point.wet_percent, shipped_catalogue());
      REQUIRE(own);
      CHECK(std::abs(*own - *point.computed_percent) <
            0.06);  // the steepest moves by 0.05 with the last digit of its share
      ++compared;
    }
  CHECK(compared == 23);
}

TEST_CASE("ethanol 96 %: verdicts that measurements bear out") {
  for (const Row& row : read_table("verdicts_ethanol96.csv")) {
    const double ethanol = number(row, "ethanol_percent");
    const std::string text = fmt::format("ethanol 96 % {}, {} {}", ethanol, row.at("hydrocarbon"), 100 - ethanol);
    INFO(text);
    CHECK(to_word(phases_in(text)) == row.at("verdict"));
  }
}

TEST_CASE("weaker and stronger grades: toluene bears 90 %, gasoline 95 % half and half is at the border or beyond") {
  // Washburn 1939: about 15.7 % of water at half and half; ethanol 90 % holds 11.7 %.
  CHECK(phases_in("ethanol 90 % 50, toluene 50") == Phases::one_liquid);
  // Bridgeman and Querfeld 1933: eight gasolines part between 14 and 41 C.
  CHECK(phases_in("ethanol 95 % 50, isooctane 40, toluene 10") != Phases::one_liquid);
  // Dry ethanol mixes with all of these; several methods split it.
  for (const char* text : {"ethanol absolute 30, isooctane 70", "ethanol absolute 30, dearomatised white spirit 70",
                           "ethanol absolute 30, isooctane 40, toluene 30"}) {
    INFO(text);
    CHECK(phases_in(text) == Phases::one_liquid);
  }
}

TEST_CASE("a limit measured at two temperatures is read between them") {
  // Half and half with toluene: 11.9 % of water at 0 C (Bonner 1910), about 15.7 % at 25 C (Washburn 1939).
  const Mixture mixture = wet_ethanol(50, 12.9, "toluene 100");
  const auto at = [&](double temperature_C) {
    return phases_of(mixture, shipped_catalogue(), Celsius{temperature_C}).phases;
  };
  CHECK(at(0) == Phases::two_liquids);
  CHECK(at(6) == Phases::near_border);
  CHECK(at(15) == Phases::one_liquid);
}

TEST_CASE("a trace of another hydrocarbon does not move the limit: estimate and measurement meet") {
  // 15.7 % with toluene, 6.3 % with cyclohexane at half and half.
  const auto phases = [](double water_percent, const std::string& others) {
    const PhaseAnswer answer = phases_of(wet_ethanol(50, water_percent, others), shipped_catalogue(), Celsius{25});
    CHECK(answer.basis == PhasesBasis::corrected);
    return answer.phases;
  };
  CHECK(phases(13.9, "toluene 98, cyclohexane 2") == Phases::one_liquid);
  CHECK(phases(16.5, "toluene 98, cyclohexane 2") == Phases::two_liquids);
  CHECK(phases(5.0, "toluene 2, cyclohexane 98") == Phases::one_liquid);
  CHECK(phases(7.5, "toluene 2, cyclohexane 98") == Phases::two_liquids);
}

TEST_CASE("an answer says what it stands on, and which grade would stay one liquid") {
  const PhaseAnswer estimated = phases_of(mixture_from("ethanol 96 % 20, isooctane 80"), shipped_catalogue());
  CHECK(estimated.basis == PhasesBasis::corrected);
  REQUIRE(estimated.water);
  CHECK(estimated.water->corrected_by == std::vector<std::string>{"cyclohexane"});
  CHECK_FALSE(estimated.water->grade_that_mixes.empty());
  const PhaseAnswer alone = phases_of(mixture_from("ethanol 96 % 30, acetone 10, isooctane 60"), shipped_catalogue());
  CHECK(alone.basis == PhasesBasis::computed);
  REQUIRE(alone.computed);
  CHECK(alone.computed->holds_wet_alcohol);
  CHECK(phases_of(mixture_from("isopropanol 90 % 30, isooctane 70"), shipped_catalogue()).basis ==
        PhasesBasis::computed);
}

TEST_CASE("what dries is judged like the mixture: it parts from the start on where the mixture does") {
  // Toluene bears the water of ethanol 90 % half and half (Washburn 1939); isooctane not that of 96 % at 20.
  const auto mixes = evaporate(mixture_from("ethanol 90 % 50, toluene 50"), shipped_catalogue(), Celsius{20});
  REQUIRE(mixes);
  CHECK(mixes->parts_at != std::optional<double>(0));
  const auto parts = evaporate(mixture_from("ethanol 96 % 20, isooctane 80"), shipped_catalogue(), Celsius{20});
  REQUIRE(parts);
  CHECK(parts->parts_at == std::optional<double>(0));
}

TEST_CASE("a verdict without words is the verdict with words") {
  for (const char* text : {"ethanol 96 % 20, isooctane 80", "ethanol 96 % 50, toluene 50", "acetone 30, isooctane 70",
                           "ethanol 96 % 30, acetone 10, isooctane 60", "ethanol 98 % 40, white spirit 60"}) {
    INFO(text);
    const PhaseAnswer answer = phases_of(mixture_from(text), shipped_catalogue());
    const PhaseVerdict verdict = verdict_on_phases(mixture_from(text), shipped_catalogue());
    CHECK(answer.phases == verdict.phases);
    CHECK(answer.basis == verdict.basis);
  }
}

TEST_CASE("strength by volume: alcohol and water shrink when they are mixed") {
  constexpr double ethanol_density = 789.24;
  constexpr double water_density = 998.2;
  for (const Row& row : read_table("ethanol_strengths.csv")) {
    const double strength = number(row, "strength_percent");
    if (strength <= 50) continue;                                                              // no grade of an alcohol
    const double grams = number(row, "density_kg_per_m3") - strength / 100 * ethanol_density;  // of water, per litre
    const double water = grams / water_density;
    INFO(strength);
    const Grade grade = read_grade(solvent("ethanol"), fmt::format("{} %", strength), shipped_catalogue());
    CHECK(std::abs(grade.water_fraction - water / (water + strength / 100)) < 2e-4);
  }
  // By weight no table is needed: 92.4 % by weight is 95 % by volume.
  CHECK(std::abs(read_grade(solvent("ethanol"), "92.41 % w/w", shipped_catalogue()).water_fraction -
                 read_grade(solvent("ethanol"), "95 %", shipped_catalogue()).water_fraction) < 2e-4);
  // Lebo 1921: 90.35 % by weight has a density of 0.80866, so it is 93.0 % by volume.
  CHECK(std::abs(read_grade(solvent("isopropanol"), "90.35 % w/w", shipped_catalogue()).water_fraction -
                 read_grade(solvent("isopropanol"), "93.0 %", shipped_catalogue()).water_fraction) < 3e-4);
}

TEST_CASE("the weakest grade within a share of water") {
  CHECK(grade_within(solvent("ethanol"), 0.0495, shipped_catalogue()) == "96 %");
  CHECK(grade_within(solvent("ethanol"), 0.04, shipped_catalogue()) == "97 %");
  CHECK(grade_within(solvent("ethanol"), 0.001, shipped_catalogue()) == "absolute");
}
