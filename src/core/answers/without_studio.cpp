#include "gentlest/answers/without_studio.hpp"

namespace gentlest {

std::vector<JudgedMixture> judged_without_studio(const Plan& plan, const Catalogue& catalogue) {
  std::vector<JudgedMixture> judged;
  std::vector<PlannedLayer> layers = plan.layers;
  bool any = false;
  for (PlannedLayer& layer : layers) {
    if (!layer.without_studio) continue;
    layer.sphere = layer.without_studio;
    any = true;
  }
  if (!any) return judged;
  for (const JudgedMixture* mixture : ladder_mixtures(plan)) {
    judged.push_back(judge_mixture(mixture->mixture, layers, plan.job.limits, catalogue));
    judged.back().origin = mixture->origin;
  }
  return judged;
}

}  // namespace gentlest
