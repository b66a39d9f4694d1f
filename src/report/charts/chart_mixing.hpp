// The triangle of every mixture of three bottles.
#pragma once

#include "gentlest/answers/mixing.hpp"
#include "report/draw/plot.hpp"

#include <optional>

namespace gentlest {

/// The word of --kind.
inline constexpr const char* mixing_kind = "mixing";

/// Lines of equal effect and of equal risk over the triangle, the rungs that lie on it, what is beyond the risk limit,
/// and where mixtures part. Without a grid: why there is none.
Chart mixing_chart(const Plan& plan, const std::optional<MixingGrid>& grid);

}  // namespace gentlest
