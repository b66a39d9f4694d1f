#include "report/ranges/range_outline.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gentlest {

namespace {

struct Direction {
  Coordinate across, up;
  double cosine, sine;
};

double covariance_of(const SphereCovariance& shared, Coordinate a, Coordinate b) {
  if (a > b) std::swap(a, b);
  if (a == Coordinate::dD) return b == Coordinate::dP ? shared.dD_dP : shared.dD_dH;
  return shared.dP_dH;
}

double with_radius(const SphereCovariance& shared, Coordinate a) {
  return a == Coordinate::dD ? shared.dD_R0 : a == Coordinate::dP ? shared.dP_R0 : shared.dH_R0;
}

// Standard deviation of the edge in this direction, MPa^0.5 of the scaled space.
double sd_of_edge(const UncertainSphere& sphere, const Direction& to, double longer) {
  const double across = to.cosine * scale_of(to.across), up = to.sine * scale_of(to.up);
  const double plain =
      std::hypot(longer * sphere.R0_sd, across * value_of(sphere.sd, to.across), up * value_of(sphere.sd, to.up));
  const SphereCovariance& shared = sphere.shared;
  if (shared == SphereCovariance{}) return plain;
  const double together = across * up * covariance_of(shared, to.across, to.up) +
                          longer * (across * with_radius(shared, to.across) + up * with_radius(shared, to.up));
  return std::sqrt(std::max(0.0, plain * plain + 2 * together));
}

Hansen point_at(const PlannedLayer& layer, const Direction& to, double distance) {
  Hansen point = layer.sphere->mean.centre;
  const auto add = [&](Coordinate coordinate, double by) {
    (coordinate == Coordinate::dD   ? point.dD
     : coordinate == Coordinate::dP ? point.dP
                                    : point.dH) += by / scale_of(coordinate);
  };
  add(to.across, distance * to.cosine);
  add(to.up, distance * to.sine);
  return point;
}

double edge_along(const PlannedLayer& layer, const Direction& to, double sds) {
  const UncertainSphere& sphere = *layer.sphere;
  const auto edge_at = [&](double distance) {
    const double longer = reach_factor(layer.reach, point_at(layer, to, distance));
    return std::max(0.0, longer * sphere.mean.R0 + sds * sd_of_edge(sphere, to, longer));
  };
  if (layer.reach.places.empty()) return edge_at(0);
  // Outwards to where the edge is first passed, and back to it.
  const double step = 0.1 * layer.reach.length;
  double inside = 0, outside = step;
  for (int i = 0; i < 2000 && outside < edge_at(outside); ++i) {
    inside = outside;
    outside += step;
  }
  for (int i = 0; i < 40; ++i) {
    const double middle = (inside + outside) / 2;
    (middle < edge_at(middle) ? inside : outside) = middle;
  }
  return inside;
}

}  // namespace

double value_of(const Hansen& point, Coordinate coordinate) {
  return coordinate == Coordinate::dD ? point.dD : coordinate == Coordinate::dP ? point.dP : point.dH;
}

double scale_of(Coordinate coordinate) {
  return coordinate == Coordinate::dD ? 2 : 1;
}

std::vector<CutPoint> cut_through_range(const PlannedLayer& layer, Coordinate across, Coordinate up, double sds) {
  std::vector<CutPoint> edge;
  constexpr int corners = 72;
  for (int k = 0; k < corners; ++k) {
    const double angle = 2 * std::acos(-1.0) * k / corners;
    const Direction to{across, up, std::cos(angle), std::sin(angle)};
    const double radius = edge_along(layer, to, sds);
    const Hansen& centre = layer.sphere->mean.centre;
    edge.push_back({value_of(centre, across) + radius * to.cosine / scale_of(across),
                    value_of(centre, up) + radius * to.sine / scale_of(up)});
  }
  return edge;
}

}  // namespace gentlest
