#include "shipped.hpp"

#include "gentlest/answers/progress.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>

using namespace gentlest;

namespace {

const Catalogue& catalogue() {
  return gentlest::test::shipped_catalogue();
}

Job demo() {
  return load_job(demo_job_text(), "demo", catalogue());
}

Reading swab(int test, std::string mixture, RemovalReading removal, OriginalReading original) {
  Reading reading;
  reading.test = test;
  reading.mixture = std::move(mixture);
  reading.removal = removal;
  reading.original = original;
  return reading;
}

}  // namespace

TEST_CASE("before any reading the beliefs are the catalogue's") {
  const Progress progress = follow_readings(demo(), catalogue(), {});
  CHECK(progress.layers[progress.target].name == "varnish");
  const UncertainSphere& sphere = *progress.layers[progress.target].sphere;
  CHECK(progress.task.target->dP().mean == test::near(sphere.mean.centre.dP, 0.15));
  REQUIRE(progress.task.kept.size() == 1);
  CHECK(progress.task.passages == std::vector<std::string>{"white cloth", "dark background"});
  CHECK(progress.task.settings.effect_level == 3);
  CHECK(progress.task.kept.front().risk_level == 2);  // old oil paint: from "swells strongly" on it is harm
  // The job's own risk limit is the last one.
  CHECK(progress.task.settings.risk_limits.back() == demo().limits.risk_limit);
}

TEST_CASE("what a layer may be else is weighed by the readings, and the ladder follows its own material") {
  Job job = demo();
  job.layers[0].possible = {{"dammar_fresh", 40, {}}};
  const Progress before = follow_readings(job, catalogue(), {});
  REQUIRE(before.task.target->prior().hypotheses.size() == 2);
  CHECK(before.task.target->prior().hypotheses[0].weight == Approx(0.6));
  CHECK(before.task.target->prior().hypotheses[1].what == catalogue().find_material("dammar_fresh")->name);
  // Aged dammar comes off in alcohol, fresh dammar in hydrocarbons and esters; here only the latter act.
  std::vector<Reading> readings;
  for (const char* mixture : {"isooctane 60, ethyl acetate 40", "dearomatised white spirit 50, ethyl acetate 50"})
    readings.push_back(
        swab(static_cast<int>(readings.size()) + 1, mixture, RemovalReading::fully, OriginalReading::nothing_seen));
  readings.push_back(swab(3, "ethanol 96 % 100", RemovalReading::no_effect, OriginalReading::nothing_seen));
  const Progress after = follow_readings(job, catalogue(), readings);
  CHECK(after.task.target->hypothesis_chances()[1] > before.task.target->hypothesis_chances()[1] + 0.05);
  const Plan with = make_plan(job, catalogue());
  const Plan without = make_plan(demo(), catalogue());
  CHECK(ladder_rungs(with).size() == ladder_rungs(without).size());
  CHECK(to_text(ladder_rungs(with)[0].mixture) == to_text(ladder_rungs(without)[0].mixture));
}

TEST_CASE("a proposal does not get riskier than the job allows while it dries, unless the job says so") {
  // The fast part leaves a slow one that acts on the paint.
  Job job = demo();
  job.shelf = {{"pentane", "", {}}, {"benzyl_alcohol", "", {}}, {"acetone", "", {}}};
  job.limits.allow_splitting = true;
  const Progress careful = follow_readings(job, catalogue(), {});
  CHECK(careful.next.drifting > 0);
  job.limits.allow_drift = true;
  CHECK(follow_readings(job, catalogue(), {}).next.drifting == 0);
}

TEST_CASE("the room above a mixture ends at the first rung that is too risky or did harm") {
  const Plan plan = make_plan(demo(), catalogue());
  const Hansen weakest = ladder_rungs(plan).front().point;
  const Progress before = follow_readings(demo(), catalogue(), {});
  const RungRoom free = room_above(weakest, plan, before);
  CHECK(free.stronger == ladder_rungs(plan).size() - 1);
  CHECK(free.within > 0);
  CHECK(room_above(ladder_rungs(plan).back().point, plan, before).stronger == 0);
  const Progress harmed = follow_readings(
      demo(), catalogue(),
      {swab(1, to_text(ladder_rungs(plan)[1].mixture), RemovalReading::no_effect, OriginalReading::softened)});
  const RungRoom less = room_above(weakest, plan, harmed);
  CHECK(less.stronger == free.stronger);
  CHECK(less.within == 0);
}

