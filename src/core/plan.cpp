#include "gentlest/plan.hpp"

#include "advice.hpp"
#include "planned_chance.hpp"
#include "proposal.hpp"

#include "gentlest/diagnostic.hpp"
#include "gentlest/recipe.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

namespace gentlest {

namespace {

void add_flags(std::vector<Flag>& flags, const std::vector<Flag>& more) {
  for (const Flag flag : more)
    if (std::find(flags.begin(), flags.end(), flag) == flags.end()) flags.push_back(flag);
}

void take_material(PlannedLayer& planned, const Material& material, const Catalogue& catalogue) {
  planned.material = material.id;
  planned.material_name = material.name;
  planned.sphere = *uncertain_sphere(material, catalogue);
  planned.grade = material.sphere->grade;
  planned.sphere_source = material.sphere->sphere.chosen.source;
  planned.assumption = material.sphere->assumption;
  planned.own_response = material.response.has_value();
  add_flags(planned.flags, material.flags);
}

PlannedLayer plan_layer(const Layer& layer, const Catalogue& catalogue) {
  PlannedLayer planned;
  planned.name = layer.name;
  planned.role = layer.role;
  add_flags(planned.flags, layer.suspected);
  const std::string& name = layer.found.empty() ? layer.recorded : layer.found;
  const Material* material = name.empty() ? nullptr : catalogue.find_material(name);
  if (layer.own_sphere) {
    planned.material_name = material ? material->name : "own tests";
    if (material) add_flags(planned.flags, material->flags);
    planned.chosen_because = "own tests";
    planned.sphere = layer.own_sphere->sphere;
    planned.grade = SphereGrade::fitted;
    planned.sphere_source = layer.own_sphere->source;
    return planned;
  }
  planned.chosen_because = layer.found.empty() ? "recorded, not examined" : "found";
  take_material(planned, *material, catalogue);
  return planned;
}

PlannedLayer plan_passage(const Passage& passage, const Catalogue& catalogue) {
  PlannedLayer planned;
  planned.name = passage.name;
  planned.role = Role::keep;
  planned.chosen_because = "passage of " + passage.of;
  add_flags(planned.flags, passage.suspected);
  take_material(planned, *catalogue.find_material(passage.material), catalogue);
  return planned;
}

// Passages without a material of their own lend their suspicions to the layer they belong to.
void lend_suspicions(std::vector<PlannedLayer>& layers, const std::vector<Passage>& passages) {
  for (const Passage& passage : passages)
    for (PlannedLayer& layer : layers)
      if (passage.material.empty() && layer.name == passage.of) add_flags(layer.flags, passage.suspected);
}

void mark_target(std::vector<PlannedLayer>& layers, const std::string& target) {
  std::vector<std::string> removable;
  for (PlannedLayer& layer : layers) {
    if (layer.role != Role::remove) continue;
    removable.push_back(layer.name);
    if (target.empty() || layer.name == target) {
      layer.is_target = true;
      return;
    }
  }
  const std::string near = nearest_name(target, removable);
  throw InputError(Fault::usage, fmt::format("no layer \"{}\" with role remove", target),
                   near.empty() ? "" : fmt::format("did you mean \"{}\"?", near));
}

bool names_solvent(const std::vector<std::string>& names, const Solvent& solvent, const Catalogue& catalogue) {
  return std::any_of(names.begin(), names.end(),
                     [&](const std::string& name) { return catalogue.find_solvent(name) == &solvent; });
}

}  // namespace

std::string reason_to_leave_off(const Solvent& solvent, const Limits& limits, const Catalogue& catalogue) {
  if (!solvent.hansen) return "no Hansen parameters: " + solvent.no_hansen;
  if (solvent.family == "water") return "water acts by other ways than solubility; outside the model";
  const auto& families = limits.avoid_families;
  if (std::find(families.begin(), families.end(), solvent.family) != families.end())
    return fmt::format("family \"{}\" is to be avoided", solvent.family);
  if (names_solvent(limits.avoid_solvents, solvent, catalogue)) return "is to be avoided";
  if (!solvent.hazards && !limits.allow_unknown_hazards) return "no hazard record, and unknown hazards are not allowed";
  if (solvent.hazards)
    for (const std::string& avoided : limits.avoid_statements)
      for (const std::string& statement : solvent.hazards->statements)
        if (statement.rfind(avoided, 0) == 0) return fmt::format("carries {}, which is to be avoided", statement);
  return {};
}

const Response& response_of(const PlannedLayer& layer, const Catalogue& catalogue) {
  const Material* material = layer.own_response ? catalogue.find_material(layer.material) : nullptr;
  return material && material->response ? *material->response : catalogue.response();
}

std::vector<Liquid> usable_shelf(const Job& job, const Catalogue& catalogue, std::vector<std::string>& left_off) {
  std::vector<Liquid> shelf;
  for (const ShelfBottle& bottle : job.shelf) {
    const Solvent& solvent = *catalogue.find_solvent(bottle.solvent);
    const std::string reason = reason_to_leave_off(solvent, job.limits, catalogue);
    if (reason.empty())
      shelf.push_back(make_liquid(solvent, bottle.grade, catalogue));
    else
      left_off.push_back(fmt::format("{}: {}", solvent.name, reason));
  }
  std::sort(shelf.begin(), shelf.end(), [](const Liquid& a, const Liquid& b) { return a.label < b.label; });
  return shelf;
}

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

bool margin_may_be_claimed(const std::vector<PlannedLayer>& layers) {
  return std::none_of(layers.begin(), layers.end(), [](const PlannedLayer& layer) {
    const auto has = [&](Flag flag) {
      return std::find(layer.flags.begin(), layer.flags.end(), flag) != layer.flags.end();
    };
    if (layer.role == Role::keep) return has(Flag::resinous) || has(Flag::waxy) || has(Flag::bituminous);
    return has(Flag::cross_linked);
  });
}

std::string weak_words(const PlannedLayer& layer) {
  if (!layer.assumption.empty()) return fmt::format("{} ({}): {}", layer.name, layer.material_name, layer.assumption);
  switch (layer.grade) {
    case SphereGrade::recalled:
      return fmt::format(
          "{} ({}): the sphere was recalled from memory and checked against its own published tests only", layer.name,
          layer.material_name);
    case SphereGrade::unbracketed:
      return fmt::format("{} ({}): published tests do not close the sphere in; centre and radius slide together",
                         layer.name, layer.material_name);
    case SphereGrade::weak:
      return fmt::format("{} ({}): the sphere fits its own published tests badly", layer.name, layer.material_name);
    case SphereGrade::unsupported:
      return fmt::format("{} ({}): published without tests to check it against", layer.name, layer.material_name);
    default:
      return {};
  }
}

std::vector<std::string> list_weak_points(const Plan& plan) {
  std::vector<std::string> points;
  for (const PlannedLayer& layer : plan.layers) {
    const std::string words = weak_words(layer);
    if (!words.empty()) points.push_back(words);
    if (layer.chosen_because == "recorded, not examined")
      points.push_back(
          fmt::format("{}: taken as the files record it; files are often wrong (Lomax and Fisher 1990: 20 of "
                      "25 paintings)",
                      layer.name));
  }
  for (const Layer& layer : plan.job.layers)
    if (!layer.recorded.empty() && !layer.found.empty() && layer.recorded != layer.found)
      points.push_back(fmt::format("{}: recorded as {}, found to be {}; the plan follows what was found", layer.name,
                                   layer.recorded, layer.found));
  points.push_back(
      "The response curve comes from fresh, pure resins in long contact; a swab's short touch on old paint "
      "does less. Trust the order of the rungs before the size of the numbers: the swab decides");
  for (const ShelfBottle& bottle : plan.job.shelf)
    if (bottle.solvent == "ethanol" && bottle.grade.empty())
      points.push_back("ethanol without a grade is taken as free of water; write its grade, e.g. \"96 %\"");
  return points;
}

void cite(std::set<std::string>& keys, const Mixture& mixture) {
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    if (solvent.hansen) keys.insert(solvent.hansen->chosen.source);
    if (solvent.hazards) keys.insert(solvent.hazards->source);
    if (solvent.flash_point_C) keys.insert(solvent.flash_point_C->chosen.source);
    for (const ExposureLimit& limit : solvent.exposure_limits) keys.insert(limit.source);
  }
}

