// The choice of the next test against the same rules written down plainly: every candidate judged by all particles, no
// rough figures, no ranking. Hundreds of invented paintings with invented pasts.
#include "gentlest/learning/next_test.hpp"

#include "small_shelf.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

using namespace gentlest;
using test::Dice;

namespace {

const ReadingCurve& curve() {
  static const ReadingCurve one([](double RED) {
    LevelChances at_least{1, 0, 0, 0, 0};
    const std::array<double, 4> places = {1.15, 1.05, 1.0, 0.9};
    for (std::size_t i = 0; i < 4; ++i) at_least[i + 1] = 1 / (1 + std::exp((RED - places[i]) / 0.06));
    return at_least;
  });
  return one;
}

LayerBelief invented_belief(Dice& dice, const Hansen& near) {
  LearningSettings settings;
  settings.particles = 200;
  settings.rough = 200;  // the rough figures are then those of all particles
  settings.seed = static_cast<std::uint64_t>(dice.pick(1, 1000000));
  const double spread = dice.between(0.2, 2.0);
  const Hansen centre{near.dD + dice.between(-0.7, 0.7), near.dP + dice.between(-2, 2), near.dH + dice.between(-2, 2)};
  return LayerBelief({{{{{centre, dice.between(3, 7)}, {0.4 * spread, spread, spread}, 0.5 * spread}, 1, "x"}}},
                     curve(), settings);
}

std::optional<bool> invented_answer(Dice& dice, int yes_in_ten) {
  const int luck = dice.pick(0, 9);
  if (luck == 9) return std::nullopt;
  return luck < yes_in_ten;
}

PastTest invented_past(Dice& dice, const std::vector<Hansen>& candidates) {
  PastTest past;
  past.point = candidates[static_cast<std::size_t>(dice.pick(0, static_cast<int>(candidates.size()) - 1))];
  if (dice.pick(0, 4) == 0) past.point.dP += 0.03;  // the same mixture, measured a little differently
  if (dice.pick(0, 4) == 0) past.point.dP += 0.2;   // another one
  past.at_edge = dice.pick(0, 2) == 0;
  past.passage = std::array<const char*, 3>{"", "blue", "red"}[static_cast<std::size_t>(dice.pick(0, 2))];
  past.layer = std::array<const char*, 3>{"", "paint", "glaze"}[static_cast<std::size_t>(dice.pick(0, 2))];
  past.moved = invented_answer(dice, dice.pick(0, 3) == 0 ? 8 : 2);
  past.affected = invented_answer(dice, 1);
  return past;
}

// A layer that no mixture comes near, and that did not do what it was held for: it only surprises.
KeptBelief surprising_layer(Dice& dice) {
  const Hansen far{26, 45, 60};
  LayerBelief belief = invented_belief(dice, far);
  for (int i = dice.pick(1, 3); i > 0; --i) belief.learn({far, match_of_original(0, 0.06), 1, false});
  return {"frame", belief};
}

NextTestTask invented_task(Dice& dice) {
  std::vector<Hansen> candidates;
  for (int i = 0; i < 20; ++i) {
    const double dD = dice.between(15, 18);
    const double dP = dice.between(0, 12);
    candidates.push_back({dD, dP, dice.between(0, 16)});
  }
  NextTestTask task{candidates, invented_belief(dice, {16.5, 4, 6}), {}, {}, {}, {}};
  if (dice.pick(0, 9) > 0) task.kept.push_back({"paint", invented_belief(dice, {17, 9, 11})});
  if (dice.pick(0, 1) > 0) task.kept.push_back({"glaze", invented_belief(dice, {16, 8, 8})});
  if (dice.pick(0, 2) == 0) task.kept.push_back(surprising_layer(dice));
  if (dice.pick(0, 1) > 0) task.passages = {"blue", "red"};
  const int tests = dice.pick(0, 5);
  for (int i = 0; i < tests; ++i) task.past.push_back(invented_past(dice, candidates));
  NextTestSettings& set = task.settings;
  set.luck_of_mixture = dice.pick(0, 2) * 0.5;
  set.most_at_edge = dice.pick(0, 3);
  set.most_tests = dice.pick(3, 8);
  set.step = std::array<double, 3>{0.2, 0.5, 1}[static_cast<std::size_t>(dice.pick(0, 2))];
  set.sure = dice.between(0.3, 0.95);
  set.most_confirming = dice.pick(1, 3);
  set.passed_risk = dice.between(0.03, 0.3);
  set.confirming_risk = dice.between(0.02, 0.2);
  return task;
}

// The rules of next_test.hpp, word by word.
class Plain {
 public:
  Plain(const NextTestTask& task, const DriftQuestion& drifts) : task_(task), set_(task.settings), drifts_(drifts) {}

