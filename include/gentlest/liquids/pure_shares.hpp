// A mixture of bottles as what is in them, and what was seen of it as it is.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/catalogue/sighting.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <vector>

namespace gentlest {

struct PureShare {
  const Solvent* solvent = nullptr;
  double fraction = 0;  ///< of the volume before mixing
};

/// By falling fraction. Water in a grade is a part of its own, as in the observations.
std::vector<PureShare> pure_shares(const Mixture& mixture, const Catalogue& catalogue);

/// The rows on a mixture of these very liquids, each share within 2.5 points of per cent (half a step of the usual
/// grid); none for a liquid alone.
std::vector<SeenRow> rows_of_mixture(const std::vector<SeenRow>& rows, const std::vector<PureShare>& shares);

}  // namespace gentlest
