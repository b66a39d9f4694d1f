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

bool has(const std::vector<Caution>& list, CautionKind kind) {
  return std::any_of(list.begin(), list.end(), [&](const Caution& caution) { return caution.kind == kind; });
}

std::vector<std::string> meant_by(const std::vector<Caution>& list, CautionKind kind) {
  for (const Caution& caution : list)
    if (caution.kind == kind) return caution.liquids;
  return {};
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
  CHECK(has(gentle, CautionKind::vapour_catches_fire));
  CHECK(has(gentle, CautionKind::never_by_mouth));
  CHECK_FALSE(has(gentle, CautionKind::unborn_child));
  CHECK_FALSE(has(gentle, CautionKind::peroxides));
  CHECK_FALSE(has(gentle, CautionKind::through_skin));
  const auto harsh = cautions("toluene 50, tetrahydrofuran 50");
  CHECK(has(harsh, CautionKind::unborn_child));
  CHECK(meant_by(harsh, CautionKind::peroxides) == std::vector<std::string>{"tetrahydrofuran"});
  const auto peroxides = std::find_if(harsh.begin(), harsh.end(),
                                      [](const Caution& caution) { return caution.kind == CautionKind::peroxides; });
  CHECK(peroxides->source == "peroxide_lists");
  const auto skin = cautions("butoxyethanol 20, water 80");
  CHECK(has(skin, CautionKind::through_skin));
  CHECK(has(cautions("dichloromethane 100"), CautionKind::hides_flash_point));
}

TEST_CASE("every list of cautions defers to the safety data sheet first, and every caution has a source") {
  for (const char* text : {"acetone 100", "white spirit 80, ethanol 96 % 20", "water 100"}) {
    const auto list = cautions(text);
    CHECK(list.front().kind == CautionKind::data_sheets_first);
    CHECK(has(list, CautionKind::label_every_vial));
    CHECK(has(list, CautionKind::swabs_as_waste));
    for (const Caution& caution : list) CHECK((caution.origin == CautionOrigin::published) == !caution.source.empty());
  }
}

TEST_CASE("liquids that must not meet") {
  const auto clash = clashes_among(liquids({"acetone", "isooctane", "chloroform"}), shipped_catalogue());
  REQUIRE(clash.size() == 1);
  CHECK(clash[0].pair->forbidden);
  CHECK(clash[0].pair->source == "lcss_chloroform");
  CHECK(clashes_among(liquids({"acetone", "isooctane", "ethanol"}), shipped_catalogue()).empty());
  // By family from either side, and the forbidden ones first.
  const auto many = clashes_among(liquids({"butylamine", "ethyl acetate", "dichloromethane"}), shipped_catalogue());
  REQUIRE(many.size() == 2);
  CHECK(many[0].pair->forbidden);
  CHECK_FALSE(many[1].pair->forbidden);
  CHECK(has(cautions("chloroform 50, butanone 50"), CautionKind::clash));
}

TEST_CASE("cautions for several mixtures: each once, for all liquids it is meant for") {
  std::vector<LabelledMixture> mixtures;
  for (const char* text : {"isooctane 85, ethanol absolute 15", "isopropanol 50, isooctane 50", "isooctane 100"})
    mixtures.push_back({mixture_from(text), label_of(mixture_from(text), shipped_catalogue())});
  const auto list = cautions_for(mixtures, shipped_catalogue());
  for (std::size_t i = 0; i < list.size(); ++i)
    for (std::size_t k = i + 1; k < list.size(); ++k) CHECK_FALSE(list[i] == list[k]);
  const std::vector<std::string> alcohols = {"ethanol absolute", "isopropanol"};
  CHECK(std::count_if(list.begin(), list.end(), [&](const Caution& caution) {
          return caution.kind == CautionKind::gloves && caution.liquids == alcohols;
        }) == 1);
  // The swabs of different mixtures meet in the waste.
  const Mixture a = mixture_from("chloroform 100");
  const Mixture b = mixture_from("acetone 100");
  const auto clash =
      cautions_for({{a, label_of(a, shipped_catalogue())}, {b, label_of(b, shipped_catalogue())}}, shipped_catalogue());
  CHECK(has(clash, CautionKind::clash));
  CHECK_FALSE(has(clash, CautionKind::no_clash_known));
  CHECK(has(list, CautionKind::no_clash_known));
}

TEST_CASE("a bottle's own statement warns although the mixture is too thin for it") {
  const Mixture thin = mixture_from("toluene 1, isopropanol 99");
  const MixtureLabel label = label_of(thin, shipped_catalogue());
  REQUIRE(std::none_of(label.statements.begin(), label.statements.end(),
                       [](const LabelStatement& statement) { return statement.code == "H304"; }));
  CHECK(has(cautions_for(thin, label, shipped_catalogue()), CautionKind::never_by_mouth));
}
