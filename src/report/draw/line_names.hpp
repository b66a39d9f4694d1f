// Names that stand on the lines they belong to.
#pragma once

#include "report/draw/label_placement.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// A line drawn from left to right, x rising, and its name.
struct LineToName {
  std::string name;
  std::vector<Xy> points;
};

/// A name and the point of its line that it belongs to. It stands on that point, or apart with a leader from it.
struct LineName {
  std::string text;                ///< several names where their lines cannot be told apart: "1, 2"
  std::vector<std::size_t> lines;  ///< which lines it names
  Box box;
  Xy point;
  bool has_leader = false;
};

struct LineNames {
  std::vector<LineName> placed;
  std::vector<std::string> without_room;
};

/// A place for each name within the bounds. On its own line where no other line comes near, else beside with a leader
/// to where its line lies freest; lines that run together all the way share one name. No box overlaps another or is
/// crossed by a line that it does not name. Same input, same places.
LineNames place_line_names(const std::vector<LineToName>& lines, double size, const Box& bounds);

/// Height of a line at x; nothing left or right of it.
std::optional<double> height_at(const std::vector<Xy>& line, double x);

}  // namespace gentlest
