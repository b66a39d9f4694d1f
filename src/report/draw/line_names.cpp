#include "report/draw/line_names.hpp"

#include "report/draw/plot.hpp"
#include "report/form/format.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace gentlest {

namespace {

constexpr double pace = 3;          // between the points of a line that are tried
constexpr double together = 2.5;    // lines never further apart than this are one to the eye
constexpr double clear_of = 1.5;    // least white between a name and another line
constexpr double clear_enough = 8;  // beyond this more white gains nothing

struct Group {
  std::string text;
  std::vector<std::size_t> lines;
};

bool run_together(const std::vector<Xy>& a, const std::vector<Xy>& b, const Box& bounds) {
  for (double x = bounds.left; x <= bounds.right; x += pace) {
    const std::optional<double> ya = height_at(a, x);
    const std::optional<double> yb = height_at(b, x);
    if (ya && yb && std::abs(*ya - *yb) > together) return false;
  }
  return true;
}

std::vector<Group> groups_of(const std::vector<LineToName>& lines, const Box& bounds) {
  std::vector<Group> groups;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const auto same = std::find_if(groups.begin(), groups.end(), [&](const Group& group) {
      return std::all_of(group.lines.begin(), group.lines.end(),
                         [&](std::size_t other) { return run_together(lines[other].points, lines[i].points, bounds); });
    });
    if (same == groups.end()) {
      groups.push_back({lines[i].name, {i}});
    } else {
      same->text += ", " + lines[i].name;
      same->lines.push_back(i);
    }
  }
  return groups;
}

bool holds(const Group& group, std::size_t line) {
  return std::find(group.lines.begin(), group.lines.end(), line) != group.lines.end();
}

bool touches(const std::vector<Xy>& line, const Box& box) {
  for (std::size_t i = 1; i < line.size(); ++i)
    if (crosses(line[i - 1], line[i], box)) return true;
  return false;
}

Box grown(const Box& box, double by) {
  return {box.left - by, box.top - by, box.right + by, box.bottom + by};
}

// How much white there is between the box and the lines of other groups, up to `clear_enough`; negative: too little.
double white_around(const Box& box, const Group& group, const std::vector<LineToName>& lines) {
  for (double white = clear_enough; white >= clear_of; white -= 0.5) {
    const Box wide = grown(box, white);
    bool is_free = true;
    for (std::size_t i = 0; i < lines.size() && is_free; ++i)
      is_free = holds(group, i) || !touches(lines[i].points, wide);
    if (is_free) return white;
  }
  return -1;
}

bool is_free(const Box& box, const std::vector<LineName>& placed, const Box& bounds) {
  return box.left >= bounds.left && box.right <= bounds.right && box.top >= bounds.top && box.bottom <= bounds.bottom &&
         std::none_of(placed.begin(), placed.end(), [&](const LineName& other) {
           return overlap(grown(box, 2), other.box) ||
                  (other.has_leader &&
                   crosses(other.point,
                           {(other.box.left + other.box.right) / 2, (other.box.top + other.box.bottom) / 2}, box));
         });
}

// The place on its own line with the most white around it, the leftmost of equals.
std::optional<LineName> on_the_line(const Group& group, const std::vector<LineToName>& lines, double size,
                                    const Box& bounds, const std::vector<LineName>& placed) {
  const double half_width = text_width(group.text, size, true) / 2 + 1;
  const double half_height = size * 0.5;
  std::optional<LineName> best;
  double most = 0;
  for (double x = bounds.left + half_width; x <= bounds.right - half_width; x += pace) {
    const std::optional<double> y = height_at(lines[group.lines.front()].points, x);
    if (!y) continue;
    const Box box{x - half_width, *y - half_height, x + half_width, *y + half_height};
    if (!is_free(box, placed, bounds)) continue;
    const double white = white_around(box, group, lines);
    if (white <= most) continue;
    most = white;
    best = LineName{group.text, group.lines, box, {x, *y}, false};
  }
  return best;
}

// Where the line lies furthest from all others.
Xy freest_point(const Group& group, const std::vector<LineToName>& lines, const Box& bounds) {
  Xy best = lines[group.lines.front()].points.front();
  double most = -1;
  for (double x = bounds.left; x <= bounds.right; x += pace) {
    const std::optional<double> y = height_at(lines[group.lines.front()].points, x);
    if (!y) continue;
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < lines.size(); ++i)
      if (!holds(group, i))
        if (const std::optional<double> other = height_at(lines[i].points, x))
          nearest = std::min(nearest, std::abs(*other - *y));
    if (nearest <= most) continue;
    most = nearest;
    best = {x, *y};
  }
  return best;
}

std::optional<LineName> beside_the_line(const Group& group, const std::vector<LineToName>& lines, double size,
                                        const Box& bounds, const std::vector<LineName>& placed) {
  const Xy point = freest_point(group, lines, bounds);
  std::vector<Box> obstacles;
  for (const LineToName& line : lines)
    for (const Box& box : boxes_along(line.points)) obstacles.push_back(box);
  for (const LineName& other : placed) obstacles.push_back(grown(other.box, 2));
  const LabelWish wish{point, text_width(group.text, size, true) + 2, size, 8};
  const std::optional<PlacedLabel> place = place_labels({wish}, obstacles, bounds).front();
  if (!place || !is_free(place->box, placed, bounds)) return std::nullopt;
  return LineName{group.text, group.lines, place->box, point, true};
}

}  // namespace

std::optional<double> height_at(const std::vector<Xy>& line, double x) {
  for (std::size_t i = 1; i < line.size(); ++i) {
    if (x < line[i - 1].x || x > line[i].x) continue;
    const double width = line[i].x - line[i - 1].x;
    return width > 0 ? line[i - 1].y + (line[i].y - line[i - 1].y) * (x - line[i - 1].x) / width : line[i].y;
  }
  return std::nullopt;
}

LineNames place_line_names(const std::vector<LineToName>& lines, double size, const Box& bounds) {
  LineNames names;
  std::vector<Group> crowded;
  for (const Group& group : groups_of(lines, bounds)) {
    if (const std::optional<LineName> name = on_the_line(group, lines, size, bounds, names.placed))
      names.placed.push_back(*name);
    else
      crowded.push_back(group);
  }
  for (const Group& group : crowded) {
    if (const std::optional<LineName> name = beside_the_line(group, lines, size, bounds, names.placed))
      names.placed.push_back(*name);
    else
      names.without_room.push_back(group.text);
  }
  return names;
}

}  // namespace gentlest
