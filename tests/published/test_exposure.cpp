// Fire and breath: each rule against its published worked example, then on the catalogue's liquids.
#include "gentlest/safety/exposure.hpp"

#include "shipped_mixtures.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>
#include "near.hpp"

#include <array>
#include <cmath>

using namespace gentlest;
using namespace gentlest::test;

namespace {

// Flash point of a pair at a mole fraction of the first.
std::optional<Celsius> flash_at(const std::string& first, const std::string& second, double x) {
  const double a = *molar_volume_cm3(*shipped_catalogue().find_solvent(first)) * x;
  const double b = *molar_volume_cm3(*shipped_catalogue().find_solvent(second)) * (1 - x);
  const std::string text =
      x == 0   ? second + " 100"
      : x == 1 ? first + " 100"
               : fmt::format("{} {:.10f}, {} {:.10f}", first, 100 * a / (a + b), second, 100 * b / (a + b));
  return flash_point(mixture_from(text), shipped_catalogue()).estimate;
}

}  // namespace

TEST_CASE("additive index: the worked example of 29 CFR 1910.1000(d)(2), and others in print", "[hazards]") {
  CHECK(additive_index({500, 45, 40}, {1000, 200, 200}) == Approx(0.925).epsilon(1e-12));
  CHECK(additive_index({150, 300}, {200, 400}) == Approx(1.5).epsilon(1e-12));
  CHECK(additive_index({72.5, 31.2, 385}, {200, 100, 1000}) == Approx(1.0595).epsilon(1e-12));
  CHECK(additive_index({50, 25}, {100, 50}) == Approx(1).epsilon(1e-12));
}

TEST_CASE("Le Chatelier: the worked example of Crowl and Louvar", "[hazards]") {
  CHECK(le_chatelier({0.24, 0.61, 0.15}, {1.2, 5.3, 3.1}) == near(2.75117, 1e-5));
  CHECK(le_chatelier({1, 1}, {2, 2}) == Approx(2));
}

TEST_CASE("ten millilitres of acetone in a room of 50 cubic metres", "[hazards]") {
  const double start = release_mg_per_m3({10}, 0.7845, 50);
  CHECK(start == near(156.9, 0.01));
  CHECK(ppm_from_mg_per_m3(start, 58.08) == near(66.0504, 0.001));
  CHECK(ppm_from_mg_per_m3(start, 58.08) * mean_after_release(6, 8) == near(1.37605, 0.0001));
  CHECK(mean_after_release(0, 8) == 1);
  const auto exposure =
      session_exposure({{make_liquid(*shipped_catalogue().find_solvent("acetone"), "", shipped_catalogue()), {10}}},
                       {50, 6, 8}, shipped_catalogue());
  bool found = false;
  for (const SessionExposure& answer : exposure)
    if (answer.authority == "NIOSH REL") {
      found = true;
      REQUIRE(answer.index);
      CHECK(*answer.index == Approx(1.376 / 250).epsilon(0.02));  // the catalogue's own density and molar volume
    }
  CHECK(found);
}

TEST_CASE("flash points of pairs against another activity model", "[hazards]") {
  // Computed with the constants of DECHEMA at one atmosphere, the vapour pressures of Poling 2001 and the flash points
  // of IEC 60079-20-1; not measured. Mole fraction of the first: 0.1, 0.25, 0.5, 0.75, 0.9.
  struct Line {
    const char* first;
    const char* second;
    std::array<double, 5> flash_C;
  };
  const std::array<double, 5> x = {0.1, 0.25, 0.5, 0.75, 0.9};
  const std::array<Line, 7> lines = {{{"ethanol", "toluene", {0.7, -0.1, -0.1, 0.6, 3.8}},
                                      {"ethanol", "n_heptane", {-9.2, -9.2, -8.9, -8.1, -6.3}},
                                      {"ethanol", "n_octane", {4.1, 3.8, 3.7, 3.9, 4.6}},
                                      {"acetone", "cyclohexane", {-23.6, -25.4, -25.7, -25.4, -23.7}},
                                      {"butanone", "n_heptane", {-10.7, -11.7, -12.6, -12.6, -12.0}},
                                      {"ethyl_acetate", "ethanol", {5.3, 1.0, -1.9, -3.3, -3.8}},
                                      {"ethanol", "butyl_acetate", {17.6, 14.1, 11.5, 10.8, 11.0}}}};
  for (const Line& line : lines)
    for (std::size_t i = 0; i < x.size(); ++i) {
      INFO(line.first << " + " << line.second << " at " << x[i]);
      const auto ours = flash_at(line.first, line.second, x[i]);
      REQUIRE(ours);
      CHECK(ours->value == near(line.flash_C[i], 3.0));
    }
}

