#include "report/bottle/liquid_words.hpp"
#include "report/charts/marks.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/phrases/no_window.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

Axis per_cent_axis(std::string title, double high) {
  return {std::move(title), 0, high, tick_step(high, 5), high < 4 ? 1 : 0};
}

// The risk up to which the frontier is worth a look: well past the limit, and past what is shown without a ladder.
double largest_risk_shown(const Plan& plan, const Bench& bench) {
  double largest = 1.6 * plan.job.limits.risk_limit;
  for (const BenchMixture& mixture : bench.mixtures) largest = std::max(largest, 1.1 * *mixture.judged.risk);
  const double percent = std::min(100.0, in_per_cent(largest));
  const double step = tick_step(percent, 5);
  return std::min(100.0, std::ceil(percent / step) * step);
}

void draw_limits(Drawing& drawing, const Frame& frame, const Limits& limits) {
  const double risk = in_per_cent(limits.risk_limit);
  const double effect = in_per_cent(limits.wanted_effect);
  add_line(drawing, place_in(frame, risk, 0), place_in(frame, risk, 100), {limit_ink, 1.4, "8 3"});
  add_line(drawing, place_in(frame, 0, effect), place_in(frame, frame.x.high, effect), {pale_ink, 1.2, "2 3"});
}

std::vector<Xy> draw_frontier(Drawing& drawing, const Frame& frame, const Plan& plan) {
  std::vector<Xy> frontier;
  for (const Verdict& verdict : plan.frontier)
    frontier.push_back(place_in(frame, in_per_cent(verdict.risk), in_per_cent(verdict.effect)));
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
    if (bench.published[n].series.kind == SeriesKind::own) continue;
    const LayerLook look = look_of_series(n);
    std::vector<Xy> line;
    for (const JudgedMixture& mixture : bench.published[n].judged.mixtures)
      line.push_back(place_in(frame, in_per_cent(*mixture.risk), in_per_cent(*mixture.effect)));
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
    const SeriesKind kind = bench.published[n].series.kind;
    if (kind == SeriesKind::own) continue;
    legend.push_back({series_name(bench.published[n].series) + " (" + series_source(kind) + ")",
                      {look.colour, 0.8, look.dash},
                      true,
                      look.mark,
                      look.colour});
  }
  return legend;
}

std::string about_published(const Bench& bench, std::size_t outside) {
  if (own_lines(bench.published).size() == bench.published.size()) return {};
  std::string words = " Thin lines with small marks: published test series, whatever bottles the job holds.";
  if (outside > 0)
    words += fmt::format(" {} of their mixtures lie to the right of the picture, at a higher risk.", outside);
  return words;
}

// Own series are told mixture by mixture where they lie outside. Returns that.
std::string draw_own(Drawing& drawing, const Frame& frame, const std::vector<OwnLine>& own, PointNames& points) {
  std::vector<std::string> outside;
  for (const OwnLine& line : own) {
    std::vector<Xy> way;
    SeriesPlaces places;
    std::vector<std::size_t> beyond;
    for (const JudgedMixture& mixture : line.compared->judged.mixtures) {
      way.push_back(place_in(frame, in_per_cent(*mixture.risk), in_per_cent(*mixture.effect)));
      places.emplace_back(way.back());
      if (way.back().x <= frame.corner.x + frame.width) continue;
      places.back() = std::nullopt;
      beyond.push_back(places.size() - 1);
    }
    begin_clip(drawing, "clip-own-" + line.key, outline_of(frame));
    draw_own_way(drawing, line, way);
    end_clip(drawing);
    draw_own_marks(drawing, line, places, points);
    if (!beyond.empty()) outside.push_back(own_numbers(line, beyond));
  }
  return outside.empty() ? std::string()
                         : fmt::format(" Beyond the right edge, at more risk: {}.", joined(outside, "; "));
}

std::vector<Xy> mixtures_in(const Frame& frame, const Bench& bench) {
  std::vector<Xy> points;
  for (const BenchMixture& mixture : bench.mixtures)
    points.push_back(place_in(frame, in_per_cent(*mixture.judged.risk), in_per_cent(*mixture.judged.effect)));
  return points;
}

