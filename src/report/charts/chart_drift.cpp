#include "report/bottle/vial_words.hpp"
#include "report/charts/drift_shares.hpp"
#include "report/charts/marks.hpp"
#include "report/draw/line_names.hpp"
#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/words.hpp"
#include "report/ranges/range_outline.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest {

namespace {

// Rungs by dash and by number at the end of the line; all in ink, so that nothing rests on colour.
constexpr std::array<const char*, 4> dashes = {"", "6 2", "2 2", "8 2 2 2"};

struct Drying {
  std::size_t mixture = 0;  ///< of the bench
  std::string name;
  const Drift* drift = nullptr;
  const std::vector<double>* risk = nullptr;  ///< at each point of the drift
  const char* dash = "";
};

std::vector<Drying> drying_mixtures(const Plan& plan, const Bench& bench) {
  std::vector<Drying> all;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    if (as_made(bench.mixtures[i]).fate.drift)
      all.push_back({i, mark_of(plan, bench, i), &*as_made(bench.mixtures[i]).fate.drift,
                     &as_made(bench.mixtures[i]).fate.drying_risk, dashes[i % dashes.size()]});
  return all;
}

Axis plane_axis(const Plan& plan, const std::vector<Drying>& all, bool polar) {
  double low = 1e9;
  double high = -1e9;
  const auto take = [&](const Hansen& point) {
    low = std::min(low, polar ? point.dP : point.dH);
    high = std::max(high, polar ? point.dP : point.dH);
  };
  for (const Drying& one : all)
    for (const DriftPoint& step : one.drift->path) take(step.point);
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere) take(layer.sphere->mean.centre);
  low = std::floor(low - 1);
  high = std::ceil(high + 1);
  return {polar ? polar_axis : hydrogen_axis, low, high, tick_step(high - low, 6), 0};
}

std::vector<LayerRange> ranges_in(const Frame& frame, const Plan& plan) {
  std::vector<LayerRange> ranges;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!plan.layers[i].sphere) continue;
    const Hansen& centre = plan.layers[i].sphere->mean.centre;
    LayerRange one{i, {}, place_in(frame, centre.dP, centre.dH)};
    for (const CutPoint& point : cut_through_range(plan.layers[i], Coordinate::dP, Coordinate::dH))
      one.edge.push_back(place_in(frame, point.across, point.up));
    ranges.push_back(std::move(one));
  }
  return ranges;
}

OpenNames draw_ways(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench,
                    const std::vector<Drying>& all, const std::vector<LayerRange>& ranges) {
  PointNames points;
  for (const Drying& one : all) {
    std::vector<Xy> way;
    for (const DriftPoint& step : one.drift->path) way.push_back(place_in(frame, step.point.dP, step.point.dH));
    begin_mark(drawing, keys_of_mixture(plan, bench, one.mixture), pointed_words(plan, bench, one.mixture));
    add_path(drawing, way, {ink, 1.3, one.dash});
    add_mark(drawing, Mark::disc, way.front(), 7, ink);
    add_mark(drawing, Mark::ring, way.back(), 6, ink);
    end_mark(drawing);
    for (const Box& box : boxes_along(way)) points.obstacles.push_back(box);
    for (const Xy end : {way.front(), way.back()}) points.obstacles.push_back(box_around(end, 4));
    points.names.push_back({one.name, way.front(), small_text, true, 5});
  }
  draw_middles(drawing, plan, ranges, points);
  const Xy corner = frame.corner;
  return draw_names(drawing, points.names, points.obstacles,
                    {corner.x + 1, corner.y + 1, corner.x + frame.width - 1, corner.y + frame.height - 1});
}

double risk_axis_end(const Plan& plan, const std::vector<Drying>& all) {
  double largest = 1.2 * plan.job.limits.risk_limit;
  for (const Drying& one : all)
    for (const double risk : *one.risk) largest = std::max(largest, risk);
  const double step = tick_step(100 * largest, 5);
  return std::min(100.0, std::ceil(100 * largest / step) * step);
}

// Each name on its own line. Returns those that found no room.
std::vector<std::string> draw_line_names(Drawing& drawing, const std::vector<LineToName>& lines, const Box& bounds) {
  constexpr double size = small_text;
  const LineNames names = place_line_names(lines, size, bounds);
  for (const LineName& name : names.placed) {
    const Box& box = name.box;
    if (name.has_leader) {
      add_line(drawing, name.point,
               {std::clamp(name.point.x, box.left, box.right), std::clamp(name.point.y, box.top, box.bottom)},
               {ink, 0.7});
      add_circle(drawing, name.point, 2, {"none", 1, {}, ink});
    }
    TextStyle style{size, Anchor::middle, true};
    style.halo = true;
    add_text(drawing, {(box.left + box.right) / 2, box.bottom - size * 0.14}, name.text, style);
  }
  return names.without_room;
}

