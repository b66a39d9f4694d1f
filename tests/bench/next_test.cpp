// Timings of the choice of the next test and of learning from a swab, beside the plain way: every mixture judged by
// every particle, the response worked out each time.
#include "gentlest/learning/next_test.hpp"

#include <benchmark/benchmark.h>

#include <cmath>

using namespace gentlest;

namespace {

LevelChances response(double RED) {
  const double chance = 1 / (1 + std::exp((RED - 1) / 0.05));
  return {1, chance, chance, chance, chance * chance};
}

// 1,300 mixtures over the part of Hansen space that they reach, 8,000 particles a layer, two swabs made.
NextTestTask make_task() {
  const auto belief = [](const Sphere& mean, std::uint64_t seed) {
    LearningSettings settings;
    settings.seed = seed;
    return LayerBelief({{{{mean, {0.7, 1.6, 1.9}, 1.1}, 1, "layer"}}}, ReadingCurve(response), settings);
  };
  NextTestTask task{{}, belief({{17.5, 6, 9}, 8}, 1), {{"paint", belief({{17.8, 9, 10.5}, 6}, 2)}}, {}, {}, {}};
  for (int i = 0; i < 1300; ++i)
    task.candidates.push_back({15.0 + 0.3 * (i % 10), 1.0 * (i / 10 % 13), 2.0 * (i / 130)});
  for (const Hansen& point : {Hansen{15.3, 1, 2}, Hansen{15.6, 3, 4}}) {
    task.target->learn({point, match_of_level(1, 0.06), 1, false});
    task.kept[0].belief.learn({point, match_of_original(0, 0.06), 1, false});
    task.past.push_back({{point}, false, "", 1, 0});
  }
  return task;
}

void next_test(benchmark::State& state) {
  const NextTestTask task = make_task();
  double risk = 0;
  for (auto _ : state) risk += choose_next_test(task).mixture->risk;
  state.counters["result"] = risk;
}
BENCHMARK(next_test)->Unit(benchmark::kMillisecond);

double mean_response(const ParticleCloud& cloud, const Hansen& point, std::size_t level) {
  const std::array<double, 3> place = scaled(point);
  double sum = 0;
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    const double Ra = std::hypot(static_cast<double>(cloud.x[i]) - place[0], static_cast<double>(cloud.y[i]) - place[1],
                                 static_cast<double>(cloud.z[i]) - place[2]);
    sum += static_cast<double>(cloud.weight[i]) * response(Ra * static_cast<double>(cloud.inverse_R0[i]))[level];
  }
  return sum;
}

void every_mixture_by_every_particle(benchmark::State& state) {
  const NextTestTask task = make_task();
  double best = 0;
  for (auto _ : state)
    for (const Hansen& point : task.candidates)
      best = std::max(best, mean_response(task.target->particles(), point, 3) *
                                (1 - mean_response(task.kept[0].belief.particles(), point, 1)));
  state.counters["result"] = best;
}
BENCHMARK(every_mixture_by_every_particle)->Unit(benchmark::kMillisecond);

void learning_from_a_swab(benchmark::State& state) {
  const NextTestTask task = make_task();
  double sum = 0;
  for (auto _ : state) {
    LayerBelief belief = *task.target;
    belief.learn({{16, 5, 7}, match_of_level(3, 0.06), 1, false});
    sum += belief.effective_particles();
  }
  state.counters["result"] = sum;
}
BENCHMARK(learning_from_a_swab)->Unit(benchmark::kMillisecond);

}  // namespace
