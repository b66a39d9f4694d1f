#include "gentlest/learning/next_test.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gentlest;

namespace {

// Sharp steps in RED: removal from 1.0 on, harm from 1.0 on.
ReadingCurve sharp() {
  return ReadingCurve([](double RED) {
    const double chance = 1 / (1 + std::exp((RED - 1) / 0.04));
    return LevelChances{1, chance, chance, chance, chance * chance};
  });
}

LayerBelief belief_of(const Sphere& mean, double spread) {
  LearningSettings settings;
  settings.particles = 2000;
  return LayerBelief({{{{mean, {0.4 * spread, spread, spread}, 0.7 * spread}, 1, "layer"}}}, sharp(), settings);
}

// A lattice over the part of Hansen space that mixtures reach.
std::vector<Hansen> lattice() {
  std::vector<Hansen> points;
  for (double dD = 15; dD <= 18.5; dD += 0.7)
    for (double dP = 0; dP <= 12; dP += 1.5)
      for (double dH = 0; dH <= 18; dH += 1.5) points.push_back({dD, dP, dH});
  return points;
}

// Varnish and paint far apart: easy.
NextTestTask easy_task() {
  NextTestTask task{lattice(), belief_of({{16, 3, 5}, 5}, 0.6), {{"paint", belief_of({{17, 9, 14}, 5}, 0.6)}}, {}, {},
                    {}};
  task.settings.most_at_edge = 0;
  return task;
}

// The paint is held for something so vague that nothing is gentle enough for the picture.
NextTestTask doubtful_task(int edge_tests) {
  NextTestTask task = easy_task();
  task.kept[0].belief = belief_of({{16, 5, 8}, 5}, 2.5);
  task.settings.most_at_edge = edge_tests;
  return task;
}

PastTest past(const Hansen& point, bool moved, bool affected, std::string passage = "paint") {
  return {point, false, std::move(passage), moved, affected};
}

}  // namespace

TEST_CASE("the first proposal is gentle, within the first risk limit, and says why") {
  NextTestTask task = easy_task();
  const NextTest next = choose_next_test(task);
  REQUIRE(next.step == NextStep::try_mixture);
  REQUIRE(next.mixture.has_value());
  CHECK(next.mixture->risk <= task.settings.risk_limits.front());
  CHECK(next.risk_limit == task.settings.risk_limits.front());
  CHECK(next.reason == NextReason::promises_most);
  task.settings.step = 0.2;
  const NextTest gentler = choose_next_test(task);
  REQUIRE(gentler.mixture.has_value());
  CHECK(task.target->chance_before(gentler.mixture->point, task.settings.effect_level) <= 0.2);
}

TEST_CASE("the step in effect is bounded by the boldest mixture tried") {
  NextTestTask task = easy_task();
  task.settings.step = 0.2;
  for (int round = 0; round < 4; ++round) {
    const NextTest next = choose_next_test(task);
    if (next.step != NextStep::try_mixture) break;
    const Hansen point = next.mixture->point;
    double boldest = 0;
    for (const PastTest& test : task.past)
      boldest = std::max(boldest, task.target->chance_before(test.point, task.settings.effect_level));
    CHECK(task.target->chance_before(point, task.settings.effect_level) <= boldest + 0.2 + 1e-9);
    for (const PastTest& test : task.past) CHECK_FALSE(test.point == point);
    task.past.push_back(past(point, false, false));
    task.target->learn({point, match_of_level(0, 0.04), 1, false});
  }
  CHECK(task.past.size() >= 2);
}