TEST_CASE("flash point: ends, minimum, water, and what is not known", "[hazards]") {
  const double ethanol = shipped_catalogue().find_solvent("ethanol")->flash_point_C->chosen.value;
  CHECK(flash_at("ethanol", "n_octane", 1)->value == Approx(ethanol));
  CHECK(flash_at("ethanol", "n_octane", 0.999)->value == near(ethanol, 0.6));
  CHECK(flash_at("ethanol", "n_octane", 0.5)->value < ethanol - 5);  // below both parts
  // The more water, the higher.
  double before = ethanol;
  for (const char* text : {"ethanol 96 % 100", "ethanol 70 % 100", "ethanol 30, water 70", "ethanol 10, water 90"}) {
    const auto flash = flash_point(mixture_from(text), shipped_catalogue());
    INFO(text);
    REQUIRE(flash.estimate);
    CHECK(flash.estimate->value > before);
    before = flash.estimate->value;
  }
  const FlashPoint none = flash_point(mixture_from("dichloromethane 50, chloroform 50"), shipped_catalogue());
  CHECK(none.nothing_burns());
  CHECK_FALSE(none.estimate);
  const FlashPoint spirit = flash_point(mixture_from("white spirit 99.9, ethanol 0.1"), shipped_catalogue());
  REQUIRE(spirit.estimate);
  CHECK(spirit.estimate->value < shipped_catalogue().find_solvent("white_spirit")->flash_point_C->chosen.value);
  CHECK(flash_point(mixture_from("white spirit 100"), shipped_catalogue()).estimate->value == 39);
  const FlashPoint unknown = flash_point(mixture_from("1-propoxy-2-propanol 50, acetone 50"), shipped_catalogue());
  CHECK_FALSE(unknown.estimate);
  CHECK(unknown.basis == FlashBasis::no_pressure_at_flash);
}

TEST_CASE("explosive limit of the vapour above a mixture lies between those of its parts", "[hazards]") {
  const auto limit = lower_explosive_limit(mixture_from("acetone 50, isooctane 50"), shipped_catalogue());
  REQUIRE(limit);
  CHECK(*limit > shipped_catalogue().find_solvent("isooctane")->explosive_limits->chosen.value.lower_percent);
  CHECK(*limit < shipped_catalogue().find_solvent("acetone")->explosive_limits->chosen.value.lower_percent);
  const auto pure = lower_explosive_limit(mixture_from("toluene 100"), shipped_catalogue());
  REQUIRE(pure);
  CHECK(*pure == Approx(shipped_catalogue().find_solvent("toluene")->explosive_limits->chosen.value.lower_percent));
}

TEST_CASE("vapour hazard ratio: toluene as computed from printed figures, and a list with a gap", "[hazards]") {
  // 21 mmHg at 20 C and 100 ppm: 276. Our vapour pressure at 20 C is 2.91 kPa (21.8 mmHg).
  for (const VapourHazard& hazard : vapour_hazards(mixture_from("toluene 100"), shipped_catalogue()))
    if (hazard.authority == "NIOSH REL") CHECK(*hazard.ratio == Approx(276.3).epsilon(0.05));
  const auto pair = vapour_hazards(mixture_from("toluene 50, d-limonene 50"), shipped_catalogue());
  REQUIRE_FALSE(pair.empty());
  for (const VapourHazard& hazard : pair) {
    INFO(hazard.authority);
    CHECK_FALSE(hazard.ratio);
    CHECK(hazard.without == std::vector<std::string>{"d-limonene"});
  }
}

TEST_CASE("start of boiling", "[hazards]") {
  CHECK(start_of_boiling(mixture_from("acetone 100"), shipped_catalogue())->value == near(56.1, 0.5));
  const auto ether = start_of_boiling(mixture_from("diethyl ether 90, ethanol 10"), shipped_catalogue());
  REQUIRE(ether);
  CHECK(ether->value == near(35, 2));
}
