// What stands behind a label and a flash point, in words.
#pragma once

#include "gentlest/safety/hazard.hpp"
#include "gentlest/safety/mixture_hazard.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// The rule that put a statement on a label: "acetone 25 % + isooctane 75 % reach the limit (20 % unless ...)".
std::string because_words(const LabelReason& reason);

/// What of a label cannot be decided, and what is to be said beside it; one sentence each, without a full stop.
std::vector<std::string> not_known_words(const MixtureLabel& label);
std::vector<std::string> remark_words(const MixtureLabel& label);

/// How a flash point was had, or why there is none: "as recorded for the pure liquid".
std::string flash_because(const FlashPoint& flash);

/// "toluene, EU indicative": the part and the authority with the lowest limit; empty when no part has one.
std::string lowest_limit_words(const HazardSummary& hazards);

}  // namespace gentlest
