// What a layer or passage to keep costs the ladder, in the same words on screen and on paper.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* layer_cost_heading = "What keeping it costs, and the risk limit";

/// "without red glaze: 7 rungs up to 58 %, not 3 up to 51 %"; one for each of Plan::costs.
std::vector<std::string> layer_cost_words(const Plan& plan);

/// When such a ladder may be used.
extern const char* const layer_cost_use;

}  // namespace gentlest
