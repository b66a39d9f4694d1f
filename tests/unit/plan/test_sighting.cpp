// What was seen of a mixture on a layer without a sphere. The facts are rows of solvents/observations with their
// sources: glue does not dissolve in alcohol (London Medical Dictionary, "gelatina", as quoted there) and swells in
// water (common practice, no source); hard copal dissolves in diacetone alcohol (museum encyclopedia, as quoted there);
// egg tempera is left alone by isooctane and may swell a little in ethanol (common practice, no source).
#include "unjudged_job.hpp"

#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/plan.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

LayerSighting seen_on(const std::string& material, const std::string& mixture) {
  const Job job = unjudged_job("dammar_aged", {material});
  const std::vector<PlannedLayer> layers = planned_layers(job, shipped_catalogue());
  const std::vector<LayerSighting> seen =
      sightings_of(parse_mixture(mixture, shipped_catalogue()), layers, shipped_catalogue());
  REQUIRE(seen.size() == 1);
  CHECK(seen[0].layer == 1);
  CHECK(seen[0].name == "kept 1");
  return seen[0];
}

Observation graded(int strongest, int weakest) {
  Observation seen;
  seen.result = ObservedResult::swells;
  seen.grades = GradeRange{strongest, weakest};
  return seen;
}

}  // namespace

TEST_CASE("an observation acts where its weakest grade counts, and spares where its strongest does not") {
  CHECK(sighting_of(graded(2, 4), 4) == Sighting::acts);
  CHECK(sighting_of(graded(1, 1), 1) == Sighting::acts);
  CHECK(sighting_of(graded(4, 6), 4) == Sighting::may_act);
  CHECK(sighting_of(graded(3, 5), 4) == Sighting::may_act);
  CHECK(sighting_of(graded(5, 6), 4) == Sighting::spares);
  CHECK(sighting_of(graded(4, 6), 2) == Sighting::spares);
  Observation told;
  told.said = "in words";
  CHECK(sighting_of(told, 4) == Sighting::may_act);
}

TEST_CASE("glue: alcohol leaves it alone, its water does not, and water swells it") {
  CHECK(seen_on("animal_glue", "ethanol").seen == Sighting::spares);
  CHECK(seen_on("animal_glue", "water").seen == Sighting::acts);
  CHECK(seen_on("animal_glue", "isooctane 50, ethanol 50").seen == Sighting::spares);
  const LayerSighting wet = seen_on("animal_glue", "ethanol 90 % 60, isooctane 40");
  CHECK(wet.seen == Sighting::part_acts);
  REQUIRE(wet.parts.size() == 3);
  CHECK(wet.parts[0].solvent->id == "ethanol");
  CHECK(wet.parts[0].seen == Sighting::spares);
  CHECK(wet.parts[2].solvent->id == "water");
  CHECK(wet.parts[2].seen == Sighting::acts);
  CHECK(wet.parts[2].fraction > 0.05);
  CHECK(wet.parts[2].fraction < 0.1);
  CHECK(seen_on("animal_glue", "ethanol 90 % 100").seen == Sighting::part_acts);
}

TEST_CASE("what acts decides, then what may, then what is not known; only then nothing seen") {
  CHECK(seen_on("egg_tempera", "isooctane").seen == Sighting::spares);
  CHECK(seen_on("egg_tempera", "ethanol").seen == Sighting::may_act);
  CHECK(seen_on("egg_tempera", "ethanol 10, isooctane 90").seen == Sighting::may_act);
  CHECK(seen_on("egg_tempera", "ethanol 10, cyclohexane 90").seen == Sighting::may_act);
  CHECK(seen_on("egg_tempera", "isooctane 10, cyclohexane 90").seen == Sighting::unknown);
  CHECK(seen_on("copal_hard", "diacetone_alcohol").seen == Sighting::acts);
  CHECK(seen_on("copal_hard", "diacetone_alcohol 5, cyclohexane 95").seen == Sighting::part_acts);
  CHECK(seen_on("unknown", "isooctane").seen == Sighting::unknown);
}

TEST_CASE("an observation of the very mixture outranks those of its liquids") {
  // Boon and van Och 1996: isooctane with as much ethanol swells a 19th century oil paint with beeswax.
  const LayerSighting same = seen_on("oil_wax_paint", "isooctane 50, ethanol 50");
  REQUIRE(same.of_mixture.size() == 1);
  CHECK(same.of_mixture[0].row->source == "boon_van_och_1996");
  CHECK(same.seen == Sighting::may_act);
  CHECK(seen_on("oil_wax_paint", "isooctane 48, ethanol 52").of_mixture.size() == 1);
  CHECK(seen_on("oil_wax_paint", "isooctane 45, ethanol 55").of_mixture.empty());
  CHECK(seen_on("oil_wax_paint", "isooctane 45, ethanol 55").seen == Sighting::unknown);
}

// Rows: the alkane leaves the copolymer alone (common practice, no source); acetone takes aged natural resin off (Lomax
// and Fisher 1990, section 5).
TEST_CASE("a liquid that was seen on a layer with a sphere says so beside the chance, and a mixture of it does not") {
  const Job job = unjudged_job("dammar_aged", {"ethyl_methacrylate_methyl_acrylate_copolymer"});
  const std::vector<PlannedLayer> layers = planned_layers(job, shipped_catalogue());
  const auto seen = [&](const char* mixture) {
    return very_sightings_of(parse_mixture(mixture, shipped_catalogue()), layers, shipped_catalogue());
  };
  const std::vector<VerySighting> alkane = seen("isooctane 100");
  const auto on_copolymer =
      std::find_if(alkane.begin(), alkane.end(), [](const VerySighting& one) { return one.layer == "kept 1"; });
  REQUIRE(on_copolymer != alkane.end());
  CHECK(on_copolymer->role == Role::keep);
  CHECK(worst_of(on_copolymer->rows) == Sighting::spares);
  const std::vector<VerySighting> acetone = seen("acetone 100");
  REQUIRE_FALSE(acetone.empty());
  CHECK(acetone.front().layer == layers[0].name);
  CHECK(worst_of(acetone.front().rows) == Sighting::acts);
  CHECK(seen("isooctane 97, acetone 3").empty());
  // A little water in the bottle makes no other liquid of it.
  CHECK(seen("ethanol 96 % 100").size() == seen("ethanol 100").size());
  CHECK_FALSE(seen("ethanol 100").empty());
}
