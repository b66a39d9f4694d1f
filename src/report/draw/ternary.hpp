// A triangle of three shares that add up to 100 %: the first grows along the base to the right, the second up the right
// side, the third down the left side.
#pragma once

#include "report/draw/label_placement.hpp"

#include <array>
#include <string>
#include <vector>

namespace gentlest {

struct TernaryAxis {
  std::string key;    ///< as data-axis of its grid lines
  std::string title;  ///< with the unit
};

struct Ternary {
  Xy corner;        ///< lower left
  double side = 0;  ///< in units of the drawing
  double low = 0;   ///< the first share at the left end of the base, per cent; the other two reach up to 100 - low
  std::array<TernaryAxis, 3> axes;
};

/// Where a point stands of which the first two shares are these, per cent; outside the triangle when they are.
Xy place_in(const Ternary& triangle, double first, double second);

double height_of(const Ternary& triangle);
/// Lower left, top, lower right.
std::vector<Xy> outline_of(const Ternary& triangle);

/// Grid, ticks, numbers and titles, every 10 %. A tick leans as the grid line that it belongs to runs, and its number
/// stands at its end. Needs 50 to the left, right and below, 16 above.
void draw_ternary(Drawing& drawing, const Ternary& triangle);

/// Where numbers and titles stand, which no name may cover.
std::vector<Box> boxes_of_ticks(const Ternary& triangle);

}  // namespace gentlest
