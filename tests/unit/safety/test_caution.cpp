#include "gentlest/safety/caution.hpp"

#include "shipped_mixtures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::vector<Caution> cautions(const std::string& text) {
  const Mixture mixture = mixture_from(text);
  return cautions_for(mixture, label_of(mixture, shipped_catalogue()), shipped_catalogue());
}

bool says(const std::vector<Caution>& list, const std::string& words) {
  return std::any_of(list.begin(), list.end(),
                     [&](const Caution& caution) { return caution.text.find(words) != std::string::npos; });
}

std::vector<Liquid> liquids(const std::vector<std::string>& names) {
  std::vector<Liquid> list;
  for (const std::string& name : names)
    list.push_back(make_liquid(*shipped_catalogue().find_solvent(name), "", shipped_catalogue()));
  return list;
}

}  // namespace

TEST_CASE("cautions fit the mixture") {
  const auto gentle = cautions("isooctane 85, ethanol absolute 15");
  CHECK(says(gentle, "catches fire at room temperature"));
  CHECK(says(gentle, "Never pipette by mouth"));
  CHECK_FALSE(says(gentle, "unborn child"));
  CHECK_FALSE(says(gentle, "peroxides"));
  CHECK_FALSE(says(gentle, "through the skin"));
  const auto harsh = cautions("toluene 50, tetrahydrofuran 50");
  CHECK(says(harsh, "unborn child"));
  CHECK(says(harsh, "tetrahydrofuran: forms explosive peroxides"));
  const auto skin = cautions("butoxyethanol 20, water 80");
  CHECK(says(skin, "taken up through the skin"));
  CHECK(says(cautions("dichloromethane 100"), "hide a flash point"));
}

TEST_CASE("every list of cautions defers to the safety data sheet first, and every caution has a source") {
  for (const char* text : {"acetone 100", "white spirit 80, ethanol 96 % 20", "water 100"}) {
    const auto list = cautions(text);
    CHECK(list.front().text.find("safety data sheets") != std::string::npos);
    CHECK(says(list, "Label every vial"));
    CHECK(says(list, "closed metal container"));
    for (const Caution& caution : list) {
      INFO(caution.text);
      CHECK_FALSE(caution.source.empty());
    }
  }
}

TEST_CASE("liquids that must not meet") {
  const auto clash = clashes_among(liquids({"acetone", "isooctane", "chloroform"}), shipped_catalogue());
  REQUIRE(clash.size() == 1);
  CHECK(clash[0].forbidden);
  CHECK(clash[0].source == "lcss_chloroform");
  CHECK(clashes_among(liquids({"acetone", "isooctane", "ethanol"}), shipped_catalogue()).empty());
  // By family from either side, and the forbidden ones first.
  const auto many = clashes_among(liquids({"butylamine", "ethyl acetate", "dichloromethane"}), shipped_catalogue());
  REQUIRE(many.size() == 2);
  CHECK(many[0].forbidden);
  CHECK_FALSE(many[1].forbidden);
  CHECK(says(cautions("chloroform 50, butanone 50"), "do not mix"));
}

TEST_CASE("cautions for several mixtures: each once, for all liquids it is meant for") {
  std::vector<LabelledMixture> mixtures;
  for (const char* text : {"isooctane 85, ethanol absolute 15", "isopropanol 50, isooctane 50", "isooctane 100"})
    mixtures.push_back({mixture_from(text), label_of(mixture_from(text), shipped_catalogue())});
  const auto list = cautions_for(mixtures, shipped_catalogue());
  for (std::size_t i = 0; i < list.size(); ++i)
    for (std::size_t k = i + 1; k < list.size(); ++k) CHECK(list[i].text != list[k].text);
  const auto gloves = [](const Caution& caution) { return caution.text.rfind("Gloves, ethanol", 0) == 0; };
  REQUIRE(std::count_if(list.begin(), list.end(), gloves) == 1);
  CHECK(std::find_if(list.begin(), list.end(), gloves)->text.find("isopropanol") != std::string::npos);
  // The swabs of different mixtures meet in the waste.
  const Mixture a = mixture_from("chloroform 100");
  const Mixture b = mixture_from("acetone 100");
  const auto clash =
      cautions_for({{a, label_of(a, shipped_catalogue())}, {b, label_of(b, shipped_catalogue())}}, shipped_catalogue());
  CHECK(says(clash, "do not mix"));
  CHECK_FALSE(says(clash, "no proof that they may"));
  CHECK(says(list, "no proof that they may"));
}

TEST_CASE("a bottle's own statement warns although the mixture is too thin for it") {
  const Mixture thin = mixture_from("toluene 1, isopropanol 99");
  const MixtureLabel label = label_of(thin, shipped_catalogue());
  REQUIRE(std::none_of(label.statements.begin(), label.statements.end(),
                       [](const LabelStatement& statement) { return statement.code == "H304"; }));
  CHECK(says(cautions_for(thin, label, shipped_catalogue()), "Never pipette by mouth"));
}
