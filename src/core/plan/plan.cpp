#include "gentlest/plan/plan.hpp"

#include "core/plan/advice.hpp"
#include "core/plan/judged_mixture.hpp"
#include "core/plan/plan_remarks.hpp"
#include "core/plan/planned_chance.hpp"
#include "core/plan/proposal.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/recipe.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

SearchTask make_task(std::vector<Liquid> shelf, const std::vector<PlannedLayer>& layers,
                     const std::vector<ChanceField>& fields, const Limits& limits) {
  SearchTask task;
  task.parts = limits.parts;
  task.step_percent = limits.step_percent;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (layers[i].is_target) task.target.push_back(fields[i]);
    if (layers[i].role == Role::keep) task.kept.push_back(fields[i]);
  }
  task.shelf = std::move(shelf);
  return task;
}

using JudgeMixture = std::function<JudgedMixture(const Mixture&)>;
using JudgeCandidate = std::function<JudgedMixture(const Candidate&)>;

// Without a window: how near the shelf comes from either side.
void describe_no_window(Plan& plan, const Ladder& ladder, const JudgeCandidate& judged) {
  for (const Candidate& candidate : ladder.frontier) {
    if (candidate.verdict.risk <= plan.job.limits.risk_limit) plan.nearest = judged(candidate);
    if (candidate.verdict.effect >= plan.job.limits.wanted_effect) {
      plan.least_risk_that_works = judged(candidate);
      break;
    }
  }
}

// The same rung on the grid of 1 %.
Candidate in_per_cent(Candidate rung, int step_percent) {
  for (std::uint16_t& share : rung.composition.share) share = static_cast<std::uint16_t>(share * step_percent);
  return rung;
}

// Steps between each two neighbouring rungs of the stretch, on the ladder's bottles at 1 % of volume.
std::vector<FinerStep> refine(const SearchTask& task, const Ladder& ladder, const Finer& finer, const Limits& limits,
                              const Catalogue& catalogue, const JudgeMixture& judged) {
  SearchTask fine = task;
  fine.step_percent = 1;
  fine.allowed = proposal_filter(fine, limits, catalogue);
  std::vector<FinerStep> steps;
  for (int rung = finer.from; rung < finer.to; ++rung) {
    const auto at = static_cast<std::size_t>(rung);
    int count = 0;
    for (const FineStep& step : finer_steps(fine, ladder, in_per_cent(ladder.rungs[at - 1], task.step_percent),
                                            in_per_cent(ladder.rungs[at], task.step_percent), finer.steps))
      steps.push_back({rung, ++count, judged(step.mixture)});
  }
  return steps;
}

void check_stretch(const Finer& finer, const std::vector<Candidate>& rungs) {
  const auto last = static_cast<int>(rungs.size());
  if (finer.from >= 1 && finer.from < finer.to && finer.to <= last) return;
  throw InputError(Fault::usage, fmt::format("no stretch from rung {} to rung {} on this ladder", finer.from, finer.to),
                   last < 2 ? "it has one rung only" : fmt::format("its rungs are 1 to {}, gentle to strong", last));
}

// What the person asked for besides the ladder.
void fill_wishes(Plan& plan, const SearchTask& task, const Ladder& ladder, const PlanWishes& wishes,
                 const Catalogue& catalogue, const JudgeMixture& judged) {
  constexpr std::size_t most_bottles = 4;
  if (wishes.finer) {
    check_stretch(*wishes.finer, ladder.rungs);
    plan.finer_asked = wishes.finer;
    plan.finer = refine(task, ladder, *wishes.finer, plan.job.limits, catalogue, judged);
  }
  if (!wishes.certificates || ladder.bottles.size() > most_bottles) return;
  for (const Candidate& rung : ladder.rungs)
    plan.certificates.push_back(certify(task, rung, ladder.bottles, plan.layers[plan.target].sphere.mean.centre));
}

