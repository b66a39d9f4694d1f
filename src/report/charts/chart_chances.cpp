#include "report/charts/marks.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr double longest_name = 110;

// How wide the strip is to the right of the last mixture, where the layers are named.
double room_for_names(const Plan& plan) {
  double widest = 0;
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere) widest = std::max(widest, text_width(layer.name, small_text, true));
  return std::min(widest, longest_name) + 10;
}

// One mixture on the level axis: a rung, or one of an own series.
struct ChartColumn {
  std::string mark;  ///< under the axis
  std::string name;  ///< "rung 3"
  std::vector<MarkKey> keys;
  const JudgedMixture* judged = nullptr;
  std::vector<std::optional<Band>> bands;
};

struct Panel {
  Frame frame;
  std::vector<ChartColumn> columns;
  bool is_joined = true;  ///< by lines, in an order from gentle to strong or of a series
};

// Layers side by side within the slot of one rung, so that their bars do not cover each other.
double slot_offset(std::size_t layer, std::size_t layers, double slot) {
  const double pace = std::min(13.0, slot * 0.7 / static_cast<double>(layers));
  return (static_cast<double>(layer) - static_cast<double>(layers - 1) / 2) * pace;
}

Xy chance_place(const Panel& panel, std::size_t layer, std::size_t column) {
  const Frame& frame = panel.frame;
  const double slot = frame.width / frame.x.high;
  const JudgedMixture& judged = *panel.columns[column].judged;
  const Xy at = place_in(frame, static_cast<double>(column) + 0.5, in_per_cent(judged.outlooks[layer]->chance));
  return {at.x + slot_offset(layer, judged.outlooks.size(), slot), at.y};
}

// The bar and the mark of one mixture on one layer.
void draw_chance(Drawing& drawing, const Panel& panel, const Plan& plan, std::size_t layer, std::size_t column) {
  const LayerLook look = look_of(plan, layer);
  const ChartColumn& one = panel.columns[column];
  const Band& band = *one.bands[layer];
  const double chance = one.judged->outlooks[layer]->chance;
  const Xy at = chance_place(panel, layer, column);
  const double x = at.x;
  const double low = place_in(panel.frame, 0, in_per_cent(band.low)).y;
  const double high = place_in(panel.frame, 0, in_per_cent(band.high)).y;
  const Pen bar{look.colour, 1.2};
  std::vector<MarkKey> keys = one.keys;
  keys.push_back({"layer", plan.layers[layer].name});
  begin_mark(drawing, keys,
             fmt::format("{}, {}: {} ({} to {})", plan.layers[layer].name, one.name, per_cent(chance),
                         per_cent(band.low), per_cent(band.high)));
  add_line(drawing, {x, low}, {x, high}, bar);
  add_line(drawing, {x - 3.5, low}, {x + 3.5, low}, bar);
  add_line(drawing, {x - 3.5, high}, {x + 3.5, high}, bar);
  add_mark(drawing, look.mark, at, 9, look.colour);
  end_mark(drawing);
}

void draw_layer_chances(Drawing& drawing, const Panel& panel, const Plan& plan, std::size_t layer, PointNames& points) {
  const LayerLook look = look_of(plan, layer);
  std::vector<Xy> line;
  for (std::size_t i = 0; i < panel.columns.size(); ++i) line.push_back(chance_place(panel, layer, i));
  if (panel.is_joined) {
    add_path(drawing, line, {look.colour, 1.8, look.dash});
    for (const Box& box : boxes_along(line)) points.obstacles.push_back(box);
  }
  for (std::size_t i = 0; i < line.size(); ++i) {
    draw_chance(drawing, panel, plan, layer, i);
    const Band& band = *panel.columns[i].bands[layer];
    points.obstacles.push_back({line[i].x - 4, place_in(panel.frame, 0, in_per_cent(band.high)).y, line[i].x + 4,
                                place_in(panel.frame, 0, in_per_cent(band.low)).y});
  }
  points.names.push_back({plan.layers[layer].name, line.back(), small_text, true, 7, {}, longest_name});
}

void draw_column_axis(Drawing& drawing, const Panel& panel) {
  for (std::size_t i = 0; i < panel.columns.size(); ++i) {
    if (panel.columns[i].mark.empty()) continue;
    add_text(drawing,
             {place_in(panel.frame, static_cast<double>(i) + 0.5, 0).x, panel.frame.corner.y + panel.frame.height + 15},
             panel.columns[i].mark, {small_text, Anchor::middle, true});
  }
}

