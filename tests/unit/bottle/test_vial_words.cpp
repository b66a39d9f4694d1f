#include "report/bottle/vial_words.hpp"

#include "shipped_mixtures.hpp"

#include "report/bottle/liquid_words.hpp"
#include "report/phrases/fit_words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::string why(const char* text) {
  return phases_because(phases_of(mixture_from(text), shipped_catalogue()));
}

bool holds(const std::string& text, const char* words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("why a mixture stays one liquid or parts is told by what decides") {
  CHECK(why("acetone 100") == "there is only one liquid");
  CHECK(holds(why("ethanol absolute 50, water 50"), "mix in every proportion"));
  const std::string estimated = why("ethanol 96 % 20, isooctane 80");
  CHECK(holds(estimated, "20 parts of ethanol in 100 with isooctane bear about "));
  CHECK(holds(estimated, "(group method, corrected by what was measured with cyclohexane)"));
  CHECK(holds(estimated, " % stays one liquid"));
  const std::string computed = why("ethanol 96 % 30, acetone 10, isooctane 60");
  CHECK(holds(computed, "by the modified group method the mixture "));
  CHECK(holds(computed, "; no limit of water is measured for anything like it"));
  for (int basis = 0; basis <= static_cast<int>(PhasesBasis::none); ++basis)
    CHECK_FALSE(to_word(static_cast<PhasesBasis>(basis)).empty());
}

TEST_CASE("what makes a drift doubtful, and what keeps it from being reckoned, is named") {
  const auto ideal = evaporate(mixture_from("propylene carbonate 50, acetone 50"), shipped_catalogue());
  REQUIRE(ideal);
  const auto warnings = drift_warnings(*ideal);
  CHECK(std::count(warnings.begin(), warnings.end(),
                   "groups or their figures are not known: taken as an ideal mixture") == 1);
  const auto spirit = evaporate(mixture_from("white spirit 100"), shipped_catalogue());
  REQUIRE(spirit);
  const auto of_spirit = drift_warnings(*spirit);
  CHECK(std::any_of(of_spirit.begin(), of_spirit.end(), [](const std::string& one) {
    return holds(one, "white spirit is reckoned as ") && holds(one, " (assumed)");
  }));
  CHECK(missing_words({{MissingFigure::What::amount, "x", {20}},
                       {MissingFigure::What::vapour_pressure, "y", {20}},
                       {MissingFigure::What::unit_of_time, "", {20}}}) ==
        std::vector<std::string>{"molar volume or molar mass of x", "vapour pressure of y at 20 C",
                                 "figures of n-butyl acetate, the unit of time"});
}

TEST_CASE("doubts of a fit, its groups and the published series each have their own words") {
  std::vector<FitDoubt> all;
  for (int doubt = 0; doubt <= static_cast<int>(FitDoubt::liquids_alike_in_dH); ++doubt)
    all.push_back(static_cast<FitDoubt>(doubt));
  const auto words = doubt_words(all);
  CHECK(std::set<std::string>(words.begin(), words.end()).size() == 6);
  CHECK(words.front() == "fewer than 10 solvents fail to dissolve it");
  CHECK(group_words(SpreadGroup::held) == "held, up to 13 misplaced");
  CHECK(group_words(SpreadGroup::weak) == "held, 14 or more misplaced");
  CHECK(std::string(grade_words(1)) == "dissolves");
  CHECK(std::string(grade_words(6)) == "nothing seen");
  CHECK(series_source(SeriesKind::feller) == "Feller 1976, from memory");
  CHECK(series_name(SeriesKind::hydrocarbon_alcohol) == "ligroin to ethanol in 10 % steps");
}
