#include "gentlest/answers/vial.hpp"

#include "gentlest/catalogue/figures.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace gentlest {

namespace {

std::vector<UsedLiquid> used_in(const Recipe& recipe) {
  std::vector<UsedLiquid> used;
  for (const RecipeLine& line : recipe.lines) used.push_back({line.liquid, line.volume});
  return used;
}

std::vector<Source> sources_of(const VialStudy& study, const Catalogue& catalogue) {
  std::set<std::string> keys(study.judged.fate.phases.sources.begin(), study.judged.fate.phases.sources.end());
  if (study.judged.fate.drift)
    keys.insert(study.judged.fate.drift->sources.begin(), study.judged.fate.drift->sources.end());
  for (const Caution& caution : study.cautions) keys.insert(caution.source);
  for (const Part& part : study.judged.mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    if (solvent.hansen) keys.insert(solvent.hansen->chosen.source);
    if (solvent.hazards) keys.insert(solvent.hazards->source);
    if (solvent.flash_point_C) keys.insert(solvent.flash_point_C->chosen.source);
    if (study.judged.mixture.parts().size() == 1 && solvent.boiling_point_C)
      keys.insert(solvent.boiling_point_C->chosen.source);
    for (const ExposureLimit& limit : solvent.exposure_limits) keys.insert(limit.source);
  }
  return named_sources(keys, catalogue);
}

}  // namespace

VialStudy study_vial(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const Job& job,
                     const Catalogue& catalogue) {
  constexpr double rounding_that_counts = 1e-9;
  const Limits& limits = job.limits;
  const Celsius room{limits.room_C};
  Recipe recipe = round_recipe(mixture, {{limits.vial_mL}, {limits.measure_mL}});
  const Mixture made = recipe.as_measured;
  VialStudy study{judge_mixture(mixture, layers, limits, catalogue),
                  std::move(recipe),
                  {},
                  label_of(made, catalogue),
                  flash_point(made, catalogue),
                  lower_explosive_limit(made, catalogue, room),
                  start_of_boiling(made, catalogue),
                  vapour_hazards(made, catalogue, room),
                  {},
                  {},
                  {},
                  {},
                  {},
                  {}};
  if (study.recipe.largest_change > rounding_that_counts)
    study.as_measured = judge_mixture(made, layers, limits, catalogue);
  study.exposure = session_exposure(used_in(study.recipe), study.room, catalogue);
  study.cautions = cautions_for(made, study.label, catalogue);
  SubstituteWish wish;
  wish.temperature = room;
  wish.most = 5;
  study.gentler = find_gentler(mixture, all_liquids(shelf_of(job, catalogue)), catalogue, wish);
  for (const Substitute& one : study.gentler.found)
    study.gentler_judged.push_back(judge_mixture(one.mixture, layers, limits, catalogue));
  study.sources = sources_of(study, catalogue);
  return study;
}

}  // namespace gentlest