TEST_CASE("a painting without an edge to try on is asked on the picture only") {
  Job job = demo();
  CHECK(follow_readings(job, catalogue(), {}).next.step == NextStep::try_at_edge);
  job.limits.edge_tests = 0;
  const Progress progress = follow_readings(job, catalogue(), {});
  CHECK(progress.next.step == NextStep::try_mixture);
  CHECK(progress.next.mixture->risk <= job.limits.risk_limit);
}

TEST_CASE("limits on the way are in proportion to the job's own") {
  Job job = demo();
  job.limits.risk_limit = 0.1;
  const NextTestSettings set = follow_readings(job, catalogue(), {}).task.settings;
  CHECK(set.risk_limits.back() == 0.1);
  CHECK(set.risk_limits.front() == Approx(0.01));
  CHECK(set.passed_risk == Approx(0.025));
}

TEST_CASE("a mixture that worked is named as it was tested, though it would not be proposed") {
  // 71 to 29 stands on no grid of 5 %.
  const std::string tested = "isooctane 71, acetone 29";
  const Progress progress =
      follow_readings(demo(), catalogue(), {swab(1, tested, RemovalReading::fully, OriginalReading::nothing_seen)});
  CHECK(progress.next.step == NextStep::try_passage);
  REQUIRE(progress.next.worked == std::optional<std::size_t>(0));
  REQUIRE(progress.mixture);
  CHECK(to_text(*progress.mixture) == tested);
  CHECK_FALSE(progress.next.mixture->candidate);  // none of those that may be proposed
  CHECK(progress.next.mixture->point == progress.task.past.front().mixture.point);
}

TEST_CASE("proposals keep to the job's shelf and limits") {
  Job job = demo();
  job.limits.avoid_solvents = {"acetone"};
  job.limits.parts = 2;
  const Progress progress = follow_readings(job, catalogue(), {});
  REQUIRE(progress.mixtures.size() == progress.task.candidates.size());
  CHECK(progress.mixtures.size() > 50);
  for (const Mixture& mixture : progress.mixtures) {
    CHECK(mixture.parts().size() <= 2);
    for (const Part& part : mixture.parts()) CHECK(part.liquid.solvent->id != "acetone");
  }
  CHECK(std::any_of(progress.left_off.begin(), progress.left_off.end(),
                    [](const JobBottle& bottle) { return bottle.solvent->id == "acetone"; }));
}

TEST_CASE("mixtures that part are not proposed unless the job allows it") {
  Job job = demo();
  const auto count_parting = [&] {
    int parting = 0;
    for (const Mixture& mixture : follow_readings(job, catalogue(), {}).mixtures)
      parting += phases_of(mixture, catalogue(), Celsius{20}).phases == Phases::two_liquids ? 1 : 0;
    return parting;
  };
  CHECK(count_parting() == 0);
  job.limits.allow_splitting = true;
  CHECK(count_parting() > 0);
}

TEST_CASE("readings move the beliefs they speak of, and nothing else") {
  const Progress before = follow_readings(demo(), catalogue(), {});
  Reading edge = swab(1, "acetone 100", RemovalReading::fully, OriginalReading::nothing_seen);
  edge.removal.reset();
  edge.at_edge = true;
  const Progress after = follow_readings(demo(), catalogue(), {edge});
  const Hansen acetone{15.5, 10.4, 7};
  CHECK(after.task.kept[0].belief.chance(acetone, 1) < before.task.kept[0].belief.chance(acetone, 1));
  CHECK(after.task.target->dP() == before.task.target->dP());
  REQUIRE(after.task.past.size() == 1);
  CHECK(after.task.past[0].at_edge);
  CHECK_FALSE(after.task.past[0].removal.has_value());
}

