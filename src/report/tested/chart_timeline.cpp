#include "report/tested/progress_charts.hpp"

#include "report/draw/palette.hpp"
#include "report/form/format.hpp"
#include "report/own_series/own_words.hpp"
#include "report/rules/conduct_words.hpp"
#include "report/tested/swab_marks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

constexpr double timeline_left = 130;
constexpr double timeline_right = 118;
constexpr double timeline_top = 14;
constexpr double timeline_row = 24;

struct Row {
  std::string title;
  std::optional<std::size_t> step;  // nothing of blanks and of mixtures off the plan
};

// From the strongest down to the blanks.
class Rows {
 public:
  Rows(const Plan& plan, const Progress& progress) : conduct_(progress.conduct) {
    const std::vector<std::size_t> lines = lines_shown(plan, progress);
    for (auto line = lines.rbegin(); line != lines.rend(); ++line)
      for (std::size_t i = conduct_.steps.size(); i-- > 0;)
        if (conduct_.steps[i].line == *line && conduct_.steps[i].origin.kind == OriginKind::rung)
          rows.push_back({step_name(conduct_, i), i});
    const auto any = [&](bool is_blank) {
      return std::any_of(conduct_.tests.begin(), conduct_.tests.end(), [&](const SwabTest& test) {
        return test.is_blank == is_blank && (is_blank || !step_of_test(conduct_, test));
      });
    };
    if (any(false)) {
      off_plan_ = rows.size();
      rows.push_back({"off the plan", std::nullopt});
    }
    if (any(true)) {
      blanks_ = rows.size();
      rows.push_back({"blank", std::nullopt});
    }
  }

  double y(std::size_t at) const { return timeline_top + timeline_row * (static_cast<double>(at) + 0.5); }

  double y_of(const SwabTest& test) const {
    if (test.is_blank) return y(blanks_);
    const std::optional<std::size_t> step = step_of_test(conduct_, test);
    if (!step) return y(off_plan_);
    const PlanStep& one = conduct_.steps[*step];
    for (std::size_t i = 0; i < rows.size(); ++i)
      if (rows[i].step && conduct_.steps[*rows[i].step].line == one.line &&
          conduct_.steps[*rows[i].step].height <= one.height)
        return y(i) - timeline_row * (one.height - conduct_.steps[*rows[i].step].height);
    return y(off_plan_);
  }

  std::vector<Row> rows;

 private:
  const Conduct& conduct_;
  std::size_t off_plan_ = 0, blanks_ = 0;
};

double x_of(const Conduct& conduct, std::size_t test) {
  const double pace = (chart_width - timeline_left - timeline_right) /
                      static_cast<double>(std::max<std::size_t>(conduct.tests.size(), 1));
  return timeline_left + pace * (static_cast<double>(test) + 0.5);
}

void draw_row(Drawing& drawing, const Rows& rows, std::size_t at, const Conduct& conduct) {
  const Row& one = rows.rows[at];
  const double y = rows.y(at);
  add_text(drawing, {timeline_left - 12, y + 4}, one.title, {small_text, Anchor::end});
  add_line(drawing, {timeline_left, y}, {chart_width - timeline_right, y}, {grid_ink, 0.8});
  const std::optional<int> closing = one.step ? closing_test(conduct, *one.step) : std::nullopt;
  if (!closing) return;
  const auto by = std::find_if(conduct.tests.begin(), conduct.tests.end(),
                               [&](const SwabTest& test) { return test.number == *closing; });
  const double from = x_of(conduct, static_cast<std::size_t>(by - conduct.tests.begin()));
  add_line(drawing, {timeline_left - 14 - text_width(one.title, small_text), y}, {timeline_left - 10, y}, {ink, 1.2});
  add_line(drawing, {from, y}, {chart_width - timeline_right, y}, {limit_ink, 2, "2 2"});
  add_text(drawing, {chart_width - timeline_right + 6, y + 4}, fmt::format("closed by test {}", *closing),
           {small_text});
}

std::string described(const Conduct& conduct) {
  if (conduct.tests.empty()) return "No test yet.";
  std::string text;
  for (const SwabTest& test : conduct.tests) {
    const std::string name = step_name(conduct, step_of_test(conduct, test));
    text +=
        fmt::format("{}Test {}: {}, {}: {}{}.", text.empty() ? "" : " ", test.number, name.empty() ? test.words : name,
                    place_words(test.place, test.passage), test.harmed ? "HARM, " : "", as_read_words(test));
  }
  return text;
}

}  // namespace

Chart timeline_chart(const Plan& plan, const Progress& progress) {
  const Conduct& conduct = progress.conduct;
  Chart chart{"timeline", "The tests in their order", {}, {chart_width, 0}};
  const Rows rows(plan, progress);
  for (std::size_t i = 0; i < rows.rows.size(); ++i) draw_row(chart.drawing, rows, i, conduct);
  std::vector<Xy> way;
  std::vector<TestLook> looks;
  for (std::size_t i = 0; i < conduct.tests.size(); ++i) {
    way.push_back({x_of(conduct, i), rows.y_of(conduct.tests[i])});
    looks.push_back(look_of(conduct.tests[i]));
  }
  add_path(chart.drawing, way, {"#808080", 0.8});
  const double bottom = timeline_top + timeline_row * static_cast<double>(rows.rows.size());
  // Where the tests stand close, their numbers take turns on several rows.
  double widest = 0;
  for (const SwabTest& test : conduct.tests)
    widest = std::max(widest, text_width(std::to_string(test.number), small_text, true) + 4);
  const std::size_t rows_of_numbers =
      way.size() > 1 ? static_cast<std::size_t>(std::ceil(widest / (way[1].x - way[0].x))) : 1;
  for (std::size_t i = 0; i < way.size(); ++i) {
    const SwabTest& test = conduct.tests[i];
    begin_mark(chart.drawing, {{"test", std::to_string(test.number)}},
               fmt::format("test {}: {}, {}", test.number, test.words, look_words(looks[i])));
    draw_test(chart.drawing, way[i], looks[i]);
    end_mark(chart.drawing);
    add_text(chart.drawing, {way[i].x, bottom + 14 * static_cast<double>(1 + i % rows_of_numbers)},
             std::to_string(test.number), {small_text, Anchor::middle, true});
  }
  add_text(chart.drawing, {timeline_left - 12, bottom + 14}, "test", {small_text, Anchor::end});
  const double under = bottom + 12 + 14 * static_cast<double>(rows_of_numbers);
  chart.drawing.height = under + draw_test_legend(chart.drawing, {12, under}, chart_width - 24, looks);
  chart.caption =
      "Each test at the height of its mixture, gentle below. A rung whose name is struck out is closed from the "
      "dotted line on.";
  const std::string own = own_absence_words(plan.job.series, OwnAbsence::shows_tests);
  chart.caption += own;
  chart.description = described(conduct) + own;
  return chart;
}

}  // namespace gentlest
