#include "report/charts/marks.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/ranges/range_outline.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr double ninety_percent = 1.645;  // standard deviations to either side that hold the middle 90 %

// Wide enough for the own series too.
Axis axis_of(const Plan& plan, const std::vector<OwnLine>& own, Coordinate coordinate) {
  double low = 1e9;
  double high = -1e9;
  const auto take = [&](const Hansen& point) {
    low = std::min(low, value_of(point, coordinate));
    high = std::max(high, value_of(point, coordinate));
  };
  for (const Liquid& liquid : plan.shelf) take(liquid.hansen);
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere) take(layer.sphere->mean.centre);
  for (const OwnLine& line : own)
    for (const JudgedMixture& mixture : line.compared->judged.mixtures) take(mixture.point);
  const double room = coordinate == Coordinate::dD ? 1 : 2;
  const char* title = coordinate == Coordinate::dD   ? "dD, dispersion, MPa^0.5"
                      : coordinate == Coordinate::dP ? polar_axis
                                                     : hydrogen_axis;
  return {title, std::floor(low - room), std::ceil(high + room), coordinate == Coordinate::dD ? 1.0 : 2.0, 0};
}

double span_of(const Axis& axis, Coordinate coordinate) {
  return (axis.high - axis.low) * scale_of(coordinate);
}

struct View {
  Frame frame;
  Coordinate across;
  Coordinate up;
};

Xy place(const View& view, const Hansen& point) {
  return place_in(view.frame, value_of(point, view.across), value_of(point, view.up));
}

std::vector<Xy> edge_of(const View& view, const PlannedLayer& layer, double sds) {
  std::vector<Xy> edge;
  for (const CutPoint& point : cut_through_range(layer, view.across, view.up, sds))
    edge.push_back(place_in(view.frame, point.across, point.up));
  return edge;
}

std::vector<LayerRange> ranges_in(const View& view, const Plan& plan) {
  std::vector<LayerRange> ranges;
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].sphere)
      ranges.push_back({i, edge_of(view, plan.layers[i], 0), place(view, plan.layers[i].sphere->mean.centre)});
  return ranges;
}

// Where the edge may lie, fine and dotted.
void draw_doubt(Drawing& drawing, const View& view, const Plan& plan, const std::string& clip) {
  begin_clip(drawing, clip, outline_of(view.frame));
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!plan.layers[i].sphere) continue;
    for (const double sds : {-ninety_percent, ninety_percent})
      add_path(drawing, edge_of(view, plan.layers[i], sds), {look_of(plan, i).colour, 0.7, "1 3"}, true);
  }
  end_clip(drawing);
}

PointNames draw_own(Drawing& drawing, const View& view, const std::vector<OwnLine>& own) {
  PointNames points;
  for (const OwnLine& line : own) {
    SeriesPlaces places;
    for (const JudgedMixture& mixture : line.compared->judged.mixtures) places.emplace_back(place(view, mixture.point));
    draw_own_line(drawing, line, places, points);
  }
  return points;
}

OpenNames draw_points(Drawing& drawing, const View& view, const Plan& plan, const Bench& bench,
                      const std::vector<OwnLine>& own, const std::vector<LayerRange>& ranges) {
  const PointNames of_own = draw_own(drawing, view, own);
  std::vector<Xy> mixtures;
  for (const BenchMixture& mixture : bench.mixtures) mixtures.push_back(place(view, mixture.judged.point));
  std::vector<Xy> bottles;
  for (const Liquid& liquid : plan.shelf) bottles.push_back(place(view, liquid.hansen));
  PointNames points = draw_liquids(drawing, plan, bench, mixtures, ranges, bottles);
  add_points(points, of_own);
  const Xy corner = view.frame.corner;
  return draw_names(drawing, points.names, points.obstacles,
                    {corner.x + 1, corner.y + 1, corner.x + view.frame.width - 1, corner.y + view.frame.height - 1});
}

std::vector<LegendEntry> legend_of(const Plan& plan, const std::vector<OwnLine>& own) {
  std::vector<LegendEntry> entries = layer_entries(plan, "range-plane-1");
  entries.push_back({"the edge may lie between (middle 90 %)", {pale_ink, 0.9, "1 3"}});
  entries.push_back({bottle_in_use, {}, true, Mark::disc, ink});
  entries.push_back({other_bottle, {}, true, Mark::ring, pale_ink});
  if (!ladder_rungs(plan).empty()) entries.push_back({ladder_by_number, {ink, 1.6}, true, Mark::ring, ink});
  for (const LegendEntry& entry : own_legend(own)) entries.push_back(entry);
  return entries;
}

}  // namespace

Chart planes_chart(const Plan& plan, const Bench& bench) {
  const std::vector<OwnLine> own = own_lines(bench.published);
  const Axis dD = axis_of(plan, own, Coordinate::dD);
  const Axis dP = axis_of(plan, own, Coordinate::dP);
  const Axis dH = axis_of(plan, own, Coordinate::dH);
  const double D = span_of(dD, Coordinate::dD);
  const double P = span_of(dP, Coordinate::dP);
  const double H = span_of(dH, Coordinate::dH);
  constexpr double left = 46;
  constexpr double gap_across = 56;
  constexpr double gap_down = 44;
  constexpr double tallest = 700;
  const double unit = std::min((chart_width - left - gap_across - 10) / (D + P), (tallest - gap_down - 50) / (H + P));
  const double second_column = left + unit * D + gap_across;
  const double second_row = 6 + unit * H + gap_down;
  const std::vector<View> views = {{{{left, 6}, unit * D, unit * H, dD, dH}, Coordinate::dD, Coordinate::dH},
                                   {{{second_column, 6}, unit * P, unit * H, dP, dH}, Coordinate::dP, Coordinate::dH},
                                   {{{left, second_row}, unit * D, unit * P, dD, dP}, Coordinate::dD, Coordinate::dP}};
  Chart chart{"planes", "Hansen space from three sides", {}, {chart_width, second_row + unit * P + 38}};
  OpenNames open;
  bool any_covered = false;
  for (std::size_t i = 0; i < views.size(); ++i) {
    const View& view = views[i];
    const std::vector<LayerRange> ranges = ranges_in(view, plan);
    draw_frame(chart.drawing, view.frame);
    any_covered |=
        draw_ranges(chart.drawing, plan, fmt::format("range-plane-{}", i + 1), outline_of(view.frame), ranges);
    draw_doubt(chart.drawing, view, plan, fmt::format("clip-plane-{}", i + 1));
    add_open_names(open, draw_points(chart.drawing, view, plan, bench, own, ranges));
  }
  const std::vector<LegendEntry> legend = legend_of(plan, own);
  const double legend_bottom =
      second_row + 4 +
      draw_legend(chart.drawing, {second_column, second_row + 4}, chart_width - second_column - 4, legend);
  chart.drawing.height = std::max(chart.drawing.height, legend_bottom + 6);
  chart.caption =
      "dD is drawn at twice the scale, so a layer's range is a circle and distances can be compared by eye. Fine "
      "dotted lines: where the edge may lie. A mixture is inside a range only where it is inside in all three views. "
      "The wider the dotted lines lie apart, the less the picture decides.";
  if (std::any_of(plan.layers.begin(), plan.layers.end(),
                  [](const PlannedLayer& layer) { return !layer.reach.places.empty(); }))
    chart.caption +=
        " A range that observations bend is shown as it is cut through its middle; outside the cut it "
        "may reach further or less far.";
  if (any_covered) chart.caption += covered_ranges_words;
  chart.caption += own_lines_words(own) + open_names_words(open);
  return chart;
}

}  // namespace gentlest
