// Plans where some layer has no sphere: none is refused, no figure is made up, what was seen closes what it must.
#include "unjudged_job.hpp"

#include "gentlest/answers/bench.hpp"
#include "gentlest/plan/plan.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Plan plan_of(const Job& job) {
  return make_plan(job, shipped_catalogue());
}

std::vector<FirstTestKind> kinds_of(const Plan& plan) {
  std::vector<FirstTestKind> kinds;
  for (const FirstTest& test : plan.first_tests) kinds.push_back(test.kind);
  return kinds;
}

bool stands_on_shelf(const Plan& plan, const std::string& id) {
  return std::any_of(plan.shelf.begin(), plan.shelf.end(),
                     [&](const Liquid& liquid) { return liquid.solvent->id == id; });
}

}  // namespace

TEST_CASE("a layer to keep without a sphere changes no figure of the others") {
  const Plan without = plan_of(unjudged_job("dammar_aged", {"oil_paint_old"}));
  const Plan with = plan_of(unjudged_job("dammar_aged", {"oil_paint_old", "animal_glue"}));
  REQUIRE(ladder_rungs(with).size() == ladder_rungs(without).size());
  for (std::size_t i = 0; i < ladder_rungs(with).size(); ++i) {
    CHECK(ladder_rungs(with)[i].effect == ladder_rungs(without)[i].effect);
    CHECK(ladder_rungs(with)[i].risk == ladder_rungs(without)[i].risk);
    CHECK(ladder_rungs(with)[i].riskiest == "kept 1");
    REQUIRE(ladder_rungs(with)[i].outlooks.size() == 3);
    CHECK(ladder_rungs(with)[i].outlooks[1]->chance == ladder_rungs(without)[i].outlooks[1]->chance);
    CHECK_FALSE(ladder_rungs(with)[i].outlooks[2]);
    CHECK(ladder_rungs(with)[i].seen.size() == 1);
    CHECK_FALSE(ladder_rungs(with)[i].margin_RED);
  }
  CHECK_FALSE(with.by_effect_alone);
  CHECK_FALSE(with.margin_claimed);
  CHECK(with.left_off.size() == without.left_off.size());
  CHECK(kinds_of(with) ==
        std::vector<FirstTestKind>{FirstTestKind::dry_swab, FirstTestKind::no_water, FirstTestKind::gentlest_rung});
  CHECK(with.first_tests[1].layer == "kept 2");
  REQUIRE(with.first_tests[1].rows.size() == 1);
  CHECK(without.first_tests.empty());
  const Bench bench = prepare_bench(with, shipped_catalogue());
  CHECK(bench.mixtures[0].chance_bands[1]);
  CHECK_FALSE(bench.mixtures[0].chance_bands[2]);
}

TEST_CASE("a bottle seen to act alone on a layer to keep without a sphere is left off, unless it is named") {
  const Plan plan = plan_of(unjudged_job("dammar_aged", {"oil_paint_old", "copal_hard"}));
  CHECK_FALSE(stands_on_shelf(plan, "diacetone_alcohol"));
  REQUIRE(plan.left_off.size() == 1);
  const LeftOff& why = *plan.left_off[0].left_off;
  CHECK(why.why == LeftOffWhy::acts_on_layer);
  CHECK(why.layer == "kept 2");
  REQUIRE(why.seen);
  CHECK(why.seen->source == "cameo");
  const auto cited = [&](const char* key) {
    return std::any_of(plan.sources.begin(), plan.sources.end(), [&](const Source& one) { return one.key == key; });
  };
  CHECK(cited("cameo"));
  const Plan allowed =
      plan_of(unjudged_job("dammar_aged", {"oil_paint_old", "copal_hard"}, "isooctane, diacetone_alcohol",
                           "parts: 2, step_percent: 10, risk_limit: 0.9, allow_acting: [diacetone alcohol]"));
  CHECK(stands_on_shelf(allowed, "diacetone_alcohol"));
  REQUIRE(ladder_rungs(allowed).size() > 1);
  CHECK(ladder_rungs(allowed).back().seen[0].seen <= Sighting::part_acts);
  // The layer to go may be acted on.
  CHECK(plan_of(unjudged_job("copal_hard", {"oil_paint_old"})).left_off.empty());
}

TEST_CASE("where every bottle was seen to act, the plan says so and is no fault") {
  const Plan plan = plan_of(unjudged_job("dammar_aged", {"oil_paint_old", "copal_hard"}, "diacetone_alcohol"));
  CHECK(plan.outcome == Outcome::no_window);
  CHECK(what_closes_window(plan) == WindowClosedBy::sightings);
  CHECK(planned_mixtures(plan).empty());
}

TEST_CASE("where no layer to keep has a sphere the ladder goes by effect alone and stops where it works") {
  const Plan plan = plan_of(unjudged_job("dammar_aged", {"egg_tempera", "animal_glue"}));
  CHECK(plan.by_effect_alone);
  CHECK(plan.frontier.empty());
  REQUIRE(plan.outcome == Outcome::window);
  REQUIRE(ladder_rungs(plan).size() > 2);
  const double wanted = plan.job.limits.wanted_effect;
  CHECK(*ladder_rungs(plan).back().effect >= wanted);
  for (std::size_t i = 0; i < ladder_rungs(plan).size(); ++i) {
    CHECK_FALSE(ladder_rungs(plan)[i].risk);
    CHECK(ladder_rungs(plan)[i].riskiest.empty());
    CHECK_FALSE(is_beyond_limit(ladder_rungs(plan)[i], plan.job.limits));
    if (i + 1 < ladder_rungs(plan).size())
      CHECK(*ladder_rungs(plan)[i].effect < std::min(wanted, *ladder_rungs(plan)[i + 1].effect));
  }
  CHECK(ladder_bottles(plan).size() == 2);
}

