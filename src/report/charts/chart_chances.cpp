#include "report/charts/marks.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

#include <algorithm>

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

// Layers side by side within the slot of one rung, so that their bars do not cover each other.
double slot_offset(std::size_t layer, std::size_t layers, double slot) {
  const double pace = std::min(13.0, slot * 0.7 / static_cast<double>(layers));
  return (static_cast<double>(layer) - static_cast<double>(layers - 1) / 2) * pace;
}

Xy chance_place(const Frame& frame, const Plan& plan, const Bench& bench, std::size_t layer, std::size_t mixture) {
  const double slot = frame.width / frame.x.high;
  const double chance = bench.mixtures[mixture].judged.outlooks[layer]->chance;
  const Xy at = place_in(frame, static_cast<double>(mixture) + 0.5, in_per_cent(chance));
  return {at.x + slot_offset(layer, plan.layers.size(), slot), at.y};
}

// The bar and the mark of one mixture on one layer.
void draw_chance(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench, std::size_t layer,
                 std::size_t mixture) {
  const LayerLook look = look_of(plan, layer);
  const Band& band = *bench.mixtures[mixture].chance_bands[layer];
  const double chance = bench.mixtures[mixture].judged.outlooks[layer]->chance;
  const Xy at = chance_place(frame, plan, bench, layer, mixture);
  const double x = at.x;
  const double low = place_in(frame, 0, in_per_cent(band.low)).y;
  const double high = place_in(frame, 0, in_per_cent(band.high)).y;
  const Pen bar{look.colour, 1.2};
  std::vector<MarkKey> keys = keys_of_mixture(plan, bench, mixture);
  keys.push_back({"layer", plan.layers[layer].name});
  begin_mark(drawing, keys,
             fmt::format("{}, {}: {} ({} to {})", plan.layers[layer].name, name_in_picture(plan, bench, mixture),
                         per_cent(chance), per_cent(band.low), per_cent(band.high)));
  add_line(drawing, {x, low}, {x, high}, bar);
  add_line(drawing, {x - 3.5, low}, {x + 3.5, low}, bar);
  add_line(drawing, {x - 3.5, high}, {x + 3.5, high}, bar);
  add_mark(drawing, look.mark, at, 9, look.colour);
  end_mark(drawing);
}

void draw_layer_chances(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench, std::size_t layer,
                        PointNames& points) {
  const LayerLook look = look_of(plan, layer);
  std::vector<Xy> line;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i) line.push_back(chance_place(frame, plan, bench, layer, i));
  if (!ladder_rungs(plan).empty()) {
    add_path(drawing, line, {look.colour, 1.8, look.dash});
    for (const Box& box : boxes_along(line)) points.obstacles.push_back(box);
  }
  for (std::size_t i = 0; i < line.size(); ++i) {
    draw_chance(drawing, frame, plan, bench, layer, i);
    const Band& band = *bench.mixtures[i].chance_bands[layer];
    points.obstacles.push_back({line[i].x - 4, place_in(frame, 0, in_per_cent(band.high)).y, line[i].x + 4,
                                place_in(frame, 0, in_per_cent(band.low)).y});
  }
  points.names.push_back({plan.layers[layer].name, line.back(), small_text, true, 7, {}, longest_name});
}

void draw_rung_axis(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench) {
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    add_text(drawing, {place_in(frame, static_cast<double>(i) + 0.5, 0).x, frame.corner.y + frame.height + 15},
             mark_of(plan, bench, i), {small_text, Anchor::middle, true});
}

}  // namespace

Chart chances_chart(const Plan& plan, const Bench& bench) {
  Chart chart{"chances",
              ladder_rungs(plan).empty() ? "Chance of each layer" : "Chance of each layer along the ladder",
              {},
              {chart_width, 0}};
  if (bench.mixtures.empty()) {
    chart.caption = "No mixture to show.";
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
  draw_frame(chart.drawing, frame);
  draw_rung_axis(chart.drawing, frame, plan, bench);
  const double limit = in_per_cent(plan.job.limits.risk_limit);
  add_line(chart.drawing, place_in(frame, 0, limit), place_in(frame, frame.x.high, limit), {limit_ink, 1.4, "8 3"});
  PointNames points;
  points.obstacles = boxes_along({place_in(frame, 0, limit), place_in(frame, frame.x.high, limit)});
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].sphere) draw_layer_chances(chart.drawing, frame, plan, bench, i, points);
  draw_names(chart.drawing, points.names, points.obstacles,
             {frame.corner.x + 2, frame.corner.y + 2, chart_width - 14, frame.corner.y + frame.height - 2});
  std::vector<LegendEntry> legend = layer_entries(plan);
  legend.push_back({"risk limit, " + per_cent(plan.job.limits.risk_limit), {limit_ink, 1.4, "8 3"}});
  chart.drawing.height = 358 + draw_legend(chart.drawing, {52, 356}, chart_width - 60, legend);
  chart.caption =
      "Marks: the chance, averaged over what is not known of the layer's range. Bars: the middle 90 % of what it may "
      "be. Long bars that overlap between layers mean that only the swab can tell them apart." +
      named_letters(plan, bench);
  return chart;
}

}  // namespace gentlest