TEST_CASE("a mixture that worked is reported with its chance once it is sure enough") {
  NextTestTask task = easy_task();
  const Hansen point{16.4, 3, 4.5};
  task.candidates.push_back(point);
  task.past.push_back(past(point, true, false));
  task.target->learn({point, match_of_level(4, 0.04), 1, false});
  task.kept[0].belief.learn({point, match_of_level(0, 0.04), 1, false});
  const NextTest next = choose_next_test(task);
  REQUIRE(next.step == NextStep::found);
  CHECK(next.reason == NextReason::worked);
  CHECK(next.mixture->candidate == task.candidates.size() - 1);
  CHECK(next.mixture->good >= task.settings.sure);
  CHECK(next.untested.empty());
  // Until it passed every colour it goes on, and names what is missing.
  task.passages = {"paint", "red glaze", "blue"};
  const NextTest open = choose_next_test(task);
  CHECK(open.step == NextStep::try_passage);
  CHECK(open.reason == NextReason::passage_untested);
  CHECK(open.passage == "red glaze");
  CHECK(open.untested == std::vector<std::string>{"red glaze", "blue"});
  task.past.push_back(past(point, true, false, "red glaze"));
  task.past.push_back(past(point, true, false, "blue"));
  CHECK(choose_next_test(task).step == NextStep::found);
  // A colour that reacts takes the mixture out.
  task.past.back().affected = true;
  CHECK(choose_next_test(task).step != NextStep::found);
}

TEST_CASE("a lucky success is confirmed by a surer mixture") {
  NextTestTask task = easy_task();
  task.target = belief_of({{16, 3, 5}, 5}, 2.0);
  const Hansen edge{16, 8, 7};
  task.candidates.push_back(edge);
  task.past.push_back(past(edge, true, false));
  const NextTest next = choose_next_test(task);
  REQUIRE(next.step == NextStep::confirm);
  CHECK(next.reason == NextReason::likeliest_each_time);
  CHECK(next.worked_good < next.mixture->good);
  CHECK(next.mixture->good > outlook_of(task, edge).good);
  CHECK(next.mixture->risk <= task.settings.confirming_risk);
}

TEST_CASE("no window is said where nothing allowed promises anything") {
  NextTestTask task = easy_task();
  task.kept[0].belief = belief_of({{16, 3, 5}, 9}, 0.4);  // the paint's range holds all of the varnish's
  const NextTest next = choose_next_test(task);
  CHECK(next.step == NextStep::no_window);
  CHECK(next.reason == NextReason::nothing_promises);
  CHECK(next.most_risk == task.settings.risk_limits.back());
  CHECK(next.least_promise == task.settings.least_promise);
  task.candidates.clear();
  CHECK(choose_next_test(task).step == NextStep::no_window);
}

TEST_CASE("where the paint is in doubt the edge is asked first") {
  NextTestTask task = doubtful_task(2);
  const NextTest next = choose_next_test(task);
  REQUIRE(next.step == NextStep::try_at_edge);
  CHECK(next.reason == NextReason::promises_more_at_edge);
  CHECK(next.mixture->risk > task.settings.risk_limits.front());
  const PastTest at_edge{next.mixture->point, true, "", std::nullopt, true};
  task.past = {at_edge, at_edge};
  CHECK(choose_next_test(task).step != NextStep::try_at_edge);
  // Harm at the edge closes nothing.
  CHECK(choose_next_test(task).step != NextStep::closed);
}

TEST_CASE("the second reaction of the original closes the way, unless a mixture worked") {
  NextTestTask task = easy_task();
  task.past = {past({16, 9, 10}, false, true), past({16, 8, 9}, true, true)};
  CHECK(choose_next_test(task).step == NextStep::closed);
  CHECK(choose_next_test(task).reason == NextReason::harmed_twice);
  task.past.push_back(past({16.4, 3, 4.5}, true, false));
  CHECK(choose_next_test(task).step == NextStep::found);
}

TEST_CASE("the number of tests is bounded") {
  NextTestTask task = easy_task();
  task.settings.most_tests = 1;
  task.past = {past({15, 0, 0}, false, false)};
  CHECK(choose_next_test(task).step == NextStep::tests_used_up);
  CHECK(choose_next_test(task).reason == NextReason::tests_made);
  CHECK(choose_next_test(task).tests_made == 1);
}

TEST_CASE("the riskiest kept layer decides") {
  NextTestTask task = easy_task();
  task.kept.push_back({"glaze", belief_of({{16, 5, 8}, 5}, 0.6)});
  const CandidateOutlook outlook = outlook_of(task, {16, 5, 8});
  CHECK(outlook.riskiest == "glaze");
  CHECK(outlook.risk > 0.95);
  CHECK(outlook.good < 0.05);
}

