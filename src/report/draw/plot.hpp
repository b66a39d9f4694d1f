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

/// Grid, ticks, tick labels and titles. The tick labels need 40 to the left, 34 below.
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
};

/// Draws the entries in as many columns as fit and returns the height taken.
double draw_legend(Drawing& drawing, Xy corner, double width, const std::vector<LegendEntry>& entries);

/// A name and the point it belongs to.
struct PointName {
  std::string text;
  Xy point;
  double size = 11;
  bool bold = false;
  double clearance = 6;
};

/// Draws the names where place_labels finds room; returns those that found none. Earlier names have the first choice.
std::vector<std::string> draw_names(Drawing& drawing, const std::vector<PointName>& names,
                                    const std::vector<Box>& obstacles, const Box& bounds);

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

/// Width of every chart; a page prints it 180 mm wide.
inline constexpr double chart_width = 720;

/// A file of its own: title above, caption and editions below.
std::string chart_file(const Chart& chart, const Edition& edition);

/// A figure of a page, with its caption.
std::string chart_figure(const Chart& chart);

}  // namespace gentlest
