#include "gentlest/learning/outlook.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>
#include <utility>

using namespace gentlest;

namespace {

// A curve so flat that the sphere alone settles little, as the borrowed one.
ReadingCurve flat() {
  return ReadingCurve([](double RED) {
    LevelChances at_least{1, 0, 0, 0, 0};
    for (int level = 1; level < reading_levels; ++level)
      at_least[static_cast<std::size_t>(level)] = 1 / (1 + std::exp((RED - 1.2 + 0.1 * level) / 0.25));
    return at_least;
  });
}

LayerBelief belief_of(const Sphere& mean, double edge_spread = 0.1) {
  LearningSettings settings;
  settings.particles = 2000;
  LayerPrior prior{{{{mean, {0.3, 0.8, 0.8}, 0.6}, 1, "layer"}}};
  prior.edge_spread = edge_spread;
  return LayerBelief(prior, flat(), settings);
}

NextTestTask task_with(double luck) {
  NextTestTask task{belief_of({{17.5, 6, 9}, 7}), {{"paint", belief_of({{17.5, 9, 12}, 6})}}, {}, {}};
  task.settings.luck_of_mixture = luck;
  return task;
}

// So much ethanol in isooctane, or acetone in its place.
SwabMixture with(double share, const std::string& active = "ethanol") {
  const Hansen gentle{14.1, 0, 0};
  const Hansen strong = active == "ethanol" ? Hansen{15.8, 8.8, 19.4} : Hansen{15.5, 10.4, 7.0};
  return {{gentle.dD + share * (strong.dD - gentle.dD), share * strong.dP, share * strong.dH},
          {{"isooctane", 1 - share}, {active, share}}};
}

PastTest past(const SwabMixture& mixture, std::optional<int> removal, std::optional<int> original,
              bool at_edge = false) {
  return {mixture, at_edge, "", removal, original};
}

const double counted = 1 - ReadingNoise{}.slip;  // a reading is trusted so far

}  // namespace

TEST_CASE("without luck of the mixture's own the spheres alone speak") {
  NextTestTask task = task_with(0);
  const CandidateOutlook before = outlook_of(task, with(0.4));
  CHECK(before.effect == Approx(task.target->chance(with(0.4).point, task.settings.effect_level)));
  CHECK(before.risk == Approx(task.kept[0].belief.chance(with(0.4).point, 1)));
  CHECK(before.good == Approx(before.effect * (1 - before.risk)));
  CHECK(before.riskiest == "paint");
  task.past = {past(with(0.4), 0, 0, true), past(with(0.4), 4, 2)};
  const CandidateOutlook after = outlook_of(task, with(0.4));
  CHECK(after.effect == before.effect);
  CHECK(after.risk == before.risk);
  CHECK_FALSE(after.counts_tests);
}

TEST_CASE("the riskiest kept layer decides, and good asks all of them") {
  NextTestTask task = task_with(0);
  task.kept.push_back({"glaze", belief_of({{16.5, 5, 9}, 6})});
  const CandidateOutlook outlook = outlook_of(task, with(0.4));
  CHECK(outlook.riskiest == "glaze");
  const double paint = task.kept[0].belief.chance(with(0.4).point, 1);
  const double glaze = task.kept[1].belief.chance(with(0.4).point, 1);
  CHECK(outlook.risk == Approx(glaze));
  CHECK(outlook.good == Approx(outlook.effect * (1 - paint) * (1 - glaze)));
  // In whatever order they stand.
  std::swap(task.kept[0], task.kept[1]);
  CHECK(outlook_of(task, with(0.4)).riskiest == "glaze");
}

// By hand, from the particles: u lies between the chances of what was read, the mixture reaches the level where u lies
// below its own chance.
TEST_CASE("luck that is wholly shared is bounded by what was read, particle by particle") {
  NextTestTask task = task_with(1);
  const SwabMixture there = with(0.3), here = with(0.35);
  task.past = {past(there, 2, 0)};  // partly removed: at least level 2, less than 3
  const ParticleCloud& cloud = task.target->particles();
  double sum = 0, alone = 0;
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    const Sphere sphere{
        {static_cast<double>(cloud.x[i]) / 2, static_cast<double>(cloud.y[i]), static_cast<double>(cloud.z[i])},
        1 / static_cast<double>(cloud.inverse_R0[i])};
    const ReadingCurve& curve = task.target->curve();
    const double low = curve.at_least(3, relative_distance_RED(there.point, sphere));
    const double high = curve.at_least(2, relative_distance_RED(there.point, sphere));
    const double chance = curve.at_least(3, relative_distance_RED(here.point, sphere));
    const double weight = static_cast<double>(cloud.weight[i]);
    alone += weight * chance;
    sum += weight * std::clamp((chance - low) / (high - low), 0.0, 1.0);
  }
  const double shared = counted * shared_luck(there, here, task.settings.luck_reach);
  const CandidateOutlook outlook = outlook_of(task, here);
  CHECK(outlook.counts_tests);
  CHECK(outlook.effect == test::near((1 - shared) * alone + shared * sum, 2e-4));
}

