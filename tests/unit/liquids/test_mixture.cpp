#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/mixture.hpp"
#include "gentlest/liquids/notation.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

std::string complaint_about(const std::string& text, const std::vector<Liquid>& shelf = {}) {
  try {
    parse_mixture(text, shipped_catalogue(), shelf);
  } catch (const InputError& error) {
    CHECK(error.kind() == Fault::usage);
    return render(error.faults());
  }
  return "no complaint";
}

Liquid bottle(const char* name, const char* grade = "") {
  return make_liquid(*shipped_catalogue().find_solvent(name), grade, shipped_catalogue());
}

}  // namespace

TEST_CASE("a mixture is read in per cent, in fractions, by other names and CAS numbers") {
  for (const char* text : {"ethanol 30, isooctane 70", "isooctane 0.7, ethanol 0.3", "64-17-5 30 %; 540-84-1 70%",
                           "Ethyl alcohol 30, 2,2,4-trimethylpentane 70", " ethanol  30 ,isooctane 70 "}) {
    INFO(text);
    const Mixture mixture = parse_mixture(text, shipped_catalogue());
    CHECK(to_text(mixture) == "isooctane 70, ethanol 30");
  }
}

TEST_CASE("a grade in the text counts, else the shelf's grade is taken") {
  CHECK(to_text(parse_mixture("ethanol 96 % 30, isooctane 70", shipped_catalogue())) ==
        "isooctane 70, ethanol 96 % 30");
  CHECK(to_text(parse_mixture("ethanol 30, isooctane 70", shipped_catalogue(), {bottle("ethanol", "96 %")})) ==
        "isooctane 70, ethanol 96 % 30");
}

TEST_CASE("each mistake of a mixture is told") {
  struct Bad {
    const char* text;
    const char* message;
  };
  const Bad table[] = {{"ethnol 30, isooctane 70", "did you mean \"ethanol\"?"},
                       {"ethanol 30, isooctane 60", "add up to 90"},
                       {"ethanol 0.3, isooctane 0.6", "add up to 0.9"},
                       {"ethanol -30, isooctane 130", "above 0"},
                       {"ethanol 0, isooctane 100", "above 0"},
                       {"ethanol nan, isooctane 70", "error:"},
                       {"ethanol 30, ethanol 70", "twice"},
                       {"ethanol 30, ethyl alcohol 70", "twice"},
                       {"ethanol, isooctane", "error:"},
                       {"", "error:"},
                       {",", "error:"}};
  for (const Bad& bad : table) {
    INFO(bad.text);
    const std::string complaint = complaint_about(bad.text);
    INFO(complaint);
    CHECK(complaint.find(bad.message) != std::string::npos);
    CHECK(complaint.find("error:") != std::string::npos);
  }
}

TEST_CASE("several mistakes are told in one go") {
  const std::string complaint = complaint_about("ethnol 30, isoctane -2");
  CHECK(complaint.find("ethnol") != std::string::npos);
  CHECK(complaint.find("isoctane") != std::string::npos);
}

TEST_CASE("water in the bottle moves the point of the liquid") {
  const Liquid wet = bottle("ethanol", "96 %");
  const Liquid dry = bottle("ethanol", "absolute");
  const Hansen water = shipped_catalogue().find_solvent("water")->hansen->chosen.value;
  CHECK(wet.water_fraction == test::near(0.0494, 0.0002));  // tests/published/test_water_limits.cpp
  CHECK(dry.water_fraction == 0);
  CHECK(wet.hansen.dH == Approx((1 - wet.water_fraction) * dry.hansen.dH + wet.water_fraction * water.dH));
  CHECK(bottle("acetone", "99.5 %").water_fraction == 0);  // a purity, not a water content
}

TEST_CASE("a mixture guards its rules") {
  CHECK_THROWS_AS(Mixture({}), InputError);
  CHECK_THROWS_AS(Mixture({{bottle("ethanol"), 0.5}}), InputError);
  CHECK_THROWS_AS(Mixture({{bottle("ethanol"), 0.5}, {bottle("ethanol"), 0.5}}), InputError);
  CHECK_THROWS_AS(Mixture({{bottle("ethanol"), 1.5}, {bottle("acetone"), -0.5}}), InputError);
}

