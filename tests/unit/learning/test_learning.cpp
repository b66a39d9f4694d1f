#include "core/base/random_numbers.hpp"
#include "gentlest/learning/learning.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

using namespace gentlest;

namespace {

const UncertainSphere resin = {{{17.5, 6, 9}, 8}, {0.8, 1.8, 2.0}, 1.2};

// A logistic step at each place in RED, from level 1 to 4.
ReadingCurve steps(double width) {
  return ReadingCurve([width](double RED) {
    LevelChances at_least{1, 0, 0, 0, 0};
    const std::array<double, 4> places = {1.1, 1.05, 1.0, 0.9};
    for (std::size_t i = 0; i < 4; ++i) at_least[i + 1] = 1 / (1 + std::exp((RED - places[i]) / width));
    return at_least;
  });
}

LayerPrior plain_prior() {
  LayerPrior prior{{{resin, 1, "resin"}}};
  prior.stray_share = 0;
  return prior;
}

Evidence seen(const Hansen& point, int level, bool at_edge = false) {
  return {point, match_of_level(level, 0.04), 1, at_edge};
}

std::size_t distinct_particles(const LayerBelief& belief) {
  const ParticleCloud& cloud = belief.particles();
  std::set<std::array<float, 4>> distinct;
  for (std::size_t i = 0; i < cloud.size(); ++i)
    if (cloud.weight[i] > 0) distinct.insert({cloud.x[i], cloud.y[i], cloud.z[i], cloud.inverse_R0[i]});
  return distinct.size();
}

double width_of(const Estimate& estimate) {
  return estimate.high - estimate.low;
}

// The posterior mean of the chance at `at`, by brute force: prior samples weighted by the evidence, many of them.
double chance_by_weighting(const std::vector<Evidence>& evidence, const Hansen& at, int level) {
  const ReadingCurve curve = steps(0.05);
  RandomNumbers random(99);
  double sum = 0, total = 0;
  for (int i = 0; i < 400000; ++i) {
    const Sphere sphere{{17.5 + 0.8 * random.normal(), 6 + 1.8 * random.normal(), 9 + 2.0 * random.normal()},
                        std::max(0.5, 8 + 1.2 * random.normal())};
    double weight = 1;
    for (const Evidence& one : evidence) {
      const LevelChances chances = curve.chances(relative_distance_RED(one.point, sphere));
      double match = 0;
      for (std::size_t k = 0; k < chances.size(); ++k) match += chances[k] * one.match[k];
      weight *= match;
    }
    sum += weight * curve.at_least(level, relative_distance_RED(at, sphere));
    total += weight;
  }
  return sum / total;
}

}  // namespace

TEST_CASE("own random numbers are even, normal and the same everywhere") {
  RandomNumbers random(42);
  CHECK(RandomNumbers(0).bits() == 0xE220A8397B1DCDAFu);  // first value of the published generator for seed 0
  double sum = 0, squares = 0, fourth = 0, even = 0;
  constexpr int count = 200000;
  for (int i = 0; i < count; ++i) {
    const double z = random.normal();
    sum += z;
    squares += z * z;
    fourth += z * z * z * z;
    even += random.uniform();
  }
  CHECK(sum / count == test::near(0, 0.01));
  CHECK(squares / count == test::near(1, 0.015));
  CHECK(fourth / count == test::near(3, 0.1));
  CHECK(even / count == test::near(0.5, 0.003));
}

TEST_CASE("a reading curve interpolates, adds up to 1 and is turned round") {
  const ReadingCurve curve = steps(0.05);
  for (double RED = 0; RED < 7; RED += 0.0371) {
    const LevelChances chances = curve.chances(RED);
    double sum = 0;
    for (const double chance : chances) {
      CHECK(chance >= -1e-7);
      sum += chance;
    }
    CHECK(sum == Approx(1).epsilon(1e-6));
    if (RED < 6) CHECK(curve.at_least(3, RED) == test::near(1 / (1 + std::exp((RED - 1.0) / 0.05)), 5e-4));
  }
}

TEST_CASE("the borrowed curve reads the grades of a solubility test as levels of a swab") {
  const Response response{{{{0.1, -8.6}, {-2.3, -3.1}, {-1.6, -3.5}, {-1.1, -2.9}, {-0.1, -2.5}}}, "test"};
  const ReadingCurve curve = borrowed_curve(response);
  for (const double RED : {0.5, 0.9, 1.25, 2.0}) {
    CHECK(curve.at_least(level_of_grade(2), RED) == test::near(chance_at_most(response, 2, RED), 1e-4));
    CHECK(curve.at_least(level_of_grade(4), RED) == test::near(chance_at_most(response, 4, RED), 1e-4));
  }
  CHECK(level_of_grade(1) == 4);
  CHECK(level_of_grade(5) == 1);
}

