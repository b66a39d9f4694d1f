// How a plan would stand if no painting of the studio were finished yet.
#pragma once

#include "gentlest/plan/plan.hpp"

namespace gentlest {

/// The plan's mixtures (ladder_mixtures, in that order) without what the studio taught; empty where it teaches no
/// layer.
std::vector<JudgedMixture> judged_without_studio(const Plan& plan, const Catalogue& catalogue);

}  // namespace gentlest
