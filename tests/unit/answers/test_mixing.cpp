// The triangle of three bottles against the plan's own judging of single mixtures.
#include "gentlest/answers/mixing.hpp"

#include "io/catalogue_files.hpp"
#include "io/job_file.hpp"
#include "near.hpp"
#include "report/charts/charts.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <utility>

namespace gentlest {

namespace {

struct Mixed {
  Catalogue catalogue = read_kept_catalogue(embedded_catalogue());
  Job job = load_job(demo_job_text(), "demo", catalogue);
};

}  // namespace

TEST_CASE("every point of the triangle is judged as the mixture alone is") {
  const Mixed demo;
  const Plan plan = make_plan(demo.job, demo.catalogue);
  const std::optional<MixingGrid> grid = mix_three(plan, demo.catalogue);
  REQUIRE(grid);
  for (const auto& [i, j] : {std::pair{10, 20}, {0, 50}, {50, 0}, {0, 0}, {23, 9}, {30, 20}}) {
    std::vector<Part> parts;
    const std::array<int, 3> shares = {i, j, 50 - i - j};
    for (std::size_t k = 0; k < 3; ++k)
      if (shares[k] > 0) parts.push_back({grid->bottles[k].liquid, shares[k] / 50.0});
    const JudgedMixture alone = judge_mixture(Mixture(parts), plan.layers, plan.job.limits, demo.catalogue);
    INFO(i << " " << j);
    // Each stands on a table of its own box, so they agree as far as such tables do.
    CHECK(grid->effect[grid->at(i, j)] == test::near(*alone.effect, 0.01));
    CHECK(grid->risk[grid->at(i, j)] == test::near(*alone.risk, 0.01));
  }
  const std::optional<MixingBest> best = best_within(*grid, plan.job.limits.risk_limit);
  REQUIRE(best);
  for (int j = 0; j <= grid->steps; ++j)
    for (int i = 0; i + j <= grid->steps; ++i)
      if (grid->risk[grid->at(i, j)] <= plan.job.limits.risk_limit) CHECK(grid->effect[grid->at(i, j)] <= best->effect);
}

TEST_CASE("the third bottle comes from a later line, else from the shelf, and is said") {
  Mixed demo;
  for (const int lines : {3, 1}) {
    demo.job.limits.lines = lines;
    const Plan plan = make_plan(demo.job, demo.catalogue);
    REQUIRE(ladder_bottles(plan).size() == 2);
    const std::optional<MixingGrid> grid = mix_three(plan, demo.catalogue);
    REQUIRE(grid);
    for (std::size_t k = 0; k < 2; ++k) CHECK(grid->bottles[k].liquid.label == ladder_bottles(plan)[k]);
    const bool is_of_line = plan.lines.size() > 1;
    CHECK(grid->bottles[2].reason == (is_of_line ? MixingReason::line : MixingReason::shelf));
    const std::string caption = mixing_chart(plan, grid).caption;
    CHECK(caption.find(grid->bottles[2].liquid.label +
                       (is_of_line ? " stands on line " : " is the one of the shelf")) != std::string::npos);
  }
}

TEST_CASE("two bottles make no triangle, and that is said in one sentence") {
  Mixed demo;
  demo.job.shelf.resize(2);
  const Plan plan = make_plan(demo.job, demo.catalogue);
  REQUIRE(plan.shelf.size() == 2);
  const std::optional<MixingGrid> grid = mix_three(plan, demo.catalogue);
  CHECK_FALSE(grid);
  CHECK(mixing_chart(plan, grid).caption.find("A triangle needs three bottles, and this shelf has 2: ") == 0);
}

}  // namespace gentlest