std::vector<Source> list_sources(const Plan& plan, const Catalogue& catalogue) {
  std::set<std::string> keys = {catalogue.response().source};
  for (const PlannedLayer& layer : plan.layers) keys.insert(layer.sphere_source);
  for (const JudgedMixture& rung : plan.rungs) cite(keys, rung.mixture);
  if (plan.nearest) cite(keys, plan.nearest->mixture);
  if (plan.least_risk_that_works) cite(keys, plan.least_risk_that_works->mixture);
  for (const Advice& caution : plan.cautions) keys.insert(caution.source);
  std::vector<Source> sources;
  for (const std::string& key : keys)
    if (const Source* source = catalogue.find_source(key)) sources.push_back(*source);
  return sources;
}

// Where the deviations of the solvents' own parameters are published, this mixture meets a vaguer sphere than the
// search assumed.
Outlook look_out(const Hansen& point, const Hansen& point_sd, const FieldSubject& subject, const ChanceField& field) {
  const UncertainSphere seen = seen_from(subject.sphere, point_sd);
  Outlook outlook;
  outlook.Ra = distance_Ra(point, seen.mean.centre);
  outlook.RED = relative_distance_RED(point, seen.mean);
  outlook.RED_band = RED_band(point, seen);
  outlook.may_flip = outlook.RED_band.low < 1 && outlook.RED_band.high > 1;
  outlook.chance = point_sd == Hansen{} ? field(point) : chance_of_grade(point, seen, subject.response, subject.grade);
  return outlook;
}

