// Classical test series of the trade, to be judged by the same figures as a ladder.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Which series it is.
enum class SeriesKind {
  feller,               ///< 13 mixtures of cyclohexane, toluene and acetone (Feller 1976, from memory)
  hydrocarbon_ketone,   ///< in 10 % steps (Cremonesi, from memory)
  hydrocarbon_alcohol,  ///< the same
  own                   ///< of the job: Series::name
};
/// The word that files use for it, e.g. "feller".
std::string_view to_word(SeriesKind kind);

/// Mixtures in the order in which they are tried.
struct Series {
  SeriesKind kind = SeriesKind::feller;
  std::vector<Mixture> mixtures;
  std::string name = {};  ///< of one of the job's own; empty of a published one
};

/// The published series whose liquids all stand in the catalogue. Of those in 10 % steps the light hydrocarbon is the
/// catalogue's ligroin, the ketone acetone, the alcohol ethanol.
std::vector<Series> published_series(const Catalogue& catalogue);

/// What is wrong with a series as typed: no mixture, or one that cannot be read; at its place where that is known.
std::vector<Diagnostic> faults_of_series(const std::vector<std::string>& mixtures, const std::vector<Location>& places,
                                         const Catalogue& catalogue, const std::vector<Liquid>& shelf);

/// `first` to `second` in even steps of volume, both ends included. Precondition: at least one step.
std::vector<Mixture> even_series(const Liquid& first, const Liquid& second, int steps);

}  // namespace gentlest
