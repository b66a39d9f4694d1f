#include "shipped.hpp"

#include "core/answers/next_answer.hpp"

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

Progress follow(const Job& job, const std::vector<Reading>& readings) {
  return follow_readings(make_plan(job, catalogue()), catalogue(), readings);
}

// The best chance to work and to harm nothing from a step on, of what is not closed on its line.
double best_left(const Progress& progress, std::size_t from) {
  double best = 0;
  for (std::size_t i = 0; i < progress.conduct.steps.size(); ++i) {
    const PlanStep& step = progress.conduct.steps[i];
    const PlanStep& start = progress.conduct.steps[from];
    if (step.line == start.line && step.height >= start.height && !closure_of(progress.conduct, i))
      best = std::max(best, outlook_of(progress.task, swab_mixture_of(step.mixture)).good);
  }
  return best;
}

}  // namespace

TEST_CASE("before any reading the beliefs are the catalogue's") {
  const Progress progress = follow(demo(), {});
  CHECK(progress.layers[progress.target].name == "varnish");
  const UncertainSphere& sphere = *progress.layers[progress.target].sphere;
  CHECK(progress.task.target->dP().mean == test::near(sphere.mean.centre.dP, 0.15));
  REQUIRE(progress.task.kept.size() == 1);
  CHECK(progress.task.settings.effect_level == 3);
  CHECK(progress.task.kept.front().risk_level == 1);  // any reaction is harm
  CHECK(progress.conduct.passages.size() == 2);
}

TEST_CASE("what comes next is the gentlest rung, at the edge; without an edge on the picture") {
  Job job = demo();
  const Progress first = follow(job, {});
  REQUIRE(first.next.kind == NextKind::test);
  CHECK(first.next.test->place == Place::edge);
  REQUIRE(first.proposed);
  CHECK(first.proposed->origin == Origin{OriginKind::rung, 1});
  job.limits.edge_tests = 0;
  const Progress bare = follow(job, {});
  REQUIRE(bare.next.kind == NextKind::test);
  CHECK(bare.next.test->place == Place::picture);
  CHECK(bare.next.test->passage == "white cloth");
  CHECK(bare.next.outlook->risk <= bare.task.settings.picture_risk);
}

TEST_CASE("a test whose risk passes the cap of its place is passed over, and no window is told with the layer") {
  Job job = demo();
  job.limits.risk_limit = 0.004;  // the caps are in proportion to it
  Plan plan = make_plan(demo(), catalogue());
  const Progress free = follow_readings(plan, catalogue(), {});
  REQUIRE(free.next.kind == NextKind::test);
  plan.job.limits.risk_limit = job.limits.risk_limit;
  const Progress bound = follow_readings(plan, catalogue(), {});
  CHECK(bound.next.kind == NextKind::no_window);
  REQUIRE_FALSE(bound.next.too_risky.empty());
  CHECK(bound.next.too_risky.front().layer == "oil paint");
  CHECK(bound.next.too_risky.front().risk > bound.next.too_risky.front().cap);
}

TEST_CASE("a way up that promises too little is not gone on with, and the gentlest rung is worth a swab") {
  const Plan plan = make_plan(demo(), catalogue());
  Progress progress = follow_readings(plan, catalogue(), {});
  progress.task.settings.least_promise = 1;  // promised by none
  const NextAnswer first = choose_next(plan, progress.conduct, progress.task);
  REQUIRE(first.kind == NextKind::test);
  CHECK(progress.conduct.steps[*first.test->step].height == 1);
  CHECK(progress.conduct.steps[*first.test->step].line == 0);
  // Once it did nothing, at the edge and on the picture.
  std::vector<Reading> readings;
  for (const char* passage : {"", "white cloth", "dark background"}) {
    readings.push_back(swab(static_cast<int>(readings.size()) + 1, to_text(ladder_rungs(plan).front().mixture),
                            RemovalReading::no_effect, OriginalReading::nothing_seen));
    readings.back().passage = passage;
    readings.back().at_edge = readings.size() == 1;
  }
  progress = follow_readings(plan, catalogue(), readings);
  CHECK(progress.next.kind == NextKind::test);
  progress.task.settings.least_promise = 1;
  const NextAnswer stop = choose_next(plan, progress.conduct, progress.task);
  CHECK(stop.kind == NextKind::no_window);
  REQUIRE_FALSE(stop.too_little.empty());
  CHECK(stop.too_little.front().promise < 1);
  CHECK(stop.too_little.front().promise == best_left(progress, *stop.too_little.front().test.step));
}