TEST_CASE("luck is shared by distance and by bottles, wholly with the same mixture") {
  CHECK(shared_luck(with(0.3), with(0.3), 3) == 1);
  // 5 % of ethanol moves the point by hypot(2 * 0.085, 0.44, 0.97) MPa^0.5.
  const double apart = std::hypot(0.17, 0.44, 0.97);
  CHECK(shared_luck(with(0.3), with(0.35), 3) == Approx(std::exp(-apart / 3)));
  CHECK(shared_luck(with(0.3), with(0.5), 3) < shared_luck(with(0.3), with(0.35), 3));
  // One bottle of three is common to the two mixtures, and none is known of the third.
  const double over = distance_Ra(with(0.3).point, with(0.3, "acetone").point) / 3;
  CHECK(shared_luck(with(0.3), with(0.3, "acetone"), 3) == Approx(std::exp(-over) / 3));
  CHECK(shared_luck(with(0.3), {with(0.35).point}, 3) == 0);
  CHECK(shared_luck(with(0.3), {with(0.3).point}, 3) == 1);
}

TEST_CASE("weaker mixtures of bottles that did nothing are never believed to move more than what failed") {
  for (const double luck : {0.3, 0.8, 1.0}) {
    NextTestTask task = task_with(luck);
    task.past = {past(with(0.4), 0, 0)};
    const double failed = outlook_of(task, with(0.4)).effect;
    CHECK(failed < outlook_of(task_with(0), with(0.4)).effect);
    double last = 0;
    for (double share = 0.05; share < 0.4; share += 0.05) {
      const double effect = outlook_of(task, with(share)).effect;
      CHECK(effect <= failed);
      CHECK(effect >= last);
      last = effect;
    }
  }
}

TEST_CASE("what moved makes neighbours likelier, what was borne makes them safer, what harmed riskier") {
  const NextTestTask before = task_with(0.8);
  NextTestTask moved = before, borne = before, harmed = before;
  moved.past = {past(with(0.4), 4, 0)};
  borne.past = {past(with(0.4), 0, 0)};
  harmed.past = {past(with(0.4), 0, 2)};
  for (const double share : {0.2, 0.35, 0.4, 0.45, 0.6}) {
    const CandidateOutlook plain = outlook_of(before, with(share));
    CHECK(outlook_of(moved, with(share)).effect > plain.effect);
    CHECK(outlook_of(borne, with(share)).risk < plain.risk);
    CHECK(outlook_of(harmed, with(share)).risk > plain.risk);
    for (const NextTestTask* task : {&moved, &borne, &harmed})
      for (const double chance : {outlook_of(*task, with(share)).effect, outlook_of(*task, with(share)).risk})
        CHECK((chance >= 0 && chance <= 1));
  }
  // A stronger mixture of the same bottles harms for as much of the luck as is shared, and no reading is sure.
  CHECK(outlook_of(harmed, with(0.6)).risk >= 0.8 * counted);
  CHECK(outlook_of(harmed, with(0.4)).risk < 1);
  // Of other bottles less is said, and of another layer nothing.
  const auto gain = [&](const SwabMixture& mixture) {
    return outlook_of(harmed, mixture).risk - outlook_of(before, mixture).risk;
  };
  CHECK(gain(with(0.4, "acetone")) > 0);
  CHECK(gain(with(0.4, "acetone")) < gain(with(0.4)) / 2);
  harmed.past.front().layer = "glaze";
  CHECK(gain(with(0.4)) == 0);
}

TEST_CASE("where readings contradict each other the nearest counts, then the careful one, and a harm always") {
  const auto outlook_after = [](std::vector<PastTest> tests) {
    NextTestTask task = task_with(1);
    task.past = std::move(tests);
    return outlook_of(task, with(0.4));
  };
  const PastTest good = past(with(0.4), 4, 0), bad = past(with(0.4), 0, 2);
  // Of one mixture the failure and the harm.
  CHECK(outlook_after({good, bad}).effect == Approx(outlook_after({bad}).effect));
  CHECK(outlook_after({good, bad}).risk == Approx(outlook_after({bad}).risk));
  CHECK(outlook_after({bad, good}).effect == Approx(outlook_after({bad}).effect));
  // The picture speaks of the picture before the edge does.
  PastTest edge = bad;
  edge.at_edge = true;
  edge.original = 0;
  CHECK(outlook_after({edge, good}).effect > 0.9);
  // A harm with a weaker mixture of other bottles is not outweighed by what was borne nearer.
  const PastTest harm_off = past(with(0.3, "acetone"), 0, 2);
  CHECK(outlook_after({good, harm_off}).risk > outlook_after({good}).risk);
}

TEST_CASE("removal seen at the edge counts") {
  NextTestTask task = task_with(0.8);
  const double before = outlook_of(task, with(0.4)).effect;
  task.past = {past(with(0.4), 4, 0, true)};
  CHECK(outlook_of(task, with(0.4)).effect > before);
  task.past = {past(with(0.4), 0, 0, true)};
  CHECK(outlook_of(task, with(0.4)).effect < before);
}

