#include "gentlest/next_test.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numeric>
#include <set>
#include <tuple>

namespace gentlest {

namespace {

constexpr std::size_t refined = 24;      // candidates that are judged by all particles, of each ranking
constexpr double nearest_repeat = 0.05;  // MPa^0.5; closer than this two mixtures count as the same

bool is_same(const Hansen& a, const Hansen& b) {
  return distance_Ra(a, b) < nearest_repeat;
}

bool has_worked(const PastTest& test) {
  return !test.at_edge && test.moved.value_or(false) && test.affected.has_value() && !*test.affected;
}

// An empty name asks for any layer.
bool has_passed_at_edge(const NextTestTask& task, const Hansen& point, const std::string& layer = {}) {
  return std::any_of(task.past.begin(), task.past.end(), [&](const PastTest& test) {
    return test.at_edge && (layer.empty() || test.layer.empty() || test.layer == layer) && is_same(test.point, point) &&
           test.affected.has_value() && !*test.affected;
  });
}

// Moved the layer each time that it was put on the picture.
bool has_moved(const NextTestTask& task, const Hansen& point) {
  bool moved = false;
  for (const PastTest& test : task.past) {
    if (test.at_edge || !test.moved.has_value() || !is_same(test.point, point)) continue;
    if (!*test.moved) return false;
    moved = true;
  }
  return moved;
}

double harmful_RED(const KeptBelief& kept, const NextTestSettings& set) {
  return kept.belief.curve().RED_where(set.risk_level, set.good_risk);
}

// By the spheres, and as far as luck is the mixture's own by what it did: at the edge to the layers that `passed`
// names, and to the layer to remove.
CandidateOutlook outlook_with(const NextTestTask& task, const Hansen& point,
                              const std::function<bool(const std::string& layer)>& passed, bool moved) {
  const NextTestSettings& set = task.settings;
  const auto closer_to = [&](double goal, double chance) {
    return std::max(chance, chance + set.luck_of_mixture * (goal - chance));
  };
  CandidateOutlook outlook;
  outlook.counts_tests = moved;
  outlook.effect = task.target.chance(point, set.effect_level);
  outlook.good = task.target.share_nearer(point, task.target.curve().RED_where(set.effect_level, set.good_effect));
  if (moved) {
    outlook.effect = closer_to(1 - ReadingNoise{}.slip, outlook.effect);
    outlook.good = closer_to(1 - ReadingNoise{}.slip, outlook.good);
  }
  for (const KeptBelief& kept : task.kept) {
    double risk = kept.belief.chance(point, set.risk_level);
    outlook.good *= 1 - kept.belief.share_nearer(point, harmful_RED(kept, set));
    if (passed(kept.name)) {
      risk += set.luck_of_mixture * (kept.belief.chance_though_passed(point, set.risk_level) - risk);
      outlook.counts_tests = true;
    }
    if (!outlook.riskiest.empty() && risk <= outlook.risk) continue;
    outlook.risk = risk;
    outlook.riskiest = kept.name;
  }
  return outlook;
}

// The candidates as seen by the present beliefs: roughly for all, exactly for those that are looked at.
class Choice {
 public:
  explicit Choice(const NextTestTask& task) : task_(task), rough_(task.candidates.size()) {
    const NextTestSettings& set = task.settings;
    good_RED_ = task.target.curve().RED_where(set.effect_level, set.good_effect);
    for (std::size_t i = 0; i < rough_.size(); ++i) {
      const Hansen& point = task.candidates[i];
      rough_[i].candidate = i;
      rough_[i].effect = task.target.rough_chance(point, set.effect_level);
      for (const KeptBelief& kept : task.kept)
        rough_[i].risk = std::max(rough_[i].risk, kept.belief.rough_chance(point, set.risk_level));
    }
    for (const PastTest& test : task.past)
      if (!test.at_edge) boldest_ = std::max(boldest_, task.target.chance_before(test.point, set.effect_level));
  }

  // Chance of truly good, roughly; only the search for the surest mixture needs it.
  void judge_good() {
    for (CandidateOutlook& one : rough_) {
      const Hansen& point = task_.candidates[one.candidate];
      one.good = task_.target.rough_share_nearer(point, good_RED_);
      for (const KeptBelief& kept : task_.kept)
        one.good *= 1 - kept.belief.rough_share_nearer(point, harmful_RED(kept, task_.settings));
    }
  }

  using Score = std::function<double(const CandidateOutlook&)>;

  enum class Place { picture, picture_after_edge, edge };

