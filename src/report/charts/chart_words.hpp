// The pictures of a plan in words, for those who cannot see them.
#pragma once

#include "gentlest/answers/bench.hpp"

#include <string>

namespace gentlest {

/// What the chart of that kind shows, mixture by mixture and layer by layer, with its numbers.
/// Precondition: the word is one of chart_kinds().
std::string describe_chart(const std::string& kind, const Plan& plan, const Bench& bench);

}  // namespace gentlest