TEST_CASE("a grade is read however it is written, or refused: never taken for pure") {
  for (const char* grade : {"95.6 %", "95,6 %", "95.6", "95.6%", "95,6 vol%", "95.6 Vol.-%", "95.6 % vol", "95.6 % v/v",
                            "95.6% V/V", "95.6 \xC2\xB0", "95.6\xC2\xB0"}) {
    INFO(grade);
    CHECK(bottle("ethanol", grade).label == "ethanol 95.6 %");
    CHECK(bottle("ethanol", grade).water_fraction == test::near(0.0542, 0.0003));
  }
  CHECK(bottle("ethanol", "95 wt%").label == "ethanol 95 % w/w");
  CHECK(bottle("ethanol", "95 wt%").water_fraction < bottle("ethanol", "95 %").water_fraction);
  for (const char* grade : {"absolute", "Anhydrous", "dry"})
    CHECK(bottle("ethanol", grade).label == "ethanol absolute");
  CHECK(bottle("ethanol", "99.9 %").water_fraction == test::near(0.0013, 0.0003));
  for (const char* grade : {"nan %", "inf", "denatured", "96 % denatured", "96 proof", "96 % 4", "-96 %", "9e1 %",
                            "40 %", "104 %", "%", "0 %"}) {
    INFO(grade);
    CHECK_THROWS_AS(bottle("ethanol", grade), InputError);
  }
  // What is no alcohol has a purity, in words or per cent, and no water.
  CHECK(bottle("acetone", "technical").label == "acetone technical");
  CHECK(bottle("acetone", "99,5 %").label == "acetone 99.5 %");
  CHECK_THROWS_AS(bottle("acetone", "nan %"), InputError);
  CHECK_THROWS_AS(bottle("acetone", "104 %"), InputError);
}

TEST_CASE("a grade in a mixture is read or refused at its place") {
  for (const char* text : {"ethanol 95,6 % 30, isooctane 70", "ethanol 95.6 vol% 30; isooctane 70",
                           "ethanol 95.6 \xC2\xB0 30, isooctane 70", "ethanol 95.6 % v/v 30, isooctane 70"}) {
    INFO(text);
    CHECK(to_text(parse_mixture(text, shipped_catalogue())) == "isooctane 70, ethanol 95.6 % 30");
  }
  const std::string complaint = complaint_about("isooctane 70, ethanol denatured 30");
  INFO(complaint);
  CHECK(complaint.find("mixture:1:23:") != std::string::npos);
  CHECK(complaint.find("the grade \"denatured\" of ethanol is not understood") != std::string::npos);
  CHECK(complaint_about("ethanol 96 % denatured 30, isooctane 70").find("not counted") != std::string::npos);
  CHECK(complaint_about("ethanol nan % 30, isooctane 70").find("not understood") != std::string::npos);
  CHECK(complaint_about("ethanol 104 % 30, isoctane 70").find("isoctane") != std::string::npos);
}

TEST_CASE("a name means one bottle of the shelf, or asks which") {
  const std::vector<Liquid> two = {bottle("ethanol", "96 %"), bottle("ethanol", "absolute")};
  const std::string complaint = complaint_about("ethanol 30, isooctane 70", two);
  CHECK(complaint.find("ethanol stands on the shelf in 2 grades") != std::string::npos);
  CHECK(complaint.find("ethanol 96 %") != std::string::npos);
  CHECK(to_text(parse_mixture("ethanol absolute 30, isooctane 70", shipped_catalogue(), two)) ==
        "isooctane 70, ethanol absolute 30");
  CHECK(to_text(parse_mixture("ethanol 30, isooctane 70", shipped_catalogue(),
                              {bottle("ethanol", "96 %"), bottle("ethanol")})) == "isooctane 70, ethanol 30");
  // A grade in words is part of the bottle's name.
  CHECK(to_text(parse_mixture("acetone technical 30, isooctane 70", shipped_catalogue(),
                              {bottle("acetone", "technical")})) == "isooctane 70, acetone technical 30");
}
