// The liquids and mixtures of the study, out of the catalogue.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <string>
#include <utility>
#include <vector>

namespace gentlest::study {

/// A mixture of liquids of one list, by position and volume fraction.
struct StudyMixture {
  std::vector<std::pair<std::size_t, double>> parts;
  Hansen point;
};

/// A studio's shelf of 27 dry liquids, as far as the catalogue has a hazard record for them without statements of
/// lasting harm (may cause or is suspected to cause cancer, genetic defects, harm to fertility or to organs; toxic or
/// fatal).
std::vector<const Solvent*> allowed_liquids(const Catalogue& catalogue);

/// All mixtures of at most three of these liquids, pairs in 5 % and triples in 10 % steps, one for each cell of 1
/// MPa^0.5 in (2 dD, dP, dH), fewest parts first. Left out, because such pairs may split: aliphatic hydrocarbons with
/// benzyl alcohol, ethyl lactate or diacetone alcohol (a precaution, no source; the other pairs are known in practice
/// to mix when dry).
std::vector<StudyMixture> candidate_mixtures(const std::vector<const Solvent*>& liquids);

/// The published 13-mixture series (cyclohexane, toluene, acetone), and 10 % steps of white spirit to acetone, white
/// spirit to ethanol, acetone to ethanol; `liquids` receives those needed.
std::vector<StudyMixture> thirteen_mixtures(const Catalogue& catalogue, std::vector<const Solvent*>& liquids);
std::vector<std::vector<StudyMixture>> ten_percent_ladders(const Catalogue& catalogue,
                                                           std::vector<const Solvent*>& liquids);

}  // namespace gentlest::study
