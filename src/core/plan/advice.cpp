#include "core/plan/advice.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

// Names of the layers to keep, and of their passages, of which this is known or suspected.
std::vector<std::string> flagged_names(const Plan& plan, Flag flag) {
  std::vector<std::string> names;
  const auto add = [&](const std::string& name, const std::vector<Flag>& flags) {
    if (std::find(flags.begin(), flags.end(), flag) != flags.end()) names.push_back(name);
  };
  for (const PlannedLayer& layer : plan.layers) {
    if (layer.role != Role::keep) continue;
    add(layer.name, layer.flags);
    for (const PassageWarning& one : layer.passages) add(one.passage, one.flags);
  }
  return names;
}

bool holds_alcohol_and_hydrocarbon(const Mixture& mixture) {
  bool alcohol = false;
  bool hydrocarbon = false;
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    alcohol = alcohol || solvent.family == "alcohol";
    hydrocarbon = hydrocarbon || is_hydrocarbon_or_cut(solvent);
  }
  return alcohol && hydrocarbon;
}

}  // namespace

std::vector<Watch> what_to_watch(const Plan& plan) {
  std::vector<Watch> watch = {{plan.outcome == Outcome::window ? WatchKind::begin_gently : WatchKind::nothing_proposed},
                              {WatchKind::two_places},
                              {WatchKind::softening},
                              {WatchKind::colour_on_swab}};
  for (std::size_t i = 0; i < plan.job.passages.size(); ++i) watch.push_back({WatchKind::passage, i});
  for (const Flag flag : {Flag::resinous, Flag::waxy, Flag::bituminous, Flag::water_sensitive}) {
    std::vector<std::string> names = flagged_names(plan, flag);
    if (!names.empty()) watch.push_back({WatchKind::flag, 0, flag, std::move(names)});
  }
  const std::vector<const JudgedMixture*> mixtures = planned_mixtures(plan);
  if (std::any_of(mixtures.begin(), mixtures.end(),
                  [](const JudgedMixture* planned) { return holds_alcohol_and_hydrocarbon(planned->mixture); }))
    watch.push_back({WatchKind::may_part});
  return watch;
}

std::vector<Caution> advice_cautions(const Plan& plan, const Catalogue& catalogue) {
  std::vector<LabelledMixture> mixtures;
  for (const JudgedMixture* planned : planned_mixtures(plan))
    mixtures.push_back({planned->mixture, label_of(planned->mixture, catalogue)});
  std::vector<Caution> cautions = cautions_for(mixtures, catalogue);
  cautions.insert(cautions.begin(), {CautionKind::not_a_permission, CautionOrigin::common_practice});
  return cautions;
}

}  // namespace gentlest