// The part of Hansen space that the liquids and what is left of them can reach: a bottle's water and what it is mixed
// with dry apart.
HansenBox reach_of(const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  std::vector<Liquid> ends = shelf;
  for (const Liquid& liquid : shelf) {
    if (!(liquid.water_fraction > 0)) continue;
    for (const Solvent* solvent : {liquid.solvent, catalogue.find_solvent("water")}) {
      Liquid end = liquid;
      end.hansen = solvent->hansen->chosen.value;
      ends.push_back(std::move(end));
    }
  }
  return bounding_box(ends);
}

Fate tell_fate(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const std::vector<ChanceField>& fields,
               const Limits& limits, const Catalogue& catalogue) {
  const Celsius room{limits.room_C};
  Fate fate{phases_of(mixture, catalogue, room), evaporate(mixture, catalogue, room), {}, {}, {}};
  if (!fate.drift) {
    fate.drift_missing = missing_for_drift(mixture, catalogue, room);
    return fate;
  }
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (layers[i].role != Role::keep) continue;
    const DriftRisk risk = judge_drift(*fate.drift, fields[i], limits.risk_limit);
    if (!fate.riskiest.empty() && risk.worst <= fate.risk.worst) continue;
    fate.risk = risk;
    fate.riskiest = layers[i].name;
  }
  return fate;
}

