// The numbers of a triangle of shares against the published fractions of a liquid, read off the grid as a person does.
#include "report/draw/contour.hpp"
#include "report/draw/ternary.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>
#include <map>
#include <regex>
#include <string>

namespace gentlest {

namespace {

struct GridLine {
  Xy from, to;  // the line
  Xy tick_end;  // its tick leaves the triangle from `from`
  Xy number;    // where the number stands
};

// The grid lines of an axis by the number that is printed at them.
std::map<int, GridLine> lines_of(const std::string& svg, const std::string& axis) {
  const std::string pair = "M([-0-9.]+) ([-0-9.]+)L([-0-9.]+) ([-0-9.]+)";
  const std::regex group("<g data-axis=\"" + axis + "\"[^>]*>\\s*<path d=\"" + pair + "\"[^>]*/>\\s*<path d=\"" + pair +
                         "\"[^>]*/>\\s*<text x=\"([-0-9.]+)\" y=\"([-0-9.]+)\"[^>]*>([0-9]+)</text>");
  std::map<int, GridLine> lines;
  for (std::sregex_iterator at(svg.begin(), svg.end(), group), end; at != end; ++at) {
    const auto number = [&](std::size_t i) { return std::stod((*at)[i]); };
    lines[std::stoi((*at)[11])] = {
        {number(1), number(2)}, {number(3), number(4)}, {number(7), number(8)}, {number(9), number(10) - 4}};
  }
  return lines;
}

double distance_to(const GridLine& line, Xy point) {
  const double dx = line.to.x - line.from.x;
  const double dy = line.to.y - line.from.y;
  return (dx * (point.y - line.from.y) - dy * (point.x - line.from.x)) / std::hypot(dx, dy);
}

// Between the lines of this and the next ten, by how near the point lies to each.
double read_off(const std::map<int, GridLine>& lines, Xy point) {
  for (const auto& [value, line] : lines) {
    const auto next = lines.find(value + 10);
    if (next == lines.end() || std::hypot(line.to.x - line.from.x, line.to.y - line.from.y) < 1) continue;
    const double here = distance_to(line, point);
    const double there = distance_to(next->second, point);
    const bool next_is_a_corner =
        std::hypot(next->second.to.x - next->second.from.x, next->second.to.y - next->second.from.y) < 1;
    if (!next_is_a_corner && here * there <= 0) return value + 10 * here / (here - there);
  }
  return -1;
}

}  // namespace

TEST_CASE("published fractions fall where the numbers of the grid say") {
  // Fractional parameters fd, fp, fh of Teas, as printed in Burke 1984, "Solubility parameters: theory and
  // application", AIC Book and Paper Group Annual 3 (from memory), table of solvents.
  struct Published {
    const char* name;
    double fd, fp, fh;
  };
  for (const double low : {0.0, 20.0}) {
    const Ternary triangle{{60, 400}, 400, low, {{{"fd", "fd"}, {"fp", "fp"}, {"fh", "fh"}}}};
    Drawing drawing{520, 440};
    draw_ternary(drawing, triangle);
    for (const Published& one : {Published{"acetone", 47, 32, 21}, Published{"ethanol", 36, 18, 46},
                                 Published{"toluene", 80, 7, 13}, Published{"ethyl acetate", 51, 18, 31}}) {
      INFO(one.name << " from fd " << low);
      const Xy at = place_in(triangle, one.fd, one.fp);
      CHECK(read_off(lines_of(drawing.body, "fd"), at) == test::near(one.fd, 0.1));
      CHECK(read_off(lines_of(drawing.body, "fp"), at) == test::near(one.fp, 0.1));
      CHECK(read_off(lines_of(drawing.body, "fh"), at) == test::near(one.fh, 0.1));
    }
  }
}

TEST_CASE("a tick and its number go on where the grid line leaves the triangle") {
  const Ternary triangle{{60, 400}, 400, 30, {{{"fd", "fd"}, {"fp", "fp"}, {"fh", "fh"}}}};
  Drawing drawing{520, 440};
  draw_ternary(drawing, triangle);
  for (const char* axis : {"fd", "fp", "fh"}) {
    const std::map<int, GridLine> lines = lines_of(drawing.body, axis);
    CHECK(lines.size() == 8);
    for (const auto& [value, line] : lines) {
      if (std::hypot(line.to.x - line.from.x, line.to.y - line.from.y) < 1) continue;  // a corner
      INFO(axis << " " << value);
      CHECK(std::abs(distance_to(line, line.tick_end)) < 0.1);
      CHECK(std::abs(distance_to(line, line.number)) < 0.1);
      const double inwards = (line.to.x - line.from.x) * (line.tick_end.x - line.from.x) +
                             (line.to.y - line.from.y) * (line.tick_end.y - line.from.y);
      CHECK(inwards < 0);
    }
  }
}

TEST_CASE("a line of equal value lies where a plane takes that value") {
  // value = share one + 2 share two, in per cent: the level 60 is a straight line from (60, 0) to (0, 30).
  const auto plane = [](int i, int j) { return 2.0 * i + 4.0 * j; };
  const std::vector<std::vector<Xy>> lines = level_lines(50, plane, 61);
  REQUIRE(lines.size() == 1);
  for (const Xy& point : lines[0]) CHECK(point.x + 2 * point.y == test::near(61, 1e-9));
  double longest = 0;
  for (const Xy& point : lines[0]) longest = std::max(longest, point.x);
  CHECK(longest == test::near(61, 1e-9));
  CHECK(level_lines(50, plane, 500).empty());
  // A hill in the middle: its line closes, and is one.
  const auto hill = [](int i, int j) { return -std::hypot(i - 16.3, j - 17.1); };
  const std::vector<std::vector<Xy>> ring = level_lines(50, hill, -5);
  REQUIRE(ring.size() == 1);
  CHECK(ring[0].front() == ring[0].back());
  for (const RowStretch& row : rows_above(50, plane, 61)) {
    CHECK(row.from.x + 2 * row.from.y >= 61 - 1e-9);
    CHECK(row.to.x + row.to.y == test::near(100, 1e-9));
  }
}

}  // namespace gentlest
