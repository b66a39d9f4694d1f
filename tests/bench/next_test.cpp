// Timings of the choice of the next test and of learning from a swab, on the demonstration job with six tests made.
#include "gentlest/answers/progress.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/catalogue_files.hpp"
#include "io/job_file.hpp"

#include "core/answers/next_answer.hpp"

#include <benchmark/benchmark.h>

using namespace gentlest;

namespace {

struct Easel {
  Catalogue catalogue = read_kept_catalogue(embedded_catalogue());
  Plan plan = make_plan(load_job(demo_job_text(), "demo", catalogue), catalogue);
  std::vector<Reading> readings;
  Progress progress;

  // Three rungs at the edge and on the picture that did nothing.
  Easel() {
    for (std::size_t rung = 0; rung < 3; ++rung)
      for (const bool at_edge : {true, false}) {
        Reading reading;
        reading.test = static_cast<int>(readings.size()) + 1;
        reading.mixture = to_text(ladder_rungs(plan)[rung].mixture);
        reading.at_edge = at_edge;
        reading.removal = RemovalReading::no_effect;
        reading.original = OriginalReading::nothing_seen;
        readings.push_back(reading);
      }
    progress = follow_readings(plan, catalogue, readings);
  }
};

const Easel& easel() {
  static const Easel made;
  return made;
}

void deciding(benchmark::State& state) {
  const Easel& at = easel();
  double risk = 0;
  for (auto _ : state) {
    const Conduct conduct = conduct_of(at.plan, at.readings, at.catalogue);
    risk += choose_next(at.plan, conduct, at.progress.task).outlook->risk;
  }
  state.counters["result"] = risk;
}
BENCHMARK(deciding)->Unit(benchmark::kMillisecond);

void learning_from_a_swab(benchmark::State& state) {
  const Easel& at = easel();
  const SwabMixture mixture = swab_mixture_of(ladder_rungs(at.plan)[3].mixture);
  double sum = 0;
  for (auto _ : state) {
    NextTestTask task = at.progress.task;
    take_in(task, {mixture, true, "", 1, 0, "", Evidence{mixture.point, match_of_level(1, 0.06), 1, true},
                   Evidence{mixture.point, match_of_original(0, 0.06), 1, true}});
    sum += task.target->effective_particles();
  }
  state.counters["result"] = sum;
}
BENCHMARK(learning_from_a_swab)->Unit(benchmark::kMillisecond);

}  // namespace