JudgedMixture judge_on_fields(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                              const std::vector<FieldSubject>& subjects, const std::vector<ChanceField>& fields,
                              const Limits& limits, const Catalogue& catalogue) {
  const Hansen point = mix(mixture);
  JudgedMixture judged{mixture, point, teas_fractions(point), {}, 0, 0, {}, {}, hazards_of_parts(mixture), {}};
  const bool claim = margin_may_be_claimed(layers);
  for (std::size_t i = 0; i < layers.size(); ++i) {
    const Outlook outlook = look_out(point, mix_sd(mixture), subjects[i], fields[i]);
    judged.outlooks.push_back(outlook);
    if (layers[i].is_target) judged.effect = outlook.chance;
    if (layers[i].role != Role::keep) continue;
    if (judged.riskiest.empty() || outlook.chance > judged.risk) {
      judged.risk = outlook.chance;
      judged.riskiest = layers[i].name;
    }
    if (claim) judged.margin_RED = std::min(judged.margin_RED.value_or(outlook.RED - 1), outlook.RED - 1);
  }
  judged.fate = tell_fate(mixture, layers, fields, limits, catalogue);
  return judged;
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
  plan.other_ways = advice_other_ways();
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
  if (minds_more_than_risk(limits))
    fine.allowed = [&](const Composition& composition) {
      return may_be_proposed(fine, composition, limits, catalogue);
    };
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
  ProposalMemory memory;
  if (minds_more_than_risk(limits))
    task.allowed = [&](const Composition& composition) {
      return memory.recall(composition, [&] { return may_be_proposed(task, composition, limits, catalogue); });
    };
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

bool drifts_beyond(const Fate& fate, double risk_limit) {
  return fate.drift && fate.risk.at_start <= risk_limit && fate.risk.beyond_limit_at.has_value();
}

std::vector<PlannedLayer> planned_layers(const Job& job, const Catalogue& catalogue, const std::string& target) {
  std::vector<PlannedLayer> layers;
  for (const Layer& layer : job.layers) layers.push_back(plan_layer(layer, catalogue));
  mark_target(layers, target);
  lend_suspicions(layers, job.passages);
  for (const Passage& passage : job.passages)
    if (!passage.material.empty()) layers.push_back(plan_passage(passage, catalogue));
  return layers;
}

JudgedMixture judge_mixture(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const Limits& limits,
                            const Catalogue& catalogue) {
  std::vector<Liquid> liquids;
  for (const Part& part : mixture.parts()) liquids.push_back(part.liquid);
  const std::vector<FieldSubject> subjects = make_subjects(layers, limits, catalogue);
  return judge_on_fields(mixture, layers, subjects, chance_fields(reach_of(liquids, catalogue), subjects), limits,
                         catalogue);
}

JudgedSeries judge_series(const std::vector<Mixture>& series, const std::vector<PlannedLayer>& layers,
                          const Limits& limits, const Catalogue& catalogue) {
  JudgedSeries judged;
  if (series.empty()) return judged;
  std::vector<Liquid> liquids;
  for (const Mixture& mixture : series)
    for (const Part& part : mixture.parts()) liquids.push_back(part.liquid);
  const std::vector<FieldSubject> subjects = make_subjects(layers, limits, catalogue);
  const std::vector<ChanceField> fields = chance_fields(bounding_box(liquids), subjects);
  std::vector<Hansen> points;
  std::vector<Verdict> verdicts;
  for (const Mixture& mixture : series) {
    judged.mixtures.push_back(judge_on_fields(mixture, layers, subjects, fields, limits, catalogue));
    points.push_back(judged.mixtures.back().point);
    verdicts.push_back({judged.mixtures.back().effect, judged.mixtures.back().risk, -1});
  }
  judged.quality =
      quality_of(points, verdicts, {limits.bottles, limits.rungs, limits.risk_limit, limits.wanted_effect});
  return judged;
}

Plan make_plan(const Job& job, const Catalogue& catalogue, const std::string& target, const SearchProgress& progress,
               const RunTasks& run, const PlanWishes& wishes) {
  std::vector<Diagnostic> faults = check_job(job, catalogue);
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  // Before the search, so that a plan is never found only to be useless at the easel.
  check_measurable(static_cast<std::size_t>(job.limits.parts),
                   {Millilitres{job.limits.vial_mL}, Millilitres{job.limits.measure_mL}});
  Plan plan;
  plan.job = job;
  plan.catalogue_version = catalogue.version();
  plan.layers = planned_layers(job, catalogue, target);
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].is_target) plan.target = i;
  plan.margin_claimed = margin_may_be_claimed(plan.layers);
  std::vector<Liquid> shelf = usable_shelf(job, catalogue, plan.left_off_shelf);
  if (shelf.empty())
    throw InputError(Fault::file,
                     {{{job.file, 0, 0}, "no bottle of the shelf may be used", plan.left_off_shelf.front(), ""}});
  fill_ladder(plan, std::move(shelf), catalogue, wishes, progress, run);
  plan.watch = advice_to_watch(plan);
  plan.not_seen = advice_not_seen();
  plan.cautions = advice_cautions(plan, catalogue);
  plan.weak_points = list_weak_points(plan);
  plan.sources = list_sources(plan, catalogue);
  return plan;
}

}  // namespace gentlest
