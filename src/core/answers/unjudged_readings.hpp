// Readings where no belief can learn: on layers to keep without a sphere, or where no risk can be told. Internal to
// core.
#pragma once

#include "gentlest/answers/progress.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

/// Name of the kept layer or passage that a reading under this passage speaks of: without a passage the uppermost.
/// Empty when there is none.
std::string kept_under(const Job& job, const std::vector<PlannedLayer>& layers, const std::string& passage);

/// Those of these readings that speak of the original on a layer without a sphere.
std::vector<UnjudgedReading> unjudged_readings(const Job& job, const std::vector<PlannedLayer>& layers,
                                               const std::vector<Reading>& readings, const std::vector<Liquid>& shelf,
                                               const Catalogue& catalogue);

/// Takes off what a harm on such a layer closes: every mixture with at least as much of each active liquid. Not active
/// are aliphatic hydrocarbons and petroleum fractions, unless the mixture holds nothing else. Returns how many.
std::size_t close_harmful(std::vector<Mixture>& mixtures, const std::vector<UnjudgedReading>& readings,
                          const std::vector<Liquid>& shelf, const Catalogue& catalogue);

/// Of rungs from gentle to strong, those below any that was seen to harm, up to one above the strongest that was not.
std::vector<Mixture> next_rungs(const std::vector<Mixture>& rungs, const std::vector<UnjudgedReading>& readings,
                                const std::vector<Liquid>& shelf, const Catalogue& catalogue);

/// First tests and liquids to try of a layer to remove without a sphere, without those that were tried or are closed.
void fill_first_tests(Progress& progress, const Job& job, const std::vector<Liquid>& shelf, const Catalogue& catalogue);

}  // namespace gentlest
