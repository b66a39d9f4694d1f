#include "gentlest/answers/substitute.hpp"
#include "gentlest/liquids/notation.hpp"

#include "shipped_mixtures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::vector<Liquid> shelf_of(const std::vector<std::string>& names) {
  std::vector<Liquid> list;
  for (const std::string& name : names)
    list.push_back(make_liquid(*shipped_catalogue().find_solvent(name), "", shipped_catalogue()));
  return list;
}

const std::vector<std::string> common_shelf = {"acetone",       "ethanol",    "isopropanol", "ethyl_acetate",
                                               "butyl_acetate", "isooctane",  "cyclohexane", "toluene",
                                               "xylene",        "d_limonene", "butanone",    "dimethylformamide"};

}  // namespace

TEST_CASE("labels in order of what they do to a person") {
  const auto severity = [](const char* text) { return severity_of(label_of(mixture_from(text), shipped_catalogue())); };
  CHECK(severity("dimethylformamide 100") == 5);
  CHECK(severity("methanol 100") == 4);
  CHECK(severity("toluene 100") == 3);
  CHECK(severity("isooctane 100") == 2);
  CHECK(severity("acetone 100") == 1);
  CHECK(severity("ethanol 100") == 0);
}

TEST_CASE("in place of toluene: gentler mixtures near its place, each less severe, none of them parting") {
  const Mixture toluene = mixture_from("toluene 100");
  const SubstituteAnswer answer =
      find_gentler(toluene, shelf_of(common_shelf), shipped_catalogue(), {4.0, 3, 10, 8, {20}});
  CHECK(answer.severity == 3);
  CHECK(answer.original_known);
  REQUIRE_FALSE(answer.found.empty());
  CHECK(answer.found.size() <= 8);
  for (std::size_t i = 0; i < answer.found.size(); ++i) {
    const Substitute& one = answer.found[i];
    INFO(to_text(one.mixture));
    CHECK(one.severity < 3);
    CHECK(one.Ra <= 4.0);
    CHECK(one.Ra == Approx(distance_Ra(mix(one.mixture), mix(toluene))));
    CHECK(one.label.complete());
    CHECK(one.phases.phases != Phases::two_liquids);
    for (const std::string& code : one.added_statements)
      for (const LabelStatement& own : label_of(toluene, shipped_catalogue()).statements) CHECK(own.code != code);
    if (i > 0) CHECK(one.severity >= answer.found[i - 1].severity);
    for (const Part& part : one.mixture.parts()) {
      CHECK(part.liquid.solvent->id != "toluene");
      CHECK(part.liquid.solvent->id != "dimethylformamide");
    }
  }
  const std::string amide = shipped_catalogue().find_solvent("dimethylformamide")->name;
  CHECK(std::count(answer.not_tried.begin(), answer.not_tried.end(), LiquidNotTried{amide, NotTried::no_gentler}) == 1);
}

TEST_CASE("nearest of every set of liquids, as trying all of them finds it") {
  const Mixture original = mixture_from("toluene 60, dimethylformamide 40");
  const std::vector<Liquid> shelf = shelf_of({"acetone", "ethyl_acetate", "isopropanol"});
  const SubstituteAnswer answer = find_gentler(original, shelf, shipped_catalogue(), {20.0, 2, 10, 100, {20}});
  double best = 1e9;
  for (std::size_t a = 0; a < shelf.size(); ++a)
    for (std::size_t b = a + 1; b < shelf.size(); ++b)
      for (int share = 1; share <= 9; ++share)
        best = std::min(
            best, distance_Ra(mix(Mixture({{shelf[a], share / 10.0}, {shelf[b], 1 - share / 10.0}})), mix(original)));
  for (const Liquid& liquid : shelf) best = std::min(best, distance_Ra(liquid.hansen, mix(original)));
  double ours = 1e9;
  for (const Substitute& one : answer.found) ours = std::min(ours, one.Ra);
  CHECK(answer.found.size() == 6);  // three alone, three pairs
  CHECK(ours == Approx(best));
}

TEST_CASE("nothing gentler than the gentlest, and nothing without a record") {
  CHECK(find_gentler(mixture_from("ethanol 100"), shelf_of(common_shelf), shipped_catalogue()).found.empty());
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (solvent.hazards || !solvent.hansen) continue;
    const auto answer = find_gentler(mixture_from("toluene 100"), shelf_of({solvent.id}), shipped_catalogue());
    CHECK(answer.found.empty());
    REQUIRE(answer.not_tried.size() == 1);
    CHECK(answer.not_tried[0].why == NotTried::no_hazard_record);
    break;
  }
}
