// gentlest_study CATALOGUE_FOLDER OUTPUT [PAINTINGS]: runs the study and writes docs/study.md.
// gentlest_study CATALOGUE_FOLDER OUTPUT studios N: only the chapter on N simulated studios.
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/catalogue_files.hpp"
#include "io/files.hpp"
#include "study/figures.hpp"
#include "study/studios.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>

using namespace gentlest;
using namespace gentlest::study;

namespace {

// Settings were chosen on seed 777 and the plain truth only.
constexpr std::uint64_t held_out_seed = 2026;

struct Study {
  const Bench& bench;    ///< with an edge
  const Bench& no_edge;  ///< the same job without one
  std::size_t paintings;
};

template <class Run>
Row run_all(std::string name, const Truth& truth, const Ground& ground, const Run& run) {
  std::vector<Session> sessions;
  for (const Painting& painting : make_paintings(truth, ground, held_out_seed)) sessions.push_back(run(painting));
  return row_of(std::move(name), sessions);
}

Row follow_row(const std::string& name, const Bench& bench, const Truth& truth, const Ground& ground,
               std::vector<Prediction>* predictions = nullptr) {
  return run_all(name, truth, ground,
                 [&](const Painting& painting) { return follow(bench, truth, ground, painting, predictions); });
}

Row walk_row(const std::string& name, const Bench& bench, const Truth& truth, const Ground& ground,
             const std::vector<SwabMixture>& mixtures, int edge_tests) {
  return run_all(name, truth, ground,
                 [&](const Painting& painting) { return walk(bench, truth, ground, painting, mixtures, edge_tests); });
}

// What one truth gave, for the sums behind it.
struct Result {
  Truth truth;
  Row next, no_edge, series, ladder;
  std::vector<Prediction> predictions;
};

Result compare(const Study& study, const Truth& truth, const Ground& ground, std::string& text) {
  const Bench& bench = study.bench;
  Result result{truth, {}, {}, {}, {}, {}};
  result.next = follow_row("**next**", bench, truth, ground, &result.predictions);
  result.no_edge = follow_row("next, no edge to try on", study.no_edge, truth, ground);
  result.series = walk_row("published series", bench, truth, ground, bench.series, 0);
  result.ladder = walk_row("first line by hand", bench, truth, ground, bench.lines.front(), 0);
  text += fmt::format("### {}\nA good mixture is among those of the plan on {:.0f} % of the paintings", truth.name,
                      result.next.window.percent);
  if (result.next.way.of > 0)
    text += fmt::format("; on {:.0f} % of these a way leads to one by rungs that bear it", result.next.way.percent);
  text += ".\n\n";
  text += table_head("way of testing") + table_line(result.next) + table_line(result.no_edge);
  text += table_line(walk_row("first line by hand, each rung at the edge first", bench, truth, ground,
                              bench.lines.front(), bench.plan.job.limits.edge_tests));
  text += table_line(result.ladder);
  if (bench.lines.size() > 1)
    text += table_line(walk_row("second line by hand", bench, truth, ground, bench.lines[1], 0));
  text += table_line(result.series) + "\n";
  return result;
}

std::vector<Result> compare_all(const Study& study, const Ground& ground, std::string& text) {
  std::vector<Result> results;
  for (const Truth& truth : all_truths()) results.push_back(compare(study, truth, ground, text));
  return results;
}

// Means over the broken truths that have a window and a right prior.
double mean_of(const std::vector<Result>& results, Share Row::*share, Row Result::*row) {
  double sum = 0;
  int count = 0;
  for (std::size_t i = 2; i < results.size(); ++i) {
    if ((results[i].*row.*share).of == 0) continue;
    sum += (results[i].*row.*share).percent;
    ++count;
  }
  return count > 0 ? sum / count : 0;
}

std::string reach_section(const std::vector<Result>& results) {
  const Row& plain = results.front().next;
  std::string text =
      "| figure, % | wanted: plain / mean of the broken truths | reached: plain | reached: mean of the broken truths "
      "|\n| --- | --- | --- | --- |\n";
  const auto add = [&](const char* name, const char* wanted, Share Row::*share) {
    text += fmt::format("| {} | {} | {:.0f} | {:.0f} |\n", name, wanted, (plain.*share).percent,
                        mean_of(results, share, &Result::next));
  };
  add("harm on the picture", "at most 5 / 8", &Row::harmed);
  add("harm at the edge", "at most 15 / 20", &Row::harmed_edge);
  add("found, where a good mixture exists", "at least 80 / 70", &Row::found);
  add("of those with one: a way by rungs that do not mostly harm", "the most that the rules leave", &Row::way);
  add("truly good of those found", "at least 85 / 80", &Row::good);
  add("\"no window\" where there is one", "at most 8", &Row::wrong_no_window);
  text += fmt::format(
      "| harm on the picture with no edge, against the series | at most half | {:.0f} / {:.0f} | {:.0f} "
      "/ {:.0f} |\n",
      results.front().no_edge.harmed.percent, results.front().series.harmed.percent,
      mean_of(results, &Row::harmed, &Result::no_edge), mean_of(results, &Row::harmed, &Result::series));
  text += fmt::format("| found less found on the first line by hand, points | at least 10 | {:+.0f} | {:+.0f} |\n",
                      plain.found.percent - results.front().ladder.found.percent,
                      mean_of(results, &Row::found, &Result::next) - mean_of(results, &Row::found, &Result::ladder));
  text += fmt::format("| harm on the picture less that of the first line, points | at most 0 | {:+.0f} | {:+.0f} |\n",
                      plain.harmed.percent - results.front().ladder.harmed.percent,
                      mean_of(results, &Row::harmed, &Result::next) - mean_of(results, &Row::harmed, &Result::ladder));
  text +=
      fmt::format("| no mixture called found where there is none (\"no window at all\") | at least 80 | {:.0f} | |\n\n",
                  results.back().next.right_no_window.percent);
  return text;
}

std::string trade_off(const Study& study, Ground ground) {
  const Truth plain = all_truths().front();
  const NextTestSettings usual = ground.start.settings;
  std::string text = table_head("caps");
  const auto add = [&](const std::string& name) {
    text += table_line(follow_row(name, study.bench, plain, ground));
    ground.start.settings = usual;
  };
  for (const double picture : {0.03, 0.06, 0.10, 0.20})
    for (const double edge : {0.10, 0.25, 0.40}) {
      NextTestSettings& set = ground.start.settings;
      set.picture_risk = picture;
      set.edge_risk = edge;
      set.picture_risk_when_surprised = picture / 2;
      set.edge_risk_when_surprised = 0.6 * edge;
      add(fmt::format("picture {:.0f} %, edge {:.0f} %", 100 * picture, 100 * edge));
    }
  for (const double promise : {0.0, 0.1, 0.3, 0.4}) {
    ground.start.settings.least_promise = promise;
    add(fmt::format("as set, least promise {:.0f} %", 100 * promise));
  }
  for (const double found : {0.7, 0.8}) {
    ground.start.settings.found_at = found;
    add(fmt::format("as set, found from {:.0f} %", 100 * found));
  }
  return text + "\n";
}

// The share of luck that goes with the mixture is a guess: what it costs where it is wrong.
std::string luck_section(const Study& study, Ground ground) {
  std::string text = table_head("truth, share believed");
  for (const Truth& truth : all_truths()) {
    if (!truth.has_fresh_luck && !truth.has_own_luck && truth.name != all_truths().front().name) continue;
    for (const double luck : {0.0, 0.4, 0.8}) {
      ground.start.settings.luck_of_mixture = luck;
      text += table_line(follow_row(fmt::format("{}, {}", truth.name, luck), study.bench, truth, ground));
    }
  }
  return text + "\n";
}

std::vector<Prediction> made_at(const std::vector<Prediction>& all, bool at_edge) {
  std::vector<Prediction> some;
  for (const Prediction& one : all)
    if (one.at_edge == at_edge) some.push_back(one);
  return some;
}

std::string calibration_section(const std::vector<Result>& results) {
  std::string text =
      "| truth | picture: swabs | effect | risk | edge: swabs | effect | risk |\n"
      "| --- | --- | --- | --- | --- | --- | --- |\n";
  for (const Result& one : results) {
    text += "| " + one.truth.name;
    for (const bool at_edge : {false, true}) {
      const std::vector<Prediction> made = made_at(one.predictions, at_edge);
      const Bias effect = bias_of(made, false), risk = bias_of(made, true);
      text += fmt::format(" | {} | {:+.1f} ± {:.1f} | {:+.1f} ± {:.1f}", made.size(), effect.points, effect.error,
                          risk.points, risk.error);
    }
    text += " |\n";
  }
  text += "\nThe model's own truth, in bins. Chance to move the varnish, on the picture:\n\n";
  const std::vector<Prediction> picture = made_at(results.front().predictions, false);
  const std::vector<Prediction> edge = made_at(results.front().predictions, true);
  text += reliability_table(picture, false) + "\nRisk on the picture:\n\n" + reliability_table(picture, true);
  return text + "\nRisk at the edge:\n\n" + reliability_table(edge, true);
}

std::string preface(const Study& study) {
  std::string lines;
  for (const LadderLine& line : study.bench.plan.lines) {
    std::string rungs;
    for (const JudgedMixture& rung : line.rungs) rungs += (rungs.empty() ? "" : "; ") + to_text(rung.mixture);
    lines += "- " + rungs + "\n";
  }
  const NextTestSettings& set = study.bench.start.settings;
  return fmt::format(
#include "preface.inc"
      , study.paintings, lines, 100 * set.picture_risk, 100 * set.edge_risk, 100 * set.picture_risk_when_surprised,
      100 * set.edge_risk_when_surprised, 100 * set.least_promise, 100 * set.found_at, set.luck_of_mixture,
      set.luck_reach);
}

std::string studios_chapter(const Bench& bench, int studios) {
  return "## What a studio's memory gains\n"
         "Twenty paintings of one studio, varnish and paint of the same two materials. Their true spheres lie about a "
         "middle that is 2 off the stand-in in a direction drawn anew for each studio, of the varnish as of the paint; "
         "radii scatter by 1. The first nineteen are tested without memory, as the first is; the last is planned and "
         "tested once so and once with what the nineteen taught (docs/studio.md), the same painting with the same "
         "luck. Mind the standard errors (±). Hansen distances, MPa^0.5.\n\n" +
         studio_section(bench, studios);
}

std::string write_study(const Study& study) {
  const Ground borrowed = borrowed_ground(study.bench, study.paintings);
  std::string tables, sharp_tables;
  const std::vector<Result> results = compare_all(study, borrowed, tables);
  const std::vector<Result> sharp = compare_all(study, sharp_ground(study.bench, study.paintings), sharp_tables);
  std::string text = preface(study);
  text += "## What was wanted and what came out, with the curve that jobs borrow\n\n" + reach_section(results);
  text += "## The same with the sharp curve\n\n" + reach_section(sharp);
  text += "## Found against harm: the caps on risk (the model's own truth, the curve that jobs borrow)\n\n" +
          trade_off(study, borrowed);
  text += "## The share of luck that goes with the mixture\n\n" + luck_section(study, borrowed);
  text +=
      "## Does what is printed as a chance hold?\n"
      "Mean of what was predicted less what was seen, in points; minus: it happened more often than was said.\n\n" +
      calibration_section(results);
  text += "\n" + studios_chapter(study.bench, 60);
  text += "## Every truth, with the curve that jobs borrow\n\n" + tables;
  return text + "## Every truth, with the sharp curve\n\n" + sharp_tables;
}

}  // namespace

int main(int count, char** words) {
  const std::vector<std::string> args(words, words + count);
  if (args.size() < 3) {
    std::fputs("gentlest_study CATALOGUE_FOLDER OUTPUT [PAINTINGS]\n", stderr);
    return 2;
  }
  try {
    const Catalogue catalogue = read_catalogue(collect_catalogue(args[1]));
    if (args.size() > 4 && args[3] == "studios") {
      write_text_file(args[2], studios_chapter(make_bench(catalogue), std::atoi(args[4].c_str())));
      return 0;
    }
    const int paintings = args.size() > 3 ? std::atoi(args[3].c_str()) : 300;
    if (paintings < 1) return 2;
    const Bench bench = make_bench(catalogue), no_edge = make_bench(catalogue, 0);
    write_text_file(args[2], write_study({bench, no_edge, static_cast<std::size_t>(paintings)}));
  } catch (const InputError& error) {
    std::fputs(render(error.faults()).c_str(), stderr);
    return 3;
  }
}
