// Frames with axes, legends and charts: what every picture of a plan shares.
#pragma once

#include "report/draw/label_placement.hpp"
#include "report/draw/svg.hpp"
#include "report/form/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// One axis of a frame, in its own unit.
struct Axis {
  std::string title;  ///< with the unit
  double low = 0;
  double high = 1;
  double step = 0.2;  ///< between ticks; 0: none
  int places = 0;     ///< decimals of the tick labels
};

struct Frame {
  Xy corner;  ///< upper left
  double width = 0;
  double height = 0;
  Axis x;
  Axis y;
};

/// Where a value stands in the drawing; outside the frame when the value is outside the axes.
Xy place_in(const Frame& frame, double x, double y);

/// The four corners, for clipping.
std::vector<Xy> outline_of(const Frame& frame);

/// No text of a chart is smaller: at the width of a phone (390 px) it still stands 8 px high.
inline constexpr double small_text = 12;

/// Grid, ticks, tick labels and titles. The tick labels need 40 to the left, 36 below; the title of an upright axis
/// that is shorter than its title stands above the frame and needs 22 there.
void draw_frame(Drawing& drawing, const Frame& frame);

/// A step of 1, 2 or 5 times a power of ten that cuts the span into about so many pieces. Precondition: span > 0.
double tick_step(double span, int pieces);

/// One line of a legend: a line, a mark, or both; a filled patch where the pen fills.
struct LegendEntry {
  std::string text;
  Pen pen = {};
  bool has_mark = false;
  Mark mark = Mark::disc;
  std::string mark_colour = "#000";
  std::string pattern = {};  ///< drawn over the patch, as add_hatch gives it; empty or "none": none
};

/// Draws the entries in as many columns as fit, long ones broken into lines, and returns the height taken.
double draw_legend(Drawing& drawing, Xy corner, double width, const std::vector<LegendEntry>& entries);

/// A name and the point it belongs to.
struct PointName {
  std::string text;
  Xy point;
  double size = small_text;
  bool bold = false;
  double clearance = 6;
  std::string key = {};  ///< a sign to stand there where the name finds no room; empty: none
  double longest = 1e4;  ///< a wider name is cut short in the picture
};

/// Marks and names of points, to be placed together by draw_names.
struct PointNames {
  std::vector<Box> obstacles;
  std::vector<PointName> names;
};
/// Those of another part of the picture; its names choose after those that are there.
void add_points(PointNames& points, const PointNames& more);

/// Names that did not find room in a picture.
struct OpenNames {
  std::vector<std::string> keyed;         ///< "a: acetone", where the key stands in the picture
  std::vector<std::string> without_room;  ///< where nothing does
};
/// For a caption: " By letter in the picture: a: acetone. No room for the names of: ...". Empty where every name found
/// room.
std::string open_names_words(const OpenNames& open);
/// Adds the names of another picture of the same chart, none twice.
void add_open_names(OpenNames& all, const OpenNames& more);

/// "a" to "z", then "aa" and so on: the key of the n-th thing.
std::string key_letters(std::size_t n);

/// Draws the names where place_labels finds room, their keys where it finds none. Earlier names have the first choice.
OpenNames draw_names(Drawing& drawing, const std::vector<PointName>& names, const std::vector<Box>& obstacles,
                     const Box& bounds);

/// Small boxes along a line, as obstacles for names.
std::vector<Box> boxes_along(const std::vector<Xy>& line);
Box box_around(Xy point, double half);

/// A finished picture.
struct Chart {
  std::string kind;  ///< the word of --kind
  std::string title;
  std::string caption;  ///< what to see in it, in plain words
  Drawing drawing;
  std::string description = {};  ///< what it shows, with the numbers, for those who cannot see it
};

/// Width of every chart; a page prints it 130 mm wide, a phone as wide as it is.
inline constexpr double chart_width = 520;

/// A file of its own: title above, caption and editions below.
std::string chart_file(const Chart& chart, const Edition& edition);

/// A figure of a page, with its caption.
std::string chart_figure(const Chart& chart);

}  // namespace gentlest