  static bool same(const Hansen& a, const Hansen& b) { return distance_Ra(a, b) < 0.05; }
  static bool unharmed(const PastTest& test) { return test.affected.has_value() && !test.affected.value(); }
  static bool harmed(const PastTest& test) { return test.affected.has_value() && test.affected.value(); }

  CandidateOutlook outlook(const Hansen& point) const {
    bool ever = false, always = true;
    for (const PastTest& test : task_.past)
      if (!test.at_edge && test.moved && same(test.point, point)) (*test.moved ? ever : always) = *test.moved;
    CandidateOutlook out;
    out.effect = task_.target->chance(point, set_.effect_level);
    out.good = task_.target->share_nearer(point, curve().RED_where(set_.effect_level, set_.good_effect));
    if (ever && always && set_.luck_of_mixture > 0) {
      const double most = 1 - ReadingNoise{}.slip;
      if (out.effect < most) out.effect += set_.luck_of_mixture * (most - out.effect);
      if (out.good < most) out.good += set_.luck_of_mixture * (most - out.good);
    }
    for (const KeptBelief& kept : task_.kept) {
      double risk = kept.belief.chance(point, kept.risk_level);
      out.good *= 1 - kept.belief.share_nearer(point, curve().RED_where(kept.risk_level, set_.good_risk));
      if (set_.luck_of_mixture > 0 && passed(point, kept.name))
        risk = (1 - set_.luck_of_mixture) * risk +
               set_.luck_of_mixture * kept.belief.chance_though_passed(point, kept.risk_level);
      out.risk = std::max(out.risk, risk);
    }
    return out;
  }

  bool passed(const Hansen& point, const std::string& layer) const {
    for (const PastTest& test : task_.past)
      if (test.at_edge && unharmed(test) && same(test.point, point) &&
          (layer.empty() || test.layer.empty() || test.layer == layer))
        return true;
    return false;
  }

  bool open_on_picture(const Hansen& point) const {
    for (const PastTest& test : task_.past)
      if (same(test.point, point) && (!test.at_edge || harmed(test))) return false;
    return true;
  }
  bool open_at_edge(const Hansen& point) const {
    for (const PastTest& test : task_.past)
      if (same(test.point, point)) return false;
    return true;
  }

  bool too_bold(const Hansen& point) const {
    double boldest = 0;
    for (const PastTest& test : task_.past)
      if (!test.at_edge) boldest = std::max(boldest, task_.target->chance_before(test.point, set_.effect_level));
    return task_.target->chance_before(point, set_.effect_level) > boldest + set_.step;
  }

  bool dries_beyond(std::size_t candidate, double limit) const {
    if (!drifts_) return false;
    return drifts_(candidate, [&](const Hansen& point) {
      for (const KeptBelief& kept : task_.kept)
        if (kept.belief.chance(point, kept.risk_level) > limit) return true;
      return false;
    });
  }

  enum class Where { picture, passed, edge };

