#include "report/bottle/vial_words.hpp"
#include "report/charts/drift_shares.hpp"
#include "report/charts/marks.hpp"
#include "report/draw/line_names.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
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
  std::string name;
  std::vector<MarkKey> keys;
  std::string words;  ///< where a pointer rests on it
  const Drift* drift = nullptr;
  const std::vector<double>* risk = nullptr;  ///< at each point of the drift
  const char* dash = "";
};

std::vector<Drying> drying_mixtures(const Plan& plan, const Bench& bench) {
  std::vector<Drying> all;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i)
    if (as_made(bench.mixtures[i]).fate.drift)
      all.push_back({mark_of(plan, bench, i), keys_of_mixture(plan, bench, i), pointed_words(plan, bench, i),
                     &*as_made(bench.mixtures[i]).fate.drift, &as_made(bench.mixtures[i]).fate.drying_risk,
                     dashes[i % dashes.size()]});
  return all;
}

std::vector<Drying> drying_mixtures(const OwnLine& line) {
  std::vector<Drying> all;
  const std::vector<JudgedMixture>& mixtures = line.compared->judged.mixtures;
  for (std::size_t i = 0; i < mixtures.size(); ++i)
    if (mixtures[i].fate.drift)
      all.push_back({std::to_string(i + 1), keys_of_own(line), pointed_own_words(line, i), &*mixtures[i].fate.drift,
                     &mixtures[i].fate.drying_risk, dashes[i % dashes.size()]});
  return all;
}