// Returns the names that found no room.
std::vector<std::string> draw_risks(Drawing& drawing, const Frame& frame, const Plan& plan, const Bench& bench,
                                    const std::vector<Drying>& all) {
  const double limit = 100 * plan.job.limits.risk_limit;
  const double until = 100 * judged_until;
  const Xy shade = place_in(frame, until, frame.y.high);
  add_rectangle(drawing, shade, frame.corner.x + frame.width - shade.x, frame.height, {"none", 1, {}, "#e8e8e8"});
  draw_frame(drawing, frame);
  add_line(drawing, place_in(frame, 0, limit), place_in(frame, 100, limit), {limit_ink, 1.4, "8 3"});
  std::vector<LineToName> lines;
  for (const Drying& one : all) {
    std::vector<Xy> line;
    const std::vector<DriftPoint>& path = one.drift->path;
    for (std::size_t i = 0; i < path.size(); ++i)
      line.push_back(place_in(frame, 100 * path[i].evaporated, 100 * (*one.risk)[i]));
    begin_mark(drawing, keys_of_mixture(plan, bench, one.mixture), pointed_words(plan, bench, one.mixture));
    add_path(drawing, line, {ink, 1.3, one.dash});
    end_mark(drawing);
    if (const std::optional<double> parts_at = one.drift->parts_at)
      for (std::size_t i = 0; i < path.size(); ++i)
        if (path[i].evaporated >= *parts_at - 1e-9) {
          add_mark(drawing, Mark::cross, line[i], 9, limit_ink);
          break;
        }
    lines.push_back({one.name, std::move(line)});
  }
  return draw_line_names(
      drawing, lines,
      {frame.corner.x + 1, frame.corner.y + 1, frame.corner.x + frame.width - 1, frame.corner.y + frame.height - 1});
}

std::vector<LegendEntry> legend_of(const Plan& plan, bool some_part) {
  std::vector<LegendEntry> entries = layer_entries(plan, "range-drift");
  entries.push_back({"as it is in the vial", {}, true, Mark::disc, ink});
  entries.push_back({"the last trace", {}, true, Mark::ring, ink});
  entries.push_back({"risk limit, " + per_cent(plan.job.limits.risk_limit), {limit_ink, 1.4, "8 3"}});
  if (some_part) entries.push_back({"parts into two liquids from here", {}, true, Mark::cross, limit_ink});
  return entries;
}

std::string not_drawn_words(const Bench& bench) {
  std::string words;
  for (const BenchMixture& mixture : bench.mixtures)
    if (!as_made(mixture).fate.drift)
      words += fmt::format(
          " Not known for {}: no figures for {}.", mixture_name(mixture.judged),
          joined(missing_words(as_made(mixture).fate.drift_missing), ", ", "n-butyl acetate, the unit of time"));
  return words;
}

}  // namespace

Chart drift_chart(const Plan& plan, const Bench& bench) {
  Chart chart{"drift", "What drying does to the mixtures", {}, {chart_width, 0}};
  const std::vector<Drying> all = drying_mixtures(plan, bench);
  if (all.empty()) {
    chart.caption = "How these mixtures drift while they dry is not known." + not_drawn_words(bench);
    return chart;
  }
  const Axis dP = plane_axis(plan, all, true);
  const Axis dH = plane_axis(plan, all, false);
  constexpr double widest = 190;
  constexpr double tallest = 250;
  const double unit = std::min(widest / (dP.high - dP.low), tallest / (dH.high - dH.low));
  const Frame plane{{46, 10}, unit * (dP.high - dP.low), unit * (dH.high - dH.low), dP, dH};
  const double second = plane.corner.x + plane.width + 58;
  const double high = risk_axis_end(plan, all);
  const Frame risks{{second, 10},
                    chart_width - second - 12,
                    plane.height,
                    {"evaporated, % of volume", 0, 100, 20, 0},
                    {"risk, %", 0, high, tick_step(high, 5), high < 4 ? 1 : 0}};
  const std::vector<LayerRange> ranges = ranges_in(plane, plan);
  const bool any_covered = draw_ranges(chart.drawing, plan, "range-drift", outline_of(plane), ranges);
  draw_frame(chart.drawing, plane);
  const OpenNames open = draw_ways(chart.drawing, plane, plan, bench, all, ranges);
  const std::vector<std::string> unnamed = draw_risks(chart.drawing, risks, plan, bench, all);
  const bool some_part =
      std::any_of(all.begin(), all.end(), [](const Drying& one) { return one.drift->parts_at.has_value(); });
  const double legend_top = plane.corner.y + plane.height + 44;
  chart.drawing.height =
      legend_top + draw_legend(chart.drawing, {46, legend_top}, chart_width - 54, legend_of(plan, some_part)) + 8;
  chart.drawing.height += draw_drying_shares(chart.drawing, chart.drawing.height, plan, bench);
  chart.caption =
      "Above left: the way of what is left, seen along dD. Above right: the risk on that way; a line that climbs over "
      "the limit means that the last of the mixture may act where the vial would not. Beyond 90 % (grey) the film is "
      "too thin to judge. Below: what is left, as shares of its volume; the order in which liquids leave is sound, "
      "times are rough." +
      not_drawn_words(bench) + named_letters(plan, bench);
  if (any_covered) chart.caption += covered_ranges_words;
  chart.caption += open_names_words(open);
  if (!unnamed.empty()) chart.caption += " No room in the right picture for the names of: " + joined(unnamed) + ".";
  return chart;
}

}  // namespace gentlest
