// Where the names of points go, so that no name covers another, a mark, or the edge.
#pragma once

#include "report/draw/svg.hpp"

#include <optional>
#include <vector>

namespace gentlest {

struct Box {
  double left = 0, top = 0, right = 0, bottom = 0;
  bool operator==(const Box&) const = default;
};

/// True when the boxes share more than an edge.
bool overlap(const Box& a, const Box& b);
/// True when the line touches the inside of the box.
bool crosses(Xy from, Xy to, const Box& box);

/// A name of this size wants to stand near its point, at least `clearance` away from it.
struct LabelWish {
  Xy point;
  double width = 0;
  double height = 0;
  double clearance = 5;
};

struct PlacedLabel {
  Box box;
  std::optional<Xy> leader_end;  ///< set where the name stands too far off to be read without a line to its point
};

/// A place for each wish, earlier wishes first, or nothing where there is no room left: then the caller names the point
/// elsewhere. No box overlaps another, an obstacle or a leader, and all lie within the bounds. A name that found no
/// room may move one that stands in its way, where that one has another place. Same input, same places.
std::vector<std::optional<PlacedLabel>> place_labels(const std::vector<LabelWish>& wishes,
                                                     const std::vector<Box>& obstacles, const Box& bounds);

}  // namespace gentlest
