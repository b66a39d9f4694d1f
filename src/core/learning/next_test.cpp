#include "gentlest/learning/next_test.hpp"

#include "core/learning/candidates.hpp"

#include <algorithm>

namespace gentlest {

namespace {

bool has_worked(const PastTest& test, const NextTestSettings& set) {
  return !test.at_edge && test.removal.value_or(0) >= set.effect_level && left_original(test);
}

double promise(const CandidateOutlook& one) {
  return one.effect * (1 - one.risk);
}

std::vector<std::string> untested_passages(const NextTestTask& task, const Hansen& point) {
  std::vector<std::string> untested;
  for (const std::string& passage : task.passages)
    if (std::none_of(task.past.begin(), task.past.end(), [&](const PastTest& test) {
          return test.passage == passage && !test.at_edge && left_original(test) && is_same(test.mixture.point, point);
        }))
      untested.push_back(passage);
  return untested;
}

struct Working {
  CandidateOutlook outlook;
  std::size_t test;  // position in the past
};

// Of the mixtures that worked, the one most likely truly good.
std::optional<Working> best_working(const NextTestTask& task) {
  std::optional<Working> best;
  for (const PastTest& test : task.past) {
    if (!has_worked(test, task.settings)) continue;
    const bool harmed_elsewhere = std::any_of(task.past.begin(), task.past.end(), [&](const PastTest& other) {
      return !other.at_edge && is_same(other.mixture.point, test.mixture.point) && other.original.value_or(0) > 0;
    });
    if (harmed_elsewhere) continue;
    CandidateOutlook outlook = outlook_of(task, test.mixture);
    for (std::size_t i = 0; i < task.candidates.size(); ++i)
      if (is_same(task.candidates[i], test.mixture.point)) outlook.candidate = i;
    const auto position = static_cast<std::size_t>(&test - task.past.data());
    if (!best || outlook.good > best->outlook.good) best = Working{outlook, position};
  }
  return best;
}

NextTest stop_found(const NextTestTask& task, const Working& working) {
  NextTest next;
  next.mixture = working.outlook;
  next.worked = working.test;
  next.untested = untested_passages(task, working.outlook.point);
  if (!next.untested.empty()) {
    next.step = NextStep::try_passage;
    next.passage = next.untested.front();
    next.reason = NextReason::passage_untested;
    return next;
  }
  next.step = NextStep::found;
  next.reason = NextReason::worked;
  return next;
}

NextTest stop(NextStep step, NextReason reason) {
  NextTest next;
  next.step = step;
  next.reason = reason;
  return next;
}

long count_confirming(const NextTestTask& task) {
  const std::vector<PastTest>& past = task.past;
  const auto first =
      std::find_if(past.begin(), past.end(), [&](const PastTest& t) { return has_worked(t, task.settings); });
  return first == past.end() ? 0 : std::count_if(first + 1, past.end(), [](const PastTest& t) { return !t.at_edge; });
}

// A mixture worked: be surer of it, or stop.
NextTest go_on_after_success(const NextTestTask& task, Choice& choice, const Working& working) {
  const NextTestSettings& set = task.settings;
  const bool is_enough = working.outlook.good >= set.sure || count_confirming(task) >= set.most_confirming;
  if (is_enough) return stop_found(task, working);
  choice.judge_good();
  const double limit = set.confirming_risk;
  const auto surest = choice.best([](const CandidateOutlook& one) { return one.good; }, limit);
  if (!surest || surest->good <= working.outlook.good) return stop_found(task, working);
  NextTest next;
  next.step = NextStep::confirm;
  next.mixture = surest;
  next.risk_limit = limit;
  next.reason = NextReason::likeliest_each_time;
  next.worked_good = working.outlook.good;
  return next;
}

long edge_tests_left(const NextTestTask& task) {
  return task.settings.most_at_edge -
         std::count_if(task.past.begin(), task.past.end(), [](const PastTest& t) { return t.at_edge; });
}

NextTest edge_first(const CandidateOutlook& mixture, NextReason reason) {
  NextTest next;
  next.step = NextStep::try_at_edge;
  next.mixture = mixture;
  next.reason = reason;
  return next;
}

// Where the first risk limit leaves little to try: the mixture that would promise most, were the paint to bear it.
std::optional<CandidateOutlook> worth_an_edge(const NextTestTask& task, Choice& choice, double promised) {
  const NextTestSettings& set = task.settings;
  if (edge_tests_left(task) <= 0 || promised >= set.edge_below) return std::nullopt;
  const auto open = choice.best(promise, set.edge_risk, Choice::Place::edge);
  if (!open || open->risk <= set.risk_limits.front() || promise(*open) < promised + set.edge_gain) return std::nullopt;
  return open;
}

// Of the mixtures that passed at the edge and were not yet put on the picture, the one that promises most there.
std::optional<CandidateOutlook> passed_and_open(const NextTestTask& task, Choice& choice) {
  return choice.best(promise, task.settings.passed_risk, Choice::Place::picture_after_edge);
}

// How far a search may go: less far while what was held before is doubted.
struct Bounds {
  double least_promise, most_risk, edge_needed_above;
};

Bounds bounds_of(const NextTestSettings& set, bool is_surprised) {
  if (is_surprised) return {set.promise_when_surprised, set.risk_when_surprised, set.edge_needed_when_surprised};
  return {set.least_promise, set.risk_limits.back(), set.edge_needed_above};
}

// Under the lowest risk limit at which anything promises enough, the mixture of the most promise for its risk. Without
// one: the stop, with the mixture that came nearest.
NextTest search_on_picture(const NextTestTask& task, Choice& choice, const Bounds& bounds) {
  const NextTestSettings& set = task.settings;
  const auto worth = [&](const CandidateOutlook& one) { return promise(one) / (set.price_of_test + one.risk); };
  NextTest next;
  for (const double limit : set.risk_limits) {
    if (limit > bounds.most_risk) break;
    const auto allowed = choice.best(worth, limit);
    if (!allowed) continue;
    next.mixture = allowed;
    if (promise(*allowed) < bounds.least_promise) continue;
    next.step = NextStep::try_mixture;
    next.risk_limit = limit;
    next.reason = NextReason::promises_most;
    return next;
  }
  next.reason = NextReason::nothing_promises;
  next.least_promise = bounds.least_promise;
  next.most_risk = bounds.most_risk;
  return next;
}

NextTest put_on_picture(const CandidateOutlook& passed, double limit) {
  NextTest next;
  next.step = NextStep::try_mixture;
  next.mixture = passed;
  next.risk_limit = limit;
  next.reason = NextReason::passed_at_edge;
  return next;
}

NextTest search_on(const NextTestTask& task, Choice& choice, bool is_surprised) {
  const NextTestSettings& set = task.settings;
  const Bounds bounds = bounds_of(set, is_surprised);
  NextTest next = search_on_picture(task, choice, bounds);
  const bool proposes = next.step == NextStep::try_mixture;
  const double gentle = proposes && next.risk_limit == set.risk_limits.front() ? promise(*next.mixture) : 0;
  const auto passed = passed_and_open(task, choice);
  if (const auto edge = worth_an_edge(task, choice, std::max(gentle, passed ? promise(*passed) : 0)))
    return edge_first(*edge, NextReason::promises_more_at_edge);
  if (passed && promise(*passed) >= bounds.least_promise && promise(*passed) > gentle)
    return put_on_picture(*passed, set.passed_risk);
  if (proposes && next.mixture->risk > bounds.edge_needed_above && edge_tests_left(task) > 0 &&
      !has_passed_at_edge(task, next.mixture->point))
    return edge_first(*next.mixture, NextReason::risky_best);
  return next;
}

}  // namespace

NextTestSettings settings_within(double risk_limit, bool has_borrowed_curve) {
  NextTestSettings settings;
  const double factor = risk_limit / settings.risk_limits.back();
  for (double& limit : settings.risk_limits) limit *= factor;
  settings.risk_limits.back() = risk_limit;
  for (double* one :
       {&settings.risk_when_surprised, &settings.confirming_risk, &settings.passed_risk, &settings.edge_needed_above})
    *one *= factor;
  if (has_borrowed_curve) settings.luck_of_mixture = 0.8;
  return settings;
}

double surprise_of(const NextTestTask& task) {
  Surprise sum = task.target->surprise();
  for (const KeptBelief& kept : task.kept) {
    sum.excess += kept.belief.surprise().excess;
    sum.variance += kept.belief.surprise().variance;
  }
  return sum.in_deviations();
}

NextTest choose_next_test(const NextTestTask& task, const DriftQuestion& drifts_to) {
  const auto harmed = std::count_if(task.past.begin(), task.past.end(), [](const PastTest& test) {
    return !test.at_edge && test.original.value_or(0) > 0;
  });
  const std::optional<Working> working = best_working(task);
  if (harmed >= 2 && !working) return stop(NextStep::closed, NextReason::harmed_twice);
  const bool is_used_up = static_cast<int>(task.past.size()) >= task.settings.most_tests;
  if (working && (harmed >= 2 || is_used_up)) return stop_found(task, *working);
  if (is_used_up) {
    NextTest next = stop(NextStep::tests_used_up, NextReason::tests_made);
    next.tests_made = task.past.size();
    return next;
  }
  Choice choice(task, drifts_to);
  const bool is_surprised = surprise_of(task) > task.settings.surprised_at;
  NextTest next = working ? go_on_after_success(task, choice, *working) : search_on(task, choice, is_surprised);
  next.is_surprised = is_surprised;
  next.drifting = choice.drifting();
  return next;
}

}  // namespace gentlest
