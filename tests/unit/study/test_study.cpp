// A small run of the study (tests/study): the same every time, and learning beats the published series.
#include "io/catalogue_files.hpp"
#include "study/figures.hpp"
#include "study/static_ladder.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>

using namespace gentlest;
using namespace gentlest::study;

namespace {

const Catalogue& shipped() {
  static const Catalogue catalogue = read_catalogue(collect_catalogue(std::string(GENTLEST_SOURCE_DIR) + "/solvents"));
  return catalogue;
}

const Bench& bench() {
  static const Bench made = make_bench(shipped());
  return made;
}

std::vector<Session> learner_sessions(const World& world, int count) {
  Learner learner;
  learner.particles = 500;
  learner.rough = 128;
  prepare(learner, bench(), world);
  std::vector<Session> sessions;
  for (int i = 0; i < count; ++i)
    sessions.push_back(learn_session(bench(), world, make_painting(world, 31, static_cast<std::size_t>(i)), learner));
  return sessions;
}

}  // namespace

TEST_CASE("the bench of the study proposes nothing of lasting harm and nothing that may split") {
  CHECK(bench().candidates.size() > 200);
  CHECK(bench().thirteen.size() == 13);
  CHECK(allowed_liquids(shipped()).size() >= 20);
  for (const Solvent* liquid : allowed_liquids(shipped())) {
    INFO(liquid->id);
    REQUIRE(liquid->hazards.has_value());
    for (const std::string& code : liquid->hazards->statements) CHECK(code.substr(0, 3) != "H35");
  }
  for (const StudyMixture& mixture : bench().candidates) {
    double sum = 0;
    for (const auto& [liquid, fraction] : mixture.parts) sum += fraction;
    REQUIRE(sum == Approx(1));
    REQUIRE(mixture.parts.size() <= 3);
  }
}

TEST_CASE("simulated paintings follow their priors and have the same luck every time") {
  const World world = base_world();
  double mean = 0, square = 0;
  constexpr int count = 4000;
  for (int i = 0; i < count; ++i) {
    const double dP = make_painting(world, 5, static_cast<std::size_t>(i)).varnish.centre.dP;
    mean += dP / count;
    square += (dP - 6) * (dP - 6) / count;
  }
  CHECK(mean == test::near(6, 0.1));
  CHECK(std::sqrt(square) == test::near(1.8, 0.08));
  const Painting painting = make_painting(world, 5, 1);
  const SwabOutcome a = swab(world, painting, {16, 6, 9}, 12, false);
  const SwabOutcome b = swab(world, painting, {16, 6, 9}, 12, false);
  CHECK(a.removal_read == b.removal_read);
  CHECK(a.harm_read == b.harm_read);
}

TEST_CASE("the response of the static ladder is that of the study") {
  for (const double RED : {0.8, 0.9, 1.0, 1.1, 1.3}) {
    CHECK(chance_at_most(response_like(removal_curve(), 2), 2, RED) ==
          test::near(removal_curve().at_least(3, RED), 0.03));
    CHECK(chance_at_most(response_like(harm_curve(), 4), 4, RED) == test::near(harm_curve().at_least(1, RED), 0.03));
  }
  // A ladder that finds no mixture would make the comparison worthless.
  CHECK(static_ladder(bench(), base_world(), shipped()).size() >= 4);
}

TEST_CASE("learning finds more than the published series and harms less") {
  const World world = base_world();
  constexpr int count = 120;
  std::vector<Session> series;
  for (int i = 0; i < count; ++i)
    series.push_back(
        walk_ladders(bench(), world, make_painting(world, 31, static_cast<std::size_t>(i)), {bench().thirteen}, false));
  const Row plain = row_of("series", series);
  const Row learnt = row_of("learning", learner_sessions(world, count));
  CHECK(learnt.found > plain.found + 10);
  CHECK(learnt.good > plain.good + 25);
  CHECK(learnt.harmed < plain.harmed);
  CHECK(learnt.tests_median <= 4);
  CHECK(table_line(learnt) == table_line(row_of("learning", learner_sessions(world, count))));
}