TEST_CASE("slips leave chances that add up over the readings") {
  for (int truth = 0; truth < reading_levels; ++truth) {
    double sum = 0;
    for (int read = 0; read < reading_levels; ++read) sum += match_of_level(read, 0.1)[static_cast<std::size_t>(truth)];
    CHECK(sum == Approx(1));
  }
  for (int truth = 0; truth < reading_levels; ++truth) {
    double sum = 0;
    for (int read = 0; read < reading_levels; ++read)
      sum += match_of_original(read, 0.1)[static_cast<std::size_t>(truth)];
    CHECK(sum == Approx(1));
  }
  CHECK(match_of_level(2, 0) == LevelChances{0, 0, 1, 0, 0});
  CHECK(match_of_original(0, 0.1)[4] == Approx(0.08));
}

TEST_CASE("a reading speaks of the layers it saw") {
  const ReadingNoise noise;
  const Hansen point{16, 5, 8};
  Reading reading;
  CHECK_FALSE(evidence_on_removal(reading, point, noise).has_value());
  CHECK_FALSE(evidence_on_original(reading, point, noise).has_value());
  reading.removal = RemovalReading::mostly;
  reading.original = OriginalReading::colour_on_swab;
  reading.colour = SwabColour::original;
  reading.at_edge = true;
  CHECK(evidence_on_removal(reading, point, noise)->match == match_of_level(3, noise.slip));
  CHECK(evidence_on_original(reading, point, noise)->match == match_of_original(4, noise.slip));
  CHECK(evidence_on_original(reading, point, noise)->at_edge);
  reading.colour = SwabColour::dirt;
  CHECK(evidence_on_original(reading, point, noise)->match == match_of_original(0, noise.slip));
  reading.colour = SwabColour::not_known;
  CHECK(evidence_on_original(reading, point, noise)->match == match_of_original(4, noise.slip));
  reading.colour = SwabColour::retouching;
  CHECK_FALSE(evidence_on_original(reading, point, noise).has_value());
  reading.confidence = ReadingConfidence::low;
  CHECK(evidence_on_removal(reading, point, noise)->match == match_of_level(3, noise.slip_low_confidence));
  reading.seconds = 2 * noise.reference_seconds;
  CHECK(evidence_on_removal(reading, point, noise)->radius_factor == Approx(std::pow(2, noise.time_exponent)));
  reading.withdrawn = true;
  CHECK_FALSE(evidence_on_removal(reading, point, noise).has_value());
}

TEST_CASE("the level on the original errs on its side") {
  Reading reading;
  CHECK_FALSE(level_on_original(reading).has_value());
  // A colour that is the original's, or that nobody identified, counts whatever else was written.
  for (const SwabColour colour : {SwabColour::original, SwabColour::not_known}) {
    reading.colour = colour;
    reading.original.reset();
    CHECK(level_on_original(reading) == 4);
    for (const OriginalReading read : {OriginalReading::nothing_seen, OriginalReading::colour_on_swab}) {
      reading.original = read;
      CHECK(level_on_original(reading) == 4);
    }
  }
  for (const SwabColour colour : {SwabColour::varnish, SwabColour::dirt}) {
    reading.colour = colour;
    CHECK(level_on_original(reading) == 0);
  }
  reading.colour = SwabColour::retouching;
  CHECK_FALSE(level_on_original(reading).has_value());
  reading.colour = SwabColour::none;
  CHECK(level_on_original(reading) == 4);
  reading.original = OriginalReading::recovers;
  reading.colour = SwabColour::varnish;
  CHECK(level_on_original(reading) == 1);
  reading.withdrawn = true;
  CHECK_FALSE(level_on_original(reading).has_value());
}

TEST_CASE("the particles start as the prior says") {
  const LayerBelief belief(plain_prior(), steps(0.05));
  CHECK(belief.dP().mean == test::near(6, 0.08));
  CHECK(belief.dP().low == test::near(6 - 1.645 * 1.8, 0.15));
  CHECK(belief.dP().high == test::near(6 + 1.645 * 1.8, 0.15));
  CHECK(belief.R0().mean == test::near(8, 0.06));
  CHECK(belief.effective_particles() == test::near(8000, 1));
  CHECK(distinct_particles(belief) == 8000);
  LayerPrior two = plain_prior();
  two.hypotheses.push_back({{{{20, 6, 9}, 8}, {0.1, 0.1, 0.1}, 0.1}, 3, "other"});
  two.stray_share = 0.2;
  const std::vector<double> chances = LayerBelief(two, steps(0.05)).hypothesis_chances();
  REQUIRE(chances.size() == 3);
  CHECK(chances[0] + chances[1] + chances[2] == Approx(1).epsilon(1e-6));
  CHECK(chances[0] == test::near(0.2, 0.02));
  CHECK(chances[1] == test::near(0.6, 0.02));
}

