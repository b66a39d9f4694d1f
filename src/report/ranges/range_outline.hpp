// The edge of a layer's range in a cut through its middle. Internal to the charts.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <vector>

namespace gentlest {

enum class Coordinate { dD, dP, dH };

double value_of(const Hansen& point, Coordinate coordinate);

/// 2 for dD, else 1: by which a coordinate is drawn larger, so that distances can be compared by eye.
double scale_of(Coordinate coordinate);

/// A point of the cut, MPa^0.5 on both axes.
struct CutPoint {
  double across = 0;
  double up = 0;
};

/// The points of the cut where RED is 1, the third coordinate being that of the centre: a circle in the scaled space,
/// bent where the layer's reach bends it. With `sds` each lies so many standard deviations of the edge further out;
/// those of a direction u are those of u . centre + reach factor * R0, covariances counted.
std::vector<CutPoint> cut_through_range(const PlannedLayer& layer, Coordinate across, Coordinate up, double sds = 0);

}  // namespace gentlest