TEST_CASE("of lines that reach the effect, the one on bottles seen to do nothing comes first") {
  // Xylene and isooctane leave egg tempera alone; ethanol and acetone may swell it (common practice, no source).
  const Plan plan = plan_of(unjudged_job("dammar_aged", {"egg_tempera"}, "isooctane, xylene, acetone",
                                         "parts: 2, step_percent: 10, wanted_effect: 0.06"));
  CHECK(ladder_bottles(plan) == std::vector<std::string>{"isooctane", "xylene (mixed isomers)"});
  // Acetone does nothing to glue; of xylene nothing is known there.
  const Plan glue = plan_of(unjudged_job("dammar_aged", {"animal_glue"}, "isooctane, xylene, acetone",
                                         "parts: 2, step_percent: 10, wanted_effect: 0.06"));
  CHECK(ladder_bottles(glue) == std::vector<std::string>{"isooctane", "acetone"});
  const Plan closed = plan_of(unjudged_job("dammar_aged", {"egg_tempera"}, "isooctane"));
  CHECK(closed.outcome == Outcome::no_window);
  CHECK(what_closes_window(closed) == WindowClosedBy::shelf);
  CHECK(closed.most_effect > 0);
  CHECK(closed.most_effect < closed.job.limits.wanted_effect);
}

TEST_CASE("finer steps lie on the line where the ladder goes by effect alone") {
  const Job job = unjudged_job("dammar_aged", {"egg_tempera"});
  const Plan plan = make_plan(job, shipped_catalogue(), {}, {}, {}, Finer{1, 2, 3});
  REQUIRE(plan.finer.size() == 3);
  for (const JudgedMixture& step : plan.finer) {
    CHECK(*step.effect > *ladder_rungs(plan)[0].effect);
    CHECK(*step.effect < *ladder_rungs(plan)[1].effect);
  }
}

TEST_CASE("without a sphere of the layer to go there is no ladder, and liquids seen to act on it are named") {
  // Cellulose nitrate stays, hard copal goes: diacetone alcohol dissolves the copal; glue and gum mind no alcohol.
  const Plan plan = plan_of(unjudged_job("copal_hard", {"animal_glue"}));
  CHECK(plan.outcome == Outcome::no_ladder);
  CHECK(ladder_rungs(plan).empty());
  CHECK_FALSE(plan.layers[plan.target].sphere);
  CHECK_FALSE(plan.layers[plan.target].seen.empty());
  REQUIRE(plan.to_try.size() == 1);
  CHECK(plan.to_try[0].mixture.parts()[0].liquid.solvent->id == "diacetone_alcohol");
  CHECK(plan.to_try[0].origin == Origin{OriginKind::first_test, 1});
  CHECK_FALSE(plan.to_try[0].effect);
  CHECK(kinds_of(plan) ==
        std::vector<FirstTestKind>{FirstTestKind::dry_swab, FirstTestKind::no_water, FirstTestKind::liquid});
  CHECK(planned_mixtures(plan).size() == 1);
  // Too risky for what has a sphere, so it is not named.
  const Plan risky = plan_of(unjudged_job("copal_hard", {"oil_paint_old"}));
  CHECK(risky.to_try.empty());
  CHECK(kinds_of(risky) == std::vector<FirstTestKind>{FirstTestKind::dry_swab, FirstTestKind::water});
}

TEST_CASE("a material that nobody knows is planned as not judged, to keep, to remove and as a passage") {
  const Plan kept = plan_of(unjudged_job("dammar_aged", {"oil_paint_old", "unknown"}));
  CHECK(kept.outcome == Outcome::window);
  CHECK(kept.layers[2].material.empty());
  CHECK(kept.layers[2].material_name == unknown_material);
  CHECK(kept.layers[2].seen.empty());
  CHECK(ladder_rungs(kept)[0].seen[0].seen == Sighting::unknown);
  CHECK(plan_of(unjudged_job("unknown", {"unknown"})).outcome == Outcome::no_ladder);
  Job job = unjudged_job("dammar_aged", {"oil_paint_old"});
  job.passages.push_back({"gold", "kept 1", unknown_material, {}, {}, {}});
  const Plan passage = plan_of(job);
  REQUIRE(passage.layers.size() == 3);
  CHECK(is_kept_unjudged(passage.layers[2]));
}

TEST_CASE("what a layer may be else needs no sphere: it is named and not weighed") {
  Job job = unjudged_job("dammar_aged", {"oil_paint_old"});
  job.layers[0].possible = {{"copal_hard", 30, {}}, {"sandarac", 20, {}}};
  const Plan plan = plan_of(job);
  REQUIRE(plan.layers[0].possible.size() == 2);
  CHECK_FALSE(plan.layers[0].possible[0].sphere);
  CHECK(plan.layers[0].possible[1].sphere);
}
