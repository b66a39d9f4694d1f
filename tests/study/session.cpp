#include "study/session.hpp"

#include "core/answers/next_answer.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/liquids/series.hpp"

#include <algorithm>
#include <stdexcept>

namespace gentlest::study {

namespace {

constexpr int moved_level = 3;

// Swabs one mixture and books what truly happened.
SwabOutcome test_mixture(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture,
                         bool at_edge, Session& session) {
  const SwabOutcome outcome = swab(truth, ground, painting, mixture, at_edge, static_cast<std::size_t>(session.tests));
  ++session.tests;
  session.edge_tests += at_edge ? 1 : 0;
  (at_edge ? session.harmed_edge : session.harmed) |= outcome.harm > 0;
  return outcome;
}

Reading reading_of(const Mixture& mixture, bool at_edge, const SwabOutcome& outcome, int number) {
  Reading reading;
  reading.test = number;
  reading.mixture = to_text(mixture);
  reading.at_edge = at_edge;
  reading.seconds = outcome.seconds;
  reading.removal = static_cast<RemovalReading>(outcome.removal_read);
  reading.original = static_cast<OriginalReading>(outcome.harm_read);
  if (reading.original == OriginalReading::colour_on_swab) reading.colour = SwabColour::original;
  return reading;
}

void learn(NextTestTask& task, const SwabMixture& mixture, const Reading& reading) {
  const ReadingNoise noise;
  take_in(task, {mixture, reading.at_edge, "", static_cast<int>(*reading.removal), level_on_original(reading),
                 task.kept.front().name, evidence_on_removal(reading, mixture.point, noise),
                 evidence_on_original(reading, mixture.point, noise)});
}

Ending ending_of(NextKind kind) {
  switch (kind) {
    case NextKind::found:
      return Ending::found;
    case NextKind::ended:
      return Ending::harmed;
    case NextKind::no_window:
    case NextKind::unsure:
      return Ending::no_window;
    default:
      return Ending::used_up;
  }
}

Ground ground_with(const Bench& bench, const ReadingCurve& removal, const ReadingCurve& harm, std::size_t paintings,
                   std::size_t particles) {
  LearningSettings settings;
  settings.particles = particles;
  NextTestTask start = bench.start;
  start.target = LayerBelief(start.target->prior(), removal, settings);
  settings.seed = 2;
  start.kept.front().belief = LayerBelief(start.kept.front().belief.prior(), harm, settings);
  return {std::move(start), bench.young, removal, harm, paintings};
}

}  // namespace

Job study_job(int edge_tests) {
  Job job;
  job.layers.resize(2);
  job.layers[0].name = "varnish";
  job.layers[0].role = Role::remove;
  job.layers[0].found = "dammar_aged";
  job.layers[1].name = "oil paint";
  job.layers[1].found = "oil_paint_old";
  for (const char* id : {"isooctane", "white_spirit_dearomatised", "ethanol", "isopropanol", "acetone", "butanone",
                         "ethyl_acetate", "diacetone_alcohol"}) {
    ShelfBottle bottle;
    bottle.solvent = id;
    job.shelf.push_back(bottle);
  }
  job.limits.edge_tests = edge_tests;
  return job;
}

Bench bench_of(const Job& job, const Catalogue& catalogue) {
  Bench bench{catalogue, make_plan(job, catalogue), {}, {}, {}, {}, {}, {}};
  bench.start = follow_readings(bench.plan, catalogue, {}).task;
  bench.steps = conduct_of(bench.plan, {}, catalogue).steps;
  for (const PlanStep& step : bench.steps) bench.step_mixtures.push_back(swab_mixture_of(step.mixture));
  for (const LadderLine& line : bench.plan.lines) {
    bench.lines.emplace_back();
    for (const JudgedMixture& rung : line.rungs) bench.lines.back().push_back(swab_mixture_of(rung.mixture));
  }
  return bench;
}

Bench make_bench(const Catalogue& catalogue, int edge_tests) {
  const Job job = study_job(edge_tests);
  Bench bench = bench_of(job, catalogue);
  for (const Series& series : published_series(catalogue))
    if (series.kind == SeriesKind::feller)
      for (const Mixture& mixture : series.mixtures) bench.series.push_back(swab_mixture_of(mixture));
  Job young = job;
  young.layers[1].found = "oil_paint_young";
  bench.young = follow_readings(make_plan(young, catalogue), catalogue, {})
                    .task.kept.front()
                    .belief.prior()
                    .hypotheses.front()
                    .sphere;
  if (bench.lines.empty() || bench.series.empty()) throw std::runtime_error("the study's job has no ladder");
  return bench;
}

Ground borrowed_ground(const Bench& bench, std::size_t paintings, std::size_t particles) {
  return ground_with(bench, bench.start.target->curve(), bench.start.kept.front().belief.curve(), paintings, particles);
}

Ground sharp_ground(const Bench& bench, std::size_t paintings, std::size_t particles) {
  return ground_with(bench, sharp_removal(), sharp_harm(), paintings, particles);
}

bool has_window(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting) {
  return std::any_of(bench.step_mixtures.begin(), bench.step_mixtures.end(),
                     [&](const SwabMixture& mixture) { return is_truly_good(truth, ground, painting, mixture); });
}

bool has_way(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting) {
  std::optional<std::size_t> closed_line;
  for (std::size_t i = 0; i < bench.steps.size(); ++i) {
    if (bench.steps[i].line == closed_line) continue;
    const SwabMixture& mixture = bench.step_mixtures[i];
    if (is_truly_good(truth, ground, painting, mixture)) return true;
    const bool is_rung = bench.steps[i].origin.kind == OriginKind::rung;
    if (is_rung && true_risk(truth, ground, painting, mixture) > 0.5) closed_line = bench.steps[i].line;
  }
  return false;
}

Session walk(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting,
             const std::vector<SwabMixture>& mixtures, int edge_tests) {
  Session session;
  session.has_window = has_window(bench, truth, ground, painting);
  session.has_way = session.has_window && has_way(bench, truth, ground, painting);
  for (const SwabMixture& mixture : mixtures)
    for (const bool at_edge : {true, false}) {
      if (at_edge && session.edge_tests >= edge_tests) continue;
      const SwabOutcome outcome = test_mixture(truth, ground, painting, mixture, at_edge, session);
      if (outcome.harm_read > 0) {
        session.ending = Ending::harmed;
        return session;
      }
      if (at_edge || outcome.removal_read < moved_level) continue;
      session.ending = Ending::found;
      session.truly_good = is_truly_good(truth, ground, painting, mixture);
      return session;
    }
  return session;
}

Session follow(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting,
               std::vector<Prediction>* predictions, std::vector<Reading>* log) {
  Session session;
  session.has_window = has_window(bench, truth, ground, painting);
  session.has_way = session.has_window && has_way(bench, truth, ground, painting);
  NextTestTask task = ground.start;
  std::vector<Reading> readings;
  while (true) {
    const Conduct conduct = conduct_of(bench.plan, readings, bench.catalogue);
    const NextAnswer next = choose_next(bench.plan, conduct, task);
    if (next.kind != NextKind::test) {
      session.ending = ending_of(next.kind);
      session.truly_good = session.ending == Ending::found &&
                           is_truly_good(truth, ground, painting, swab_mixture_of(next.mixture.value()));
      return session;
    }
    const bool at_edge = next.test->place == Place::edge;
    const SwabMixture mixture = swab_mixture_of(next.test->mixture);
    const SwabOutcome outcome = test_mixture(truth, ground, painting, mixture, at_edge, session);
    const CandidateOutlook outlook = outlook_of(task, mixture, at_edge);
    if (predictions)
      predictions->push_back({outlook.effect, outlook.risk, outcome.removal >= moved_level, outcome.harm > 0, at_edge,
                              next.test->purpose});
    readings.push_back(reading_of(next.test->mixture, at_edge, outcome, session.tests));
    if (log) log->push_back(readings.back());
    learn(task, mixture, readings.back());
  }
}

}  // namespace gentlest::study
