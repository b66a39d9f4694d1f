#include "core/answers/next_answer.hpp"

#include <algorithm>

namespace gentlest {

namespace {

constexpr std::size_t most_successes = 3;  // asked for while the chance stays below
constexpr double cap_of_two = 0.5;         // two rungs at once: half the risk of one

struct Chooser {
  const Plan& plan;
  const Conduct& conduct;
  const NextTestTask& task;
  bool is_surprised = false;

  NextAnswer answer(NextKind kind, Rule rule) const {
    NextAnswer next;
    next.kind = kind;
    next.rule = rule;
    return next;
  }

  // The layers that a swab there touches: those that are no passage, and the passage itself.
  std::vector<std::string> touched_by(const OpenTest& test) const {
    std::vector<std::string> names;
    for (const PlannedLayer& layer : plan.layers)
      if (layer.role == Role::keep && (layer.passage_of.empty() || layer.name == test.passage))
        names.push_back(layer.name);
    return names;
  }

  double cap_of(const OpenTest& test) const {
    const NextTestSettings& set = task.settings;
    double cap = test.place == Place::edge ? set.edge_risk : set.picture_risk;
    if (is_surprised) cap = test.place == Place::edge ? set.edge_risk_when_surprised : set.picture_risk_when_surprised;
    return test.purpose == Purpose::climb_two ? cap_of_two * cap : cap;
  }

  // What it is believed to do, where its risk keeps to the cap; else nothing, and the test is kept as too risky.
  std::optional<CandidateOutlook> within_cap(const OpenTest& test, NextAnswer& next) const {
    CandidateOutlook outlook =
        outlook_of(task, swab_mixture_of(test.mixture), test.place == Place::edge, touched_by(test));
    const double cap = cap_of(test);
    next.cap = cap;
    if (outlook.risk <= cap) return outlook;
    next.too_risky.push_back({test, outlook.risk, cap, outlook.riskiest});
    return std::nullopt;
  }

  // The gentlest rung of the ladder is always worth a swab, and so is what follows a success. Where no layer to keep
  // has a sphere nothing is weighed against the promise.
  bool asks_promise(const OpenTest& test) const {
    if (task.kept.empty() || !test.step || test.purpose >= Purpose::step_back) return false;
    const PlanStep& step = conduct.steps[*test.step];
    return step.line > 0 || step.height > 1;
  }

  // Most that a rung not closed on its way up is believed to be good for, on the picture.
  double promise_of(const OpenTest& test) const {
    const PlanStep& from = conduct.steps[*test.step];
    double most = 0;
    for (std::size_t i = 0; i < conduct.steps.size(); ++i) {
      const PlanStep& step = conduct.steps[i];
      if (step.line != from.line || step.height < from.height || closure_of(conduct, i)) continue;
      most = std::max(most, outlook_of(task, swab_mixture_of(step.mixture)).good);
    }
    return most;
  }

  // The first that is gentle enough; what was passed over is kept.
  bool take_first(NextAnswer& next) const {
    for (const OpenTest& test : conduct.open) {
      const std::optional<CandidateOutlook> outlook = within_cap(test, next);
      if (!outlook) continue;
      if (const double promise = asks_promise(test) ? promise_of(test) : 1; promise < task.settings.least_promise) {
        next.too_little.push_back({test, promise, task.settings.least_promise});
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
    next.outlook = outlook_of(task, swab_mixture_of(working.mixture));
    const bool is_found = next.outlook->good >= task.settings.found_at;
    next.kind = is_found ? NextKind::found : NextKind::unsure;
    next.rule = is_found ? Rule::works_everywhere : Rule::not_by_luck;
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
    take_another_spot(next, *working);
    return next;
  }

  // Believed below one half: another spot before anything is called found, where it is open and gentle enough.
  void take_another_spot(NextAnswer& next, const WorkingMixture& working) const {
    const std::string& before = conduct.tests[working.tests.front()].passage;
    const PassageState* there = nullptr;
    for (const PassageState& one : conduct.passages)
      if (!is_closed(one) && (!there || one.name == before)) there = &one;
    if (!there || closed_by(plan, conduct, working.mixture, there->layer)) return;
    const OpenTest test{working.step, working.mixture,      Place::picture,
                        there->name,  Purpose::second_spot, Rule::not_by_luck};
    const std::optional<CandidateOutlook> outlook = within_cap(test, next);
    if (!outlook) return;
    next.kind = NextKind::test;
    next.test = test;
    next.outlook = outlook;
  }
};

}  // namespace

NextAnswer choose_next(const Plan& plan, const Conduct& conduct, const NextTestTask& task) {
  const bool is_surprised = task.target && surprise_of(task) > task.settings.surprised_at;
  NextAnswer next = Chooser{plan, conduct, task, is_surprised}.choose();
  next.is_surprised = is_surprised;
  return next;
}

}  // namespace gentlest
