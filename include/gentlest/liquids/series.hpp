// Classical test series of the trade, to be judged by the same figures as a ladder.
#pragma once

#include "gentlest/liquids/mixture.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// Mixtures in the order in which they are tried.
struct Series {
  std::string id;
  std::string name;
  std::string source;  ///< in words, with its standing
  std::vector<Mixture> mixtures;
};

/// The published series whose liquids all stand in the catalogue:
/// - 13 mixtures of cyclohexane, toluene and acetone (Feller 1976, from memory);
/// - hydrocarbon to ketone and hydrocarbon to alcohol in 10 % steps (Cremonesi, from memory), the light hydrocarbon
/// being
///   the catalogue's ligroin, the ketone acetone, the alcohol ethanol.
std::vector<Series> published_series(const Catalogue& catalogue);

/// `first` to `second` in even steps of volume, both ends included. Precondition: at least one step.
std::vector<Mixture> even_series(const Liquid& first, const Liquid& second, int steps);

}  // namespace gentlest
