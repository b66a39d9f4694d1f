// What the observations of the catalogue make of its stand-ins, and how well the result speaks of what it has not seen.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/fitting/conditioning.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// How well chances agree with observations. A film that dissolves is asked how likely a liquid moves it (grade 2 or
/// stronger), one that only swells how likely it is affected (grade 4 or stronger). Clear-cut is an observation whose
/// range lies wholly at that grade or stronger (then right at a chance of one half or more), or wholly at grade 5 or
/// weaker (right at one quarter or less).
struct AgreementScore {
  int observations = 0;
  int clear_cut = 0;
  int right = 0;
  double brier = 0;      ///< mean squared difference of chance and what happened, over the clear-cut
  int pairs = 0;         ///< of one material, whose ranges do not overlap
  double in_order = 0;   ///< of these: the stronger one has the larger chance; a tie counts half
  double log_score = 0;  ///< mean of -ln chance of the range, over all
};

/// An observation with the chance by a fit.
struct JudgedAction {
  const Observation* seen = nullptr;
  double chance = 0;           ///< that the film is moved or, if it only swells, affected
  double chance_of_range = 0;  ///< that the grade lies in the range observed
};

/// All observations of one material that can be asked, and what they make of it.
struct MaterialFit {
  const Material* material = nullptr;
  bool stands = false;  ///< its sphere is a published one: only its reach is fitted
  int sources = 0;
  ConditionedSphere fit;
  std::vector<JudgedAction> recorded;  ///< by the sphere as recorded
  std::vector<JudgedAction> fitted;    ///< by the fit, which has seen them
  std::vector<JudgedAction> held_out;  ///< each by a fit without any observation of its source
};

/// Whether an observation is clear-cut on this material, and if so whether the liquid moved (affected) it.
std::optional<bool> what_happened(const JudgedAction& judged, const Material& material);
/// One half or more for what happened, one quarter or less for what did not.
bool is_right(double chance, bool happened);

struct ObservationFit {
  ConditioningSettings settings;
  double swab_ln_further = 0;  ///< of films that only swell
  std::vector<MaterialFit> materials;
  std::vector<const Observation*> not_asked;  ///< no sphere, no point, or told in words
};

/// Our choice for films that only swell (docs/observations.md): a swab of seconds acts as if ln RED were larger by
/// this.
inline constexpr double usual_swab_ln_further = 0.3;

/// Fits every material that has a sphere and observations. `hold_out`: also each source in turn left out (slow).
ObservationFit fit_observations(const Catalogue& catalogue, const ConditioningSettings& settings,
                                double swab_ln_further, bool hold_out);

/// Agreement of some materials together; pairs are of one material each.
AgreementScore score_of(const std::vector<const MaterialFit*>& fits, std::vector<JudgedAction> MaterialFit::*which);

}  // namespace gentlest