TEST_CASE("no mixture is asked twice at the edge, and one that reacted there is not put on the picture") {
  NextTestTask task = doubtful_task(20);
  for (int round = 0; round < 12; ++round) {
    const NextTest next = choose_next_test(task);
    if (!next.mixture || next.step == NextStep::no_window) break;
    const Hansen point = next.mixture->point;
    for (const PastTest& test : task.past) CHECK_FALSE(test.point == point);
    task.past.push_back({point, next.step == NextStep::try_at_edge, "", std::nullopt, true});
    if (!task.past.back().at_edge) task.past.back().affected = false;
  }
  CHECK(task.past.size() == 12);
}

TEST_CASE("what passed at the edge comes onto the picture next, as far as its luck is the mixture's own") {
  NextTestTask task = doubtful_task(3);
  const NextTest edge = choose_next_test(task);
  REQUIRE(edge.step == NextStep::try_at_edge);
  const Hansen point = edge.mixture->point;
  task.past.push_back({point, true, "", std::nullopt, false});
  const double alone = outlook_of(task, point).risk;
  CHECK(alone == edge.mixture->risk);
  CHECK_FALSE(outlook_counting_tests(task, point).counts_tests);
  task.settings.luck_of_mixture = 1;
  const CandidateOutlook with = outlook_counting_tests(task, point);
  CHECK(with.counts_tests);
  CHECK(with.risk < alone / 2);
  task.settings.passed_risk = with.risk + 1e-6;
  const NextTest next = choose_next_test(task);
  CHECK(next.step == NextStep::try_mixture);
  CHECK(next.reason == NextReason::passed_at_edge);
  CHECK(next.mixture->candidate == edge.mixture->candidate);
  // A swab on another layer says nothing of this one.
  task.past.back().layer = "glaze";
  CHECK(outlook_counting_tests(task, point).risk == alone);
}

TEST_CASE("a mixture that moved the layer will rather do so again, as far as its luck is its own") {
  NextTestTask task = easy_task();
  const Hansen point{16, 7.5, 8};
  const CandidateOutlook alone = outlook_of(task, point);
  task.past.push_back(past(point, true, false));
  CHECK(outlook_counting_tests(task, point).effect == alone.effect);
  task.settings.luck_of_mixture = 0.5;
  const CandidateOutlook again = outlook_counting_tests(task, point);
  CHECK(again.effect > alone.effect);
  CHECK(again.effect <= 1);
  CHECK(again.good > alone.good);
  CHECK(again.risk == alone.risk);
  // Once it failed, it counts by the spheres alone.
  task.past.push_back(past(point, false, false));
  CHECK(outlook_counting_tests(task, point).effect == alone.effect);
}

TEST_CASE("while the readings fit badly every mixture passes at the edge first") {
  NextTestTask task = easy_task();
  task.settings.most_at_edge = 5;
  REQUIRE(choose_next_test(task).step == NextStep::try_mixture);
  // Three harmless mixtures that reacted at the edge: the paint is not what it was held for.
  for (const Hansen& point : {Hansen{15, 0, 0}, Hansen{15, 1.5, 0}, Hansen{15.7, 0, 0}})
    task.kept[0].belief.learn({point, match_of_original(2, 0.06), 1, true});
  REQUIRE(surprise_of(task) > task.settings.surprised_at);
  const NextTest next = choose_next_test(task);
  CHECK(next.is_surprised);
  CHECK(next.step != NextStep::try_mixture);
}

TEST_CASE("mixtures that come to harm while they dry are passed over, and counted") {
  NextTestTask task = easy_task();
  const NextTest first = choose_next_test(task);
  const std::size_t best = first.mixture->candidate.value();
  const Hansen harmful{17, 9, 14};
  const NextTest next =
      choose_next_test(task, [&](std::size_t candidate, const std::function<bool(const Hansen&)>& is_beyond) {
        return candidate == best && is_beyond(harmful);
      });
  REQUIRE(next.step == NextStep::try_mixture);
  CHECK(next.mixture->candidate != best);
  CHECK(next.drifting == 1);
  // What it comes to decides, not that it drifts.
  const NextTest same = choose_next_test(task, [](std::size_t, const std::function<bool(const Hansen&)>& is_beyond) {
    return is_beyond({15, 0, 0});
  });
  CHECK(same.mixture->candidate == best);
}
