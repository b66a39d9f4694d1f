// Which bottles give up least: by bounds against judging every set.
#include "core/search/bottles.hpp"

#include "small_shelf.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using namespace gentlest::test;

TEST_CASE("bottles by bounds are the bottles that judging every set finds") {
  Dice dice(77);
  int compared = 0;
  for (int layers = 0; layers < 12; ++layers) {
    const std::vector<ChanceField> fields = small_fields(dice, 3);
    for (int round = 0; round < 8; ++round) {
      SearchTask task;
      task.shelf = small_shelf(dice, static_cast<std::size_t>(dice.pick(4, 8)));
      task.target.push_back(fields[0]);
      for (int i = dice.pick(1, 2); i > 0; --i) task.kept.push_back(fields[static_cast<std::size_t>(i)]);
      task.parts = dice.pick(1, 4);
      task.step_percent = task.parts == 4 ? 20 : 10;
      const std::vector<Candidate> frontier = find_frontier(task);
      const double limit = frontier.front().verdict.risk + dice.between(0.001, 0.3);
      const auto size = static_cast<std::size_t>(dice.pick(1, 4));
      const BottleChoice plain = best_bottles_by_visiting(task, frontier, limit, size);
      const BottleChoice quick = best_bottles_by_bounds(task, frontier, limit, size);
      INFO("layers " << layers << " round " << round << " parts " << task.parts << " bottles " << size);
      CHECK(quick.bottles == plain.bottles);
      CHECK(quick.gap == plain.gap);
      const BottleChoice none = best_bottles_by_bounds(task, frontier, limit, size, plain.gap / 2);
      CHECK((none.bottles.empty() || plain.gap == 0));
      ++compared;
    }
  }
  CHECK(compared == 96);
}

TEST_CASE("bottles that hold the whole frontier give up nothing") {
  Dice dice(5);
  const std::vector<ChanceField> fields = small_fields(dice, 2);
  SearchTask task;
  task.shelf = small_shelf(dice, 5);
  task.target.push_back(fields[0]);
  task.kept.push_back(fields[1]);
  task.step_percent = 10;
  const std::vector<Candidate> frontier = find_frontier(task);
  CHECK(best_bottles_by_bounds(task, frontier, 1, 5).gap == 0);
}