void fill_ladder(Plan& plan, std::vector<Liquid> shelf, const Catalogue& catalogue, const PlanWishes& wishes,
                 const SearchProgress& progress, const RunTasks& run) {
  const Limits& limits = plan.job.limits;
  const std::vector<FieldSubject> subjects = make_subjects(plan.layers, limits, catalogue);
  const std::vector<ChanceField> fields = chance_fields(reach_of(shelf, catalogue), subjects);
  SearchTask task = make_task(std::move(shelf), plan.layers, fields, limits);
  task.run = run;
  task.most_percent = largest_shares(task.shelf, plan.job, catalogue);
  task.allowed = proposal_filter(task, limits, catalogue);
  const Ladder ladder =
      design_ladder(task, {limits.bottles, limits.rungs, limits.risk_limit, limits.wanted_effect}, progress);
  plan.mixtures_judged = count_mixtures(task.shelf.size(), task.parts, 100 / task.step_percent);
  plan.effect_given_up = ladder.effect_given_up;
  plan.shelf = task.shelf;
  for (const Candidate& candidate : ladder.frontier) plan.frontier.push_back(candidate.verdict);
  plan.outcome = ladder.window ? Outcome::window : Outcome::no_window;
  const JudgeMixture judged = [&](const Mixture& mixture) {
    return judge_on_fields(mixture, plan.layers, subjects, fields, limits, catalogue);
  };
  const JudgeCandidate judged_candidate = [&](const Candidate& candidate) {
    return judged(mixture_of(task, candidate.composition));
  };
  if (!ladder.window) return describe_no_window(plan, ladder, judged_candidate);
  for (const std::uint16_t bottle : ladder.bottles) plan.bottles.push_back(task.shelf[bottle].label);
  for (const Candidate& rung : ladder.rungs) plan.rungs.push_back(judged_candidate(rung));
  fill_wishes(plan, task, ladder, wishes, catalogue, judged);
}

}  // namespace

WindowClosedBy what_closes_window(const Plan& plan) {
  if (plan.frontier.empty()) return WindowClosedBy::other_limits;
  return plan.least_risk_that_works ? WindowClosedBy::layer : WindowClosedBy::shelf;
}

std::vector<PlannedMixture> planned_mixtures(const Plan& plan) {
  std::vector<PlannedMixture> mixtures;
  auto step = plan.finer.begin();
  for (std::size_t i = 0; i < plan.rungs.size(); ++i) {
    const std::string rung = std::to_string(i + 1);
    mixtures.push_back({rung, &plan.rungs[i]});
    for (; step != plan.finer.end() && step->after_rung == static_cast<int>(i + 1); ++step)
      mixtures.push_back({rung + "." + std::to_string(step->number), &step->judged});
  }
  if (plan.nearest) mixtures.push_back({"strongest within the risk limit", &*plan.nearest});
  if (plan.least_risk_that_works)
    mixtures.push_back({"least risk that reaches the effect", &*plan.least_risk_that_works});
  return mixtures;
}

Plan make_plan(const Job& job, const Catalogue& catalogue, const std::string& target, const SearchProgress& progress,
               const RunTasks& run, const PlanWishes& wishes) {
  std::vector<Diagnostic> faults = check_job(job, catalogue);
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  Plan plan;
  plan.job = job;
  plan.catalogue_version = catalogue.version();
  plan.layers = planned_layers(job, catalogue, target);
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].is_target) plan.target = i;
  plan.margin_claimed = margin_may_be_claimed(plan.layers);
  const Shelf bottles = shelf_of(job, catalogue);
  plan.left_off = bottles_left_off(bottles);
  std::vector<Liquid> shelf = usable_liquids(bottles);
  plan.parting = parting_pairs(shelf, job.limits, catalogue);
  fill_ladder(plan, std::move(shelf), catalogue, wishes, progress, run);
  plan.watch = what_to_watch(plan);
  plan.cautions = advice_cautions(plan, catalogue);
  plan.weak_points = list_weak_points(plan);
  plan.sources = list_sources(plan, catalogue);
  return plan;
}

}  // namespace gentlest
