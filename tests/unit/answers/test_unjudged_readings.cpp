// Readings where a layer has no sphere: told, never lost, and a harm closes (CONDUCT, "Harm", for such layers).
#include "unjudged_job.hpp"

#include "gentlest/answers/progress.hpp"
#include "gentlest/answers/review.hpp"
#include "gentlest/liquids/notation.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Reading swab(int test, const std::string& mixture, OriginalReading original, bool at_edge = false) {
  Reading reading;
  reading.test = test;
  reading.mixture = mixture;
  reading.removal = RemovalReading::no_effect;
  reading.original = original;
  reading.at_edge = at_edge;
  return reading;
}

Progress followed(const Job& job, const std::vector<Reading>& readings) {
  return follow_readings(make_plan(job, shipped_catalogue()), shipped_catalogue(), readings);
}

double share_of(const Mixture& mixture, const char* id) {
  double share = 0;
  for (const Part& part : mixture.parts())
    if (part.liquid.solvent->id == id) share += part.fraction;
  return share;
}

}  // namespace

TEST_CASE("a harm on a layer without a sphere closes every rung with as much of the active liquid") {
  const Job job = unjudged_job("dammar_aged", {"animal_glue", "oil_paint_old"});
  const Plan plan = make_plan(job, shipped_catalogue());
  Reading harm = swab(1, to_text(ladder_rungs(plan)[1].mixture), OriginalReading::softened);
  harm.removal = RemovalReading::partly;
  harm.passage = "kept 1";
  harm.at_edge = true;
  const Progress progress = followed(job, {harm});
  REQUIRE(progress.conduct.harms.size() == 1);
  CHECK(progress.conduct.tests[0].layers == std::vector<std::string>{"kept 1"});
  CHECK(progress.counted.size() == 1);
  std::size_t open = 0;
  const Mixture& harmful = ladder_rungs(plan)[1].mixture;
  for (std::size_t i = 0; i < progress.conduct.steps.size(); ++i) {
    const Mixture& mixture = progress.conduct.steps[i].mixture;
    INFO(to_text(mixture));
    bool as_much = true;
    for (const char* active : {"ethanol", "acetone", "xylene", "diacetone_alcohol"})
      as_much = as_much && share_of(mixture, active) >= share_of(harmful, active) - 1e-9;
    CHECK((closure_of(progress.conduct, i, "kept 1") != nullptr) == as_much);
    open += as_much ? 0 : 1;
  }
  CHECK(open > 0);
  // What the glue bore says nothing of the paint below.
  REQUIRE(progress.task.kept.size() == 1);
  CHECK(progress.task.kept[0].name == "kept 2");
  CHECK(progress.task.kept[0].belief.seen().empty());
}

TEST_CASE("a colour that was varnish is no harm, and nothing is closed") {
  const Job job = unjudged_job("dammar_aged", {"animal_glue", "oil_paint_old"});
  Reading colour = swab(1, "isooctane 80, acetone 20", OriginalReading::colour_on_swab);
  colour.colour = SwabColour::varnish;
  CHECK(followed(job, {colour}).conduct.closures.empty());
  colour.colour = SwabColour::not_known;
  CHECK_FALSE(followed(job, {colour}).conduct.closures.empty());
}

TEST_CASE("a new mixture goes first to the edge while a layer to keep has no sphere") {
  Job job = unjudged_job("dammar_aged", {"animal_glue", "oil_paint_old"});
  CHECK(followed(job, {}).next.test->place == Place::edge);
  CHECK(followed(unjudged_job("dammar_aged", {"egg_tempera"}), {}).next.test->place == Place::edge);
  job.limits.edge_tests = 0;
  CHECK(followed(job, {}).next.test->place == Place::picture);
}

TEST_CASE("where no risk can be told the ladder is walked all the same, and two harms end it") {
  Job job = unjudged_job("dammar_aged", {"egg_tempera"});
  job.limits.edge_tests = 0;
  const Plan plan = make_plan(job, shipped_catalogue());
  REQUIRE(ladder_rungs(plan).size() > 3);
  std::vector<Reading> readings;
  for (const std::size_t rung : {0U, 1U, 3U}) {  // two that did nothing let one be left out
    const Progress progress = followed(job, readings);
    REQUIRE(progress.next.kind == NextKind::test);
    CHECK(to_text(*progress.next.mixture) == to_text(ladder_rungs(plan)[rung].mixture));
    REQUIRE(progress.proposed);
    CHECK_FALSE(progress.proposed->risk);
    readings.push_back(
        swab(static_cast<int>(readings.size()) + 1, to_text(*progress.next.mixture), OriginalReading::nothing_seen));
  }
  readings.back().original = OriginalReading::recovers;
  const Progress harmed = followed(job, readings);
  REQUIRE(harmed.next.kind == NextKind::test);
  CHECK(harmed.next.test->purpose == Purpose::climb);  // the rung that was left out
  readings.push_back(swab(4, to_text(*harmed.next.mixture), OriginalReading::recovers));
  const Progress twice = followed(job, readings);
  CHECK(twice.next.kind == NextKind::ended);
  CHECK_FALSE(twice.next.mixture);
}

TEST_CASE("without a sphere of the layer to go the next test is a first test, and what was tried is not asked again") {
  const Job job = unjudged_job("copal_hard", {"animal_glue"});
  const Progress before = followed(job, {});
  CHECK(before.next.kind == NextKind::not_judged);
  REQUIRE(before.to_try.size() == 1);
  const Progress after = followed(job, {swab(1, "diacetone_alcohol", OriginalReading::nothing_seen)});
  CHECK(after.counted.size() == 1);
  CHECK(after.to_try.empty());
  const Progress closed =
      followed(job, {swab(1, "isooctane", OriginalReading::softened), swab(2, "acetone", OriginalReading::softened)});
  CHECK(closed.next.kind == NextKind::ended);
}

TEST_CASE("a review of tests holds no outlook of a layer without a sphere") {
  const Job job = unjudged_job("copal_hard", {"animal_glue", "oil_paint_old"});
  const std::vector<Reading> lines = {swab(1, "acetone", OriginalReading::nothing_seen)};
  const TestReview review =
      review_tests(make_plan(job, shipped_catalogue()), followed(job, lines), lines, shipped_catalogue());
  REQUIRE(review.considered.size() == 1);
  CHECK_FALSE(target_outlook(review.considered[0]));
  REQUIRE(riskiest_outlook(review.considered[0]));
  CHECK(riskiest_outlook(review.considered[0])->layer == "kept 2");
}

TEST_CASE("a material without a sphere is not weighed by readings, and takes no share from the stray") {
  Job job = unjudged_job("dammar_aged", {"oil_paint_old"});
  job.layers[0].possible = {{"copal_hard", 30, {}}, {"sandarac", 20, {}}};
  const Progress progress = followed(job, {});
  const std::vector<SphereHypothesis>& hypotheses = progress.task.target->prior().hypotheses;
  REQUIRE(hypotheses.size() == 2);
  CHECK(hypotheses[0].weight == Approx(0.5));
  CHECK(hypotheses[1].weight == Approx(0.2));
}