TEST_CASE("a mixture that passed at the edge is little risk here, the more alike the two are the less") {
  const auto passed = [](double spread) {
    NextTestTask task = task_with(1);
    task.kept[0].belief = belief_of({{17.5, 9, 12}, 6}, spread);
    task.past = {past(with(0.5), std::nullopt, 0, true)};
    return outlook_of(task, with(0.5)).risk - (1 - counted) * task.kept[0].belief.chance(with(0.5).point, 1);
  };
  CHECK(passed(0.005) < 0.01);
  CHECK(passed(0.1) > passed(0.005) + 0.005);
  CHECK(passed(0.5) > passed(0.1) + 0.02);
  NextTestTask task = task_with(1);
  task.past = {past(with(0.5), std::nullopt, 0, true)};
  CHECK(outlook_of(task, with(0.5), true).risk < outlook_of(task, with(0.5)).risk);
}

TEST_CASE("an edge refuted by the picture opens nothing") {
  NextTestTask task = task_with(0.8);
  task.past = {past(with(0.4), 0, 0, true), past(with(0.3), 0, 0, true)};
  REQUIRE_FALSE(is_edge_refuted(task.past));
  const double before = outlook_of(task, with(0.3)).risk;
  task.past.push_back(past(with(0.4), 0, 1));
  REQUIRE(is_edge_refuted(task.past));
  NextTestTask without = task_with(0.8);
  without.past = {task.past.back()};
  CHECK(outlook_of(task, with(0.3)).risk > before);
  CHECK(outlook_of(task, with(0.3)).risk == outlook_of(without, with(0.3)).risk);
  // Another mixture, another layer, a second harm at the edge or a pass on the picture refutes nothing.
  task.past.back().mixture = with(0.6);
  CHECK_FALSE(is_edge_refuted(task.past));
  task.past.back() = past(with(0.4), 0, 1, true);
  CHECK_FALSE(is_edge_refuted(task.past));
  task.past.back() = past(with(0.4), 0, 1);
  task.past.back().layer = "glaze";
  task.past.front().layer = "paint";
  CHECK_FALSE(is_edge_refuted(task.past));
  CHECK_FALSE(is_edge_refuted({past(with(0.4), 0, 0), past(with(0.4), 0, 1)}));
}

TEST_CASE("what passed at a refuted edge is unlearnt too") {
  const auto test_of = [](double share, int original, bool at_edge) {
    PastTest test = past(with(share), 0, original, at_edge);
    test.on_removal = Evidence{test.mixture.point, match_of_level(0, 0.06), 1, at_edge};
    test.on_original = Evidence{test.mixture.point, match_of_original(original, 0.06), 1, at_edge, original > 0};
    return test;
  };
  NextTestTask task = task_with(0.8), without = task_with(0.8);
  const double before = outlook_of(task, with(0.5)).risk;
  take_in(task, test_of(0.3, 0, true));
  take_in(task, test_of(0.4, 0, true));
  CHECK(outlook_of(task, with(0.5)).risk < before);
  take_in(task, test_of(0.4, 1, false));
  take_in(without, test_of(0.4, 1, false));
  CHECK(outlook_of(task, with(0.5)).risk == outlook_of(without, with(0.5)).risk);
  // Later passes there open nothing either.
  take_in(task, test_of(0.45, 0, true));
  CHECK(outlook_of(task, with(0.5)).risk == outlook_of(without, with(0.5)).risk);
  CHECK(task.past.size() == 4);
}

TEST_CASE("what its luck shares with tests before it is not learnt twice") {
  const auto fails = [](double luck) {
    NextTestTask task = task_with(luck);
    for (int swab = 0; swab < 3; ++swab) {
      PastTest test = past(with(0.5), 0, 0);
      test.on_removal = Evidence{test.mixture.point, match_of_level(0, 0.06), 1, false};
      take_in(task, test);
    }
    return task.target->chance(with(0.5).point, 3);
  };
  const double before = task_with(0).target->chance(with(0.5).point, 3);
  // Three failures of one mixture say hardly more than one where its luck is its own.
  CHECK(fails(0) < fails(1));
  CHECK(fails(1) < before);
  NextTestTask once = task_with(1);
  PastTest test = past(with(0.5), 0, 0);
  test.on_removal = Evidence{test.mixture.point, match_of_level(0, 0.06), 1, false};
  take_in(once, test);
  CHECK(fails(1) == test::near(once.target->chance(with(0.5).point, 3), 0.05));
  CHECK(once.target->seen().front().shared.empty());
}

TEST_CASE("longer contact that did nothing says more of the luck") {
  NextTestTask task = task_with(1);
  task.past = {past(with(0.4), 0, 0)};
  const double usual = outlook_of(task, with(0.5)).risk;
  task.past.front().on_original = Evidence{with(0.4).point, match_of_original(0, 0.06), 1.1, false};
  CHECK(outlook_of(task, with(0.5)).risk < usual);
}