TEST_CASE("closed rungs promise nothing") {
  const Plan plan = make_plan(demo(), catalogue());
  std::vector<Reading> readings = {
      swab(1, to_text(ladder_rungs(plan)[3].mixture), RemovalReading::no_effect, OriginalReading::recovers)};
  readings.front().at_edge = true;
  for (const char* passage : {"", "white cloth", "dark background"}) {
    readings.push_back(swab(static_cast<int>(readings.size()) + 1, to_text(ladder_rungs(plan).front().mixture),
                            RemovalReading::no_effect, OriginalReading::nothing_seen));
    readings.back().passage = passage;
    readings.back().at_edge = *passage == 0;
  }
  Progress progress = follow_readings(plan, catalogue(), readings);
  progress.task.settings.least_promise = 1;
  const NextAnswer answer = choose_next(plan, progress.conduct, progress.task);
  REQUIRE_FALSE(answer.too_little.empty());
  for (const TooLittle& one : answer.too_little) CHECK(one.promise == best_left(progress, *one.test.step));
}

TEST_CASE("a mixture that worked is named as it was tested, though it is no rung") {
  const std::string tested = "isooctane 71, acetone 29";
  Reading success = swab(1, tested, RemovalReading::fully, OriginalReading::nothing_seen);
  success.passage = "white cloth";
  const Progress progress = follow(demo(), {success});
  REQUIRE(progress.next.working);
  CHECK(to_text(progress.next.working->mixture) == tested);
  REQUIRE(progress.next.kind == NextKind::test);
  CHECK(progress.next.test->purpose == Purpose::other_passage);
  CHECK(progress.next.test->passage == "dark background");
}

TEST_CASE("nothing is found below one half: a second spot is asked for, and no more than three") {
  Plan plan = make_plan(demo(), catalogue());
  const std::string weakest = to_text(ladder_rungs(plan).front().mixture);
  std::vector<Reading> readings;
  for (const char* passage : {"white cloth", "dark background"}) {
    readings.push_back(
        swab(static_cast<int>(readings.size()) + 1, weakest, RemovalReading::mostly, OriginalReading::nothing_seen));
    readings.back().passage = passage;
  }
  Progress progress = follow_readings(plan, catalogue(), readings);
  progress.task.settings.found_at = 1;  // believed by nobody
  CHECK(choose_next(plan, progress.conduct, progress.task).test->purpose == Purpose::second_spot);
  readings.push_back(readings.back());
  readings.back().test = 3;
  progress = follow_readings(plan, catalogue(), readings);
  progress.task.settings.found_at = 1;
  CHECK(choose_next(plan, progress.conduct, progress.task).kind == NextKind::unsure);
  progress.task.settings.found_at = 0;
  CHECK(choose_next(plan, progress.conduct, progress.task).kind == NextKind::found);
}

TEST_CASE("after as many tests as the limit allows nothing more is proposed") {
  const Plan plan = make_plan(demo(), catalogue());
  std::vector<Reading> readings;
  while (readings.size() < static_cast<std::size_t>(NextTestSettings().most_tests))
    readings.push_back(swab(static_cast<int>(readings.size()) + 1, to_text(ladder_rungs(plan).front().mixture),
                            RemovalReading::no_effect, OriginalReading::nothing_seen));
  CHECK(follow_readings(plan, catalogue(), readings).next.kind == NextKind::tests_used_up);
}

TEST_CASE("what a layer may be else is weighed by the readings, and the ladder follows its own material") {
  Job job = demo();
  job.layers[0].possible = {{"dammar_fresh", 40, {}}};
  const Progress before = follow(job, {});
  REQUIRE(before.task.target->prior().hypotheses.size() == 2);
  CHECK(before.task.target->prior().hypotheses[0].weight == Approx(0.6));
  CHECK(before.task.target->prior().hypotheses[1].what == catalogue().find_material("dammar_fresh")->name);
  // Aged dammar comes off in alcohol, fresh dammar in hydrocarbons and esters; here only the latter act.
  std::vector<Reading> readings;
  for (const char* mixture : {"isooctane 60, ethyl acetate 40", "dearomatised white spirit 50, ethyl acetate 50"})
    readings.push_back(
        swab(static_cast<int>(readings.size()) + 1, mixture, RemovalReading::fully, OriginalReading::nothing_seen));
  readings.push_back(swab(3, "ethanol 96 % 100", RemovalReading::no_effect, OriginalReading::nothing_seen));
  const Progress after = follow(job, readings);
  CHECK(after.task.target->hypothesis_chances()[1] > before.task.target->hypothesis_chances()[1] + 0.05);
  const Plan with = make_plan(job, catalogue());
  const Plan without = make_plan(demo(), catalogue());
  CHECK(ladder_rungs(with).size() == ladder_rungs(without).size());
  CHECK(to_text(ladder_rungs(with)[0].mixture) == to_text(ladder_rungs(without)[0].mixture));
}

