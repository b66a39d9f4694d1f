#include "core/answers/next_answer.hpp"

#include <algorithm>

namespace gentlest {

namespace {

constexpr double least_chance = 0.5;       // below it nothing is called found
constexpr std::size_t most_successes = 3;  // asked for while the chance stays below
constexpr double cap_of_two = 0.5;         // two rungs at once: half the risk of one

struct Chooser {
  const Plan& plan;
  const Conduct& conduct;
  const NextTestTask& task;

  NextAnswer answer(NextKind kind, Rule rule) const {
    NextAnswer next;
    next.kind = kind;
    next.rule = rule;
    return next;
  }

  // The layers that a swab there touches: the passage's own, and those that are no passage.
  bool is_under(const KeptBelief& kept, const OpenTest& test) const {
    return std::any_of(plan.layers.begin(), plan.layers.end(), [&](const PlannedLayer& layer) {
      return layer.name == kept.name && (layer.passage_of.empty() || layer.name == test.passage);
    });
  }

  CandidateOutlook outlook_at(const OpenTest& test) const {
    NextTestTask under{{}, task.target, {}, {}, task.past, task.settings};
    for (const KeptBelief& kept : task.kept)
      if (is_under(kept, test)) under.kept.push_back(kept);
    return outlook_counting_tests(under, mix(test.mixture));
  }

  double cap_of(const OpenTest& test) const {
    const double cap = test.place == Place::edge ? task.settings.edge_risk : task.settings.passed_risk;
    return test.purpose == Purpose::climb_two ? cap_of_two * cap : cap;
  }

  // The first that is gentle enough; what was passed over is kept.
  bool take_first(NextAnswer& next) const {
    for (const OpenTest& test : conduct.open) {
      CandidateOutlook outlook = outlook_at(test);
      const double cap = cap_of(test);
      if (outlook.risk > cap) {
        next.too_risky.push_back({test, outlook.risk, cap, outlook.riskiest});
        continue;
      }
      next.kind = NextKind::test;
      next.rule = test.rule;
      next.test = test;
      next.mixture = test.mixture;
      next.outlook = outlook;
      return true;
    }
    return false;
  }

  void stand_by(NextAnswer& next, const WorkingMixture& working) const {
    next.mixture = working.mixture;
    next.outlook = outlook_counting_tests(task, mix(working.mixture));
    const double chance = next.outlook->effect * (1 - next.outlook->risk);
    next.kind = chance >= least_chance ? NextKind::found : NextKind::unsure;
    next.rule = chance >= least_chance ? Rule::works_everywhere : Rule::not_by_luck;
  }

  NextAnswer choose() const {
    if (conduct.end) return answer(NextKind::ended, conduct.end->rule);
    if (!task.target) return answer(NextKind::not_judged, Rule::no_window_last);
    const WorkingMixture* working = working_now(conduct);
    const bool is_used_up = static_cast<int>(conduct.tests.size()) >= task.settings.most_tests;
    NextAnswer next = answer(NextKind::no_window, Rule::no_window_last);
    if (working) next.working = *working;
    if (!is_used_up && take_first(next)) return next;
    if (!working) {
      if (is_used_up) next.kind = NextKind::tests_used_up;
      return next;
    }
    stand_by(next, *working);
    if (next.kind == NextKind::found || is_used_up || working->tests.size() >= most_successes) return next;
    // Believed below one half: another spot before anything is called found.
    next.kind = NextKind::test;
    next.test =
        OpenTest{working->step,        working->mixture, Place::picture, conduct.tests[working->tests.front()].passage,
                 Purpose::second_spot, Rule::not_by_luck};
    return next;
  }
};

}  // namespace

NextAnswer choose_next(const Plan& plan, const Conduct& conduct, const NextTestTask& task) {
  NextAnswer next = Chooser{plan, conduct, task}.choose();
  next.is_surprised = task.target && surprise_of(task) > task.settings.surprised_at;
  return next;
}

}  // namespace gentlest
