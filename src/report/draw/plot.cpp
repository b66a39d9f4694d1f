#include "report/draw/plot.hpp"

#include "report/draw/palette.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace gentlest {

namespace {

constexpr double tick_text = 11;
constexpr double title_text = 12;
constexpr double legend_text = 11.5;
constexpr double legend_row = 18;
constexpr double legend_sign = 34;  // room for the line or mark

std::vector<double> ticks_of(const Axis& axis) {
  std::vector<double> ticks;
  if (axis.step <= 0) return ticks;
  const double slack = axis.step * 1e-6;
  for (double n = std::ceil((axis.low - slack) / axis.step); n * axis.step <= axis.high + slack; n += 1)
    ticks.push_back(n * axis.step);
  return ticks;
}

void draw_legend_entry(Drawing& drawing, Xy at, const LegendEntry& entry, double room) {
  const double middle = at.y - 4;
  if (entry.pen.fill != "none")
    add_rectangle(drawing, {at.x, middle - 5}, legend_sign - 8, 10, entry.pen);
  else if (entry.pen.stroke != "none")
    add_line(drawing, {at.x, middle}, {at.x + legend_sign - 8, middle}, entry.pen);
  if (entry.has_mark) add_mark(drawing, entry.mark, {at.x + (legend_sign - 8) / 2, middle}, 8, entry.mark_colour);
  add_text(drawing, {at.x + legend_sign, at.y}, shortened(entry.text, legend_text, room), {legend_text});
}

}  // namespace

Xy place_in(const Frame& frame, double x, double y) {
  return {frame.corner.x + (x - frame.x.low) / (frame.x.high - frame.x.low) * frame.width,
          frame.corner.y + frame.height - (y - frame.y.low) / (frame.y.high - frame.y.low) * frame.height};
}

std::vector<Xy> outline_of(const Frame& frame) {
  const Xy a = frame.corner;
  return {a, {a.x + frame.width, a.y}, {a.x + frame.width, a.y + frame.height}, {a.x, a.y + frame.height}};
}

void draw_frame(Drawing& drawing, const Frame& frame) {
  const double bottom = frame.corner.y + frame.height;
  for (const double tick : ticks_of(frame.x)) {
    const double x = place_in(frame, tick, frame.y.low).x;
    add_line(drawing, {x, frame.corner.y}, {x, bottom}, {grid_ink, 0.8});
    add_text(drawing, {x, bottom + 15}, fixed(tick, frame.x.places), {tick_text, Anchor::middle, false, pale_ink});
  }
  for (const double tick : ticks_of(frame.y)) {
    const double y = place_in(frame, frame.x.low, tick).y;
    add_line(drawing, {frame.corner.x, y}, {frame.corner.x + frame.width, y}, {grid_ink, 0.8});
    add_text(drawing, {frame.corner.x - 8, y + 4}, fixed(tick, frame.y.places),
             {tick_text, Anchor::end, false, pale_ink});
  }
  add_rectangle(drawing, frame.corner, frame.width, frame.height, {"#808080", 1});
  add_text(drawing, {frame.corner.x + frame.width / 2, bottom + 31}, frame.x.title, {title_text, Anchor::middle});
  add_text(drawing, {frame.corner.x - 34, frame.corner.y + frame.height / 2}, frame.y.title,
           {title_text, Anchor::middle, false, ink, -90});
}

