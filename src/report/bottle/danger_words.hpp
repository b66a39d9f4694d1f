// What the bottles can do to a person, short enough for the first screen and with nothing left out that hurts.
#pragma once

#include "gentlest/liquids/mixture.hpp"
#include "gentlest/safety/caution.hpp"

#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* dangers_heading = "For you";

/// "acetone, ethyl acetate: catches fire very easily; irritates the eyes strongly": bottles that share their dangers in
/// one entry, the worst first; bottles without a record before all, since their danger is not known; what must not
/// meet, forms peroxides or goes through the skin by `cautions`. Harm to water life is left to the label.
/// Cautions on other bottles are passed over.
std::vector<std::string> danger_words(const std::vector<Liquid>& bottles, const std::vector<Caution>& cautions);

/// Stands at the end of every first screen, before its last sentence.
extern const char* const plan_is_no_permission;
extern const char* const the_swab_decides;

}  // namespace gentlest