Axis plane_axis(const Plan& plan, const std::vector<Drying>& all, const std::vector<OwnLine>& own, bool polar) {
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
  for (const OwnLine& line : own)
    for (const JudgedMixture& mixture : line.compared->judged.mixtures) take(mixture.point);
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

// As they are in the vial.
PointNames draw_own(Drawing& drawing, const Frame& frame, const std::vector<OwnLine>& own) {
  PointNames points;
  for (const OwnLine& line : own) {
    SeriesPlaces places;
    for (const JudgedMixture& mixture : line.compared->judged.mixtures)
      places.emplace_back(place_in(frame, mixture.point.dP, mixture.point.dH));
    draw_own_line(drawing, line, places, points);
  }
  return points;
}

OpenNames draw_ways(Drawing& drawing, const Frame& frame, const Plan& plan, const std::vector<Drying>& all,
                    const std::vector<OwnLine>& own, const std::vector<LayerRange>& ranges) {
  const PointNames of_own = draw_own(drawing, frame, own);
  PointNames points;
  for (const Drying& one : all) {
    std::vector<Xy> way;
    for (const DriftPoint& step : one.drift->path) way.push_back(place_in(frame, step.point.dP, step.point.dH));
    begin_mark(drawing, one.keys, one.words);
    add_path(drawing, way, {ink, 1.3, one.dash});
    add_mark(drawing, Mark::disc, way.front(), 7, ink);
    add_mark(drawing, Mark::ring, way.back(), 6, ink);
    end_mark(drawing);
    for (const Box& box : boxes_along(way)) points.obstacles.push_back(box);
    for (const Xy end : {way.front(), way.back()}) points.obstacles.push_back(box_around(end, 4));
    points.names.push_back({one.name, way.front(), small_text, true, 5});
  }
  draw_middles(drawing, plan, ranges, points);
  add_points(points, of_own);
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
std::vector<std::string> draw_risks(Drawing& drawing, const Frame& frame, const Plan& plan,
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
    begin_mark(drawing, one.keys, one.words);
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

Frame risk_frame(Xy corner, double width, double height, const Plan& plan, const std::vector<Drying>& all) {
  const double high = risk_axis_end(plan, all);
  return {corner,
          width,
          height,
          {"evaporated, % of volume", 0, 100, 20, 0},
          {"risk, %", 0, high, tick_step(high, 5), high < 4 ? 1 : 0}};
}

struct OwnRisks {
  double bottom = 0;
  std::vector<std::string> unnamed;
  bool some_part = false;
};

// The risk on the way of each own series, in a panel of its own; none where no risk can be told.
OwnRisks draw_own_risks(Drawing& drawing, double y, const Plan& plan, const std::vector<OwnLine>& own) {
  constexpr double high = 110;
  OwnRisks drawn{y, {}, false};
  if (own.empty() || plan.by_effect_alone) return drawn;
  const SeriesPanels panels = lay_panels(own, {46, y}, chart_width - 58, panel_title + high + 48);
  drawn.bottom = panels.bottom;
  for (std::size_t i = 0; i < own.size(); ++i) {
    const SeriesPanel& at = panels.each[i];
    const std::vector<Drying> all = drying_mixtures(own[i]);
    draw_panel_title(drawing, own[i], at);
    const Frame frame = risk_frame({at.corner.x, at.corner.y + panel_title}, at.width, high, plan, all);
    const std::vector<std::string> unnamed = draw_risks(drawing, frame, plan, all);
    if (!unnamed.empty()) drawn.unnamed.push_back(own_numbered(own[i], unnamed));
    drawn.some_part |=
        std::any_of(all.begin(), all.end(), [](const Drying& one) { return one.drift->parts_at.has_value(); });
  }
  return drawn;
}

std::vector<LegendEntry> legend_of(const Plan& plan, bool some_part, const std::vector<OwnLine>& own) {
  std::vector<LegendEntry> entries = layer_entries(plan, "range-drift");
  entries.push_back({"as it is in the vial", {}, true, Mark::disc, ink});
  entries.push_back({"the last trace", {}, true, Mark::ring, ink});
  entries.push_back({"risk limit, " + per_cent(plan.job.limits.risk_limit), {limit_ink, 1.4, "8 3"}});
  if (some_part) entries.push_back({"parts into two liquids from here", {}, true, Mark::cross, limit_ink});
  for (const LegendEntry& entry : own_legend(own)) entries.push_back(entry);
  return entries;
}

std::string drift_not_known_words(const std::string& name, const JudgedMixture& judged) {
  if (judged.fate.drift) return {};
  return fmt::format(" Not known for {}: no figures for {}.", name,
                     joined(missing_words(judged.fate.drift_missing), ", ", "n-butyl acetate, the unit of time"));
}

std::string not_drawn_words(const Bench& bench) {
  std::string words;
  for (const BenchMixture& mixture : bench.mixtures)
    words += drift_not_known_words(mixture_name(mixture.judged), as_made(mixture));
  return words;
}

std::string own_drift_words(const Plan& plan, const std::vector<OwnLine>& own, const OwnRisks& drawn) {
  if (own.empty()) return {};
  std::string words = own_lines_words(own) + " They stand in the upper left picture as they are in the vial; ";
  words += plan.by_effect_alone ? "their way is not drawn."
                                : "below the ladder's, each has a picture of the risk while it dries. Their way and "
                                  "what is left of them are not drawn.";
  for (const OwnLine& line : own)
    for (std::size_t i = 0; i < line.compared->judged.mixtures.size(); ++i)
      words += drift_not_known_words(own_numbers(line, {i}), line.compared->judged.mixtures[i]);
  if (!drawn.unnamed.empty()) words += " Lines there without their number: " + joined(drawn.unnamed, "; ") + ".";
  return words;
}

}  // namespace

Chart drift_chart(const Plan& plan, const Bench& bench) {
  Chart chart{"drift", "What drying does to the mixtures", {}, {chart_width, 0}};
  const std::vector<Drying> all = drying_mixtures(plan, bench);
  if (all.empty()) {
    chart.caption = "How these mixtures drift while they dry is not known." + not_drawn_words(bench) +
                    own_absence_words(plan.job.series, OwnAbsence::nothing_drawn);
    return chart;
  }
  const std::vector<OwnLine> own = own_lines(bench.published);
  const Axis dP = plane_axis(plan, all, own, true);
  const Axis dH = plane_axis(plan, all, own, false);
  constexpr double widest = 190;
  constexpr double tallest = 250;
  const double unit = std::min(widest / (dP.high - dP.low), tallest / (dH.high - dH.low));
  const Frame plane{{46, 10}, unit * (dP.high - dP.low), unit * (dH.high - dH.low), dP, dH};
  const double second = plane.corner.x + plane.width + 58;
  const Frame risks = risk_frame({second, 10}, chart_width - second - 12, plane.height, plan, all);
  const std::vector<LayerRange> ranges = ranges_in(plane, plan);
  const bool any_covered = draw_ranges(chart.drawing, plan, "range-drift", outline_of(plane), ranges);
  draw_frame(chart.drawing, plane);
  const OpenNames open = draw_ways(chart.drawing, plane, plan, all, own, ranges);
  const std::vector<std::string> unnamed = draw_risks(chart.drawing, risks, plan, all);
  const bool some_part =
      std::any_of(all.begin(), all.end(), [](const Drying& one) { return one.drift->parts_at.has_value(); });
  const OwnRisks of_own = draw_own_risks(chart.drawing, plane.corner.y + plane.height + 44, plan, own);
  const double legend_top = of_own.bottom;
  chart.drawing.height = legend_top +
                         draw_legend(chart.drawing, {46, legend_top}, chart_width - 54,
                                     legend_of(plan, some_part || of_own.some_part, own)) +
                         8;
  chart.drawing.height += draw_drying_shares(chart.drawing, chart.drawing.height, plan, bench);
  chart.caption =
      "Above left: the way of what is left, seen along dD. Above right: the risk on that way; a line that climbs over "
      "the limit means that the last of the mixture may act where the vial would not. Beyond 90 % (grey) the film is "
      "too thin to judge. Below: what is left, as shares of its volume; the order in which liquids leave is sound, "
      "times are rough." +
      not_drawn_words(bench) + named_letters(plan, bench);
  chart.caption += own_drift_words(plan, own, of_own);
  if (any_covered) chart.caption += covered_ranges_words;
  chart.caption += open_names_words(open);
  if (!unnamed.empty()) chart.caption += " No room in the right picture for the names of: " + joined(unnamed) + ".";
  return chart;
}

}  // namespace gentlest