double tick_step(double span, int pieces) {
  assert(span > 0);
  const double raw = span / pieces;
  const double power = std::pow(10, std::floor(std::log10(raw)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (raw <= factor * power * 1.0001) return factor * power;
  return 10 * power;
}

double draw_legend(Drawing& drawing, Xy corner, double width, const std::vector<LegendEntry>& entries) {
  double widest = 0;
  for (const LegendEntry& entry : entries) widest = std::max(widest, text_width(entry.text, legend_text));
  const double column = std::min(width, widest + legend_sign + 16);
  const auto columns = static_cast<std::size_t>(std::max(1.0, std::floor(width / column)));
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const std::size_t row = i / columns;
    const Xy at{corner.x + static_cast<double>(i % columns) * column,
                corner.y + static_cast<double>(row) * legend_row + 12};
    draw_legend_entry(drawing, at, entries[i], column - legend_sign);
  }
  const std::size_t rows = (entries.size() + columns - 1) / columns;
  return legend_row * static_cast<double>(rows);
}

std::vector<std::string> draw_names(Drawing& drawing, const std::vector<PointName>& names,
                                    const std::vector<Box>& obstacles, const Box& bounds) {
  std::vector<LabelWish> wishes;
  for (const PointName& name : names)
    wishes.push_back({name.point, text_width(name.text, name.size, name.bold) + 2, name.size * 1.1, name.clearance});
  const std::vector<std::optional<PlacedLabel>> places = place_labels(wishes, obstacles, bounds);
  std::vector<std::string> without_room;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (!places[i]) {
      without_room.push_back(names[i].text);
      continue;
    }
    const Box& box = places[i]->box;
    if (places[i]->leader_end) add_line(drawing, names[i].point, *places[i]->leader_end, {"#808080", 0.7});
    TextStyle style{names[i].size, Anchor::middle, names[i].bold};
    style.halo = true;
    add_text(drawing, {(box.left + box.right) / 2, box.bottom - names[i].size * 0.27}, names[i].text, style);
  }
  return without_room;
}

std::vector<Box> boxes_along(const std::vector<Xy>& line) {
  std::vector<Box> boxes;
  constexpr double pace = 5;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double length = std::hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
    const int pieces = std::max(1, static_cast<int>(std::ceil(length / pace)));
    for (int k = 0; k <= pieces; ++k) {
      const double t = static_cast<double>(k) / pieces;
      boxes.push_back(box_around(
          {line[i - 1].x + t * (line[i].x - line[i - 1].x), line[i - 1].y + t * (line[i].y - line[i - 1].y)}, 1.5));
    }
  }
  return boxes;
}

Box box_around(Xy point, double half) {
  return {point.x - half, point.y - half, point.x + half, point.y + half};
}

std::string chart_file(const Chart& chart, const Edition& edition) {
  constexpr double margin = 16;
  constexpr double caption_text = 12;
  constexpr double line = 16;
  Drawing page{chart.drawing.width + 2 * margin, 0};
  add_text(page, {margin, margin + 14}, shortened(chart.title, 16, chart.drawing.width, true),
           {16, Anchor::start, true});
  page.body += fmt::format("<g transform=\"translate({} {})\">\n{}</g>\n", svg_number(margin), svg_number(margin + 26),
                           chart.drawing.body);
  double y = margin + 26 + chart.drawing.height + 18;
  std::vector<std::string> lines = text_lines(chart.caption, caption_text, chart.drawing.width);
  lines.push_back(fmt::format("gentlest {}, catalogue {}", edition.program, edition.catalogue));
  for (const std::string& words : lines) {
    add_text(page, {margin, y}, words, {caption_text, Anchor::start, false, &words == &lines.back() ? pale_ink : ink});
    y += line;
  }
  page.height = y + margin - line / 2;
  Drawing paper{page.width, page.height};
  add_rectangle(paper, {0, 0}, page.width, page.height, {"none", 1, {}, "#fff"});
  paper.body += page.body;
  return inline_svg(paper, {"chart-" + chart.kind, chart.title, chart.description + " " + chart.caption});
}

std::string chart_figure(const Chart& chart) {
  return fmt::format("<figure class=\"chart {}\">\n{}<figcaption><b>{}.</b> {}</figcaption>\n</figure>\n",
                     xml_escape(chart.kind),
                     inline_svg(chart.drawing, {"chart-" + chart.kind, chart.title, chart.description}),
                     xml_escape(chart.title), xml_escape(chart.caption));
}

}  // namespace gentlest
