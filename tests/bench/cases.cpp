// Long or counted runs for docs/performance.md:
//   gentlest_cases count N       one of three fixed cases (1..3), for valgrind --tool=callgrind
//   gentlest_cases jobs N        four parts of 100 liquids, N random jobs on two threads: mean and worst time
//   gentlest_cases exact L P     pruned against plain search on L liquids and P parts, to the bit
#include "shelf.hpp"

#include "cli/threads.hpp"
#include "core/search/pruned_search.hpp"
#include "gentlest/ladder/ladder.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>

using namespace gentlest;
using bench::make_task;

namespace {

double processor_seconds() {
  return static_cast<double>(std::clock()) / static_cast<double>(CLOCKS_PER_SEC);
}

double now() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

int count_case(int number) {
  if (number == 1) std::printf("tables: %.9f\n", make_task(30, 3, 3).target.front().values()[1000]);
  if (number == 2) std::printf("frontier of 40 liquids, 3 parts: %zu\n", find_frontier(make_task(40, 3, 3)).size());
  if (number == 3) {
    const Ladder ladder = design_ladder(make_task(20, 3, 3), {3, 7, 0.9, 0.5});
    std::printf("ladder of 20 liquids: %zu rungs, gap %.9f\n", ladder.rungs.size(), ladder.effect_given_up);
  }
  return number >= 1 && number <= 3 ? 0 : 2;
}

int random_jobs(int count) {
  double sum = 0;
  double worst = 0;
  double worst_processor = 0;
  double sum_processor = 0;
  std::size_t members = 0;
  for (int seed = 1; seed <= count; ++seed) {
    SearchTask task = make_task(100, static_cast<std::uint64_t>(seed), 4);
    task.run = on_threads(2);
    const double start = now();
    const double processor_start = processor_seconds();
    const std::size_t found = find_frontier(task).size();
    const double took = now() - start;
    const double processor = processor_seconds() - processor_start;
    std::printf("job %d: %.3f s (processor %.3f s), %zu members\n", seed, took, processor, found);
    worst_processor = std::max(worst_processor, processor);
    sum_processor += processor;
    sum += took;
    worst = std::max(worst, took);
    members += found;
  }
  std::printf("%d jobs: mean %.3f s, worst %.3f s; processor time mean %.3f s, worst %.3f s; %zu members in all\n",
              count, sum / count, worst, sum_processor / count, worst_processor, members);
  return 0;
}

int compare_exactly(std::size_t liquids, int parts) {
  SearchTask task = make_task(liquids, 3, parts);
  const double start = now();
  const std::vector<Candidate> plain = find_frontier_by_visiting(task);
  const double between = now();
  task.run = on_threads(2);
  const std::vector<Candidate> pruned = find_frontier_by_pruning(task);
  std::printf("%zu liquids, %d parts: plain %.3f s, pruned %.3f s on two threads, %zu members, %s\n", liquids, parts,
              between - start, now() - between, plain.size(), plain == pruned ? "equal" : "DIFFERENT");
  return plain == pruned ? 0 : 1;
}

}  // namespace

int main(int argc, char** argv) {
  const std::string word = argc > 1 ? argv[1] : "";
  if (word == "count" && argc == 3) return count_case(std::atoi(argv[2]));
  if (word == "jobs" && argc == 3) return random_jobs(std::atoi(argv[2]));
  if (word == "exact" && argc == 4)
    return compare_exactly(static_cast<std::size_t>(std::atoi(argv[2])), std::atoi(argv[3]));
  std::fprintf(stderr, "usage: gentlest_cases count N | jobs N | exact LIQUIDS PARTS\n");
  return 2;
}
