#include "report/charts/charts.hpp"
#include "report/form/format.hpp"
#include "report/phrases/headings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest {

namespace {

constexpr double side = 470;
constexpr double left = 125;
constexpr double top = 14;

// The part of the triangle that is drawn: fd from this value up, enlarged to the full side.
struct View {
  double least_fd = 0;
  double height = side * 0.8660254037844386;
};

Xy place(const View& view, const Teas& teas) {
  const double span = 100 - view.least_fd;
  const double d = (teas.fd - view.least_fd) / span;
  const double p = teas.fp / span;
  return {left + side * (d + p / 2), top + view.height * (1 - p)};
}

View choose_view(const Plan& plan) {
  double least = 100;
  for (const Liquid& liquid : plan.shelf) least = std::min(least, teas_fractions(liquid.hansen).fd);
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere) least = std::min(least, teas_fractions(layer.sphere->mean.centre).fd);
  View view;
  view.least_fd = std::clamp(std::floor((least - 4) / 10) * 10, 0.0, 70.0);
  return view;
}

void draw_grid(Drawing& drawing, const View& view) {
  const double span = 100 - view.least_fd;
  const double low = view.least_fd;
  for (double t = 0; t <= span + 0.5; t += 10) {
    const Pen pen{t < 0.5 || t > span - 0.5 ? "#808080" : grid_ink, 0.8};
    const double rest = span - t;
    add_line(drawing, place(view, {low + t, rest, 0}), place(view, {low + t, 0, rest}), pen);
    add_line(drawing, place(view, {low, t, rest}), place(view, {low + rest, t, 0}), pen);
    add_line(drawing, place(view, {low, rest, t}), place(view, {low + rest, 0, t}), pen);
    const TextStyle tick{11, Anchor::middle, false, pale_ink};
    const Xy d = place(view, {low + t, 0, rest});
    add_text(drawing, {d.x - 4, d.y + 15}, fixed(low + t, 0), tick);
    const Xy p = place(view, {low + rest, t, 0});
    add_text(drawing, {p.x + 14, p.y + 3}, fixed(t, 0), tick);
    const Xy h = place(view, {low, rest, t});
    add_text(drawing, {h.x - 12, h.y - 2}, fixed(t, 0), tick);
  }
  add_text(drawing, {left + side / 2, top + view.height + 33}, "fd, dispersion, %", {12, Anchor::middle});
  TextStyle slanted{12, Anchor::middle};
  slanted.turn_degrees = 60;
  add_text(drawing, {left + side * 0.75 + 34, top + view.height / 2 - 10}, "fp, polar, %", slanted);
  slanted.turn_degrees = -60;
  add_text(drawing, {left + side * 0.25 - 34, top + view.height / 2 - 10}, "fh, hydrogen bonding, %", slanted);
}

// Tick labels and slanted titles, which no name may cover.
std::vector<Box> boxes_of_ticks(const View& view) {
  const double span = 100 - view.least_fd;
  std::vector<Box> boxes;
  for (double t = 0; t <= span + 0.5; t += 10) {
    const Xy p = place(view, {view.least_fd + span - t, t, 0});
    const Xy h = place(view, {view.least_fd, span - t, t});
    boxes.push_back({p.x + 4, p.y - 7, p.x + 25, p.y + 6});
    boxes.push_back({h.x - 23, h.y - 12, h.x - 2, h.y + 1});
  }
  for (const double where : {0.25, 0.75}) {
    const double away = where < 0.5 ? -34 : 34;
    const Xy middle{left + side * where + away, top + view.height / 2 - 10};
    const double lean = where < 0.5 ? -1 : 1;
    constexpr double reach = 42;
    for (Box box : boxes_along(
             {{middle.x - reach, middle.y - lean * reach * 1.73}, {middle.x + reach, middle.y + lean * reach * 1.73}}))
      boxes.push_back({box.left - 6, box.top - 6, box.right + 6, box.bottom + 6});
  }
  return boxes;
}

void draw_shadows(Drawing& drawing, const View& view, const Plan& plan) {
  begin_clip(drawing, "clip-triangle",
             {place(view, {100, 0, 0}), place(view, {view.least_fd, 100 - view.least_fd, 0}),
              place(view, {view.least_fd, 0, 100 - view.least_fd})});
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!plan.layers[i].sphere) continue;
    const LayerLook look = look_of(plan, i);
    std::vector<Xy> outline;
    for (const Teas& corner : shadow_in_triangle(plan.layers[i].sphere->mean, plan.layers[i].reach))
      outline.push_back(place(view, corner));
    add_path(drawing, outline, {look.colour, 1.8, look.dash, look.colour, 0.07}, true);
  }
  end_clip(drawing);
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].sphere)
      add_mark(drawing, look_of(plan, i).mark, place(view, teas_fractions(plan.layers[i].sphere->mean.centre)), 8,
               look_of(plan, i).colour);
}

