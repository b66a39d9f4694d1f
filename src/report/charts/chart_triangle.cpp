#include "report/charts/marks.hpp"
#include "report/draw/ternary.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/ranges/shadow.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr double triangle_side = 400;
constexpr double triangle_left = 60;
constexpr double triangle_top = 16;

// fd is drawn from the ten below all that is shown; enlarged to the full side.
Ternary choose_triangle(const Plan& plan, const std::vector<OwnLine>& own) {
  double least = 100;
  for (const Liquid& liquid : plan.shelf) least = std::min(least, teas_fractions(liquid.hansen).fd);
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere) least = std::min(least, teas_fractions(layer.sphere->mean.centre).fd);
  for (const OwnLine& line : own)
    for (const JudgedMixture& mixture : line.compared->judged.mixtures) least = std::min(least, mixture.teas.fd);
  Ternary triangle{{triangle_left, 0},
                   triangle_side,
                   std::clamp(std::floor((least - 4) / 10) * 10, 0.0, 70.0),
                   {{{"fd", "fd, dispersion, %"}, {"fp", "fp, polar, %"}, {"fh", "fh, hydrogen bonding, %"}}}};
  triangle.corner.y = triangle_top + height_of(triangle);
  return triangle;
}

Xy place(const Ternary& triangle, const Teas& teas) {
  return place_in(triangle, teas.fd, teas.fp);
}

std::vector<LayerRange> shadows_in(const Ternary& triangle, const Plan& plan) {
  std::vector<LayerRange> shadows;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!plan.layers[i].sphere) continue;
    LayerRange one{i, {}, place(triangle, teas_fractions(plan.layers[i].sphere->mean.centre))};
    for (const Teas& corner : shadow_in_triangle(plan.layers[i].sphere->mean, plan.layers[i].reach))
      one.edge.push_back(place(triangle, corner));
    shadows.push_back(std::move(one));
  }
  return shadows;
}

PointNames draw_own(Drawing& drawing, const Ternary& triangle, const std::vector<OwnLine>& own) {
  PointNames points;
  for (const OwnLine& line : own) {
    SeriesPlaces places;
    for (const JudgedMixture& mixture : line.compared->judged.mixtures)
      places.emplace_back(place(triangle, mixture.teas));
    draw_own_line(drawing, line, places, points);
  }
  return points;
}

OpenNames draw_points(Drawing& drawing, const Ternary& triangle, const Plan& plan, const Bench& bench,
                      const std::vector<OwnLine>& own, const std::vector<LayerRange>& shadows) {
  const PointNames of_own = draw_own(drawing, triangle, own);
  std::vector<Xy> mixtures;
  for (const BenchMixture& mixture : bench.mixtures) mixtures.push_back(place(triangle, mixture.judged.teas));
  std::vector<Xy> bottles;
  for (const Liquid& liquid : plan.shelf) bottles.push_back(place(triangle, teas_fractions(liquid.hansen)));
  PointNames points = draw_liquids(drawing, plan, bench, mixtures, shadows, bottles);
  add_points(points, of_own);
  for (const Box& box : boxes_of_ticks(triangle)) points.obstacles.push_back(box);
  return draw_names(drawing, points.names, points.obstacles, {2, 2, chart_width - 2, triangle.corner.y - 2});
}

std::vector<LegendEntry> triangle_legend(const Plan& plan, const std::vector<OwnLine>& own) {
  std::vector<LegendEntry> entries = layer_entries(plan, "range-triangle");
  entries.push_back({bottle_in_use, {}, true, Mark::disc, ink});
  entries.push_back({other_bottle, {}, true, Mark::ring, pale_ink});
  if (!ladder_rungs(plan).empty()) entries.push_back({ladder_by_number, {ink, 1.6}, true, Mark::ring, ink});
  for (const LegendEntry& entry : own_legend(own)) entries.push_back(entry);
  return entries;
}

}  // namespace

Chart triangle_chart(const Plan& plan, const Bench& bench) {
  const std::vector<OwnLine> own = own_lines(bench.published);
  const Ternary triangle = choose_triangle(plan, own);
  Chart chart{"triangle",
              ladder_rungs(plan).empty() ? "The shelf in the triangle" : "The ladder in the triangle",
              {},
              {chart_width, 0}};
  draw_ternary(chart.drawing, triangle);
  const std::vector<LayerRange> shadows = shadows_in(triangle, plan);
  const bool any_covered = draw_ranges(chart.drawing, plan, "range-triangle", outline_of(triangle), shadows);
  const OpenNames open = draw_points(chart.drawing, triangle, plan, bench, own, shadows);
  const double legend_top = triangle.corner.y + 50;
  chart.drawing.height =
      legend_top + draw_legend(chart.drawing, {10, legend_top}, chart_width - 20, triangle_legend(plan, own)) + 4;
  chart.caption = fmt::format(
      "Shares of dD, dP and dH in their sum; drawn from fd {} % up.{} Outlines: the shadow that each layer's range "
      "throws on the triangle. A liquid in the shadow may still lie before or behind the range, so look at RED, not "
      "here, for a decision.",
      fixed(triangle.low, 0), read_by_ticks_words);
  if (!ladder_rungs(plan).empty())
    chart.caption += " The ladder should run towards the layer to remove and keep off the others.";
  if (any_covered) chart.caption += covered_ranges_words;
  chart.caption += own_lines_words(own) + open_names_words(open);
  return chart;
}

}  // namespace gentlest