  // The candidate of the highest score among those still open there, within the risk limit and the step.
  std::optional<CandidateOutlook> best(const Score& score, double risk_limit, Place place = Place::picture) {
    std::vector<std::pair<double, std::size_t>> order;
    for (const CandidateOutlook& one : rough_)
      // A little more than the limit: the rough figure may be off, and knows nothing of what passed at the edge.
      if (place == Place::picture_after_edge || one.risk <= 1.5 * risk_limit + 0.005)
        order.emplace_back(-score(one), one.candidate);
    std::sort(order.begin(), order.end());
    std::optional<CandidateOutlook> found;
    std::size_t looked_at = 0;
    for (const auto& [rank, candidate] : order) {
      if (looked_at == refined) break;
      const Hansen& point = task_.candidates[candidate];
      if (!is_open(point, place) || !is_within_step(point)) continue;
      ++looked_at;
      CandidateOutlook outlook = outlook_counting_tests(task_, point);
      outlook.candidate = candidate;
      if (outlook.risk > risk_limit || (found && score(outlook) <= score(*found))) continue;
      const double most =
          std::max(place == Place::edge ? task_.settings.edge_risk : 0, task_.settings.risk_limits.back());
      // What passed at the edge dried there too.
      if (place != Place::picture_after_edge && drifts_beyond(candidate, most)) continue;
      found = outlook;
    }
    return found;
  }

  // Candidates that were passed over because of what they become while they dry.
  std::size_t drifting() const { return drifting_.size(); }

 private:
  // The same mixture twice would mostly tell the same again, and one that reacted at the edge is not put on the
  // picture.
  bool is_open(const Hansen& point, Place place) const {
    if (place == Place::picture_after_edge && !has_passed_at_edge(task_, point)) return false;
    return std::none_of(task_.past.begin(), task_.past.end(), [&](const PastTest& test) {
      return is_same(test.point, point) && (!test.at_edge || place == Place::edge || test.affected.value_or(false));
    });
  }
  bool drifts_beyond(std::size_t candidate, double risk_limit) {
    if (!task_.drifts_to) return false;
    const bool beyond = task_.drifts_to(candidate, [&](const Hansen& point) {
      return std::any_of(task_.kept.begin(), task_.kept.end(), [&](const KeptBelief& kept) {
        return kept.belief.chance(point, task_.settings.risk_level) > risk_limit;
      });
    });
    if (beyond) drifting_.insert(candidate);
    return beyond;
  }
  bool is_within_step(const Hansen& point) const {
    return task_.target.chance_before(point, task_.settings.effect_level) <= boldest_ + task_.settings.step;
  }

