#include "study/static_ladder.hpp"

#include "gentlest/ladder/ladder.hpp"

#include <algorithm>
#include <cmath>

namespace gentlest::study {

Response response_like(const ReadingCurve& curve, int grade) {
  Response response;
  response.stages.fill({-40, 0});  // never
  const double far = std::log(curve.RED_where(reading_levels - grade, 0.2));
  const double near = std::log(curve.RED_where(reading_levels - grade, 0.8));
  const double slope = -2 * std::log(4.0) / (far - near);  // log odds of 80 % and 20 %
  response.stages[static_cast<std::size_t>(grade - 1)] = {-slope * (near + far) / 2, slope};
  response.source = "study";
  return response;
}

std::vector<StudyMixture> static_ladder(const Bench& bench, const World& world, const Catalogue& catalogue) {
  SearchTask task;
  for (const Solvent* solvent : allowed_liquids(catalogue)) task.shelf.push_back(make_liquid(*solvent, "", catalogue));
  std::sort(task.shelf.begin(), task.shelf.end(), [](const Liquid& a, const Liquid& b) { return a.label < b.label; });
  const HansenBox box = bounding_box(task.shelf);
  task.target.emplace_back(box, world.varnish, response_like(removal_curve(), 2), 2);
  task.kept.emplace_back(box, world.paint, response_like(harm_curve(), 4), 4);
  std::vector<StudyMixture> rungs;
  for (const Candidate& rung : design_ladder(task, {3, 7, 0.10, 0.5}).rungs) {
    StudyMixture mixture{{}, point_of(task, rung.composition)};
    for (int k = 0; k < rung.composition.parts; ++k) {
      const auto at = static_cast<std::size_t>(k);
      const Solvent* solvent = task.shelf[rung.composition.liquid[at]].solvent;
      const auto place = std::find(bench.liquids.begin(), bench.liquids.end(), solvent) - bench.liquids.begin();
      mixture.parts.emplace_back(static_cast<std::size_t>(place), rung.composition.share[at] / 20.0);
    }
    rungs.push_back(std::move(mixture));
  }
  return rungs;
}

}  // namespace gentlest::study
