// A mixture against planned layers, on tables made before. Internal to core: callers use judge_mixture.
#pragma once

#include "core/plan/planned_chance.hpp"

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

/// The part of Hansen space that the liquids and what is left of them can reach: a bottle's water and what it is mixed
/// with dry apart.
HansenBox reach_of(const std::vector<Liquid>& shelf, const Catalogue& catalogue);

/// Subjects and tables stand in the order of the layers; the tables cover the reach of the mixture's liquids.
JudgedMixture judge_on_fields(const Mixture& mixture, const std::vector<PlannedLayer>& layers,
                              const LayerSubjects& subjects, const LayerFields& fields, const Limits& limits,
                              const Catalogue& catalogue);

/// True when a risk passes the limit; the search rounds risks before it compares them.
bool passes_limit(double risk, double risk_limit);

}  // namespace gentlest