// Returns the names that found no room.
std::vector<std::string> draw_points(Drawing& drawing, const View& view, const Plan& plan, const Bench& bench) {
  std::vector<Xy> path;
  std::vector<Box> obstacles;
  std::vector<PointName> names;
  for (const BenchMixture& mixture : bench.mixtures) path.push_back(place(view, mixture.judged.teas));
  if (!ladder_rungs(plan).empty()) add_path(drawing, path, {ink, 1.6});
  for (const Liquid& liquid : plan.shelf) {
    const Xy at = place(view, teas_fractions(liquid.hansen));
    const bool used = is_on_ladder(bench, liquid.label);
    add_mark(drawing, used ? Mark::disc : Mark::ring, at, 7, used ? ink : pale_ink);
    obstacles.push_back(box_around(at, 4));
  }
  for (std::size_t i = 0; i < path.size(); ++i) {
    add_circle(drawing, path[i], 3.2, {ink, 1.2, {}, "#fff"});
    obstacles.push_back(box_around(path[i], 3.5));
    names.push_back({mark_of(plan, bench, i), path[i], 11, true, 6});
  }
  for (const bool used : {true, false})
    for (const Liquid& liquid : plan.shelf)
      if (is_on_ladder(bench, liquid.label) == used)
        names.push_back({shortened(liquid.label, 11, 190), place(view, teas_fractions(liquid.hansen)), 11, false, 6});
  for (const PlannedLayer& layer : plan.layers)
    if (layer.sphere) obstacles.push_back(box_around(place(view, teas_fractions(layer.sphere->mean.centre)), 6));
  if (!ladder_rungs(plan).empty())
    for (const Box& box : boxes_along(path)) obstacles.push_back(box);
  for (const Box& box : boxes_of_ticks(view)) obstacles.push_back(box);
  return draw_names(drawing, names, obstacles, {2, 2, chart_width - 2, top + view.height - 2});
}

std::vector<LegendEntry> legend_of(const Plan& plan) {
  std::vector<LegendEntry> entries;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!plan.layers[i].sphere) continue;
    const LayerLook look = look_of(plan, i);
    entries.push_back({layer_legend(plan.layers[i]), {look.colour, 1.8, look.dash}, true, look.mark, look.colour});
  }
  entries.push_back({bottle_in_use, {}, true, Mark::disc, ink});
  entries.push_back({other_bottle, {}, true, Mark::ring, pale_ink});
  if (!ladder_rungs(plan).empty()) entries.push_back({ladder_by_number, {ink, 1.6}, true, Mark::ring, ink});
  return entries;
}

}  // namespace

namespace {

// A ray from the origin through this point of the triangle comes to RED 1 or less.
bool meets_bent(const Teas& u, const Sphere& sphere, const LocalReach& reach) {
  const Hansen unit{u.fd, u.fp, u.fh};
  const double longest = 2 * total({2 * sphere.centre.dD, sphere.centre.dP, sphere.centre.dH});
  const double per_step = std::min(0.1 * reach.length, 0.02 * sphere.R0);
  const double length = std::hypot(2 * u.fd, u.fp, u.fh);
  for (double at = per_step; at < longest; at += per_step) {
    const double t = at / length;
    if (relative_distance_RED({t * unit.dD, t * unit.dP, t * unit.dH}, sphere, reach) <= 1) return true;
  }
  return false;
}

}  // namespace

std::vector<Teas> shadow_in_triangle(const Sphere& sphere, const LocalReach& reach) {
  const Hansen& c = sphere.centre;
  const double scale2 = 4;  // the factor 4 on dD in Ra^2
  const double cc = scale2 * c.dD * c.dD + c.dP * c.dP + c.dH * c.dH;
  const double beyond = cc - sphere.R0 * sphere.R0;
  if (beyond <= 0) return {};
  // A ray t u meets the sphere where (u.c)^2 - (u.u)(c.c - R0^2) >= 0 in the scaled product, and t > 0.
  const auto meets = [&](const Teas& u) {
    if (!reach.places.empty()) return meets_bent(u, sphere, reach);
    const double uc = scale2 * u.fd * c.dD + u.fp * c.dP + u.fh * c.dH;
    const double uu = scale2 * u.fd * u.fd + u.fp * u.fp + u.fh * u.fh;
    return uc > 0 && uc * uc - uu * beyond >= 0;
  };
  const Teas middle = teas_fractions(c);
  constexpr int corners = 96;
  constexpr double farthest = 400;  // per cent; beyond the triangle in every direction
  std::vector<Teas> outline;
  for (int k = 0; k < corners; ++k) {
    const double angle = 2 * std::acos(-1.0) * k / corners;
    const double across = std::cos(angle);
    const double up = std::sin(angle);
    const auto at = [&](double r) {
      return Teas{middle.fd + r * across, middle.fp + r * up, middle.fh - r * (across + up)};
    };
    double inside = 0;
    double outside = farthest;
    for (int step = 0; step < (reach.places.empty() ? 40 : 14); ++step)
      (meets(at((inside + outside) / 2)) ? inside : outside) = (inside + outside) / 2;
    outline.push_back(at(inside));
  }
  return outline;
}

Chart triangle_chart(const Plan& plan, const Bench& bench) {
  const View view = choose_view(plan);
  Chart chart{"triangle",
              ladder_rungs(plan).empty() ? "The shelf in the triangle" : "The ladder in the triangle",
              {},
              {chart_width, 0}};
  draw_grid(chart.drawing, view);
  draw_shadows(chart.drawing, view, plan);
  const std::vector<std::string> unnamed = draw_points(chart.drawing, view, plan, bench);
  const double legend_top = top + view.height + 44;
  chart.drawing.height =
      legend_top + draw_legend(chart.drawing, {10, legend_top}, chart_width - 20, legend_of(plan)) + 4;
  chart.caption = fmt::format(
      "Shares of dD, dP and dH in their sum; drawn from fd {} % up. Outlines: the shadow that each layer's range "
      "throws "
      "on the triangle. A liquid in the shadow may still lie before or behind the range, so look at RED, not here, for "
      "a decision.",
      fixed(view.least_fd, 0));
  if (!ladder_rungs(plan).empty())
    chart.caption += " The ladder should run towards the layer to remove and keep off the others.";
  if (!unnamed.empty() && unnamed.size() <= 8) chart.caption += " No room for the names of: " + joined(unnamed) + ".";
  if (unnamed.size() > 8) chart.caption += fmt::format(" No room for the names of {} bottles.", unnamed.size());
  return chart;
}

}  // namespace gentlest
