// Lines of equal value over a triangle of shares.
#pragma once

#include "report/draw/svg.hpp"

#include <functional>
#include <vector>

namespace gentlest {

/// Where the value is `level`, in chains of points, each through neighbouring cells. `value(i, j)` is known where the
/// first share is i and the second j of `steps` (i + j <= steps) and taken as a plane within each cell; x and y of a
/// point are the two shares in per cent.
std::vector<std::vector<Xy>> level_lines(int steps, const std::function<double(int, int)>& value, double level);

/// A stretch of one row of the grid, on which the second share is the same.
struct RowStretch {
  Xy from, to;  ///< shares in per cent
};
/// Of each row the stretches on which the value is more than `level`.
std::vector<RowStretch> rows_above(int steps, const std::function<double(int, int)>& value, double level);

}  // namespace gentlest
