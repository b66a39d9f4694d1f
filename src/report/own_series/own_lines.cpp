#include "report/own_series/own_lines.hpp"

#include "report/bottle/liquid_words.hpp"
#include "report/own_series/own_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

constexpr double mark_size = 9;  // shows around a rung or a bottle that stands on the same point
constexpr double longest_name = 120;
constexpr double between_panels = 50;
constexpr std::size_t many = 10;  // mixtures that half the width can number

Pen pen_of(const OwnLine& line) {
  return {line.look.colour, 1.2, line.look.dash};
}

bool is_long(const OwnLine& line) {
  return line.compared->judged.mixtures.size() > many;
}

}  // namespace

std::vector<OwnLine> own_lines(const std::vector<ComparedSeries>& compared) {
  std::vector<OwnLine> lines;
  for (const ComparedSeries& one : compared) {
    if (one.series.kind != SeriesKind::own) continue;
    const std::size_t n = lines.size();
    lines.push_back({&one, one.series.name, own_series_look(n), fmt::format("s{}", n + 1)});
  }
  return lines;
}

void draw_own_way(Drawing& drawing, const OwnLine& line, const std::vector<Xy>& way) {
  add_path(drawing, way, pen_of(line));
}

void draw_own_marks(Drawing& drawing, const OwnLine& line, const SeriesPlaces& places, PointNames& points) {
  std::optional<Xy> last;
  for (std::size_t i = 0; i < places.size(); ++i) {
    if (!places[i]) continue;
    begin_mark(drawing, keys_of_own(line), pointed_own_words(line, i));
    add_mark(drawing, line.look.mark, *places[i], mark_size, line.look.colour);
    end_mark(drawing);
    points.obstacles.push_back(box_around(*places[i], mark_size / 2 + 1));
    last = places[i];
  }
  if (last) points.names.push_back({line.name, *last, small_text, false, 7, line.key, longest_name});
}

void draw_own_line(Drawing& drawing, const OwnLine& line, const SeriesPlaces& places, PointNames& points) {
  std::vector<Xy> way;
  for (std::size_t i = 0; i <= places.size(); ++i) {
    if (i < places.size() && places[i]) {
      way.push_back(*places[i]);
      continue;
    }
    draw_own_way(drawing, line, way);
    for (const Box& box : boxes_along(way)) points.obstacles.push_back(box);
    way.clear();
  }
  draw_own_marks(drawing, line, places, points);
}

std::vector<LegendEntry> own_legend(const std::vector<OwnLine>& lines) {
  std::vector<LegendEntry> entries;
  for (const OwnLine& line : lines)
    entries.push_back({fmt::format("{} ({})", line.name, series_source(SeriesKind::own)), pen_of(line), true,
                       line.look.mark, line.look.colour});
  return entries;
}

SeriesPanels lay_panels(const std::vector<OwnLine>& lines, Xy corner, double width, double height) {
  SeriesPanels panels;
  panels.bottom = corner.y;
  for (std::size_t i = 0; i < lines.size();) {
    const bool has_fellow = i + 1 < lines.size() && !is_long(lines[i]) && !is_long(lines[i + 1]);
    const double one = has_fellow ? (width - between_panels) / 2 : width;
    panels.each.push_back({{corner.x, panels.bottom}, one});
    if (has_fellow) panels.each.push_back({{corner.x + one + between_panels, panels.bottom}, one});
    panels.bottom += height;
    i += has_fellow ? 2 : 1;
  }
  return panels;
}

void draw_panel_title(Drawing& drawing, const OwnLine& line, const SeriesPanel& panel) {
  add_mark(drawing, line.look.mark, {panel.corner.x + 6, panel.corner.y + 9}, mark_size, line.look.colour);
  add_text(drawing, {panel.corner.x + 18, panel.corner.y + 13},
           shortened(line.name, small_text, panel.width - 20, true), {small_text, Anchor::start, true});
}

std::vector<MarkKey> keys_of_own(const OwnLine& line) {
  return {{"series", line.name}};
}

}  // namespace gentlest
