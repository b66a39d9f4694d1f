// What was seen beside what the program says: every observation with the chances that the material's sphere gives.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <optional>
#include <vector>

namespace gentlest {

/// Chances of one liquid on one material, by the grades that count where a job's limits say nothing else: "moves" up to
/// Limits::effect_grade or the strongest grade that happens to the material, "affects" up to what is harm to it.
struct ActionChances {
  double moves = 0;
  double affects = 0;
  int moves_grade = Limits().effect_grade;  ///< 2: dissolves or nearly
  int affects_grade = usual_risk_grade;     ///< 4: swells clearly or worse
};

/// The response curve averaged over the material's uncertain sphere, for each mixture in turn, rounded as a search
/// rounds; a film that only swells by this contact. Empty when the material has no sphere.
std::vector<ActionChances> chances_on(const Material& material, const std::vector<Mixture>& mixtures,
                                      const Catalogue& catalogue, Contact contact = Contact::swab);

/// What was tried, per cent by volume; nothing where the source names no liquid or one of them has no point in Hansen
/// space. Precondition: the observation is the catalogue's own.
std::optional<Mixture> mixture_of(const Observation& seen, const Catalogue& catalogue);

/// Why there is no chance beside an observation.
enum class NotJudged { no_sphere, no_point, in_words };

/// `open`: the grades leave open what happened, so no chance can be wrong.
enum class Agreement { agrees, open, disagrees };

struct JudgedObservation {
  const Observation* seen = nullptr;
  std::optional<ActionChances> chances;
  std::optional<NotJudged> not_judged;  ///< exactly where there are no chances
  std::optional<Agreement> agreement;   ///< exactly where there are chances
};

/// An observation is clear-cut at one of the two grades where its range lies wholly on one side of it: the layer moved
/// or did not, was affected or was not. It disagrees where at one of them the chance lies on the wrong side of one
/// half.
Agreement compare(const GradeRange& seen, const ActionChances& chances);

/// Precondition: the observations are the catalogue's own.
std::vector<JudgedObservation> judge_observations(const std::vector<const Observation*>& observations,
                                                  const Catalogue& catalogue);

}  // namespace gentlest
