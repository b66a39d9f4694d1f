#include "report/tested/progress_charts.hpp"

#include "report/draw/palette.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/phrases/mixture_name.hpp"
#include "report/rules/conduct_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace gentlest {

namespace {

constexpr double left = 112;
constexpr double right = 158;
constexpr double top = 10;
constexpr double row = 50;
constexpr double bar = 7;

// One rung with its figures, each where it is known, 0..1.
struct RungBars {
  std::size_t step = 0;
  std::optional<double> effect_planned, effect_now, risk_planned, risk_now;
  std::vector<std::string> tests;
};

RungBars bars_of(const Plan& plan, const Progress& progress, std::size_t at) {
  const Conduct& conduct = progress.conduct;
  const PlanStep& step = conduct.steps[at];
  const JudgedMixture& planned = plan.lines[step.line].rungs[static_cast<std::size_t>(step.origin.number - 1)];
  RungBars bars{at, planned.effect, {}, planned.risk, {}, {}};
  if (progress.task.target) {
    const CandidateOutlook now = outlook_of(progress.task, swab_mixture_of(step.mixture));
    bars.effect_now = now.effect;
    if (!progress.task.kept.empty()) bars.risk_now = now.risk;
  }
  for (const SwabTest& test : conduct.tests)
    if (test.mixture && is_same_mixture(*test.mixture, step.mixture))
      bars.tests.push_back(std::to_string(test.number) + (test.harmed ? " (HARM)" : ""));
  return bars;
}

std::vector<RungBars> all_bars(const Plan& plan, const Progress& progress) {
  std::vector<RungBars> all;
  for (const std::size_t line : lines_shown(plan, progress))
    for (std::size_t i = 0; i < progress.conduct.steps.size(); ++i)
      if (progress.conduct.steps[i].line == line && progress.conduct.steps[i].origin.kind == OriginKind::rung)
        all.push_back(bars_of(plan, progress, i));
  return all;
}

double x_of(double chance) {
  return left + chance * (chart_width - left - right);
}

constexpr const char* risk_pattern = "swabs-risk";

// As planned: an outline; as believed now: filled, right below it. `pattern`: over the filling; empty: none.
void draw_pair(Drawing& drawing, double y, const std::optional<double>& planned, const std::optional<double>& now,
               const LayerLook& look, const std::string& pattern) {
  if (planned)
    add_rectangle(drawing, {left, y}, std::max(x_of(*planned) - left, 1.0), bar, {look.colour, 1, look.dash, "#fff"});
  if (!now) return;
  const double width = std::max(x_of(*now) - left, 1.0);
  const double opacity = pattern.empty() ? 1 : 0.35;
  add_rectangle(drawing, {left, y + bar}, width, bar, {look.colour, 1, {}, look.colour, opacity});
  if (!pattern.empty()) add_rectangle(drawing, {left, y + bar}, width, bar, {"none", 1, {}, pattern});
}

void draw_hatch(Drawing& drawing, double y, const std::string& id) {
  const double height = 4 * bar + 4;
  const double end = chart_width - right;
  begin_clip(drawing, id, {{left, y}, {end, y}, {end, y + height}, {left, y + height}});
  for (double x = left - height; x < end; x += 9) add_line(drawing, {x, y + height}, {x + height, y}, {pale_ink, 0.9});
  end_clip(drawing);
}

std::string figure(const std::optional<double>& planned, const std::optional<double>& now) {
  return fmt::format("{} planned, {} now", planned ? per_cent(*planned) : not_known, now ? per_cent(*now) : not_known);
}

void draw_rung(Drawing& drawing, const Conduct& conduct, const RungBars& bars, double y) {
  const std::string name = step_name(conduct, bars.step);
  const std::optional<int> closing = closing_test(conduct, bars.step);
  add_text(drawing, {left - 8, y + 2 * bar + 5}, name, {small_text, Anchor::end, true});
  begin_mark(drawing, {{"rung", origin_short_name(conduct.steps[bars.step].origin)}},
             fmt::format("{}: effect {}; risk {}", name, figure(bars.effect_planned, bars.effect_now),
                         figure(bars.risk_planned, bars.risk_now)));
  draw_pair(drawing, y, bars.effect_planned, bars.effect_now, target_look, {});
  draw_pair(drawing, y + 2 * bar + 4, bars.risk_planned, bars.risk_now, kept_look(0), pattern_fill(risk_pattern));
  end_mark(drawing);
  std::string words = bars.tests.empty() ? "not tested" : "test " + joined(bars.tests);
  if (closing) {
    draw_hatch(drawing, y, fmt::format("clip-closed-{}", bars.step));
    const double across = y + 2 * bar + 1;
    add_line(drawing, {left - 10 - text_width(name, small_text, true), across}, {left - 6, across}, {ink, 1.4});
    words += fmt::format("; closed by test {}", *closing);
  }
  double line = y + bar + 5;
  for (const std::string& text : text_lines(words, small_text, right - 12)) {
    add_text(drawing, {chart_width - right + 8, line}, text, {small_text});
    line += 14;
  }
}

std::string described(const Conduct& conduct, const std::vector<RungBars>& all) {
  std::string text = "Rung by rung, from gentle to strong.";
  for (const RungBars& bars : all) {
    const std::optional<int> closing = closing_test(conduct, bars.step);
    text += fmt::format(" {}: effect {}; risk {}; {}{}.", step_name(conduct, bars.step),
                        figure(bars.effect_planned, bars.effect_now), figure(bars.risk_planned, bars.risk_now),
                        bars.tests.empty() ? "not tested" : "test " + joined(bars.tests),
                        closing ? fmt::format("; closed by test {}", *closing) : "");
  }
  return text;
}

// Tests with a mixture that has no bars here; empty where there is none.
std::string beside_words(const Conduct& conduct, const std::vector<RungBars>& all) {
  std::vector<std::string> tests;
  for (const SwabTest& test : conduct.tests) {
    const bool has_bars = std::any_of(all.begin(), all.end(), [&](const RungBars& bars) {
      return test.mixture && is_same_mixture(*test.mixture, conduct.steps[bars.step].mixture);
    });
    if (!has_bars && !test.is_blank) tests.push_back(std::to_string(test.number) + (test.harmed ? " (HARM)" : ""));
  }
  return tests.empty() ? std::string() : " Tests with mixtures between or beside these rungs: " + joined(tests) + ".";
}

}  // namespace

