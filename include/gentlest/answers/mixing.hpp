// Every mixture of three bottles: effect and risk over the triangle of their shares.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace gentlest {

/// Why a bottle stands in the triangle.
enum class MixingReason {
  asked,   ///< by name
  ladder,  ///< of the first line; without a window, of the nearest mixtures
  line,    ///< of a later line
  shelf    ///< of all bottles left it adds most: the largest effect within the risk limit together with the others
};

struct MixingBottle {
  Liquid liquid;
  MixingReason reason = MixingReason::ladder;
  int line = 1;  ///< for `line`: which, from 1
};

/// Values at shares of i, j and steps - i - j of `steps` (0 <= i, 0 <= j, i + j <= steps).
struct MixingGrid {
  std::array<MixingBottle, 3> bottles;
  int steps = 50;
  std::vector<double> effect;             ///< 0..1, by at()
  std::vector<double> risk;               ///< the same; empty where no layer to keep has a sphere
  std::vector<std::pair<int, int>> part;  ///< of every tenth of volume: where the mixture parts into two liquids

  std::size_t at(int i, int j) const {
    const int rows_below = j * (2 * (steps + 1) - j + 1) / 2;
    return static_cast<std::size_t>(rows_below) + static_cast<std::size_t>(i);
  }
};

/// The mixture at shares of i, j and what is left of the steps.
Mixture mixture_at(const MixingGrid& grid, int i, int j);

/// Of the bottles asked for (none, or three that differ), else of those of the ladder, filled up to three. Nothing
/// where the layer to remove has no sphere or there are fewer than three bottles. Effect and risk are those of the
/// plan.
std::optional<MixingGrid> mix_three(const Plan& plan, const Catalogue& catalogue,
                                    const std::vector<Liquid>& asked = {});

/// Of the mixtures within the risk limit the one of most effect, as shares of the grid; nothing where none is.
struct MixingBest {
  int i = 0, j = 0;
  double effect = 0;
  std::optional<double> risk;
};
std::optional<MixingBest> best_within(const MixingGrid& grid, double risk_limit);

}  // namespace gentlest