TEST_CASE("a colour that was varnish is no harm, one not identified is taken for harm") {
  Reading reading = swab(1, "acetone 100", RemovalReading::fully, OriginalReading::colour_on_swab);
  reading.colour = SwabColour::varnish;
  CHECK(follow_readings(demo(), catalogue(), {reading}).task.past[0].original == 0);
  reading.colour = SwabColour::not_known;
  CHECK(follow_readings(demo(), catalogue(), {reading}).task.past[0].original == 4);
}

TEST_CASE("a passage stands for its layer, and one the job does not know is told") {
  Reading cloth = swab(1, "acetone 100", RemovalReading::no_effect, OriginalReading::softened);
  cloth.passage = "white cloth";
  Reading sky = cloth;
  sky.test = 2;
  sky.passage = "sky";
  Reading water = cloth;
  water.test = 3;
  water.mixture = "unheard-of 100";
  const Progress progress = follow_readings(demo(), catalogue(), {cloth, sky, water});
  CHECK(progress.counted.size() == 1);
  REQUIRE(progress.not_counted.size() == 2);
  CHECK(progress.not_counted[0] == LeftOutTest{2, LeftOutWhy::unknown_passage, "sky"});
  CHECK(progress.not_counted[1].test == 3);
  CHECK(progress.not_counted[1].why == LeftOutWhy::unreadable_mixture);
  CHECK(progress.not_counted[1].what.find("unheard-of") != std::string::npos);
  CHECK(progress.task.kept[0].belief.seen().size() == 1);
}

TEST_CASE("a working mixture must pass every colour of the job") {
  std::vector<Reading> readings;
  for (int i = 0; i < 6; ++i) {
    readings.push_back(
        swab(i + 1, "isopropanol 60, isooctane 40", RemovalReading::fully, OriginalReading::nothing_seen));
    readings.back().passage = "white cloth";
    readings.back().confidence = ReadingConfidence::high;
  }
  const Progress open = follow_readings(demo(), catalogue(), readings);
  REQUIRE(open.next.step == NextStep::try_passage);
  CHECK(open.next.passage == "dark background");
  readings.push_back(readings.back());
  readings.back().test = 7;
  readings.back().passage = "dark background";
  CHECK(follow_readings(demo(), catalogue(), readings).next.step == NextStep::found);
}

TEST_CASE("a kept layer is doubted more than the one to remove") {
  const Progress progress = follow_readings(demo(), catalogue(), {});
  CHECK(progress.task.kept[0].belief.prior().stray_share == kept_stray_share);
  CHECK(progress.task.target->prior().stray_share < kept_stray_share);
}

TEST_CASE("a reading of one kept layer says nothing of another") {
  Job job = demo();
  job.passages.push_back({"glaze", "oil paint", "oil_resin_glaze", {}, "", {}});
  Reading reading = swab(1, "acetone 100", RemovalReading::no_effect, OriginalReading::softened);
  reading.passage = "glaze";
  const Progress progress = follow_readings(job, catalogue(), {reading});
  REQUIRE(progress.task.kept.size() == 2);
  CHECK(progress.task.kept[0].belief.seen().empty());
  CHECK(progress.task.kept[1].belief.seen().size() == 1);
  CHECK(progress.task.past[0].layer == "glaze");
}

TEST_CASE("a reading speaks of the bottle that was used, though a limit leaves that bottle off") {
  Job job = demo();
  job.limits.avoid_solvents = {"ethanol"};
  const Reading reading = swab(1, "ethanol 40, isooctane 60", RemovalReading::no_effect, OriginalReading::nothing_seen);
  const Progress progress = follow_readings(job, catalogue(), {reading});
  REQUIRE(progress.task.past.size() == 1);
  CHECK(progress.task.past[0].mixture.point == mix(parse_mixture("ethanol 96 % 40, isooctane 60", catalogue())));
  CHECK(std::any_of(progress.left_off.begin(), progress.left_off.end(), [](const JobBottle& bottle) {
    return bottle.liquid && bottle.liquid->label == "ethanol 96 %" && bottle.left_off == LeftOff{LeftOffWhy::solvent};
  }));
}
