#include "core/plan/unjudged.hpp"

#include "core/plan/judged_mixture.hpp"
#include "core/plan/proposal.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

const PlannedLayer& target_of(const std::vector<PlannedLayer>& layers) {
  return *std::find_if(layers.begin(), layers.end(), [](const PlannedLayer& layer) { return layer.is_target; });
}

int doubt_of(const JudgedMixture& judged) {
  return static_cast<int>(std::count_if(judged.seen.begin(), judged.seen.end(), [](const LayerSighting& one) {
    return one.role == Role::keep && one.seen != Sighting::spares;
  }));
}

bool was_seen_to_harm(const JudgedMixture& judged) {
  return std::any_of(judged.seen.begin(), judged.seen.end(), [](const LayerSighting& one) {
    return one.role == Role::keep && (one.seen == Sighting::acts || one.seen == Sighting::part_acts);
  });
}

// What was seen outranks the chance: a layer with a sphere has its observations too.
bool harms_judged_layer(const Solvent& solvent, const std::vector<PlannedLayer>& layers) {
  return std::any_of(layers.begin(), layers.end(), [&](const PlannedLayer& layer) {
    return layer.role == Role::keep && worst_of(rows_of_liquid(layer.observed, solvent)) == Sighting::acts;
  });
}

}  // namespace

bool is_sensitive_to_water(const PlannedLayer& layer) {
  const auto holds = [](const std::vector<Flag>& flags) {
    return std::find(flags.begin(), flags.end(), Flag::water_sensitive) != flags.end();
  };
  return holds(layer.flags) || std::any_of(layer.passages.begin(), layer.passages.end(),
                                           [&](const PassageWarning& passage) { return holds(passage.flags); });
}

namespace {

// Water where the surface bears it; one entry for each layer to keep that does not.
void add_water(std::vector<FirstTest>& tests, const std::vector<PlannedLayer>& layers, const Catalogue& catalogue) {
  const Solvent* water = catalogue.find_solvent("water");
  const auto rows_of = [&](const PlannedLayer& layer) {
    return water ? rows_of_liquid(layer.seen, *water) : std::vector<SeenRow>();
  };
  const std::size_t before = tests.size();
  for (const PlannedLayer& layer : layers) {
    if (layer.role != Role::keep) continue;
    const std::vector<SeenRow> rows = rows_of(layer);
    if (is_sensitive_to_water(layer) || worst_of(rows) == Sighting::acts)
      tests.push_back({FirstTestKind::no_water, layer.name, rows});
  }
  if (tests.size() == before) tests.push_back({FirstTestKind::water, {}, rows_of(target_of(layers))});
}

}  // namespace

std::vector<int> doubts_of(const std::vector<Liquid>& shelf, const std::vector<PlannedLayer>& layers,
                           const Catalogue& catalogue) {
  std::vector<int> doubts;
  for (const Liquid& liquid : shelf) {
    int doubt = 0;
    for (const LayerSighting& one : sightings_of(Mixture({{liquid, 1}}), layers, catalogue))
      if (one.role == Role::keep && one.seen != Sighting::spares) ++doubt;
    doubts.push_back(doubt);
  }
  return doubts;
}

std::vector<Mixture> rungs_by_effect(const Job& job, const std::vector<PlannedLayer>& layers,
                                     const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  std::vector<Mixture> rungs;
  if (shelf.empty()) return rungs;
  const LayerFields fields = layer_fields(reach_of(shelf, catalogue), make_subjects(layers, job.limits));
  const SearchTask task = search_task(shelf, layers, fields, job, catalogue);
  const Ladder ladder = design_ladder_by_effect(task, goal_of(job.limits), doubts_of(shelf, layers, catalogue));
  for (const Candidate& rung : ladder.rungs) rungs.push_back(mixture_of(task, rung.composition));
  return rungs;
}

std::vector<JudgedMixture> liquids_to_try(const Job& job, const std::vector<PlannedLayer>& layers,
                                          const std::vector<Liquid>& shelf, const Catalogue& catalogue) {
  std::vector<JudgedMixture> found;
  for (const Liquid& liquid : shelf) {
    if (worst_of(rows_of_liquid(target_of(layers).seen, *liquid.solvent)) != Sighting::acts) continue;
    const Mixture alone({{liquid, 1}});
    if (!may_be_made(alone, job.limits, catalogue) || harms_judged_layer(*liquid.solvent, layers)) continue;
    JudgedMixture judged = judge_mixture(alone, layers, job.limits, catalogue);
    if (!is_beyond_limit(judged, job.limits) && !was_seen_to_harm(judged)) found.push_back(std::move(judged));
  }
  std::stable_sort(found.begin(), found.end(), [](const JudgedMixture& a, const JudgedMixture& b) {
    const int doubt_a = doubt_of(a);
    const int doubt_b = doubt_of(b);
    return doubt_a != doubt_b ? doubt_a < doubt_b : a.risk.value_or(0) < b.risk.value_or(0);
  });
  int number = 0;
  for (JudgedMixture& judged : found) judged.origin = {OriginKind::first_test, ++number};
  return found;
}

std::vector<FirstTest> first_tests_of(const std::vector<PlannedLayer>& layers, const std::vector<JudgedMixture>& to_try,
                                      bool has_rungs, const Catalogue& catalogue) {
  std::vector<FirstTest> tests;
  if (std::all_of(layers.begin(), layers.end(), [](const PlannedLayer& layer) { return layer.sphere.has_value(); }))
    return tests;
  tests.push_back({FirstTestKind::dry_swab});
  add_water(tests, layers, catalogue);
  for (const PlannedLayer& layer : layers)
    if (has_rungs && is_kept_unjudged(layer)) tests.push_back({FirstTestKind::gentlest_rung, layer.name});
  for (std::size_t i = 0; i < to_try.size(); ++i)
    tests.push_back({FirstTestKind::liquid,
                     {},
                     rows_of_liquid(target_of(layers).seen, *to_try[i].mixture.parts().front().liquid.solvent),
                     i});
  return tests;
}

}  // namespace gentlest
