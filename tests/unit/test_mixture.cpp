#include "shipped.hpp"

#include "gentlest/diagnostic.hpp"
#include "gentlest/mixture.hpp"

#include <catch2/catch.hpp>

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
                       {"ethanol 30,5, isooctane 69,5", "error:"},
                       {"", "error:"},
                       {",", "error:"},
                       {"30 ethanol, 70 isooctane", "error:"}};
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
  CHECK(wet.water_fraction == Approx(0.04));
  CHECK(dry.water_fraction == 0);
  CHECK(wet.hansen.dH == Approx(0.96 * dry.hansen.dH + 0.04 * water.dH));
  REQUIRE(wet.published_teas);
  CHECK(wet.published_teas->fd + wet.published_teas->fp + wet.published_teas->fh == Approx(100));
  CHECK(bottle("acetone", "99.5 %").water_fraction == 0);  // a purity, not a water content
}

TEST_CASE("a mixture guards its rules") {
  CHECK_THROWS_AS(Mixture({}), InputError);
  CHECK_THROWS_AS(Mixture({{bottle("ethanol"), 0.5}}), InputError);
  CHECK_THROWS_AS(Mixture({{bottle("ethanol"), 0.5}, {bottle("ethanol"), 0.5}}), InputError);
  CHECK_THROWS_AS(Mixture({{bottle("ethanol"), 1.5}, {bottle("acetone"), -0.5}}), InputError);
}

TEST_CASE("the triangle's own mean is unknown when one part has no published fractions") {
  Liquid unknown = bottle("ethanol");
  unknown.label = "other";
  unknown.published_teas.reset();
  CHECK_FALSE(mix_published_teas(Mixture({{bottle("acetone"), 0.5}, {unknown, 0.5}})));
}