TEST_CASE("learning agrees with plain weighting of very many samples") {
  const std::vector<Evidence> evidence = {seen({15.8, 4, 7}, 0), seen({16, 6, 8}, 2), seen({17, 8, 12}, 4),
                                          seen({15.5, 10, 7}, 1)};
  LayerBelief belief(plain_prior(), steps(0.05));
  for (const Evidence& one : evidence) belief.learn(one);
  for (const Hansen& at : {Hansen{16.5, 7, 9}, Hansen{15.8, 5, 9}, Hansen{18, 12, 8}})
    for (const int level : {1, 3}) {
      const double expected = chance_by_weighting(evidence, at, level);
      CHECK(belief.chance(at, level) == test::near(expected, 0.03));
    }
  CHECK(belief.predicted().size() == 4);
}

TEST_CASE("twenty readings narrow the sphere and the particles do not collapse") {
  const Sphere truth{{18.2, 7.5, 10}, 7.4};
  const ReadingCurve curve = steps(0.05);
  LayerPrior prior{{{resin, 1, "resin"}}};
  LayerBelief belief(prior, curve);
  const LayerBelief before = belief;
  RandomNumbers random(7);
  for (int i = 0; i < 20; ++i) {
    const Hansen point{15 + 4 * random.uniform(), 12 * random.uniform(), 18 * random.uniform()};
    const LevelChances chances = curve.chances(relative_distance_RED(point, truth));
    double luck = random.uniform();
    int level = 0;
    while (level < 4 && luck > chances[static_cast<std::size_t>(level)])
      luck -= chances[static_cast<std::size_t>(level++)];
    belief.learn(seen(point, level));
    CHECK(belief.effective_particles() >= 4000);
    CHECK(distinct_particles(belief) >= 4000);
  }
  CHECK(width_of(belief.dP()) < 0.7 * width_of(before.dP()));
  CHECK(width_of(belief.dH()) < 0.7 * width_of(before.dH()));
  const Hansen at{16.5, 7, 10};
  const Estimate RED = belief.RED_estimate(at);
  CHECK(RED.low < relative_distance_RED(at, truth));
  CHECK(RED.high > relative_distance_RED(at, truth));
  CHECK(width_of(RED) < 0.5 * width_of(before.RED_estimate(at)));
}

TEST_CASE("readings that cannot be squared with the record are told, and the ranges follow them") {
  LayerPrior prior{{{{{{17.5, 6, 9}, 8}, {0.3, 0.5, 0.4}, 0.5}, 1, "resin"}}};
  LayerBelief belief(prior, steps(0.05));
  const double stray_before = belief.hypothesis_chances().back();
  CHECK(stray_before == test::near(0.08, 0.02));
  for (const double dH : {6.0, 8.0, 10.0, 12.0}) belief.learn(seen({17.5, 6, dH}, 0));  // near the centre: nothing
  CHECK(belief.hypothesis_chances().back() > 0.8);
  CHECK(belief.effective_particles() >= 4000);
  CHECK(belief.chance({17.5, 6, 9}, 3) < 0.3);
  const LearntOfLayer learnt = learnt_of(belief, "varnish", {3, 4, 7, 9});
  CHECK(learnt.is_tested);
  CHECK(learnt.is_stray);
  CHECK(learnt.stray_chance == belief.hypothesis_chances().back());
  CHECK(learnt.hypotheses.empty());  // one material only: nothing to weigh
  REQUIRE_FALSE(learnt.surprising.empty());
  CHECK(learnt.surprising.front().test == 3);
  CHECK(learnt.surprising.front().chance == belief.predicted().front());
  CHECK(belief.surprises().front().in_deviations() > surprising_deviations);
  CHECK_FALSE(learnt_of(LayerBelief(prior, steps(0.05)), "varnish", {}).is_tested);
}

