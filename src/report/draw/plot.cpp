#include "report/draw/plot.hpp"

#include "report/draw/palette.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace gentlest {

namespace {

constexpr double title_text = small_text;
constexpr double legend_text = small_text;
constexpr double legend_line = 15;
constexpr double legend_gap = 4;
constexpr double legend_sign = 34;  // room for the line or mark

std::vector<double> ticks_of(const Axis& axis) {
  std::vector<double> ticks;
  if (axis.step <= 0) return ticks;
  const double slack = axis.step * 1e-6;
  for (double n = std::ceil((axis.low - slack) / axis.step); n * axis.step <= axis.high + slack; n += 1)
    ticks.push_back(n * axis.step);
  return ticks;
}

void draw_legend_entry(Drawing& drawing, Xy at, const LegendEntry& entry, const std::vector<std::string>& lines) {
  const double middle = at.y - 4;
  const bool is_patch = entry.pen.fill != "none" || (!entry.pattern.empty() && entry.pattern != "none");
  if (is_patch) {
    add_rectangle(drawing, {at.x, middle - 6}, legend_sign - 8, 12, entry.pen);
    if (!entry.pattern.empty())
      add_rectangle(drawing, {at.x, middle - 6}, legend_sign - 8, 12, {"none", 1, {}, entry.pattern});
  } else if (entry.pen.stroke != "none") {
    add_line(drawing, {at.x, middle}, {at.x + legend_sign - 8, middle}, entry.pen);
  }
  if (entry.has_mark) add_mark(drawing, entry.mark, {at.x + (legend_sign - 8) / 2, middle}, 8, entry.mark_colour);
  for (std::size_t i = 0; i < lines.size(); ++i)
    add_text(drawing, {at.x + legend_sign, at.y + legend_line * static_cast<double>(i)}, lines[i], {legend_text});
}

// Upright beside the frame where it is long enough, else level above it.
void draw_upright_title(Drawing& drawing, const Frame& frame) {
  if (text_width(frame.y.title, title_text) > frame.height + 20)
    return add_text(drawing, {std::max(2.0, frame.corner.x - 34), frame.corner.y - 9}, frame.y.title, {title_text});
  add_text(drawing, {frame.corner.x - 34, frame.corner.y + frame.height / 2}, frame.y.title,
           {title_text, Anchor::middle, false, ink, -90});
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
    add_text(drawing, {x, bottom + 15}, fixed(tick, frame.x.places), {small_text, Anchor::middle, false, pale_ink});
  }
  for (const double tick : ticks_of(frame.y)) {
    const double y = place_in(frame, frame.x.low, tick).y;
    add_line(drawing, {frame.corner.x, y}, {frame.corner.x + frame.width, y}, {grid_ink, 0.8});
    add_text(drawing, {frame.corner.x - 8, y + 4}, fixed(tick, frame.y.places),
             {small_text, Anchor::end, false, pale_ink});
  }
  add_rectangle(drawing, frame.corner, frame.width, frame.height, {axis_ink, 1});
  const double half = text_width(frame.x.title, title_text) / 2;
  const double middle = std::max(frame.corner.x + frame.width / 2, half + 2);
  if (!frame.x.title.empty()) add_text(drawing, {middle, bottom + 31}, frame.x.title, {title_text, Anchor::middle});
  if (!frame.y.title.empty()) draw_upright_title(drawing, frame);
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
  const double column = std::min(width, widest + legend_sign + 14);
  const auto columns = static_cast<std::size_t>(std::max(1.0, std::floor(width / column)));
  double y = corner.y;
  for (std::size_t first = 0; first < entries.size(); first += columns) {
    std::size_t most = 1;
    for (std::size_t i = first; i < std::min(entries.size(), first + columns); ++i) {
      const std::vector<std::string> lines = text_lines(entries[i].text, legend_text, column - legend_sign);
      draw_legend_entry(drawing, {corner.x + static_cast<double>(i - first) * column, y + 12}, entries[i], lines);
      most = std::max(most, lines.size());
    }
    y += legend_line * static_cast<double>(most) + legend_gap;
  }
  return y - corner.y;
}

void add_points(PointNames& points, const PointNames& more) {
  points.obstacles.insert(points.obstacles.end(), more.obstacles.begin(), more.obstacles.end());
  points.names.insert(points.names.end(), more.names.begin(), more.names.end());
}

std::string key_letters(std::size_t n) {
  const std::string last(1, static_cast<char>('a' + n % 26));
  return n < 26 ? last : key_letters(n / 26 - 1) + last;
}

