#include "gentlest/answers/without_studio.hpp"

namespace gentlest {

std::vector<JudgedMixture> judged_without_studio(const Plan& plan, const Catalogue& catalogue) {
  std::vector<PlannedLayer> layers = plan.layers;
  bool any = false;
  for (PlannedLayer& layer : layers) {
    if (!layer.without_studio) continue;
    layer.sphere = layer.without_studio;
    any = true;
  }
  if (!any) return {};
  std::vector<Mixture> mixtures;
  for (const JudgedMixture* mixture : ladder_mixtures(plan)) mixtures.push_back(mixture->mixture);
  std::vector<JudgedMixture> judged = judge_series(mixtures, layers, plan.job.limits, catalogue).mixtures;
  std::size_t next = 0;
  for (const JudgedMixture* mixture : ladder_mixtures(plan)) judged[next++].origin = mixture->origin;
  return judged;
}

}  // namespace gentlest
