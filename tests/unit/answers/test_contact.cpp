// How a test is held and cleared: slow parts by published evaporation rates, the gentle stock to clear with.
#include "csv.hpp"
#include "demo_plan.hpp"
#include "shipped.hpp"
#include "shipped_mixtures.hpp"

#include "gentlest/answers/bench.hpp"
#include "io/job_file.hpp"
#include "report/bottle/contact_words.hpp"
#include "report/bottle/person_words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

// Rates: tests/published/tables/evaporation_rates.csv. "Slow" on safety data sheets: below 0.8 of n-butyl acetate. Our
// rates meet the printed ones within a factor of 2.7, so liquids nearer to the line are left out.
TEST_CASE("what is printed as slow is told as slow, and what is fast is not") {
  int slow = 0, fast = 0;
  for (const Row& row : read_table("evaporation_rates.csv")) {
    const Solvent* solvent = shipped_catalogue().find_solvent(row.at("solvent"));
    if (!solvent || solvent->is_blend) continue;
    const double rate = number(row, "RER");
    const Mixture mixture({{{solvent->name, solvent, 0, {}}, 1.0}});
    INFO(solvent->name << " " << rate);
    const bool told = !slow_liquids(mixture, shipped_catalogue()).empty();
    if (rate < 0.8 / 2.5) {
      CHECK(told);
      ++slow;
    } else if (rate > 0.8 * 2.5) {
      CHECK_FALSE(told);
      ++fast;
    }
  }
  CHECK(slow >= 3);
  CHECK(fast >= 5);
}

TEST_CASE("benzyl alcohol stays, and a liquid of unknown vapour pressure is not taken as fast") {
  const auto slow = slow_liquids(mixture_from("benzyl alcohol 20, acetone 80"), shipped_catalogue());
  REQUIRE(slow.size() == 1);
  CHECK(slow.front().label == "benzyl alcohol");
  CHECK(slow.front().stays);
  Solvent unknown;
  unknown.id = unknown.name = "unknown";
  const auto untold = slow_liquids(Mixture({{{unknown.name, &unknown, 0, {}}, 1.0}}), shipped_catalogue());
  REQUIRE(untold.size() == 1);
  CHECK_FALSE(untold.front().drying_time);
  CHECK(look_again_words({20, "", untold}).find("week") != std::string::npos);
}

TEST_CASE("a rung is cleared with the gentle stock, which itself is cleared dry") {
  const Bench bench = prepare_bench(demo_plan(), shipped_catalogue());
  REQUIRE(bench.mixtures.size() > 2);
  const std::string& gentle = demo_plan().lines.front().bottles.front();
  CHECK(bench.mixtures.front().contact.clear_with.empty());
  CHECK(clearing_words(bench.mixtures.front().contact) == "clear with a dry swab");
  for (std::size_t i = 1; i < bench.mixtures.size(); ++i) {
    CHECK(bench.mixtures[i].contact.clear_with == gentle);
    CHECK(bench.mixtures[i].contact.most_seconds == 20);
  }
}

TEST_CASE("bottles that no rung needs are named, and the gravest with what is not known") {
  Bench bench = prepare_bench(demo_plan(), shipped_catalogue());
  for (const Liquid& bottle : demo_plan().shelf) {
    const auto mixtures = planned_mixtures(demo_plan());
    const bool is_used = std::any_of(mixtures.begin(), mixtures.end(), [&](const JudgedMixture* one) {
      const auto& parts = one->mixture.parts();
      return std::any_of(parts.begin(), parts.end(),
                         [&](const Part& part) { return part.liquid.label == bottle.label; });
    });
    const bool is_named =
        std::find(bench.not_needed.begin(), bench.not_needed.end(), bottle.label) != bench.not_needed.end();
    INFO(bottle.label);
    CHECK(is_named != is_used);
  }
  CHECK(bench.gravest.empty());
  CHECK(person_sentences(bench).front() == "None of the bottles used carries H340, H350 or H360.");
  bench.without_record = {"x"};
  CHECK(person_sentences(bench).front().find("of x there is no record") != std::string::npos);
  bench.gravest = {"y"};
  CHECK(person_sentences(bench).front().find("y. Look for another") != std::string::npos);
}