OpenNames draw_mixtures(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench,
                        std::vector<Box> obstacles, const PointNames& own) {
  const std::vector<Xy> points = mixtures_in(frame, bench);
  std::vector<PointName> names;
  if (!ladder_rungs(plan).empty()) {
    add_path(drawing, points, {ink, 1.6});
    for (const Box& box : boxes_along(points)) obstacles.push_back(box);
  }
  for (std::size_t i = 0; i < points.size(); ++i) {
    begin_mark(drawing, keys_of_mixture(plan, bench, i), pointed_words(plan, bench, i));
    add_mark(drawing, Mark::disc, points[i], 9, ink);
    end_mark(drawing);
    obstacles.push_back(box_around(points[i], 5));
    names.push_back({mark_of(plan, bench, i), points[i], 13, true, 7});
  }
  names.insert(names.end(), own.names.begin(), own.names.end());
  obstacles.insert(obstacles.end(), own.obstacles.begin(), own.obstacles.end());
  const double limit = place_in(frame, in_per_cent(plan.job.limits.risk_limit), 0).x;
  obstacles.push_back({limit - 2, frame.corner.y, limit + 2, frame.corner.y + frame.height});
  const Xy corner = frame.corner;
  return draw_names(drawing, names, obstacles,
                    {corner.x + 2, corner.y + 2, corner.x + frame.width - 2, corner.y + frame.height - 2});
}

}  // namespace

// Precondition: effect and risk are known (chart_of).
Chart risk_chart(const Plan& plan, const Bench& bench) {
  Chart chart{"risk", "What effect costs", {}, {chart_width, 0}};
  const Frame frame{
      {52, 10},
      chart_width - 52 - 12,
      300,
      per_cent_axis("risk: largest chance that a layer to keep is affected, %", largest_risk_shown(plan, bench)),
      {fmt::format("effect: chance that \"{}\" is moved, %", shortened(plan.layers[plan.target].name, 12, 90)), 0, 100,
       20, 0}};
  draw_frame(chart.drawing, frame);
  draw_limits(chart.drawing, frame, plan.job.limits);
  const std::vector<Xy> frontier = draw_frontier(chart.drawing, frame, plan);
  std::vector<Box> obstacles = boxes_along(frontier);
  const std::size_t outside = draw_published(chart.drawing, frame, bench, obstacles);
  const std::vector<OwnLine> own = own_lines(bench.published);
  PointNames of_own;
  const std::string outside_of_own = draw_own(chart.drawing, frame, own, of_own);
  const OpenNames open = draw_mixtures(chart.drawing, frame, plan, bench, obstacles, of_own);
  std::vector<LegendEntry> legend = {
      {"frontier: nothing on the shelf beats it", {target_look.colour, 1.4, "5 3"}},
      {ladder_rungs(plan).empty() ? "mixtures of this sheet" : "the ladder, rungs by number",
       {ladder_rungs(plan).empty() ? "none" : ink, 1.6},
       true,
       Mark::disc,
       ink},
      {"risk limit, " + per_cent(plan.job.limits.risk_limit), {limit_ink, 1.4, "8 3"}},
      {"effect wanted, " + per_cent(plan.job.limits.wanted_effect), {pale_ink, 1.2, "2 3"}}};
  const double legend_top = frame.corner.y + frame.height + 44;
  const double first = draw_legend(chart.drawing, {52, legend_top}, chart_width - 60, legend);
  std::vector<LegendEntry> series = legend_of_published(bench);
  for (const LegendEntry& entry : own_legend(own)) series.push_back(entry);
  chart.drawing.height =
      legend_top + 2 + first + draw_legend(chart.drawing, {52, legend_top + first}, chart_width - 60, series);
  chart.caption =
      ladder_rungs(plan).empty()
          ? "The dashed curve is the best this shelf can do. " + no_window_sentences(plan)[1] +
                named_letters(plan, bench)
          : "Steps up the ladder buy effect with risk. Where the ladder lies below the dashed curve, other bottles of "
            "the shelf would do better; where the curve flattens, more risk buys little.";
  chart.caption += about_published(bench, outside) + own_lines_words(own) + outside_of_own + open_names_words(open);
  return chart;
}

}  // namespace gentlest
