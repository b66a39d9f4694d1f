#include "report/charts/marks.hpp"

#include "gentlest/liquids/notation.hpp"
#include "report/form/format.hpp"
#include "report/phrases/sighting_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr double name_room = 150;
constexpr double covers = 3;       // edges nowhere further apart than this look like one
constexpr double step_inside = 5;  // by which a covered range is drawn smaller
constexpr double tint = 0.06;

double area_of(const std::vector<Xy>& edge) {
  double twice = 0;
  for (std::size_t i = 0; i < edge.size(); ++i) {
    const Xy& a = edge[i];
    const Xy& b = edge[(i + 1) % edge.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return std::abs(twice) / 2;
}

bool cover(const std::vector<Xy>& a, const std::vector<Xy>& b) {
  if (a.size() != b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (std::hypot(a[i].x - b[i].x, a[i].y - b[i].y) > covers) return false;
  return true;
}

std::vector<Xy> smaller(const std::vector<Xy>& edge, Xy middle, double by) {
  std::vector<Xy> inner;
  for (const Xy& point : edge) {
    const double far = std::hypot(point.x - middle.x, point.y - middle.y);
    const double rest = far > 0 ? std::max(0.0, 1 - by / far) : 0;
    inner.push_back({middle.x + rest * (point.x - middle.x), middle.y + rest * (point.y - middle.y)});
  }
  return inner;
}

// Letters of their own, apart from those of bottles (small) and of mixtures (from A).
std::string key_of_layer(std::size_t layer) {
  return std::string(1, static_cast<char>('Z' - layer % 13));
}

std::string hatch_id(const std::string& id, std::size_t layer) {
  return fmt::format("{}-{}", id, layer);
}

void draw_bottle(Drawing& drawing, const Plan& plan, const Bench& bench, std::size_t bottle, Xy at,
                 PointNames& points) {
  const Liquid& liquid = plan.shelf[bottle];
  const bool is_used = is_on_ladder(bench, liquid.label);
  begin_mark(drawing, {{"bottle", liquid.label}}, liquid.label);
  add_mark(drawing, is_used ? Mark::disc : Mark::ring, at, is_used ? 7 : 6, is_used ? ink : pale_ink);
  end_mark(drawing);
  points.obstacles.push_back(box_around(at, 4));
  points.names.push_back({liquid.label, at, small_text, false, 5, key_letters(bottle), name_room});
}

void draw_mixture(Drawing& drawing, const Plan& plan, const Bench& bench, std::size_t mixture, Xy at,
                  PointNames& points) {
  begin_mark(drawing, keys_of_mixture(plan, bench, mixture), pointed_words(plan, bench, mixture));
  add_circle(drawing, at, 3.2, {ink, 1.2, {}, "#fff"});
  end_mark(drawing);
  points.obstacles.push_back(box_around(at, 3.7));
  points.names.push_back({mark_of(plan, bench, mixture), at, small_text, true, 5});
}

}  // namespace

bool draw_ranges(Drawing& drawing, const Plan& plan, const std::string& id, const std::vector<Xy>& clip,
                 std::vector<LayerRange> ranges) {
  std::stable_sort(ranges.begin(), ranges.end(),
                   [](const LayerRange& a, const LayerRange& b) { return area_of(a.edge) > area_of(b.edge) + 1; });
  bool any_covered = false;
  begin_clip(drawing, id + "-clip", clip);
  for (std::size_t n = 0; n < ranges.size(); ++n) {
    const LayerRange& one = ranges[n];
    const LayerLook look = look_of(plan, one.layer);
    const auto below = std::count_if(ranges.begin(), ranges.begin() + static_cast<std::ptrdiff_t>(n),
                                     [&](const LayerRange& other) { return cover(other.edge, one.edge); });
    any_covered = any_covered || below > 0;
    const std::vector<Xy> edge = smaller(one.edge, one.middle, step_inside * static_cast<double>(below));
    begin_mark(drawing, {{"layer", plan.layers[one.layer].name}}, layer_legend(plan.layers[one.layer]));
    const std::string pattern = add_hatch(drawing, hatch_id(id, one.layer), look.hatch, look.colour);
    if (pattern != "none") add_path(drawing, edge, {"none", 1, {}, pattern}, true);
    add_path(drawing, edge, {look.colour, 1.8, look.dash, look.colour, tint}, true);
    end_mark(drawing);
  }
  end_clip(drawing);
  return any_covered;
}

void draw_middles(Drawing& drawing, const Plan& plan, const std::vector<LayerRange>& ranges, PointNames& points) {
  constexpr double size = 8;
  constexpr double near = 9;
  std::vector<Xy> taken;
  for (const LayerRange& one : ranges) {
    Xy at = one.middle;
    const auto is_taken = [&](Xy place) {
      return std::any_of(taken.begin(), taken.end(), [&](Xy other) {
        return std::abs(other.x - place.x) < near && std::abs(other.y - place.y) < near;
      });
    };
    while (is_taken(at)) at.x += near + 2;
    taken.push_back(at);
    const LayerLook look = look_of(plan, one.layer);
    const std::string& name = plan.layers[one.layer].name;
    begin_mark(drawing, {{"layer", name}}, "middle of the range of " + layer_legend(plan.layers[one.layer]));
    add_mark(drawing, look.mark, at, size, look.colour);
    end_mark(drawing);
    points.obstacles.push_back(box_around(at, 5.5));
    points.names.push_back({name, at, small_text, false, 6, key_of_layer(one.layer), name_room});
  }
}

PointNames draw_liquids(Drawing& drawing, const Plan& plan, const Bench& bench, const std::vector<Xy>& mixtures,
                        const std::vector<LayerRange>& ranges, const std::vector<Xy>& bottles) {
  PointNames points;
  if (!ladder_rungs(plan).empty()) {
    add_path(drawing, mixtures, {ink, 1.6});
    for (const Box& box : boxes_along(mixtures)) points.obstacles.push_back(box);
  }
  for (std::size_t i = 0; i < mixtures.size(); ++i) draw_mixture(drawing, plan, bench, i, mixtures[i], points);
  draw_middles(drawing, plan, ranges, points);
  for (const bool is_used : {true, false})
    for (std::size_t i = 0; i < bottles.size(); ++i)
      if (is_on_ladder(bench, plan.shelf[i].label) == is_used) draw_bottle(drawing, plan, bench, i, bottles[i], points);
  return points;
}

std::vector<MarkKey> keys_of_mixture(const Plan& plan, const Bench& bench, std::size_t mixture) {
  return {{ladder_rungs(plan).empty() ? "mixture" : "rung", mark_of(plan, bench, mixture)}};
}

std::string pointed_words(const Plan& plan, const Bench& bench, std::size_t mixture) {
  const JudgedMixture& judged = bench.mixtures[mixture].judged;
  return fmt::format("{}{}: {}; {}", ladder_rungs(plan).empty() ? "" : "rung ", mark_of(plan, bench, mixture),
                     to_text(judged.mixture), effect_and_risk(judged));
}

std::vector<LegendEntry> layer_entries(const Plan& plan, const std::string& ranges) {
  std::vector<LegendEntry> entries;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) {
    if (!plan.layers[i].sphere) continue;
    const LayerLook look = look_of(plan, i);
    entries.push_back({layer_legend(plan.layers[i]), {look.colour, 1.8, look.dash}, true, look.mark, look.colour});
    if (!ranges.empty() && look.hatch != Hatch::none) entries.back().pattern = pattern_fill(hatch_id(ranges, i));
  }
  return entries;
}

}  // namespace gentlest
