#include "gentlest/liquids/notation.hpp"
#include "report/bottle/vial_words.hpp"
#include "report/charts/charts.hpp"
#include "report/draw/contour.hpp"
#include "report/draw/ternary.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/phrases/headings.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/phrases/no_window.hpp"
#include "report/phrases/shelf_words.hpp"
#include "report/phrases/sighting_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>

namespace gentlest {

namespace {

constexpr double side = 400;
constexpr double left = 60;
constexpr double top = 34;

constexpr std::array<double, 5> effect_levels = {0.1, 0.25, 0.5, 0.75, 0.9};
constexpr std::array<double, 6> risk_levels = {0.02, 0.05, 0.1, 0.25, 0.5, 0.75};

// The second bottle at the top, the third on the left: the gentle one of a ladder stands on the right.
Ternary triangle_of(const MixingGrid& grid) {
  Ternary triangle{{left, 0}, side, 0, {}};
  for (std::size_t k = 0; k < 3; ++k) {
    const std::string& label = grid.bottles[k].liquid.label;
    triangle.axes[k] = {label, shortened(label, small_text, side * 0.5) + ", % by volume"};
  }
  triangle.corner.y = top + height_of(triangle);
  return triangle;
}

struct OneRung {
  const JudgedMixture* judged = nullptr;
  Xy at;
};

// Where a mixture of these three bottles alone stands; nothing of one that holds another.
std::optional<Xy> place_of(const Mixture& mixture, const MixingGrid& grid, const Ternary& triangle) {
  std::array<double, 3> shares = {0, 0, 0};
  double all = 0;
  for (const Part& part : mixture.parts())
    for (std::size_t k = 0; k < 3; ++k)
      if (grid.bottles[k].liquid.label == part.liquid.label) all += shares[k] = part.fraction;
  if (all < 1 - 1e-6) return std::nullopt;
  return place_in(triangle, 100 * shares[0], 100 * shares[1]);
}

// An own series on this triangle.
struct OwnOnIt {
  OwnLine line;
  SeriesPlaces places;
};

std::vector<OwnOnIt> own_on(const std::vector<ComparedSeries>& compared, const MixingGrid& grid,
                            const Ternary& triangle) {
  std::vector<OwnOnIt> all;
  for (const OwnLine& line : own_lines(compared)) {
    OwnOnIt one{line, {}};
    for (const JudgedMixture& mixture : line.compared->judged.mixtures)
      one.places.push_back(place_of(mixture.mixture, grid, triangle));
    all.push_back(std::move(one));
  }
  return all;
}

// Those of which some mixture stands on it.
std::vector<OwnLine> drawn_lines(const std::vector<OwnOnIt>& own) {
  std::vector<OwnLine> lines;
  for (const OwnOnIt& one : own)
    if (std::any_of(one.places.begin(), one.places.end(), [](const std::optional<Xy>& at) { return at.has_value(); }))
      lines.push_back(one.line);
  return lines;
}

// Labels of what a series holds beside these three bottles, each once.
std::vector<std::string> other_liquids(const OwnOnIt& one, const MixingGrid& grid) {
  std::vector<std::string> labels;
  for (const std::string& label : one.line.compared->liquids)
    if (std::none_of(grid.bottles.begin(), grid.bottles.end(),
                     [&](const MixingBottle& bottle) { return bottle.liquid.label == label; }))
      labels.push_back(label);
  return labels;
}

std::string own_not_on_it(const std::vector<OwnOnIt>& own, const MixingGrid& grid) {
  std::vector<std::string> words;
  for (const OwnOnIt& one : own) {
    std::vector<std::size_t> which;
    for (std::size_t i = 0; i < one.places.size(); ++i)
      if (!one.places[i]) which.push_back(i);
    if (!which.empty())
      words.push_back(fmt::format("{} ({})", own_numbers(one.line, which), joined(other_liquids(one, grid))));
  }
  return words.empty() ? std::string()
                       : fmt::format(" Not on it, since they hold other liquids: {}.", joined(words, "; "));
}

// Every rung of every line that is mixed of these three, the ladder first.
std::vector<OneRung> rungs_on(const Plan& plan, const MixingGrid& grid, const Ternary& triangle) {
  std::vector<OneRung> rungs;
  for (const LadderLine& line : plan.lines)
    for (const JudgedMixture& rung : line.rungs) {
      const std::optional<Xy> at = place_of(rung.mixture, grid, triangle);
      const auto is_there = [&](const OneRung& other) { return other.at == *at; };
      if (at && std::none_of(rungs.begin(), rungs.end(), is_there)) rungs.push_back({&rung, *at});
    }
  return rungs;
}

struct LineKind {
  std::string word;  ///< "effect"
  const std::vector<double>& values;
  Pen pen;
};

// Words of lines, to be drawn when all lines are.
struct LineWords {
  Xy at;
  std::string text;
  std::string colour;
};

// Its words on the line where they hide nothing; nearest to the line's middle.
void name_line(std::vector<LineWords>& words_of_lines, const std::vector<Xy>& line, const std::string& words,
               const std::string& colour, std::vector<Box>& taken) {
  const double half = text_width(words, small_text) / 2 + 1;
  for (std::size_t k = 0; k < line.size(); ++k) {
    const std::size_t middle = line.size() / 2;
    const std::size_t away = (k + 1) / 2;
    if (k % 2 == 1 ? away > middle : middle + away >= line.size()) continue;
    const Xy at = line[k % 2 == 1 ? middle - away : middle + away];
    const Box box{at.x - half, at.y - 7, at.x + half, at.y + 7};
    if (std::any_of(taken.begin(), taken.end(), [&](const Box& other) { return overlap(other, box); })) continue;
    taken.push_back(box);
    words_of_lines.push_back({at, words, colour});
    return;
  }
}

void draw_words(Drawing& drawing, const std::vector<LineWords>& all) {
  for (const LineWords& one : all) {
    const double half = text_width(one.text, small_text) / 2 + 1;
    add_rectangle(drawing, {one.at.x - half, one.at.y - 7}, 2 * half, 14, {"none", 1, {}, "#fff"});
    add_text(drawing, {one.at.x, one.at.y + 4}, one.text, {small_text, Anchor::middle, false, one.colour});
  }
}

void draw_levels(Drawing& drawing, const Ternary& triangle, const MixingGrid& grid, const LineKind& kind,
                 const std::vector<double>& levels, std::vector<LineWords>& words_of_lines, std::vector<Box>& taken) {
  const auto value = [&](int i, int j) { return kind.values[grid.at(i, j)]; };
  for (const double level : levels)
    for (const std::vector<Xy>& shares : level_lines(grid.steps, value, level)) {
      std::vector<Xy> line;
      for (const Xy& share : shares) line.push_back(place_in(triangle, share.x, share.y));
      const std::string words = kind.word + " " + setting_per_cent(level);
      begin_mark(drawing, {{kind.word.c_str(), as_data(level)}}, words);
      add_path(drawing, line, kind.pen);
      end_mark(drawing);
      name_line(words_of_lines, line, words, kind.word == "risk" ? keep_text_ink : kind.pen.stroke, taken);
    }
}

void shade_beyond(Drawing& drawing, const Ternary& triangle, const MixingGrid& grid, double limit) {
  const auto value = [&](int i, int j) { return grid.risk[grid.at(i, j)]; };
  for (const RowStretch& row : rows_above(grid.steps, value, limit))
    add_line(drawing, place_in(triangle, row.from.x, row.from.y), place_in(triangle, row.to.x, row.to.y),
             {"#b0b0b0", 0.9});
}

void draw_corners(Drawing& drawing, const Ternary& triangle, const MixingGrid& grid, std::vector<Box>& taken) {
  const std::vector<Xy> corners = outline_of(triangle);  // lower left, top, lower right
  const std::array<std::size_t, 3> bottle = {2, 1, 0};
  for (std::size_t k = 0; k < 3; ++k) {
    const std::string& label = grid.bottles[bottle[k]].liquid.label;
    begin_mark(drawing, {{"bottle", label}}, label);
    add_mark(drawing, Mark::disc, corners[k], 7, ink);
    end_mark(drawing);
    taken.push_back(box_around(corners[k], 5));
  }
}

std::vector<LegendEntry> legend_of(const Plan& plan, const MixingGrid& grid, bool any_rungs,
                                   const std::vector<OwnLine>& own) {
  const std::string& target = plan.layers[plan.target].name;
  std::vector<LegendEntry> legend = {
      {"equal effect on " + target, {remove_ink, 1.4}},
      {"equal risk to a layer to keep", {keep_ink, 1.4, "6 3"}},
      {"risk limit, " + per_cent(plan.job.limits.risk_limit) + "; beyond it, level strokes", {limit_ink, 2, "8 3"}}};
  if (grid.risk.empty()) legend.resize(1);
  if (any_rungs) legend.push_back({"rungs of the lines", {}, true, Mark::ring, ink});
  if (!grid.part.empty()) legend.push_back({parts_in_two, {}, true, Mark::cross, ink});
  for (const LegendEntry& entry : own_legend(own)) legend.push_back(entry);
  return legend;
}

std::string origin_words(const MixingBottle& bottle) {
  switch (bottle.reason) {
    case MixingReason::asked:
    case MixingReason::ladder:
      return {};
    case MixingReason::line:
      return fmt::format(" {} stands on line {}.", bottle.liquid.label, bottle.line);
    case MixingReason::shelf:
      return fmt::format(" No line brings a third bottle: {} is the one of the shelf that adds most.",
                         bottle.liquid.label);
  }
  return {};
}

std::string labels_of(const MixingGrid& grid) {
  return joined({grid.bottles[0].liquid.label, grid.bottles[1].liquid.label, grid.bottles[2].liquid.label});
}

// Bottles asked for by name that the plan does not use, each with the reason.
std::string left_off_in(const Plan& plan, const MixingGrid& grid) {
  std::vector<JobBottle> bottles;
  for (const JobBottle& one : plan.left_off)
    if (one.liquid && std::any_of(grid.bottles.begin(), grid.bottles.end(),
                                  [&](const MixingBottle& bottle) { return bottle.liquid.label == one.liquid->label; }))
      bottles.push_back(one);
  std::string words;
  for (const std::string& reason : left_off_words(bottles))
    words += fmt::format(" In the plan {}{}.", bottle_left_off, reason);
  return words;
}

std::string best_words(const Plan& plan, const MixingGrid& grid) {
  const std::optional<MixingBest> best = best_within(grid, plan.job.limits.risk_limit);
  if (!best) return "No mixture of these three stays within the risk limit.";
  const std::string words =
      fmt::format("Strongest {}, in steps of {} %: {}, effect {}, risk {}.",
                  grid.risk.empty() ? "of these three" : "within the risk limit", 100 / grid.steps,
                  to_text(mixture_at(grid, best->i, best->j)), per_cent(best->effect), known_chance(best->risk));
  // Parting is known in tenths: the nearest one speaks.
  const int half = grid.steps / 20;
  const bool parts = std::any_of(grid.part.begin(), grid.part.end(), [&](const std::pair<int, int>& at) {
    return std::abs(at.first - best->i) <= half && std::abs(at.second - best->j) <= half;
  });
  return parts ? words + " Near it the mixture parts into two liquids, and then these chances do not hold." : words;
}

Chart no_triangle(const Plan& plan) {
  Chart chart{mixing_kind, "Mixtures of three bottles", {}, {chart_width, 0}};
  if (!plan.layers[plan.target].sphere || plan.shelf.empty()) {
    chart.caption = no_window_sentences(plan).front();
  } else {
    std::vector<std::string> labels;
    for (const Liquid& liquid : plan.shelf) labels.push_back(liquid.label);
    chart.caption = fmt::format("A triangle needs three bottles, and this shelf has {}: {}. Name three with --of.",
                                labels.size(), joined(labels));
  }
  chart.caption += own_absence_words(plan.job.series, OwnAbsence::nothing_drawn);
  chart.description = chart.caption;
  return chart;
}

OpenNames draw_rungs(Drawing& drawing, const std::vector<OneRung>& rungs, const std::vector<OwnOnIt>& own,
                     const std::vector<Box>& taken, const Box& bounds) {
  PointNames of_own;
  for (const OwnOnIt& one : own) draw_own_line(drawing, one.line, one.places, of_own);
  PointNames points{taken, {}};
  for (const OneRung& rung : rungs) {
    const JudgedMixture& judged = *rung.judged;
    begin_mark(drawing, {{"rung", short_name(judged)}},
               fmt::format("{}: {}; {}", mixture_name(judged), to_text(judged.mixture), effect_and_risk(judged)));
    add_circle(drawing, rung.at, 3.6, {ink, 1.3, {}, "#fff"});
    end_mark(drawing);
    points.names.push_back({short_name(judged), rung.at, small_text, true, 5});
  }
  add_points(points, of_own);
  return draw_names(drawing, points.names, points.obstacles, bounds);
}

OpenNames draw_triangle(Drawing& drawing, const Plan& plan, const MixingGrid& grid, const Ternary& triangle,
                        const std::vector<OneRung>& rungs, const std::vector<OwnOnIt>& own) {
  const double limit = plan.job.limits.risk_limit;
  if (!grid.risk.empty()) shade_beyond(drawing, triangle, grid, limit);
  draw_ternary(drawing, triangle);
  std::vector<Box> taken = boxes_of_ticks(triangle);
  for (const OneRung& rung : rungs) taken.push_back(box_around(rung.at, 5));
  for (const OwnOnIt& one : own)
    for (const std::optional<Xy>& at : one.places)
      if (at) taken.push_back(box_around(*at, 6));
  draw_corners(drawing, triangle, grid, taken);
  std::vector<LineWords> words;
  draw_levels(drawing, triangle, grid, {"effect", grid.effect, {remove_ink, 1.4}},
              {effect_levels.begin(), effect_levels.end()}, words, taken);
  if (!grid.risk.empty()) {
    std::vector<double> levels(risk_levels.begin(), risk_levels.end());
    levels.erase(std::remove(levels.begin(), levels.end(), limit), levels.end());
    draw_levels(drawing, triangle, grid, {"risk", grid.risk, {limit_ink, 2, "8 3"}}, {limit}, words, taken);
    draw_levels(drawing, triangle, grid, {"risk", grid.risk, {keep_ink, 1.4, "6 3"}}, levels, words, taken);
  }
  draw_words(drawing, words);
  for (const auto& [i, j] : grid.part) {
    const Xy at = place_in(triangle, 100.0 * i / grid.steps, 100.0 * j / grid.steps);
    add_mark(drawing, Mark::cross, at, 7, ink);
    taken.push_back(box_around(at, 4));
  }
  return draw_rungs(drawing, rungs, own, taken, {2, 2, chart_width - 2, triangle.corner.y + 16});
}

std::string described(const Plan& plan, const MixingGrid& grid, const std::vector<OneRung>& rungs) {
  std::vector<std::string> corners;
  for (std::size_t k = 0; k < 3; ++k) {
    const std::size_t at = grid.at(k == 0 ? grid.steps : 0, k == 1 ? grid.steps : 0);
    corners.push_back(fmt::format("{} effect {}, risk {}", grid.bottles[k].liquid.label, per_cent(grid.effect[at]),
                                  grid.risk.empty() ? std::string(not_known) : per_cent(grid.risk[at])));
  }
  std::vector<std::string> on_it;
  for (const OneRung& rung : rungs) on_it.push_back(mixture_name(*rung.judged) + ": " + effect_and_risk(*rung.judged));
  return fmt::format("{} The triangle of {} with lines of equal effect and of equal risk. Alone: {}. On it: {}.",
                     best_words(plan, grid), labels_of(grid), joined(corners, "; "),
                     joined(on_it, "; ", "no rung of the plan"));
}

}  // namespace

Chart mixing_chart(const Plan& plan, const std::optional<MixingGrid>& grid,
                   const std::vector<ComparedSeries>& compared) {
  if (!grid) return no_triangle(plan);
  const Ternary triangle = triangle_of(*grid);
  const std::vector<OneRung> rungs = rungs_on(plan, *grid, triangle);
  const std::vector<OwnOnIt> own = own_on(compared, *grid, triangle);
  const std::vector<OwnLine> drawn = drawn_lines(own);
  Chart chart{mixing_kind, "Every mixture of " + labels_of(*grid), {}, {chart_width, 0}};
  const OpenNames open = draw_triangle(chart.drawing, plan, *grid, triangle, rungs, own);
  const double legend_top = triangle.corner.y + 50;
  chart.drawing.height =
      legend_top + 4 +
      draw_legend(chart.drawing, {10, legend_top}, chart_width - 20, legend_of(plan, *grid, !rungs.empty(), drawn));
  chart.caption = best_words(plan, *grid);
  for (const MixingBottle& bottle : grid->bottles) chart.caption += origin_words(bottle);
  const std::string left_off = left_off_in(plan, *grid);
  chart.caption += left_off;
  chart.caption += " At a corner stands one bottle alone; the nearer to it, the more of that bottle.";
  chart.caption += read_by_ticks_words;
  if (!grid->part.empty()) chart.caption += " Crosses, in tenths of volume: there the mixture parts into two liquids.";
  const std::string not_on_it = own_not_on_it(own, *grid);
  chart.caption += own_lines_words(drawn) + not_on_it + open_names_words(open);
  chart.description = described(plan, *grid, rungs) + left_off + own_described(drawn, effect_and_risk) + not_on_it;
  tell_not_drawn(chart, plan);
  return chart;
}

}  // namespace gentlest