  template <class Score>
  std::optional<CandidateOutlook> best(const Score& score, double limit, Where where) const {
    std::optional<CandidateOutlook> found;
    for (std::size_t i = 0; i < task_.candidates.size(); ++i) {
      const Hansen& point = task_.candidates[i];
      CandidateOutlook one = outlook(point);
      one.candidate = i;
      if (one.risk > limit || too_bold(point)) continue;
      // The first look is by the spheres alone; what passed at the edge is asked of apart.
      if (where != Where::passed && outlook_of(task_, point).risk > 1.5 * limit + 0.005) continue;
      if (!(where == Where::edge ? open_at_edge(point) : open_on_picture(point))) continue;
      if (where == Where::passed && !passed(point, "")) continue;
      const double dry =
          where == Where::edge ? std::max(set_.edge_risk, set_.risk_limits.back()) : set_.risk_limits.back();
      if (where != Where::passed && dries_beyond(i, dry)) continue;
      if (!found || score(one) > score(*found) + 1e-9) found = one;  // last bits decide nothing
    }
    return found;
  }

  NextTest choose() const {
    NextTest next;
    const auto harms = std::count_if(task_.past.begin(), task_.past.end(),
                                     [](const PastTest& test) { return !test.at_edge && harmed(test); });
    const auto working = best_working();
    const bool used_up = static_cast<int>(task_.past.size()) >= set_.most_tests;
    if (harms >= 2 || used_up) {
      if (working) return stop_with(*working);
      next.step = harms >= 2 ? NextStep::closed : NextStep::tests_used_up;
      return next;
    }
    next = working ? after_success(*working) : search();
    next.is_surprised = is_surprised();
    return next;
  }

 private:
  bool is_surprised() const { return surprise_of(task_) > set_.surprised_at; }

  static double promise(const CandidateOutlook& one) { return one.effect * (1 - one.risk); }

  bool worked(const PastTest& test) const { return !test.at_edge && test.moved && *test.moved && unharmed(test); }

  std::optional<std::size_t> best_working() const {
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < task_.past.size(); ++i) {
      const PastTest& test = task_.past[i];
      bool harm = false;
      for (const PastTest& other : task_.past)
        harm = harm || (!other.at_edge && harmed(other) && same(other.point, test.point));
      if (!worked(test) || harm) continue;
      if (!best || outlook(test.point).good > outlook(task_.past[*best].point).good) best = i;
    }
    return best;
  }

  NextTest stop_with(std::size_t test) const {
    NextTest next;
    next.worked = test;
    for (const std::string& passage : task_.passages) {
      bool tested = false;
      for (const PastTest& other : task_.past)
        tested = tested || (!other.at_edge && other.passage == passage && unharmed(other) &&
                            same(other.point, task_.past[test].point));
      if (!tested) next.untested.push_back(passage);
    }
    next.step = next.untested.empty() ? NextStep::found : NextStep::try_passage;
    next.mixture = outlook(task_.past[test].point);
    return next;
  }

  NextTest after_success(std::size_t test) const {
    int since = -1;
    for (const PastTest& other : task_.past) {
      if (since >= 0 && !other.at_edge) ++since;
      if (since < 0 && worked(other)) since = 0;
    }
    const double good = outlook(task_.past[test].point).good;
    if (good >= set_.sure || since >= set_.most_confirming) return stop_with(test);
    const auto surest =
        best([](const CandidateOutlook& one) { return one.good; }, set_.confirming_risk, Where::picture);
    if (!surest || surest->good <= good) return stop_with(test);
    NextTest next;
    next.step = NextStep::confirm;
    next.mixture = surest;
    next.risk_limit = set_.confirming_risk;
    return next;
  }

