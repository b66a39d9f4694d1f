// gentlest_study CATALOGUE_FOLDER OUTPUT [PAINTINGS]: runs the study and writes docs/study.md.
#include "gentlest/base/diagnostic.hpp"
#include "io/catalogue_files.hpp"
#include "io/files.hpp"
#include "study/figures.hpp"
#include "study/static_ladder.hpp"

#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <iterator>
#include <string>

using namespace gentlest;
using namespace gentlest::study;

namespace {

// Settings were chosen on seed 777 only.
constexpr std::array<std::uint64_t, 2> held_out_seeds = {2026, 4711};

struct Study {
  const Catalogue& catalogue;
  const Bench& bench;
  int paintings;
};

template <class Run>
std::vector<Session> run_all(const Study& study, const World& world, std::uint64_t seed, const Run& run) {
  std::vector<Session> sessions;
  for (int i = 0; i < study.paintings; ++i)
    sessions.push_back(run(make_painting(world, seed, static_cast<std::size_t>(i))));
  return sessions;
}

Row learner_row(const Study& study, const World& world, std::uint64_t seed, Learner learner,
                std::vector<Prediction>* predictions = nullptr, std::vector<Coverage>* coverage = nullptr) {
  prepare(learner, study.bench, world);
  return row_of(learner.name, run_all(study, world, seed, [&](const Painting& painting) {
                  return learn_session(study.bench, world, painting, learner, predictions, coverage);
                }));
}

Row ladder_row(const Study& study, const World& world, std::uint64_t seed, const char* name,
               const std::vector<std::vector<StudyMixture>>& ladders, bool switches) {
  return row_of(name, run_all(study, world, seed, [&](const Painting& painting) {
                  return walk_ladders(study.bench, world, painting, ladders, switches);
                }));
}

Learner learner_of(std::string name) {
  Learner learner;
  learner.name = std::move(name);
  return learner;
}

// Everything against everything, on the same paintings.
std::string comparison(const Study& study, const World& world, std::uint64_t seed) {
  const std::vector<std::vector<StudyMixture>> thirteen = {study.bench.thirteen};
  const std::vector<std::vector<StudyMixture>> ours = {static_ladder(study.bench, world, study.catalogue)};
  std::string lines;
  const auto add = [&](const Row& row) { lines += table_line(row); };
  const Row first = ladder_row(study, world, seed, "published 13-mixture series", thirteen, false);
  add(first);
  add(ladder_row(study, world, seed, "10 % series, stops at harm", study.bench.ten_percent, false));
  add(ladder_row(study, world, seed, "10 % series, takes the next after harm", study.bench.ten_percent, true));
  add(ladder_row(study, world, seed, "our static ladder (3 bottles)", ours, false));
  Learner no_edge = learner_of("learning, picture only");
  no_edge.settings.most_at_edge = 0;
  add(learner_row(study, world, seed, no_edge));
  add(learner_row(study, world, seed, learner_of("**learning, edge allowed**")));
  add(row_of("one swab of one who knows the spheres", run_all(study, world, seed, [&](const Painting& painting) {
               return ask_oracle(study.bench, world, painting);
             })));
  return fmt::format("### {}, seed {}\nA good mixture exists on {:.1f} % of the paintings.\n\n", world.name, seed,
                     first.window) +
         table_head() + lines + "\n";
}

// Found against harm, from timid to bold.
std::string trade_off(const Study& study, const World& world, std::uint64_t seed) {
  std::string text = fmt::format("### {}, seed {}\n\n", world.name, seed) + table_head();
  const std::vector<std::vector<double>> limits = {
      {0.01}, {0.02}, {0.02, 0.05}, {0.02, 0.05, 0.1}, {0.02, 0.05, 0.1, 0.2}, {0.05, 0.1, 0.2, 0.3}};
  for (const bool edge : {false, true})
    for (const std::vector<double>& limit : limits) {
      std::string name = edge ? "edge, limits" : "picture only, limits";
      for (const double value : limit) name += fmt::format(" {}", value);
      Learner learner = learner_of(name);
      learner.settings.risk_limits = limit;
      if (!edge) learner.settings.most_at_edge = 0;
      text += table_line(learner_row(study, world, seed, learner));
    }
  for (const double promise : {0.15, 0.3}) {
    Learner learner = learner_of(fmt::format("edge, least promise {}", promise));
    learner.settings.least_promise = promise;
    text += table_line(learner_row(study, world, seed, learner));
  }
  return text + "\n";
}

// What a job has: a flat curve, and luck that goes with the mixture.
std::string job_curve_section(const Study& study, const World& from, std::uint64_t seed) {
  const World world = job_curve_world(from, study.catalogue.response());
  std::string lines =
      table_line(ladder_row(study, world, seed, "published 13-mixture series", {study.bench.thirteen}, false));
  lines += table_line(
      ladder_row(study, world, seed, "10 % series, takes the next after harm", study.bench.ten_percent, true));
  Learner learner = learner_of("learning, picture only");
  learner.settings = settings_within(0.25, true);
  learner.settings.most_at_edge = 0;
  lines += table_line(learner_row(study, world, seed, learner));
  learner.name = "learning, edge allowed, every swab taken for a fresh draw";
  learner.settings = settings_within(0.25, false);
  lines += table_line(learner_row(study, world, seed, learner));
  learner.name = "**learning, edge allowed, as a job does**";
  learner.settings = settings_within(0.25, true);
  lines += table_line(learner_row(study, world, seed, learner));
  lines += table_line(row_of(
      "one swab of one who knows the spheres",
      run_all(study, world, seed, [&](const Painting& painting) { return ask_oracle(study.bench, world, painting); })));
  return fmt::format("### {}, seed {}\n\n", world.name, seed) + table_head() + lines + "\n";
}

std::string wrong_priors(const Study& study, std::uint64_t seed) {
  std::string text =
      "| what is wrong | series found / harm | learning found / harm | truly good | harm at edge | tests, median / p90 "
      "|\n"
      "| --- | --- | --- | --- | --- | --- |\n";
  std::vector<World> worlds = wrong_worlds(base_world());
  worlds.push_back(base_world());
  worlds.back().name = "the edge differs twice as much";
  worlds.back().edge_difference *= 2;
  for (const World& world : worlds) {
    const Row series = ladder_row(study, world, seed, "", {study.bench.thirteen}, false);
    const Row ours = learner_row(study, world, seed, learner_of(""));
    text += fmt::format("| {} | {:.1f} / {:.1f} | {:.1f} / {:.1f} | {:.1f} | {:.1f} | {} / {} |\n", world.name,
                        series.found, series.harmed, ours.found, ours.harmed, ours.good, ours.harmed_edge,
                        ours.tests_median, ours.tests_p90);
  }
  return text + "\n";
}

std::string calibration_section(const Study& study, const World& world, std::uint64_t seed) {
  std::vector<Prediction> predictions;
  std::vector<Coverage> coverage;
  Learner learner = learner_of("");
  // Truth and belief from one prior: the share for "not as recorded" would be a wrong belief here.
  learner.stray_share = learner.paint_stray_share = 0;
  learner_row(study, world, seed, learner, &predictions, &coverage);
  const Calibrated right = calibrated(predictions, coverage);
  const auto count = static_cast<double>(predictions.size());
  std::string text = fmt::format(
      "### {}, seed {}\nBias of the chance to remove {:+.3f} (standard error {:.3f}), to harm {:+.3f} ({:.3f}); Brier "
      "score {:.3f} and {:.3f}; the 90 % interval of RED of the last mixture holds the truth in {:.1f} % (varnish) and "
      "{:.1f} % (paint); smallest effective share of the particles in any session {:.2f}.\n\n",
      world.name, seed, right.effect_bias, std::sqrt(right.effect_brier / count), right.risk_bias,
      std::sqrt(right.risk_brier / count), right.effect_brier, right.risk_brier, right.varnish_cover, right.paint_cover,
      right.least_effective);
  return text + "Removal\n\n" + reliability_table(predictions, false) + "\nHarm\n\n" +
         reliability_table(predictions, true) + "\n";
}

double standard_error_percent(double share, int paintings) {
  return 100 * std::sqrt(share * (1 - share) / paintings);
}

std::string preface(const Study& study) {
  const int n = study.paintings;
  std::string liquids;
  for (const Solvent* liquid : allowed_liquids(study.catalogue))
    liquids += (liquids.empty() ? "" : ", ") + liquid->name;
  return fmt::format(
#include "preface.inc"
      , n, standard_error_percent(0.98, n), standard_error_percent(0.04, n), standard_error_percent(0.17, n),
      standard_error_percent(0.80, n), study.bench.candidates.size(), liquids, study.catalogue.version());
}

std::string write_study(const Study& study) {
  std::string text = preface(study);
  text += "## Comparison\n\n";
  for (const std::uint64_t seed : held_out_seeds)
    for (const World& world : {base_world(), hard_world()}) text += comparison(study, world, seed);
  text += "## The whole trade-off: found against harm\n\n";
  for (const World& world : {base_world(), hard_world()}) text += trade_off(study, world, held_out_seeds[0]);
  text += fmt::format("## Wrong priors (BASE otherwise), seed {}\n\n", held_out_seeds[0]);
  text += wrong_priors(study, held_out_seeds[0]);
  text +=
      "## With the curve that jobs borrow\n"
      "Fitted to long contact, and so flat that hardly any mixture is without risk or sure to work. Its scatter is one "
      "between\nliquids, so here a mixture has the same luck at the edge as on the picture. Risk limit 0.25, as in a "
      "job. Truly good mixtures\nare few.\n\n";
  for (const World& world : {base_world(), hard_world()}) text += job_curve_section(study, world, held_out_seeds[0]);
  text += "## Calibration, where the prior is right\n\n";
  for (const World& world : {base_world(), hard_world()})
    for (const std::uint64_t seed : held_out_seeds) text += calibration_section(study, world, seed);
  return text;
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
    const Bench bench = make_bench(catalogue);
    const int paintings = args.size() > 3 ? std::atoi(args[3].c_str()) : 1000;
    if (paintings < 1) return 2;
    write_text_file(args[2], write_study({catalogue, bench, paintings}));
  } catch (const InputError& error) {
    std::fputs(render(error.faults()).c_str(), stderr);
    return 3;
  }
}
