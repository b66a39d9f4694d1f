#include "report/charts.hpp"
#include "report/format.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

double per_hundred(double chance) {
  return 100 * chance;
}

// Rungs by number; mixtures shown without a ladder by letter.
std::string short_name(const Plan& plan, std::size_t i, const Bench& bench) {
  return plan.rungs.empty() ? std::string(1, static_cast<char>('A' + i)) : bench.mixtures[i].name;
}

Axis per_cent_axis(std::string title, double high) {
  return {std::move(title), 0, high, tick_step(high, 5), high < 4 ? 1 : 0};
}

// The risk up to which the frontier is worth a look: well past the limit, and past what is shown without a ladder.
double largest_risk_shown(const Plan& plan, const Bench& bench) {
  double largest = 1.6 * plan.job.limits.risk_limit;
  for (const BenchMixture& mixture : bench.mixtures) largest = std::max(largest, 1.1 * mixture.judged->risk);
  const double percent = std::min(100.0, per_hundred(largest));
  const double step = tick_step(percent, 5);
  return std::min(100.0, std::ceil(percent / step) * step);
}

void draw_limits(Drawing& drawing, const Frame& frame, const Limits& limits) {
  const double risk = per_hundred(limits.risk_limit);
  const double effect = per_hundred(limits.wanted_effect);
  add_line(drawing, place_in(frame, risk, 0), place_in(frame, risk, 100), {limit_ink, 1.4, "8 3"});
  add_line(drawing, place_in(frame, 0, effect), place_in(frame, frame.x.high, effect), {pale_ink, 1.2, "2 3"});
}

std::vector<Xy> draw_frontier(Drawing& drawing, const Frame& frame, const Plan& plan) {
  std::vector<Xy> frontier;
  for (const Verdict& verdict : plan.frontier)
    frontier.push_back(place_in(frame, per_hundred(verdict.risk), per_hundred(verdict.effect)));
  begin_clip(drawing, "clip-risk", outline_of(frame));
  add_path(drawing, frontier, {target_look.colour, 1.4, "5 3"});
  end_clip(drawing);
  frontier.erase(std::remove_if(frontier.begin(), frontier.end(),
                                [&](Xy point) { return point.x > frame.corner.x + frame.width; }),
                 frontier.end());
  return frontier;
}

LayerLook look_of_series(std::size_t n) {
  return series_looks[n % series_looks.size()];
}

// Marks outside the frame are cut off; counts them, so that the caption can say so.
std::size_t draw_published(Drawing& drawing, const Frame& frame, const Bench& bench, std::vector<Box>& obstacles) {
  std::size_t outside = 0;
  for (std::size_t n = 0; n < bench.published.size(); ++n) {
    const LayerLook look = look_of_series(n);
    std::vector<Xy> line;
    for (const JudgedMixture& mixture : bench.published[n].judged.mixtures)
      line.push_back(place_in(frame, per_hundred(mixture.risk), per_hundred(mixture.effect)));
    begin_clip(drawing, "clip-series-" + std::to_string(n), outline_of(frame));
    add_path(drawing, line, {look.colour, 0.8, look.dash});
    end_clip(drawing);
    for (const Xy point : line) {
      if (point.x > frame.corner.x + frame.width) {
        ++outside;
        continue;
      }
      add_mark(drawing, look.mark, point, 6, look.colour);
      obstacles.push_back(box_around(point, 3));
    }
  }
  return outside;
}

std::vector<LegendEntry> legend_of_published(const Bench& bench) {
  std::vector<LegendEntry> legend;
  for (std::size_t n = 0; n < bench.published.size(); ++n) {
    const LayerLook look = look_of_series(n);
    const Series& series = bench.published[n].series;
    legend.push_back(
        {series.name + " (" + series.source + ")", {look.colour, 0.8, look.dash}, true, look.mark, look.colour});
  }
  return legend;
}

std::string about_published(const Bench& bench, std::size_t outside) {
  if (bench.published.empty()) return {};
  std::string words = " Thin lines with small marks: published test series, whatever bottles the job holds.";
  if (outside > 0)
    words += fmt::format(" {} of their mixtures lie to the right of the picture, at a higher risk.", outside);
  return words;
}

std::vector<Xy> mixtures_in(const Frame& frame, const Bench& bench) {
  std::vector<Xy> points;
  for (const BenchMixture& mixture : bench.mixtures)
    points.push_back(place_in(frame, per_hundred(mixture.judged->risk), per_hundred(mixture.judged->effect)));
  return points;
}

void draw_mixtures(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench,
                   std::vector<Box> obstacles) {
  const std::vector<Xy> points = mixtures_in(frame, bench);
  std::vector<PointName> names;
  if (!plan.rungs.empty()) {
    add_path(drawing, points, {ink, 1.6});
    for (const Box& box : boxes_along(points)) obstacles.push_back(box);
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    add_mark(drawing, Mark::disc, points[i], 9, ink);
    obstacles.push_back(box_around(points[i], 5));
    names.push_back({short_name(plan, i, bench), points[i], 13, true, 7});
  }
  const double limit = place_in(frame, per_hundred(plan.job.limits.risk_limit), 0).x;
  obstacles.push_back({limit - 2, frame.corner.y, limit + 2, frame.corner.y + frame.height});
  const Xy corner = frame.corner;
  draw_names(drawing, names, obstacles,
             {corner.x + 2, corner.y + 2, corner.x + frame.width - 2, corner.y + frame.height - 2});
}

