#include "gentlest/plan/plan.hpp"

#include "core/plan/advice.hpp"
#include "core/plan/judged_mixture.hpp"
#include "core/plan/layer_costs.hpp"
#include "core/plan/plan_remarks.hpp"
#include "core/plan/planned_chance.hpp"
#include "core/plan/planned_layers.hpp"
#include "core/plan/proposal.hpp"
#include "core/plan/unjudged.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/recipe.hpp"
#include "gentlest/plan/check_job.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <utility>

namespace gentlest {

namespace {

using JudgeMixture = std::function<JudgedMixture(const Mixture&, const Origin&)>;
using JudgeCandidate = std::function<JudgedMixture(const Candidate&, const Origin&)>;

// Without a window: how near the shelf comes from either side.
void describe_no_window(Plan& plan, const Ladder& ladder, const JudgeCandidate& judged) {
  for (const Candidate& candidate : ladder.frontier) {
    if (candidate.verdict.risk <= plan.job.limits.risk_limit)
      plan.nearest = judged(candidate, {OriginKind::strongest_within_limit});
    if (candidate.verdict.effect >= plan.job.limits.wanted_effect) {
      plan.least_risk_that_works = judged(candidate, {OriginKind::least_risk_that_works});
      break;
    }
  }
}

// Steps between each two neighbouring rungs of the ladder's stretch, at 1 % of volume.
std::vector<JudgedMixture> refine(const SearchTask& task, const Ladder& ladder, const Finer& finer,
                                  const JudgeMixture& judged) {
  std::vector<JudgedMixture> steps;
  for (int rung = finer.from; rung < finer.to; ++rung) {
    const auto at = static_cast<std::size_t>(rung);
    int count = 0;
    const auto add = [&](const auto& between) {
      for (const auto& step : between) steps.push_back(judged(step.mixture, {OriginKind::finer_step, rung, ++count}));
    };
    if (!ladder.rungs.empty()) {
      add(finer_steps(task, ladder, ladder.rungs[at - 1], ladder.rungs[at], finer.steps));
    } else {
      const StockLine& line = ladder.lines.front();
      add(finer_steps(task, line, line.rungs[at - 1], line.rungs[at], finer.steps));
    }
  }
  return steps;
}

void check_stretch(const Finer& finer, const Ladder& ladder) {
  const auto last = static_cast<int>(rungs_of(ladder));
  if (finer.from >= 1 && finer.from < finer.to && finer.to <= last) return;
  throw InputError(Fault::usage,
                   {no_such_stretch(finer, last < 2 ? "it has one rung only"
                                                    : fmt::format("its rungs are 1 to {}, gentle to strong", last))});
}

// The most that the shelf reaches, for the sentence on a window that the shelf closes.
double most_effect_of(const Ladder& ladder, const SearchTask& task) {
  if (!ladder.frontier.empty()) return ladder.frontier.back().verdict.effect;
  double most = 0;
  if (!task.kept.empty()) return most;
  for (const Candidate& strongest : find_frontier(task)) most = std::max(most, strongest.verdict.effect);
  return most;
}

std::optional<double> risk_given_up(const Ladder& ladder, double wanted_effect) {
  const auto works = [&](const Candidate& one) { return one.verdict.effect >= wanted_effect; };
  const auto rung = std::find_if(ladder.rungs.begin(), ladder.rungs.end(), works);
  if (rung == ladder.rungs.end()) return std::nullopt;
  for (const Candidate& member : ladder.frontier)
    if (member.verdict.effect >= rung->verdict.effect) return rounded_chance(rung->verdict.risk - member.verdict.risk);
  return std::nullopt;
}

// The walk over the frontier, or by effect alone.
LadderLine walk_of(const SearchTask& task, const Ladder& ladder, const Plan& plan, const JudgeCandidate& judged) {
  LadderLine walk;
  walk.reason = plan.by_effect_alone ? LineReason::only_bottle_known : LineReason::frontier;
  walk.effect_given_up = ladder.effect_given_up;
  walk.risk_given_up = risk_given_up(ladder, plan.job.limits.wanted_effect);
  for (const std::uint16_t bottle : ladder.bottles) walk.bottles.push_back(task.shelf[bottle].label);
  int number = 0;
  for (const Candidate& rung : ladder.rungs) walk.rungs.push_back(judged(rung, {OriginKind::rung, ++number}));
  return walk;
}

// `number`: of the line, from 1.
LadderLine line_of(const SearchTask& task, const StockLine& line, int number, const JudgeMixture& judged) {
  LadderLine made;
  made.reason = line.reason;
  made.effect_given_up = line.effect_given_up;
  made.risk_given_up = line.risk_given_up;
  made.step_percent = line.step_percent;
  made.bottles.push_back(task.shelf[line.stocks.gentle].label);
  std::vector<Part> active;
  for (std::size_t i = 0; i < line.stocks.active.size(); ++i) {
    const Liquid& liquid = task.shelf[line.stocks.active[i]];
    made.bottles.push_back(liquid.label);
    active.push_back({liquid, line.stocks.quarters[i] / 4.0});
  }
  made.family = active.front().liquid.solvent->family;
  made.active = Mixture(std::move(active));
  int rung_number = 0;
  for (const LineRung& rung : line.rungs) {
    made.rungs.push_back(judged(rung.mixture, {OriginKind::rung, ++rung_number, 0, number}));
    made.active_percent.push_back(rung.percent);
  }
  return made;
}

void fill_ladder(Plan& plan, std::vector<Liquid> shelf, const Catalogue& catalogue, const std::optional<Finer>& finer,
                 const SearchProgress& progress, const RunTasks& run) {
  const Limits& limits = plan.job.limits;
  const LayerSubjects subjects = make_subjects(plan.layers, limits);
  const LayerFields fields = layer_fields(reach_of(shelf, catalogue), subjects);
  SearchTask task = search_task(std::move(shelf), plan.layers, fields, plan.job, catalogue);
  task.run = run;
  const LadderGoal goal = goal_of(limits);
  plan.by_effect_alone = is_risk_open(plan.layers);
  Ladder ladder = plan.by_effect_alone
                      ? design_ladder_by_effect(task, goal, doubts_of(task.shelf, plan.layers, catalogue))
                      : design_ladder(task, goal, progress);
  if (!limits.exactly.empty()) prefer_lines_of(ladder.lines, task.shelf.size());
  plan.mixtures_judged = count_mixtures(task.shelf.size(), task.parts, 100 / task.step_percent);
  plan.most_effect = most_effect_of(ladder, task);
  plan.costs = layer_costs(
      task, plan.layers, ladder, goal, [&] { return proposal_filter(limits, catalogue); }, progress);
  const auto filter_within = [&](double risk_limit) {
    Limits bolder = limits;
    bolder.risk_limit = risk_limit;
    return proposal_filter(bolder, catalogue);
  };
  plan.at_higher_limit = at_higher_limit(task, ladder, goal, filter_within, progress);
  plan.shelf = task.shelf;
  for (const Candidate& candidate : ladder.frontier) plan.frontier.push_back(candidate.verdict);
  plan.outcome = ladder.window ? Outcome::window : Outcome::no_window;
  const JudgeMixture judged = [&](const Mixture& mixture, const Origin& origin) {
    JudgedMixture one = judge_on_fields(mixture, plan.layers, subjects, fields, limits, catalogue);
    one.origin = origin;
    return one;
  };
  const JudgeCandidate judged_candidate = [&](const Candidate& candidate, const Origin& origin) {
    return judged(mixture_of(task, candidate.composition), origin);
  };
  if (!ladder.window) return describe_no_window(plan, ladder, judged_candidate);
  if (!ladder.rungs.empty()) plan.lines.push_back(walk_of(task, ladder, plan, judged_candidate));
  for (const StockLine& line : ladder.lines)
    plan.lines.push_back(line_of(task, line, static_cast<int>(plan.lines.size()) + 1, judged));
  if (!finer) return;
  check_stretch(*finer, ladder);
  plan.finer_asked = finer;
  plan.finer = refine(task, ladder, *finer, judged);
}

}  // namespace

Diagnostic no_such_stretch(const Finer& finer, std::string remedy) {
  return Diagnostic{{},
                    fmt::format("no stretch from rung {} to rung {} on this ladder", finer.from, finer.to),
                    std::move(remedy),
                    {}};
}

WindowClosedBy what_closes_window(const Plan& plan) {
  assert(plan.outcome == Outcome::no_window);
  const bool by_examination = std::any_of(plan.left_off.begin(), plan.left_off.end(), [](const JobBottle& bottle) {
    return bottle.left_off->why == LeftOffWhy::examination;
  });
  if (plan.shelf.empty()) return by_examination ? WindowClosedBy::examination : WindowClosedBy::sightings;
  if (plan.frontier.empty() && plan.most_effect == 0) return WindowClosedBy::other_limits;
  return plan.least_risk_that_works ? WindowClosedBy::layer : WindowClosedBy::shelf;
}

const std::vector<JudgedMixture>& ladder_rungs(const Plan& plan) {
  static const std::vector<JudgedMixture> none;
  return plan.lines.empty() ? none : plan.lines.front().rungs;
}

const std::vector<std::string>& ladder_bottles(const Plan& plan) {
  static const std::vector<std::string> none;
  return plan.lines.empty() ? none : plan.lines.front().bottles;
}

std::vector<const JudgedMixture*> ladder_mixtures(const Plan& plan) {
  std::vector<const JudgedMixture*> mixtures;
  auto step = plan.finer.begin();
  for (const JudgedMixture& rung : ladder_rungs(plan)) {
    mixtures.push_back(&rung);
    for (; step != plan.finer.end() && step->origin.number == rung.origin.number; ++step) mixtures.push_back(&*step);
  }
  if (plan.nearest) mixtures.push_back(&*plan.nearest);
  if (plan.least_risk_that_works) mixtures.push_back(&*plan.least_risk_that_works);
  for (const JudgedMixture& one : plan.to_try) mixtures.push_back(&one);
  return mixtures;
}

namespace {

bool are_equal(const Mixture& a, const Mixture& b) {
  constexpr double last_bits = 1e-9;
  return std::equal(
      a.parts().begin(), a.parts().end(), b.parts().begin(), b.parts().end(), [](const Part& one, const Part& other) {
        return one.liquid.label == other.liquid.label && std::abs(one.fraction - other.fraction) < last_bits;
      });
}

}  // namespace

std::vector<const JudgedMixture*> planned_mixtures(const Plan& plan) {
  std::vector<const JudgedMixture*> mixtures = ladder_mixtures(plan);
  for (std::size_t i = 1; i < plan.lines.size(); ++i)
    for (const JudgedMixture& rung : plan.lines[i].rungs)
      if (std::none_of(mixtures.begin(), mixtures.end(),
                       [&](const JudgedMixture* one) { return are_equal(one->mixture, rung.mixture); }))
        mixtures.push_back(&rung);
  return mixtures;
}

Plan make_plan(const Job& job, const Catalogue& catalogue, const std::string& target, const SearchProgress& progress,
               const RunTasks& run, const std::optional<Finer>& finer) {
  std::vector<Diagnostic> faults = check_job(job, catalogue);
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  Plan plan;
  plan.job = job;
  plan.catalogue_version = catalogue.version();
  plan.examination = weigh_examination(job, catalogue);
  plan.layers = planned_layers(job, catalogue, target);
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].is_target) plan.target = i;
  plan.margin_claimed = margin_may_be_claimed(plan.layers);
  const Shelf bottles = shelf_of(job, catalogue);
  plan.left_off = bottles_left_off(bottles);
  std::vector<Liquid> shelf = usable_liquids(bottles);
  plan.parting = parting_pairs(shelf, job.limits.step_percent, Celsius{job.limits.room_C}, catalogue);
  plan.shelf = shelf;
  if (!plan.layers[plan.target].sphere) {
    plan.outcome = Outcome::no_ladder;
    plan.to_try = liquids_to_try(job, plan.layers, shelf, catalogue);
  } else if (!shelf.empty()) {
    fill_ladder(plan, std::move(shelf), catalogue, finer, progress, run);
  }
  plan.first_tests = first_tests_of(plan.layers, plan.to_try, !ladder_rungs(plan).empty(), catalogue);
  plan.watch = what_to_watch(plan);
  plan.cautions = advice_cautions(plan, catalogue);
  plan.weak_points = list_weak_points(plan, catalogue);
  plan.sources = list_sources(plan, catalogue);
  return plan;
}

}  // namespace gentlest