Chart swabs_chart(const Plan& plan, const Progress& progress) {
  const std::vector<RungBars> all = all_bars(plan, progress);
  Chart chart{"swabs", "The ladder before and after the swabs", {}, {chart_width, 0}};
  const double bottom = top + row * static_cast<double>(all.size());
  for (int tick = 0; tick <= 100; tick += 20) {
    const double x = x_of(tick / 100.0);
    add_line(chart.drawing, {x, top - 4}, {x, bottom}, {grid_ink, 0.8});
    add_text(chart.drawing, {x, bottom + 13}, std::to_string(tick), {small_text, Anchor::middle, false, pale_ink});
  }
  add_text(chart.drawing, {x_of(0.5), bottom + 28}, "chance, %", {small_text, Anchor::middle});
  const std::string pattern = add_hatch(chart.drawing, risk_pattern, Hatch::upright, ink);
  for (std::size_t i = 0; i < all.size(); ++i)
    draw_rung(chart.drawing, progress.conduct, all[i], top + row * static_cast<double>(i));
  const LayerLook risk = kept_look(0);
  std::vector<LegendEntry> legend = {{"effect as planned", {target_look.colour, 1, target_look.dash, "#fff"}},
                                     {"effect as believed now", {target_look.colour, 1, {}, target_look.colour}},
                                     {"risk as planned", {risk.colour, 1, risk.dash, "#fff"}},
                                     {"risk as believed now", {risk.colour, 1, {}, risk.colour, 0.35}}};
  legend.back().pattern = pattern;
  chart.drawing.height = bottom + 38 + draw_legend(chart.drawing, {52, bottom + 36}, chart_width - 60, legend);
  chart.caption =
      "In each rung the upper two bars are its effect, the lower two its risk: outlined as planned, filled as believed "
      "after the tests. A hatched rung whose name is struck out is closed.";
  chart.caption += beside_words(progress.conduct, all);
  const std::string own = own_absence_words(plan.job.series, OwnAbsence::shows_tests);
  chart.caption += own;
  chart.description = described(progress.conduct, all) + beside_words(progress.conduct, all) + own;
  return chart;
}

std::vector<std::size_t> lines_shown(const Plan& plan, const Progress& progress) {
  std::vector<bool> shown(plan.lines.size(), false);
  if (!shown.empty()) shown.front() = true;
  for (const SwabTest& test : progress.conduct.tests)
    if (const auto step = step_of_test(progress.conduct, test)) shown[progress.conduct.steps[*step].line] = true;
  if (progress.next.test && progress.next.test->step)
    shown[progress.conduct.steps[*progress.next.test->step].line] = true;
  std::vector<std::size_t> lines;
  for (std::size_t i = 0; i < shown.size(); ++i)
    if (shown[i]) lines.push_back(i);
  return lines;
}

std::optional<std::size_t> step_of_test(const Conduct& conduct, const SwabTest& test) {
  return test.mixture ? step_of(conduct, *test.mixture) : std::nullopt;
}

std::optional<int> closing_test(const Conduct& conduct, std::size_t step) {
  const Closure* closure = closure_of(conduct, step);
  return closure ? std::optional(conduct.tests[closure->by].number) : std::nullopt;
}

const std::vector<std::string>& progress_chart_kinds() {
  static const std::vector<std::string> kinds = {"timeline", "swabs"};
  return kinds;
}

Chart progress_chart_of(const std::string& kind, const Plan& plan, const Progress& progress) {
  if (kind == "timeline") return timeline_chart(plan, progress);
  assert(kind == "swabs");
  return swabs_chart(plan, progress);
}

}  // namespace gentlest
