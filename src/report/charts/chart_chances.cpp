#include "report/charts/charts.hpp"
#include "report/form/format.hpp"

#include <algorithm>

namespace gentlest {

namespace {

// Layers side by side within the slot of one rung, so that their bars do not cover each other.
double slot_offset(std::size_t layer, std::size_t layers, double slot) {
  const double pace = std::min(13.0, slot * 0.7 / static_cast<double>(layers));
  return (static_cast<double>(layer) - static_cast<double>(layers - 1) / 2) * pace;
}

void draw_layer_chances(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench, std::size_t layer) {
  const LayerLook look = look_of(plan, layer);
  const double slot = frame.width / static_cast<double>(bench.mixtures.size());
  const double offset = slot_offset(layer, plan.layers.size(), slot);
  std::vector<Xy> line;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i) {
    const Band& band = *bench.mixtures[i].chance_bands[layer];
    const double x = place_in(frame, static_cast<double>(i) + 0.5, 0).x + offset;
    const double low = place_in(frame, 0, in_per_cent(band.low)).y;
    const double high = place_in(frame, 0, in_per_cent(band.high)).y;
    const Pen bar{look.colour, 1.2};
    add_line(drawing, {x, low}, {x, high}, bar);
    add_line(drawing, {x - 3.5, low}, {x + 3.5, low}, bar);
    add_line(drawing, {x - 3.5, high}, {x + 3.5, high}, bar);
    line.push_back({x, place_in(frame, 0, in_per_cent(bench.mixtures[i].judged.outlooks[layer]->chance)).y});
  }
  if (!ladder_rungs(plan).empty()) add_path(drawing, line, {look.colour, 1.8, look.dash});
  for (const Xy point : line) add_mark(drawing, look.mark, point, 9, look.colour);
}

void draw_rung_axis(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench) {
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    add_text(drawing, {place_in(frame, static_cast<double>(i) + 0.5, 0).x, frame.corner.y + frame.height + 15},
             mark_of(plan, bench, i), {12, Anchor::middle, true});
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
  const Frame frame{{52, 10},
                    chart_width - 52 - 12,
                    300,
                    {ladder_rungs(plan).empty() ? "mixture" : "rung, from gentle to strong", 0,
                     static_cast<double>(bench.mixtures.size()), 0, 0},
                    {"chance, %", 0, 100, 20, 0}};
  draw_frame(chart.drawing, frame);
  draw_rung_axis(chart.drawing, frame, plan, bench);
  const double limit = in_per_cent(plan.job.limits.risk_limit);
  add_line(chart.drawing, place_in(frame, 0, limit), place_in(frame, frame.x.high, limit), {limit_ink, 1.4, "8 3"});
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].sphere) draw_layer_chances(chart.drawing, frame, plan, bench, i);
  std::vector<LegendEntry> legend;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!plan.layers[i].sphere) continue;
    const LayerLook look = look_of(plan, i);
    legend.push_back({layer_legend(plan.layers[i]), {look.colour, 1.8, look.dash}, true, look.mark, look.colour});
  }
  legend.push_back({"risk limit, " + per_cent(plan.job.limits.risk_limit), {limit_ink, 1.4, "8 3"}});
  chart.drawing.height = 358 + draw_legend(chart.drawing, {52, 356}, chart_width - 60, legend);
  chart.caption =
      "Marks: the chance, averaged over what is not known of the layer's range. Bars: the middle 90 % of what it may "
      "be. "
      "Long bars that overlap between layers mean that only the swab can tell them apart." +
      named_letters(plan, bench);
  return chart;
}

}  // namespace gentlest