namespace {

std::string shown_name(const PointName& name) {
  return shortened(name.text, name.size, name.longest, name.bold);
}

LabelWish wish_for(const PointName& name, const std::string& text) {
  return {name.point, text_width(text, name.size, name.bold) + 2, name.size * 1.1, name.clearance};
}

void draw_name(Drawing& drawing, const PointName& name, const std::string& text, const PlacedLabel& place) {
  const Box& box = place.box;
  if (place.leader_end) add_line(drawing, name.point, *place.leader_end, {axis_ink, 0.7});
  TextStyle style{name.size, Anchor::middle, name.bold};
  style.halo = true;
  add_text(drawing, {(box.left + box.right) / 2, box.bottom - name.size * 0.27}, text, style);
}

}  // namespace

OpenNames draw_names(Drawing& drawing, const std::vector<PointName>& names, const std::vector<Box>& obstacles,
                     const Box& bounds) {
  std::vector<LabelWish> wishes;
  for (const PointName& name : names) wishes.push_back(wish_for(name, shown_name(name)));
  const std::vector<std::optional<PlacedLabel>> places = place_labels(wishes, obstacles, bounds);
  std::vector<Box> taken = obstacles;
  std::vector<std::size_t> left;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (!places[i]) {
      left.push_back(i);
      continue;
    }
    draw_name(drawing, names[i], shown_name(names[i]), *places[i]);
    taken.push_back(places[i]->box);
    if (places[i]->leader_end)
      for (const Box& box : boxes_along({names[i].point, *places[i]->leader_end})) taken.push_back(box);
  }
  wishes.clear();
  for (const std::size_t i : left) wishes.push_back(wish_for(names[i], names[i].key));
  const std::vector<std::optional<PlacedLabel>> keys = place_labels(wishes, taken, bounds);
  OpenNames open;
  for (std::size_t k = 0; k < left.size(); ++k) {
    const PointName& name = names[left[k]];
    if (name.key.empty() || !keys[k]) {
      open.without_room.push_back(name.text);
      continue;
    }
    draw_name(drawing, name, name.key, *keys[k]);
    open.keyed.push_back(name.key + ": " + name.text);
  }
  return open;
}

std::string open_names_words(const OpenNames& open) {
  std::string words;
  if (!open.keyed.empty()) words += " By letter in the picture: " + joined(open.keyed, "; ") + ".";
  if (!open.without_room.empty()) words += " No room for the names of: " + joined(open.without_room) + ".";
  return words;
}

void add_open_names(OpenNames& all, const OpenNames& more) {
  const auto add = [](std::vector<std::string>& to, const std::vector<std::string>& from) {
    for (const std::string& one : from)
      if (std::find(to.begin(), to.end(), one) == to.end()) to.push_back(one);
  };
  add(all.keyed, more.keyed);
  add(all.without_room, more.without_room);
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
  constexpr double margin = 12;
  constexpr double title_size = 16;
  constexpr double line = 16;
  Drawing page{chart.drawing.width + 2 * margin, 0};
  double y = margin + 2;
  for (const std::string& words : text_lines(chart.title, title_size, chart.drawing.width, true))
    add_text(page, {margin, y += line + 2}, words, {title_size, Anchor::start, true});
  y += 10;
  page.body += fmt::format("<g transform=\"translate({} {})\">\n{}</g>\n", svg_number(margin), svg_number(y),
                           chart.drawing.body);
  y += chart.drawing.height + 18;
  std::vector<std::string> lines = text_lines(chart.caption, small_text, chart.drawing.width);
  lines.push_back(edition_words(edition));
  for (const std::string& words : lines) {
    add_text(page, {margin, y}, words, {small_text, Anchor::start, false, &words == &lines.back() ? pale_ink : ink});
    y += line;
  }
  page.height = y + margin - line / 2;
  Drawing paper{page.width, page.height};
  add_rectangle(paper, {0, 0}, page.width, page.height, {"none", 1, {}, "#fff"});
  paper.body += page.body;
  return inline_svg(paper, {"chart-" + chart.kind, chart.title, chart.description + " " + chart.caption, false, true});
}

std::string chart_figure(const Chart& chart) {
  return fmt::format("<figure class=\"chart {}\">\n{}<figcaption><b>{}.</b> {}</figcaption>\n</figure>\n",
                     xml_escape(chart.kind),
                     inline_svg(chart.drawing, {"chart-" + chart.kind, chart.title, chart.description}),
                     xml_escape(chart.title), xml_escape(chart.caption));
}

}  // namespace gentlest