std::string named_letters(const Plan& plan, const Bench& bench) {
  if (!plan.rungs.empty()) return {};
  std::string words;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    words += fmt::format(" {}: {}.", short_name(plan, i, bench), bench.mixtures[i].name);
  return words;
}

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
    const Band& band = bench.mixtures[i].chance_bands[layer];
    const double x = place_in(frame, static_cast<double>(i) + 0.5, 0).x + offset;
    const double low = place_in(frame, 0, per_hundred(band.low)).y;
    const double high = place_in(frame, 0, per_hundred(band.high)).y;
    const Pen bar{look.colour, 1.2};
    add_line(drawing, {x, low}, {x, high}, bar);
    add_line(drawing, {x - 3.5, low}, {x + 3.5, low}, bar);
    add_line(drawing, {x - 3.5, high}, {x + 3.5, high}, bar);
    line.push_back({x, place_in(frame, 0, per_hundred(bench.mixtures[i].judged->outlooks[layer].chance)).y});
  }
  if (!plan.rungs.empty()) add_path(drawing, line, {look.colour, 1.8, look.dash});
  for (const Xy point : line) add_mark(drawing, look.mark, point, 9, look.colour);
}

void draw_rung_axis(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench) {
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    add_text(drawing, {place_in(frame, static_cast<double>(i) + 0.5, 0).x, frame.corner.y + frame.height + 15},
             short_name(plan, i, bench), {12, Anchor::middle, true});
}

}  // namespace

Chart risk_chart(const Plan& plan, const Bench& bench) {
  Chart chart{"risk", "What effect costs", {}, {chart_width, 0}};
  const Frame frame{
      {52, 10},
      chart_width - 52 - 12,
      330,
      per_cent_axis("risk: largest chance that a layer to keep is affected, %", largest_risk_shown(plan, bench)),
      {fmt::format("effect: chance that \"{}\" is moved, %", shortened(plan.layers[plan.target].name, 12, 90)), 0, 100,
       20, 0}};
  draw_frame(chart.drawing, frame);
  draw_limits(chart.drawing, frame, plan.job.limits);
  const std::vector<Xy> frontier = draw_frontier(chart.drawing, frame, plan);
  std::vector<Box> obstacles = boxes_along(frontier);
  const std::size_t outside = draw_published(chart.drawing, frame, bench, obstacles);
  draw_mixtures(chart.drawing, frame, plan, bench, obstacles);
  std::vector<LegendEntry> legend = {
      {"frontier: nothing on the shelf beats it", {target_look.colour, 1.4, "5 3"}},
      {plan.rungs.empty() ? "mixtures of this sheet" : "the ladder, rungs by number",
       {plan.rungs.empty() ? "none" : ink, 1.6},
       true,
       Mark::disc,
       ink},
      {"risk limit, " + per_cent(plan.job.limits.risk_limit), {limit_ink, 1.4, "8 3"}},
      {"effect wanted, " + per_cent(plan.job.limits.wanted_effect), {pale_ink, 1.2, "2 3"}}};
  const double first = draw_legend(chart.drawing, {52, 386}, chart_width - 60, legend);
  chart.drawing.height =
      388 + first + draw_legend(chart.drawing, {52, 386 + first}, chart_width - 60, legend_of_published(bench));
  chart.caption =
      plan.rungs.empty()
          ? "The dashed curve is the best this shelf can do. It does not reach the wanted effect left of the risk "
            "limit, "
            "so there is no ladder." +
                named_letters(plan, bench)
          : "Steps up the ladder buy effect with risk. Where the ladder lies below the dashed curve, other bottles of "
            "the shelf would do better; where the curve flattens, more risk buys little.";
  chart.caption += about_published(bench, outside);
  return chart;
}

Chart chances_chart(const Plan& plan, const Bench& bench) {
  Chart chart{"chances",
              plan.rungs.empty() ? "Chance of each layer" : "Chance of each layer along the ladder",
              {},
              {chart_width, 0}};
  if (bench.mixtures.empty()) {
    chart.caption = "No mixture to show.";
    return chart;
  }
  const Frame frame{{52, 10},
                    chart_width - 52 - 12,
                    300,
                    {plan.rungs.empty() ? "mixture" : "rung, from gentle to strong", 0,
                     static_cast<double>(bench.mixtures.size()), 0, 0},
                    {"chance, %", 0, 100, 20, 0}};
  draw_frame(chart.drawing, frame);
  draw_rung_axis(chart.drawing, frame, plan, bench);
  const double limit = per_hundred(plan.job.limits.risk_limit);
  add_line(chart.drawing, place_in(frame, 0, limit), place_in(frame, frame.x.high, limit), {limit_ink, 1.4, "8 3"});
  for (std::size_t i = 0; i < plan.layers.size(); ++i) draw_layer_chances(chart.drawing, frame, plan, bench, i);
  std::vector<LegendEntry> legend;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
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
