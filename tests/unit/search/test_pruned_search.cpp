// The search by bounds against the plain one: the same frontier, to the bit, whatever the shelf, the layers, the
// limits and the order in which tasks are carried out.
#include "cli/threads.hpp"
#include "core/search/pruned_search.hpp"
#include "gentlest/ladder/ladder.hpp"
#include "gentlest/search/search.hpp"

#include "invented_shelf.hpp"
#include "small_shelf.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <mutex>
#include <stdexcept>
#include <vector>

using namespace gentlest;
using namespace gentlest::test;

namespace {

SearchTask random_task(Dice& dice, const std::vector<ChanceField>& fields) {
  SearchTask task;
  task.shelf = small_shelf(dice, static_cast<std::size_t>(dice.pick(1, 7)));
  task.target.push_back(fields[0]);
  for (int i = dice.pick(0, 3); i > 0; --i) task.kept.push_back(fields[static_cast<std::size_t>(i)]);
  task.parts = dice.pick(1, 4);
  task.step_percent = std::array{5, 10, 20, 25, 50, 100}[static_cast<std::size_t>(dice.pick(0, 5))];
  if (task.parts == 4 && task.step_percent < 10) task.step_percent = 10;
  if (dice.pick(0, 3) == 0)
    for (std::size_t i = 0; i < task.shelf.size(); ++i) task.most_percent.push_back(10 * dice.pick(0, 10));
  if (dice.pick(0, 3) == 0)
    // The first and the third liquid do not mix.
    task.allowed = [](const SearchTask&, const Composition& composition) {
      const auto end = composition.liquid.begin() + composition.parts;
      return std::find(composition.liquid.begin(), end, 0) == end ||
             std::find(composition.liquid.begin(), end, 2) == end;
    };
  if (dice.pick(0, 1) == 0)
    task.run = [](const std::vector<std::function<void()>>& tasks) {
      for (std::size_t i = tasks.size(); i-- > 0;) tasks[i]();
    };
  return task;
}

}  // namespace

TEST_CASE("thousands of small shelves: pruning finds what visiting finds, to the bit") {
  Dice dice(20261126);
  int differ = 0;
  std::size_t members = 0;
  for (int layers = 0; layers < 60; ++layers) {
    const std::vector<ChanceField> fields = small_fields(dice, 4);
    for (int round = 0; round < 40; ++round) {
      const SearchTask task = random_task(dice, fields);
      const std::vector<Candidate> plain = find_frontier_by_visiting(task);
      members += plain.size();
      if (find_frontier_by_pruning(task) == plain) continue;
      ++differ;
      INFO("layers " << layers << " round " << round << " liquids " << task.shelf.size() << " parts " << task.parts);
      CHECK(find_frontier_by_pruning(task) == plain);
    }
  }
  CHECK(differ == 0);
  CHECK(members > 10000);  // the cases are not trivial
}

TEST_CASE("a target and a layer to keep of the same material: nothing can be ruled out, the answer stays the same") {
  Dice dice(4);
  const Response curve{{{{1.0, -12}, {0.5, -8}, {0.3, -6}, {0.2, -6}, {0.1, -3}}}, "test"};
  const UncertainSphere sphere{{{16.5, 4, 4}, 6}, {1, 2, 2}, 1};
  const std::vector<ChanceField> fields = chance_fields(small_box, {{sphere, curve, 2}, {sphere, curve, 4}});
  for (int round = 0; round < 20; ++round) {
    SearchTask task;
    task.shelf = small_shelf(dice, 6);
    task.target.push_back(fields[0]);
    task.kept.push_back(fields[round % 2 == 0 ? 1 : 0]);
    task.parts = 3;
    CHECK(find_frontier_by_pruning(task) == find_frontier_by_visiting(task));
  }
}

