// Timings for docs/performance.md: run build/release/gentlest_bench. Every result goes into a counter, so that the
// compiler cannot leave the work out.
#include "shelf.hpp"

#include "cli/threads.hpp"
#include "core/search/bottles.hpp"
#include "gentlest/ladder/ladder.hpp"

#include <benchmark/benchmark.h>

#include <numeric>

using namespace gentlest;
using bench::make_task;

namespace {

void report(benchmark::State& state, const SearchTask& task, double result) {
  const auto mixtures = static_cast<double>(count_mixtures(task.shelf.size(), task.parts, 100 / task.step_percent));
  state.counters["result"] = result;
  state.counters["mixtures"] = mixtures;
  state.counters["mixtures/s"] = benchmark::Counter(mixtures, benchmark::Counter::kIsIterationInvariantRate);
}

// The frontier of a shelf; arguments: liquids, parts, threads.
void frontier(benchmark::State& state) {
  SearchTask task = make_task(static_cast<std::size_t>(state.range(0)), 3, static_cast<int>(state.range(1)));
  task.run = on_threads(static_cast<unsigned>(state.range(2)));
  std::size_t members = 0;
  for (auto _ : state) members = find_frontier(task).size();
  report(state, task, static_cast<double>(members));
}
BENCHMARK(frontier)
    ->ArgsProduct({{10, 20, 40, 70, 100}, {2, 3, 4}, {1, 2}})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime()
    ->MeasureProcessCPUTime();

void frontier_by_visiting(benchmark::State& state) {
  const SearchTask task = make_task(static_cast<std::size_t>(state.range(0)), 3, static_cast<int>(state.range(1)));
  std::size_t members = 0;
  for (auto _ : state) members = find_frontier_by_visiting(task).size();
  report(state, task, static_cast<double>(members));
}
BENCHMARK(frontier_by_visiting)->Args({100, 3})->Args({20, 4})->Unit(benchmark::kMillisecond);

// The roof for judging one by one: place and three look-ups, nothing else, over points that lie along lines of the
// shelf as those of a search do.
void roof_of_judging(benchmark::State& state) {
  const SearchTask task = make_task(100, 3, 3);
  std::vector<Hansen> points;
  for_each_composition({3, 17, 40, 77}, 4, 20, [&](const Composition& c) { points.push_back(point_of(task, c)); });
  double sum = 0;
  for (auto _ : state)
    for (const Hansen& point : points) {
      const FieldPlace place = place_on(task.target.front().lattice(), point);
      sum += task.target.front().at(place) + task.kept[0].at(place) + task.kept[1].at(place);
    }
  state.counters["result"] = sum;
  state.counters["mixtures/s"] =
      benchmark::Counter(static_cast<double>(points.size()), benchmark::Counter::kIsIterationInvariantRate);
}
BENCHMARK(roof_of_judging)->Unit(benchmark::kMicrosecond);

void tables(benchmark::State& state) {
  double sum = 0;
  for (auto _ : state) sum += make_task(static_cast<std::size_t>(state.range(0)), 3, 3).target.front().values()[0];
  state.counters["result"] = sum;
}
BENCHMARK(tables)->Arg(10)->Arg(100)->Unit(benchmark::kMillisecond);

// Liquids, parts, bottles.
void bottles(benchmark::State& state) {
  SearchTask task = make_task(static_cast<std::size_t>(state.range(0)), 3, static_cast<int>(state.range(1)));
  task.run = on_threads(2);
  const std::vector<Candidate> found = find_frontier(task);
  const double limit = found.front().verdict.risk + 0.2;
  double gap = 0;
  for (auto _ : state) gap = best_bottles(task, found, limit, static_cast<std::size_t>(state.range(2))).gap;
  report(state, task, gap);
}
BENCHMARK(bottles)
    ->Args({30, 3, 3})
    ->Args({100, 3, 3})
    ->Args({100, 3, 4})
    ->Args({100, 4, 4})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();

}  // namespace

BENCHMARK_MAIN();