  const NextTestTask& task_;
  std::vector<CandidateOutlook> rough_;
  double boldest_ = 0;
  double good_RED_ = 0;
  std::set<std::size_t> drifting_;
};

double promise(const CandidateOutlook& one) {
  return one.effect * (1 - one.risk);
}

std::vector<std::string> untested_passages(const NextTestTask& task, const Hansen& point) {
  std::vector<std::string> untested;
  for (const std::string& passage : task.passages)
    if (std::none_of(task.past.begin(), task.past.end(), [&](const PastTest& test) {
          return test.passage == passage && !test.at_edge && test.affected.has_value() && !*test.affected &&
                 is_same(test.point, point);
        }))
      untested.push_back(passage);
  return untested;
}

struct Working {
  CandidateOutlook outlook;
  Hansen point;
  std::size_t test;  // position in the past
};

// Of the mixtures that worked, the one most likely truly good.
std::optional<Working> best_working(const NextTestTask& task) {
  std::optional<Working> best;
  for (const PastTest& test : task.past) {
    if (!has_worked(test)) continue;
    const bool harmed_elsewhere = std::any_of(task.past.begin(), task.past.end(), [&](const PastTest& other) {
      return !other.at_edge && is_same(other.point, test.point) && other.affected.value_or(false);
    });
    if (harmed_elsewhere) continue;
    CandidateOutlook outlook = outlook_counting_tests(task, test.point);
    for (std::size_t i = 0; i < task.candidates.size(); ++i)
      if (is_same(task.candidates[i], test.point)) outlook.candidate = i;
    const auto position = static_cast<std::size_t>(&test - task.past.data());
    if (!best || outlook.good > best->outlook.good) best = Working{outlook, test.point, position};
  }
  return best;
}

NextTest stop_found(const NextTestTask& task, const Working& working) {
  NextTest next;
  next.mixture = working.outlook;
  next.worked = working.test;
  next.untested = untested_passages(task, working.point);
  if (!next.untested.empty()) {
    next.step = NextStep::try_passage;
    next.passage = next.untested.front();
    next.reason = fmt::format("it worked; {} was not tested yet, and one mixture must pass all colours", next.passage);
    return next;
  }
  next.step = NextStep::found;
  next.reason = fmt::format(
      "this mixture removed the layer and left the original as it was; chance that it keeps doing so: {:.0f} %",
      100 * working.outlook.good);
  return next;
}

NextTest stop(NextStep step, std::string reason, std::optional<CandidateOutlook> nearest = {}) {
  NextTest next;
  next.step = step;
  next.mixture = std::move(nearest);
  next.reason = std::move(reason);
  return next;
}

long count_confirming(const std::vector<PastTest>& past) {
  const auto first = std::find_if(past.begin(), past.end(), has_worked);
  return first == past.end() ? 0 : std::count_if(first + 1, past.end(), [](const PastTest& t) { return !t.at_edge; });
}

// A mixture worked: be surer of it, or stop.
NextTest go_on_after_success(const NextTestTask& task, Choice& choice, const Working& working) {
  const NextTestSettings& set = task.settings;
  const bool is_enough = working.outlook.good >= set.sure || count_confirming(task.past) >= set.most_confirming;
  if (is_enough) return stop_found(task, working);
  choice.judge_good();
  const double limit = set.confirming_risk;
  const auto surest = choice.best([](const CandidateOutlook& one) { return one.good; }, limit);
  if (!surest || surest->good <= working.outlook.good) return stop_found(task, working);
  NextTest next;
  next.step = NextStep::confirm;
  next.mixture = surest;
  next.risk_limit = limit;
  next.reason = fmt::format(
      "a mixture worked, which may have been luck; this one is the likeliest to work each time ({:.0f} % against "
      "{:.0f} %)",
      100 * surest->good, 100 * working.outlook.good);
  return next;
}

long edge_tests_left(const NextTestTask& task) {
  return task.settings.most_at_edge -
         std::count_if(task.past.begin(), task.past.end(), [](const PastTest& t) { return t.at_edge; });
}

NextTest edge_first(const CandidateOutlook& mixture, const char* reason) {
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
    next.reason =
        fmt::format("of the mixtures with a risk up to {:.0f} % it promises most for the least risk", 100 * limit);
    return next;
  }
  next.reason = fmt::format("no mixture offers a chance of {:.0f} % to move the layer at a risk up to {:.0f} %",
                            100 * bounds.least_promise, 100 * bounds.most_risk);
  return next;
}

NextTest put_on_picture(const CandidateOutlook& passed, double limit) {
  NextTest next;
  next.step = NextStep::try_mixture;
  next.mixture = passed;
  next.risk_limit = limit;
  next.reason = "it passed at the edge, and of those that did it promises most";
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
    return edge_first(*edge, "it promises more, but may affect the original: try it first where harm matters least");
  if (passed && promise(*passed) >= bounds.least_promise && promise(*passed) > gentle)
    return put_on_picture(*passed, set.passed_risk);
  if (proposes && next.mixture->risk > bounds.edge_needed_above && edge_tests_left(task) > 0 &&
      !has_passed_at_edge(task, task.candidates[next.mixture->candidate]))
    return edge_first(*next.mixture,
                      "it is the best choice left, but not without risk: try it first where harm matters least");
  if (!proposes && is_surprised)
    next.reason += "; the readings fit badly with what was held before, so no more is risked";
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

CandidateOutlook outlook_of(const NextTestTask& task, const Hansen& point) {
  return outlook_with(
      task, point, [](const std::string&) { return false; }, false);
}

CandidateOutlook outlook_counting_tests(const NextTestTask& task, const Hansen& point) {
  if (task.settings.luck_of_mixture <= 0) return outlook_of(task, point);
  return outlook_with(
      task, point, [&](const std::string& layer) { return has_passed_at_edge(task, point, layer); },
      has_moved(task, point));
}

double surprise_of(const NextTestTask& task) {
  Surprise sum = task.target.surprise();
  for (const KeptBelief& kept : task.kept) {
    sum.excess += kept.belief.surprise().excess;
    sum.variance += kept.belief.surprise().variance;
  }
  return sum.variance > 0 ? sum.excess / std::sqrt(sum.variance) : 0;
}

NextTest choose_next_test(const NextTestTask& task) {
  const auto harmed = std::count_if(task.past.begin(), task.past.end(), [](const PastTest& test) {
    return !test.at_edge && test.affected.value_or(false);
  });
  const std::optional<Working> working = best_working(task);
  if (harmed >= 2 && !working)
    return stop(NextStep::closed, "the original reacted twice: this way of cleaning is closed");
  const bool is_used_up = static_cast<int>(task.past.size()) >= task.settings.most_tests;
  if (working && (harmed >= 2 || is_used_up)) return stop_found(task, *working);
  if (is_used_up)
    return stop(NextStep::tests_used_up, fmt::format("{} tests were made without success", task.past.size()));
  Choice choice(task);
  const bool is_surprised = surprise_of(task) > task.settings.surprised_at;
  NextTest next = working ? go_on_after_success(task, choice, *working) : search_on(task, choice, is_surprised);
  next.is_surprised = is_surprised;
  next.drifting = choice.drifting();
  return next;
}

std::vector<std::size_t> thin_out(const std::vector<Hansen>& points, double cell) {
  std::set<std::tuple<long, long, long>> taken;
  std::vector<std::size_t> kept;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const std::array<double, 3> place = scaled(points[i]);
    const auto index = [&](std::size_t axis) { return static_cast<long>(std::floor(place[axis] / cell)); };
    if (taken.emplace(index(0), index(1), index(2)).second) kept.push_back(i);
  }
  return kept;
}

}  // namespace gentlest