TEST_CASE("no reading of a harm is a surprise, whatever was held before") {
  LayerPrior prior{{{{{{17.5, 6, 9}, 8}, {0.3, 0.5, 0.4}, 0.5}, 1, "paint"}}};
  LayerBelief belief(prior, steps(0.05));
  Reading reading;
  reading.original = OriginalReading::colour_on_swab;
  const Hansen far{15, 0, 0};
  const auto harm = evidence_on_original(reading, far, ReadingNoise{});
  REQUIRE(harm.has_value());
  CHECK(harm->is_harm);
  belief.learn(*harm);
  REQUIRE(belief.predicted().front() < 0.05);
  CHECK(learnt_of(belief, "paint", {1}).surprising.empty());
  CHECK(belief.surprise() == Surprise{});
  // Nothing seen where harm was nearly sure is one.
  reading.original = OriginalReading::nothing_seen;
  LayerBelief borne(prior, steps(0.05));
  borne.learn(evidence_on_original(reading, {17.5, 6, 9}, ReadingNoise{}).value());
  CHECK(learnt_of(borne, "paint", {1}).surprising.size() == 1);
  CHECK(borne.surprise().in_deviations() > surprising_deviations);
}

TEST_CASE("candidate materials change places as the readings come") {
  LayerPrior prior;
  prior.hypotheses = {{{{{17, 4, 6}, 7}, {0.3, 0.5, 0.5}, 0.5}, 3, "dammar"},
                      {{{{18, 9, 12}, 7}, {0.3, 0.5, 0.5}, 0.5}, 1, "shellac"}};
  LayerBelief belief(prior, steps(0.05));
  CHECK(belief.hypothesis_chances()[0] > belief.hypothesis_chances()[1]);
  belief.learn(seen({15, 1, 2}, 0));
  belief.learn(seen({16, 8, 17}, 3));
  CHECK(belief.hypothesis_chances()[1] > 0.8);
}

TEST_CASE("the edge speaks of the picture, but less surely") {
  const Hansen point{16, 7, 12};
  const auto risk_after = [&](bool at_edge, double spread) {
    LayerPrior prior = plain_prior();
    prior.edge_spread = spread;
    LayerBelief belief(prior, steps(0.05));
    belief.learn(seen(point, 0, at_edge));
    return belief.chance(point, 1);
  };
  const double without = LayerBelief(plain_prior(), steps(0.05)).chance(point, 1);
  CHECK(risk_after(true, 0.1) < without);
  CHECK(risk_after(false, 0.1) < risk_after(true, 0.1));
  CHECK(risk_after(true, 0.1) < risk_after(true, 0.5));
  CHECK(risk_after(true, 0.005) == test::near(risk_after(false, 0.005), 0.02));
}

TEST_CASE("longer contact with no effect says more, and learning is the same every time") {
  Evidence longer = seen({16, 7, 12}, 0);
  longer.radius_factor = 1.2;
  LayerBelief a(plain_prior(), steps(0.05)), b(plain_prior(), steps(0.05)), c(plain_prior(), steps(0.05));
  a.learn(seen({16, 7, 12}, 0));
  b.learn(longer);
  c.learn(longer);
  CHECK(b.chance({16, 7, 12}, 1) < a.chance({16, 7, 12}, 1));
  CHECK(b.chance({17, 6, 9}, 2) == c.chance({17, 6, 9}, 2));
  CHECK(b.R0() == c.R0());
}

TEST_CASE("learning from the edge agrees with plain weighting, where the edge may act otherwise") {
  LayerPrior prior = plain_prior();
  prior.edge_spread = 0.3;
  const std::vector<Evidence> evidence = {seen({16.5, 6, 11}, 0, true), seen({16.5, 4, 8}, 0, true),
                                          seen({17, 9, 9}, 0, true)};
  LayerBelief belief(prior, steps(0.05));
  for (const Evidence& one : evidence) belief.learn(one);
  const ReadingCurve curve = steps(0.05);
  const Hansen at{16.5, 6, 11};
  RandomNumbers random(17);
  double sum = 0, total = 0;
  for (int i = 0; i < 400000; ++i) {
    const Sphere sphere{{17.5 + 0.8 * random.normal(), 6 + 1.8 * random.normal(), 9 + 2.0 * random.normal()},
                        std::max(0.5, 8 + 1.2 * random.normal())};
    const Sphere at_edge{sphere.centre, sphere.R0 * std::exp(0.3 * random.normal())};
    double weight = 1;
    for (const Evidence& one : evidence) {
      const LevelChances chances = curve.chances(relative_distance_RED(one.point, at_edge));
      double match = 0;
      for (std::size_t k = 0; k < chances.size(); ++k) match += chances[k] * one.match[k];
      weight *= match;
    }
    sum += weight * curve.at_least(1, relative_distance_RED(at, sphere));
    total += weight;
  }
  CHECK(std::abs(belief.chance(at, 1) - sum / total) < 0.03);
}