  NextTest search() const {
    NextTest next;
    const bool doubt = is_surprised();
    const double least_promise = doubt ? set_.promise_when_surprised : set_.least_promise;
    const double most_risk = doubt ? set_.risk_when_surprised : set_.risk_limits.back();
    const double edge_above = doubt ? set_.edge_needed_when_surprised : set_.edge_needed_above;
    for (const double limit : set_.risk_limits) {
      if (limit > most_risk) continue;
      const auto found =
          best([&](const CandidateOutlook& one) { return promise(one) / (set_.price_of_test + one.risk); }, limit,
               Where::picture);
      if (found) next.mixture = found;
      if (!found || promise(*found) < least_promise) continue;
      next.step = NextStep::try_mixture;
      next.risk_limit = limit;
      break;
    }
    const bool proposes = next.step == NextStep::try_mixture;
    const double gentle = proposes && next.risk_limit == set_.risk_limits.front() ? promise(*next.mixture) : 0;
    const auto after_edge = best(promise, set_.passed_risk, Where::passed);
    const double promised = std::max(gentle, after_edge ? promise(*after_edge) : 0);
    int left = set_.most_at_edge;
    for (const PastTest& test : task_.past) left -= test.at_edge ? 1 : 0;
    const auto edge = best(promise, set_.edge_risk, Where::edge);
    if (left > 0 && promised < set_.edge_below && edge && edge->risk > set_.risk_limits.front() &&
        promise(*edge) >= promised + set_.edge_gain)
      return at_edge(*edge);
    if (after_edge && promise(*after_edge) >= least_promise && promise(*after_edge) > gentle) {
      next.step = NextStep::try_mixture;
      next.mixture = after_edge;
      next.risk_limit = set_.passed_risk;
      return next;
    }
    if (proposes && next.mixture->risk > edge_above && left > 0 &&
        !passed(task_.candidates[*next.mixture->candidate], ""))
      return at_edge(*next.mixture);
    return next;
  }

  static NextTest at_edge(const CandidateOutlook& mixture) {
    NextTest next;
    next.step = NextStep::try_at_edge;
    next.mixture = mixture;
    return next;
  }

  const NextTestTask& task_;
  const NextTestSettings& set_;
  const DriftQuestion& drifts_;
};

}  // namespace

TEST_CASE("the next test is the one that the rules name, whatever the painting and its past") {
  Dice dice(20261126);
  std::set<NextStep> steps;
  int surprised = 0;
  for (int round = 0; round < 1500; ++round) {
    const NextTestTask task = invented_task(dice);
    // Half of the paintings: some mixtures come to another place while they dry.
    DriftQuestion drifts;
    const Hansen end{dice.between(15, 18), dice.between(0, 12), dice.between(0, 16)};
    if (round % 2 == 0)
      drifts = [end](std::size_t candidate, const std::function<bool(const Hansen&)>& is_beyond) {
        return candidate % 3 == 0 && is_beyond(end);
      };
    const Plain plain(task, drifts);
    const NextTest expected = plain.choose();
    const NextTest next = choose_next_test(task, drifts);
    steps.insert(next.step);
    INFO("painting " << round);
    REQUIRE(next.step == expected.step);
    surprised += next.is_surprised ? 1 : 0;
    CHECK(next.is_surprised == expected.is_surprised);
    CHECK(next.risk_limit == expected.risk_limit);
    CHECK(next.worked == expected.worked);
    CHECK(next.untested == expected.untested);
    CHECK(
        next.passage ==
        (expected.untested.empty() || next.step != NextStep::try_passage ? std::string() : expected.untested.front()));
    REQUIRE(next.mixture.has_value() == expected.mixture.has_value());
    if (!next.mixture) continue;
    if (!next.worked) CHECK(next.mixture->candidate == expected.mixture->candidate);
    CHECK(std::abs(next.mixture->effect - expected.mixture->effect) < 1e-6);
    CHECK(std::abs(next.mixture->risk - expected.mixture->risk) < 1e-6);
    CHECK(std::abs(next.mixture->good - expected.mixture->good) < 1e-6);
  }
  CHECK(surprised > 100);
  CHECK(steps.size() == 8);  // every way to go on or to stop came up
}