TEST_CASE("the room above a mixture ends at the first rung that is too risky or did harm") {
  const Plan plan = make_plan(demo(), catalogue());
  const Mixture& weakest = ladder_rungs(plan).front().mixture;
  const Progress before = follow(demo(), {});
  const RungRoom free = room_above(weakest, plan, before);
  CHECK(free.stronger == ladder_rungs(plan).size() - 1);
  CHECK(free.within > 0);
  CHECK(room_above(ladder_rungs(plan).back().mixture, plan, before).stronger == 0);
  const Progress harmed = follow(
      demo(), {swab(1, to_text(ladder_rungs(plan)[1].mixture), RemovalReading::no_effect, OriginalReading::softened)});
  const RungRoom less = room_above(weakest, plan, harmed);
  CHECK(less.within == 0);
}

TEST_CASE("readings move the beliefs they speak of, and nothing else") {
  const Progress before = follow(demo(), {});
  Reading edge = swab(1, "acetone 100", RemovalReading::fully, OriginalReading::nothing_seen);
  edge.removal.reset();
  edge.at_edge = true;
  const Progress after = follow(demo(), {edge});
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
  CHECK(follow(demo(), {reading}).task.past[0].original == 0);
  reading.colour = SwabColour::not_known;
  CHECK(follow(demo(), {reading}).task.past[0].original == 4);
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
  const Progress progress = follow(demo(), {cloth, sky, water});
  CHECK(progress.counted.size() == 1);
  REQUIRE(progress.not_counted.size() == 2);
  CHECK(progress.not_counted[0] == LeftOutTest{2, LeftOutWhy::unknown_passage, "sky"});
  CHECK(progress.not_counted[1].test == 3);
  CHECK(progress.not_counted[1].why == LeftOutWhy::unreadable_mixture);
  CHECK(progress.not_counted[1].what.find("unheard-of") != std::string::npos);
  CHECK(progress.task.kept[0].belief.seen().size() == 1);
}

TEST_CASE("a kept layer is doubted more than the one to remove") {
  const Progress progress = follow(demo(), {});
  CHECK(progress.task.kept[0].belief.prior().stray_share == kept_stray_share);
  CHECK(progress.task.target->prior().stray_share < kept_stray_share);
}

TEST_CASE("a reading of one kept layer says nothing of another") {
  Job job = demo();
  job.passages.push_back({"glaze", "oil paint", "oil_resin_glaze", {}, "", {}});
  Reading reading = swab(1, "acetone 100", RemovalReading::no_effect, OriginalReading::softened);
  reading.passage = "glaze";
  const Progress progress = follow(job, {reading});
  REQUIRE(progress.task.kept.size() == 2);
  CHECK(progress.task.kept[0].belief.seen().empty());
  CHECK(progress.task.kept[1].belief.seen().size() == 1);
  CHECK(progress.task.past[0].layer == "glaze");
}

TEST_CASE("a reading speaks of the bottle that was used, though a limit leaves that bottle off") {
  Job job = demo();
  job.limits.avoid_solvents = {"ethanol"};
  const Reading reading = swab(1, "ethanol 40, isooctane 60", RemovalReading::no_effect, OriginalReading::nothing_seen);
  const Progress progress = follow(job, {reading});
  REQUIRE(progress.task.past.size() == 1);
  CHECK(progress.task.past[0].mixture.point == mix(parse_mixture("ethanol 96 % 40, isooctane 60", catalogue())));
  CHECK(std::any_of(progress.left_off.begin(), progress.left_off.end(), [](const JobBottle& bottle) {
    return bottle.liquid && bottle.liquid->label == "ethanol 96 %" && bottle.left_off == LeftOff{LeftOffWhy::solvent};
  }));
}
