#include "shipped.hpp"

#include "gentlest/progress.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

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
  const UncertainSphere& sphere = progress.layers[progress.target].sphere;
  CHECK(progress.task.target.dP().mean == Approx(sphere.mean.centre.dP).margin(0.15));
  REQUIRE(progress.task.kept.size() == 1);
  CHECK(progress.task.passages == std::vector<std::string>{"white cloth", "dark background"});
  CHECK(progress.task.settings.effect_level == 3);
  CHECK(progress.task.settings.risk_level == 1);
  // The job's own risk limit is the last one.
  CHECK(progress.task.settings.risk_limits.back() == demo().limits.risk_limit);
}

TEST_CASE("a mixture that worked is named as it was tested, though it would not be proposed") {
  // 71 to 29 stands on no grid of 5 %.
  const std::string tested = "isooctane 71, acetone 29";
  const Progress progress =
      follow_readings(demo(), catalogue(), {swab(1, tested, RemovalReading::fully, OriginalReading::nothing_seen)});
  CHECK(progress.next.step == NextStep::try_passage);
  REQUIRE(progress.next.worked == std::optional<std::size_t>(0));
  REQUIRE(progress.mixtures.size() == progress.task.candidates.size());
  CHECK(to_text(progress.mixtures[progress.next.mixture->candidate]) == tested);
  CHECK(progress.task.candidates[progress.next.mixture->candidate] == progress.task.past.front().point);
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
                    [](const std::string& line) { return line.find("acetone") != std::string::npos; }));
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
  CHECK(after.task.target.dP() == before.task.target.dP());
  REQUIRE(after.task.past.size() == 1);
  CHECK(after.task.past[0].at_edge);
  CHECK_FALSE(after.task.past[0].moved.has_value());
}

TEST_CASE("a colour that was varnish is no harm, one not identified is taken for harm") {
  Reading reading = swab(1, "acetone 100", RemovalReading::fully, OriginalReading::colour_on_swab);
  reading.colour = SwabColour::varnish;
  CHECK(follow_readings(demo(), catalogue(), {reading}).task.past[0].affected == false);
  reading.colour = SwabColour::not_known;
  CHECK(follow_readings(demo(), catalogue(), {reading}).task.past[0].affected == true);
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
  CHECK(progress.not_counted[0].find("sky") != std::string::npos);
  CHECK(progress.not_counted[1].find("unheard-of") != std::string::npos);
  CHECK(progress.task.kept[0].belief.seen().size() == 1);
}

TEST_CASE("a working mixture must pass every colour of the job") {
  std::vector<Reading> readings;
  for (int i = 0; i < 6; ++i) {
    readings.push_back(
        swab(i + 1, "isopropanol 60, isooctane 40", RemovalReading::fully, OriginalReading::nothing_seen));
    readings.back().passage = "white cloth";
    readings.back().confidence = Confidence::high;
  }
  const Progress open = follow_readings(demo(), catalogue(), readings);
  REQUIRE(open.next.step == NextStep::try_passage);
  CHECK(open.next.passage == "dark background");
  readings.push_back(readings.back());
  readings.back().test = 7;
  readings.back().passage = "dark background";
  CHECK(follow_readings(demo(), catalogue(), readings).next.step == NextStep::found);
}