// Returns the names of the layers, to be placed or not.
PointNames draw_panel(Drawing& drawing, const Panel& panel, const Plan& plan) {
  const Frame& frame = panel.frame;
  draw_frame(drawing, frame);
  draw_column_axis(drawing, panel);
  const double limit = in_per_cent(plan.job.limits.risk_limit);
  add_line(drawing, place_in(frame, 0, limit), place_in(frame, frame.x.high, limit), {limit_ink, 1.4, "8 3"});
  PointNames points;
  points.obstacles = boxes_along({place_in(frame, 0, limit), place_in(frame, frame.x.high, limit)});
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].sphere) draw_layer_chances(drawing, panel, plan, i, points);
  return points;
}

std::vector<ChartColumn> columns_of(const Plan& plan, const Bench& bench) {
  std::vector<ChartColumn> columns;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    columns.push_back({mark_of(plan, bench, i), name_in_picture(plan, bench, i), keys_of_mixture(plan, bench, i),
                       &bench.mixtures[i].judged, bench.mixtures[i].chance_bands});
  return columns;
}

// Every second or third alone bears its number where they stand too close.
std::vector<ChartColumn> columns_of(const Plan& plan, const OwnLine& line, double width) {
  std::vector<ChartColumn> columns;
  const std::size_t count = line.compared->judged.mixtures.size();
  const double widest = text_width(std::to_string(count), small_text, true) + 3;
  const auto every = static_cast<std::size_t>(std::ceil(widest * static_cast<double>(count) / width));
  for (const JudgedMixture& judged : line.compared->judged.mixtures) {
    const std::string number = std::to_string(columns.size() + 1);
    const bool is_numbered = columns.size() % every == 0;
    columns.push_back({is_numbered ? number : std::string(), line.name + " " + number, keys_of_own(line), &judged,
                       chance_bands(judged, plan)});
  }
  return columns;
}

// A panel below the ladder's for each own series; returns where they end.
double draw_own_panels(Drawing& drawing, double y, const Plan& plan, const std::vector<OwnLine>& own) {
  constexpr double high = 130;
  const SeriesPanels panels = lay_panels(own, {52, y}, chart_width - 64, panel_title + high + 48);
  for (std::size_t i = 0; i < own.size(); ++i) {
    const SeriesPanel& at = panels.each[i];
    draw_panel_title(drawing, own[i], at);
    const std::vector<ChartColumn> columns = columns_of(plan, own[i], at.width);
    const Frame frame{{at.corner.x, at.corner.y + panel_title},
                      at.width,
                      high,
                      {own_order_axis, 0, static_cast<double>(columns.size()), 0, 0},
                      {"chance, %", 0, 100, 20, 0}};
    draw_panel(drawing, {frame, columns}, plan);
  }
  return panels.bottom;
}

}  // namespace

Chart chances_chart(const Plan& plan, const Bench& bench) {
  Chart chart{"chances",
              ladder_rungs(plan).empty() ? "Chance of each layer" : "Chance of each layer along the ladder",
              {},
              {chart_width, 0}};
  if (bench.mixtures.empty()) {
    chart.caption = "No mixture to show." + own_absence_words(plan.job.series, OwnAbsence::nothing_drawn);
    return chart;
  }
  constexpr double width = chart_width - 52 - 12;
  const double count = static_cast<double>(bench.mixtures.size());
  const Frame frame{{52, 10},
                    width,
                    300,
                    {ladder_rungs(plan).empty() ? "mixture" : "rung, from gentle to strong", 0,
                     count * width / (width - room_for_names(plan)), 0, 0},
                    {"chance, %", 0, 100, 20, 0}};
  const PointNames points =
      draw_panel(chart.drawing, {frame, columns_of(plan, bench), !ladder_rungs(plan).empty()}, plan);
  draw_names(chart.drawing, points.names, points.obstacles,
             {frame.corner.x + 2, frame.corner.y + 2, chart_width - 14, frame.corner.y + frame.height - 2});
  std::vector<LegendEntry> legend = layer_entries(plan);
  legend.push_back({"risk limit, " + per_cent(plan.job.limits.risk_limit), {limit_ink, 1.4, "8 3"}});
  const std::vector<OwnLine> own = own_lines(bench.published);
  const double legend_top = draw_own_panels(chart.drawing, 356, plan, own);
  chart.drawing.height = legend_top + 2 + draw_legend(chart.drawing, {52, legend_top}, chart_width - 60, legend);
  chart.caption =
      "Marks: the chance, averaged over what is not known of the layer's range. Bars: the middle 90 % of what it may "
      "be. Long bars that overlap between layers mean that only the swab can tell them apart." +
      named_letters(plan, bench) + own_panels_words(own);
  return chart;
}

}  // namespace gentlest
