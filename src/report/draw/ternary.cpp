#include "report/draw/ternary.hpp"

#include "report/draw/palette.hpp"
#include "report/draw/plot.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <cmath>

namespace gentlest {

namespace {

constexpr double step = 10;
constexpr double tick = 7;
constexpr double to_number = 16;  // from the side to the middle of a number, along its tick
constexpr double to_title = 36;   // from the side, square to it

const double sine_60 = std::sqrt(3.0) / 2;

// One grid line with its tick: from the side where its number stands to the other end.
struct GridLine {
  std::size_t axis = 0;
  double value = 0;
  Xy from, to;
};

std::vector<GridLine> grid_of(const Ternary& triangle) {
  const double low = triangle.low;
  const double span = 100 - low;
  std::vector<GridLine> lines;
  for (double t = 0; t <= span + step / 2; t += step) {
    const double rest = span - t;
    lines.push_back({0, low + t, place_in(triangle, low + t, 0), place_in(triangle, low + t, rest)});
    lines.push_back({1, t, place_in(triangle, low + rest, t), place_in(triangle, low, t)});
    lines.push_back({2, t, place_in(triangle, low, rest), place_in(triangle, low + rest, 0)});
  }
  return lines;
}

// The way that a tick takes out of the triangle: the grid line's own, beyond its end. Of length 1.
Xy outwards(std::size_t axis) {
  return axis == 0 ? Xy{-0.5, sine_60} : axis == 1 ? Xy{1, 0} : Xy{-0.5, -sine_60};
}

Xy moved(Xy from, Xy way, double by) {
  return {from.x + way.x * by, from.y + way.y * by};
}

struct SideTitle {
  Xy at;
  double turn_degrees = 0;
  std::string text;
};

std::array<SideTitle, 3> titles_of(const Ternary& triangle) {
  const double height = height_of(triangle);
  const Xy left_side{triangle.corner.x + triangle.side / 4, triangle.corner.y - height / 2};
  const Xy right_side{triangle.corner.x + triangle.side * 3 / 4, triangle.corner.y - height / 2};
  const auto text = [&](std::size_t axis) {
    return shortened(triangle.axes[axis].title, small_text, triangle.side * 0.8);
  };
  return {SideTitle{{triangle.corner.x + triangle.side / 2, triangle.corner.y + to_title + 2}, 0, text(0) + " \u2192"},
          SideTitle{moved(right_side, {sine_60, -0.5}, to_title), 60, "\u2190 " + text(1)},
          SideTitle{moved(left_side, {-sine_60, -0.5}, to_title), -60, "\u2190 " + text(2)}};
}

}  // namespace

Xy place_in(const Ternary& triangle, double first, double second) {
  const double span = 100 - triangle.low;
  const double across = (first - triangle.low) / span + second / span / 2;
  return {triangle.corner.x + triangle.side * across, triangle.corner.y - height_of(triangle) * second / span};
}

double height_of(const Ternary& triangle) {
  return triangle.side * sine_60;
}

std::vector<Xy> outline_of(const Ternary& triangle) {
  return {place_in(triangle, triangle.low, 0), place_in(triangle, triangle.low, 100 - triangle.low),
          place_in(triangle, 100, 0)};
}

void draw_ternary(Drawing& drawing, const Ternary& triangle) {
  for (const GridLine& line : grid_of(triangle)) {
    const Xy way = outwards(line.axis);
    const Xy number = moved(line.from, way, to_number);
    drawing.body += fmt::format("<g data-axis=\"{}\" data-value=\"{}\">\n", xml_escape(triangle.axes[line.axis].key),
                                fixed(line.value, 0));
    add_line(drawing, line.from, line.to, {grid_ink, 0.8});
    add_line(drawing, line.from, moved(line.from, way, tick), {pale_ink, 1.2});
    add_text(drawing, {number.x, number.y + 4}, fixed(line.value, 0), {small_text, Anchor::middle, false, pale_ink});
    drawing.body += "</g>\n";
  }
  add_path(drawing, outline_of(triangle), {axis_ink, 1}, true);
  for (const SideTitle& title : titles_of(triangle)) {
    TextStyle style{small_text, Anchor::middle};
    style.turn_degrees = title.turn_degrees;
    add_text(drawing, title.at, title.text, style);
  }
}

std::vector<Box> boxes_of_ticks(const Ternary& triangle) {
  std::vector<Box> boxes;
  for (const GridLine& line : grid_of(triangle)) {
    const Xy number = moved(line.from, outwards(line.axis), to_number);
    const double half = text_width(fixed(line.value, 0), small_text) / 2 + 1;
    boxes.push_back({number.x - half, number.y - 7, number.x + half, number.y + 6});
  }
  for (const SideTitle& title : titles_of(triangle)) {
    const double half = text_width(title.text, small_text) / 2;
    const double angle = title.turn_degrees * std::acos(-1.0) / 180;
    const Xy way{std::cos(angle), std::sin(angle)};
    for (const Box& box : boxes_along({moved(title.at, way, -half), moved(title.at, way, half)}))
      boxes.push_back({box.left - 7, box.top - 7, box.right + 7, box.bottom + 7});
  }
  return boxes;
}

}  // namespace gentlest