TEST_CASE("realistic shelves, one or two threads: the same frontier") {
  for (const std::uint64_t seed : {3U, 4U, 5U}) {
    const InventedShelf shelf(12, seed);
    SearchTask task = shelf.task(3, 5);
    const std::vector<Candidate> plain = find_frontier_by_visiting(task);
    CHECK(find_frontier_by_pruning(task) == plain);
    for (const unsigned threads : {1U, 2U, 3U}) {
      task.run = on_threads(threads);
      CHECK(find_frontier_by_pruning(task) == plain);
    }
  }
}

TEST_CASE("tables on lattices of their own are searched by visiting") {
  const InventedShelf shelf(5, 9);
  SearchTask task = shelf.task(3, 10);
  const HansenBox box = bounding_box(task.shelf);
  task.kept = {ChanceField({{box.low.dD - 1, box.low.dP, box.low.dH}, box.high}, shelf.kept, shelf.curve, 4)};
  CHECK(find_frontier(task) == find_frontier_by_visiting(task));
}

TEST_CASE("a search can be stopped, and a fault in a task is not lost") {
  const InventedShelf shelf(20, 3);
  SearchTask task = shelf.task(3, 5);
  const SearchProgress stop = [](std::uint64_t, std::uint64_t) { throw std::runtime_error("stopped"); };
  CHECK_THROWS_WITH(find_frontier_by_pruning(task, stop), "stopped");
  CHECK_THROWS_WITH(find_frontier_by_visiting(task, stop), "stopped");
  task.allowed = [](const SearchTask&, const Composition&) -> bool { throw std::runtime_error("no answer"); };
  task.run = on_threads(2);
  CHECK_THROWS_WITH(find_frontier_by_pruning(task), "no answer");
}

TEST_CASE("a search is watched inside its rounds, never by two tasks at once, and stops at the first word") {
  const InventedShelf shelf(24, 3);
  SearchTask task = shelf.task(3, 5);
  for (const unsigned threads : {0U, 1U, 2U, 3U}) {
    INFO("threads " << threads);
    task.run = threads == 0 ? RunTasks() : on_threads(threads);
    std::mutex inside;
    bool at_once = false;
    std::vector<std::uint64_t> seen;
    const auto watching = [&](std::uint64_t done, std::uint64_t) {
      const std::unique_lock<std::mutex> alone(inside, std::try_to_lock);
      at_once = at_once || !alone.owns_lock();
      seen.push_back(done);
    };
    find_frontier_by_pruning(task, watching);
    CHECK_FALSE(at_once);
    CHECK(std::is_sorted(seen.begin(), seen.end()));
    // Far more often than once a number of parts: the last of them alone has hundreds of beats.
    const auto in_last = std::count(seen.begin(), seen.end(), count_mixtures(24, 2, 20));
    CHECK(in_last > 100);
    std::size_t calls = 0;
    const std::size_t stop_at = seen.size() - static_cast<std::size_t>(in_last) / 2;
    const auto stopping = [&](std::uint64_t, std::uint64_t) {
      if (++calls == stop_at) throw std::runtime_error("stopped");
    };
    CHECK_THROWS_WITH(find_frontier_by_pruning(task, stopping), "stopped");
    CHECK(calls == stop_at);
  }
}

TEST_CASE("a ladder can be stopped while its bottles are chosen and while mixtures are asked about") {
  const InventedShelf shelf(12, 3);
  SearchTask task = shelf.task(3, 5);
  std::uint64_t asked = 0;
  task.allowed = [&](const SearchTask&, const Composition&) { return ++asked > 0; };
  std::uint64_t after_search = 0;
  std::uint64_t calls = 0;
  const std::uint64_t all = count_mixtures(12, 3, 20);
  design_ladder(task, {}, [&](std::uint64_t done, std::uint64_t) { ++calls, after_search += done == all ? 1U : 0U; });
  CHECK(after_search > 100);
  CHECK(calls >= asked);
  std::uint64_t left = calls - after_search / 2;
  const auto stopping = [&](std::uint64_t, std::uint64_t) {
    if (--left == 0) throw std::runtime_error("stopped");
  };
  CHECK_THROWS_WITH(design_ladder(task, {}, stopping), "stopped");
}
