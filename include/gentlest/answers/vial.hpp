// Everything about one vial of a mixture: what to measure, whether it stays one liquid, how it drifts, its
// label, fire and breath, what to mind, what would be gentler. For one mixture and one job; pure.
#pragma once

#include "gentlest/answers/substitute.hpp"
#include "gentlest/liquids/recipe.hpp"
#include "gentlest/plan/plan.hpp"
#include "gentlest/safety/caution.hpp"

#include <optional>
#include <vector>

namespace gentlest {

struct VialStudy {
  JudgedMixture judged;                      ///< as asked
  Recipe recipe;                             ///< by the job's vial and measure
  std::optional<JudgedMixture> as_measured;  ///< where rounding changes the mixture
  MixtureLabel
      label;  ///< of the mixture as measured, like all that follows down to the cautions; printed on labels too
  FlashPoint flash;
  std::optional<double> lower_explosive_limit_percent;
  std::optional<Celsius> start_of_boiling;
  std::vector<VapourHazard> vapour_hazards;
  Room room;
  std::vector<SessionExposure> exposure;  ///< of this one vial, dried away in the room
  std::vector<Caution> cautions;
  SubstituteAnswer gentler;                   ///< from the job's shelf
  std::vector<JudgedMixture> gentler_judged;  ///< the same mixtures against the layers, in order
  std::vector<Source> sources;
};

/// Figures that cannot be had are left empty, never guessed. Throws InputError (Fault::usage) when the vial cannot be
/// filled with the job's measure.
VialStudy study_vial(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const Job& job,
                     const Catalogue& catalogue);

}  // namespace gentlest
