// What was seen beside what the program says.
#include "gentlest/answers/observed.hpp"

#include "near.hpp"
#include "oracle/chance_reference.hpp"
#include "shipped_mixtures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const Material& material(const char* id) {
  const Material* found = shipped_catalogue().find_material(id);
  REQUIRE(found);
  return *found;
}

std::vector<JudgedObservation> judged_on(const char* id) {
  return judge_observations(shipped_catalogue().observations_on(material(id)), shipped_catalogue());
}

}  // namespace

TEST_CASE("an observation disagrees where it is clear-cut and the chance lies beyond one half") {
  // dissolves or nearly: it moved, so it was affected too
  CHECK(compare({1, 2}, {0.6, 0.9}) == Agreement::agrees);
  CHECK(compare({1, 2}, {0.4, 0.9}) == Agreement::disagrees);
  CHECK(compare({1, 2}, {0.5, 0.5}) == Agreement::agrees);  // one half is on neither side
  // nothing or next to nothing
  CHECK(compare({5, 6}, {0.1, 0.3}) == Agreement::agrees);
  CHECK(compare({5, 6}, {0.1, 0.6}) == Agreement::disagrees);
  CHECK(compare({5, 6}, {0.6, 0.7}) == Agreement::disagrees);
  // swells: affected, not moved
  CHECK(compare({3, 4}, {0.2, 0.8}) == Agreement::agrees);
  CHECK(compare({3, 4}, {0.6, 0.8}) == Agreement::disagrees);
  CHECK(compare({3, 4}, {0.2, 0.4}) == Agreement::disagrees);
  // clear-cut at one of the two only
  CHECK(compare({2, 4}, {0.9, 0.9}) == Agreement::agrees);
  CHECK(compare({2, 4}, {0.1, 0.4}) == Agreement::disagrees);
  CHECK(compare({3, 6}, {0.4, 0.9}) == Agreement::agrees);
  CHECK(compare({4, 6}, {0.6, 0.9}) == Agreement::disagrees);
  // leaves room for everything
  CHECK(compare({1, 6}, {0.9, 0.9}) == Agreement::open);
  CHECK(compare({2, 5}, {0.1, 0.1}) == Agreement::open);
}

TEST_CASE("the chance beside an observation is that of the slow reference") {
  int compared = 0;
  for (const char* id : {"dammar_aged", "poly_vinyl_acetate", "oil_paint_old"}) {
    const UncertainSphere sphere = *uncertain_sphere(material(id), shipped_catalogue());
    for (const JudgedObservation& one : judged_on(id)) {
      if (!one.chances || one.seen->parts.size() > 1 || ++compared % 4 != 0) continue;
      INFO(id << ", " << one.seen->parts[0].solvent);
      const Hansen point = shipped_catalogue().find_solvent(one.seen->parts[0].solvent)->hansen->chosen.value;
      const Response response = response_of(material(id), shipped_catalogue(), one.seen->contact);
      const LocalReach reach = local_reach(material(id));
      CHECK(one.chances->moves ==
            near(chance_by_sums(point, {sphere, response, one.chances->moves_grade, reach}), 2e-4));
      CHECK(one.chances->affects ==
            near(chance_by_sums(point, {sphere, response, one.chances->affects_grade, reach}), 2e-4));
    }
  }
  CHECK(compared >= 30);
}

TEST_CASE("a mixture is asked at its own point") {
  const Mixture mixture = mixture_from("toluene 40, acetone 60");
  const std::vector<ActionChances> chances = chances_on(material("dammar_aged"), {mixture}, shipped_catalogue());
  REQUIRE(chances.size() == 1);
  const UncertainSphere sphere = *uncertain_sphere(material("dammar_aged"), shipped_catalogue());
  const LocalReach reach = local_reach(material("dammar_aged"));
  CHECK(chances[0].moves ==
        near(chance_by_sums(mix(mixture), {sphere, shipped_catalogue().response(), 2, reach}), 2e-4));
  bool found = false;
  for (const JudgedObservation& one : judged_on("dammar_aged"))
    if (one.seen->parts == std::vector<ObservedPart>{{"toluene", 40}, {"acetone", 60}}) {
      found = true;
      CHECK(one.chances->moves == near(chances[0].moves, 1e-4));
    }
  CHECK(found);
}

TEST_CASE("what cannot be judged says why, and everything else is judged") {
  const auto all = judge_observations(
      [] {
        std::vector<const Observation*> rows;
        for (const Observation& seen : shipped_catalogue().observations()) rows.push_back(&seen);
        return rows;
      }(),
      shipped_catalogue());
  REQUIRE(all.size() == shipped_catalogue().observations().size());
  int no_sphere = 0, in_words = 0, told = 0;
  for (const JudgedObservation& one : all) {
    INFO(one.seen->where.file << ":" << one.seen->where.line);
    CHECK(one.chances.has_value() == !one.not_judged.has_value());
    CHECK(one.chances.has_value() == one.agreement.has_value());
    no_sphere += one.not_judged == NotJudged::no_sphere;
    in_words += one.not_judged == NotJudged::in_words;
    if (one.not_judged == NotJudged::no_sphere) CHECK_FALSE(material(one.seen->material.c_str()).sphere);
    if (one.not_judged == NotJudged::in_words) CHECK(one.seen->parts.empty());
    if (one.chances && !one.seen->grades) {
      ++told;
      CHECK(one.agreement == Agreement::open);
    }
    if (one.chances) CHECK(one.chances->moves <= one.chances->affects + 1e-9);
  }
  CHECK(no_sphere > 40);
  CHECK(in_words > 10);
  CHECK(told > 0);
}
