// Honesty about a passage is not punished, and what it costs is told. The law of both: a layer more to keep is one
// condition more, so no risk falls and no ladder goes further.
#include "scale.hpp"
#include "shipped_mixtures.hpp"
#include "small_shelf.hpp"

#include "gentlest/plan/plan.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

// A demo painting with a shelf of its own and a passage of which no more is known.
Job job_with(const std::vector<ShelfBottle>& shelf, const std::string& varnish) {
  Job job = load_job(demo_job_text(), "demo", shipped_catalogue());
  job.layers[0].found = varnish;
  if (!shelf.empty()) job.shelf = shelf;
  job.limits.avoid_statements.clear();
  job.passages = {{"red glaze", "oil paint", "", {}, "", {}}};
  return job;
}

Job suspecting(Job job, const std::vector<Flag>& flags) {
  job.passages[0].suspected = flags;
  return job;
}

Job knowing(Job job, const std::string& material) {
  job.passages[0].material = material;
  return job;
}

double strongest(const Plan& plan) {
  return ladder_rungs(plan).empty() ? 0 : ladder_rungs(plan).back().effect.value();
}

std::vector<ShelfBottle> bottles(const std::vector<std::string>& solvents) {
  std::vector<ShelfBottle> shelf;
  for (const std::string& solvent : solvents) shelf.push_back({solvent, "", {}});
  return shelf;
}

// Four bottles that may be on any shelf, other ones each time.
std::vector<ShelfBottle> any_shelf(Dice& dice) {
  std::vector<std::string> all = {"isooctane",     "white_spirit_dearomatised",
                                  "cyclohexane",   "toluene",
                                  "ethanol",       "isopropanol",
                                  "acetone",       "butanone",
                                  "ethyl_acetate", "diacetone_alcohol",
                                  "xylene",        "methoxypropanol"};
  std::vector<std::string> some;
  while (some.size() < 4) {
    const auto at = static_cast<std::size_t>(dice.pick(0, static_cast<int>(all.size()) - 1));
    some.push_back(all[at]);
    all.erase(all.begin() + static_cast<std::ptrdiff_t>(at));
  }
  return bottles(some);
}

const std::vector<const char*> mixtures_of_the_trade = {"isooctane",
                                                        "toluene",
                                                        "ethanol 30, isooctane 70",
                                                        "acetone 50, white_spirit_dearomatised 50",
                                                        "ethanol",
                                                        "isopropanol",
                                                        "acetone",
                                                        "ethyl_acetate",
                                                        "toluene 60, acetone 40",
                                                        "diacetone_alcohol",
                                                        "water"};

double risk_of(const Job& job, const std::string& mixture) {
  return judge_mixture(mixture_from(mixture), planned_layers(job, shipped_catalogue()), job.limits, shipped_catalogue())
      .risk.value();
}

}  // namespace

TEST_CASE("a passage suspected to hold resin is judged as the glaze that it may be") {
  const Job plain = job_with({}, "dammar_aged");
  const std::vector<PlannedLayer> before = planned_layers(plain, shipped_catalogue());
  CHECK(is_judged_like_layer(plain.passages[0], before));
  const Job job = suspecting(plain, {Flag::resinous});
  const std::vector<PlannedLayer> layers = planned_layers(job, shipped_catalogue());
  REQUIRE(layers.size() == before.size() + 1);
  CHECK(layers.back().name == "red glaze");
  CHECK(layers.back().material == "oil_resin_glaze");
  CHECK(layers.back().basis == LayerBasis::suspected);
  CHECK(layers.back().passage_of == "oil paint");
  CHECK(layers[1].passages.empty());  // said once, of the passage
  CHECK_FALSE(is_judged_like_layer(job.passages[0], layers));
  CHECK_FALSE(margin_may_be_claimed(layers));
}

TEST_CASE("what has no sphere to stand in for it stays a warning beside the layer") {
  for (const Flag flag : {Flag::waxy, Flag::bituminous, Flag::cross_linked, Flag::water_sensitive}) {
    const auto layers = planned_layers(suspecting(job_with({}, "dammar_aged"), {flag}), shipped_catalogue());
    REQUIRE(layers.size() == 2);
    CHECK(layers[1].passages.size() == 1);
  }
}

TEST_CASE("a suspicion or a glaze lowers no risk, and the two agree") {
  for (const char* varnish : {"dammar_aged", "mastic_fresh", "ketone_resin"}) {
    const Job plain = job_with({}, varnish);
    for (const char* mixture : mixtures_of_the_trade) {
      INFO(varnish << ", " << mixture);
      const double before = risk_of(plain, mixture);
      const double suspected = risk_of(suspecting(plain, {Flag::resinous}), mixture);
      const double known = risk_of(knowing(plain, "oil_resin_glaze"), mixture);
      CHECK(suspected >= before);
      CHECK(known >= before);
      CHECK(suspected == known);
      CHECK(risk_of(suspecting(knowing(plain, "oil_resin_glaze"), {Flag::resinous}), mixture) == known);
      for (const Flag flag : {Flag::waxy, Flag::bituminous, Flag::water_sensitive})
        CHECK(risk_of(suspecting(plain, {flag}), mixture) >= before);
    }
  }
}

TEST_CASE("a suspicion or a glaze makes no ladder go further, whatever the shelf") {
  Dice dice(20261126);
  int narrowed = 0;
  for (int round = 0; round < std::max(10, cases(40)); ++round) {
    const std::vector<ShelfBottle> shelf = any_shelf(dice);
    const char* varnish = round % 2 == 0 ? "dammar_aged" : "dammar_fresh";
    Job plain = job_with(shelf, varnish);
    plain.limits.lines = 0;  // a line is not always the one that goes furthest
    const double before = strongest(make_plan(plain, shipped_catalogue()));
    const double suspected = strongest(make_plan(suspecting(plain, {Flag::resinous}), shipped_catalogue()));
    const double known = strongest(make_plan(knowing(plain, "oil_resin_glaze"), shipped_catalogue()));
    std::string names;
    for (const ShelfBottle& bottle : shelf) names += bottle.solvent + " ";
    INFO(varnish << " on " << names);
    CHECK(suspected <= before);
    CHECK(suspected == known);
    narrowed += suspected < before ? 1 : 0;
  }
  CHECK(narrowed > 0);
}

TEST_CASE("what a glaze costs is the ladder planned without it") {
  Dice dice(7);
  int told = 0;
  for (int round = 0; round < std::max(5, cases(20)); ++round) {
    const std::vector<ShelfBottle> shelf = any_shelf(dice);
    Job job = knowing(job_with(shelf, "dammar_aged"), "oil_resin_glaze");
    job.passages.push_back({"green glaze", "oil paint", "oil_resin_glaze", {}, "", {}});
    const Plan with = make_plan(job, shipped_catalogue());
    job.passages.clear();
    const Plan without = make_plan(job, shipped_catalogue());
    const bool matters = !ladder_rungs(without).empty() && strongest(without) >= strongest(with) + 0.01;
    const auto cost = std::find_if(with.costs.begin(), with.costs.end(), [](const LayerCost& one) {
      return one.without == std::vector<std::string>{"red glaze", "green glaze"};
    });
    INFO(shelf[0].solvent << " " << shelf[1].solvent << " " << shelf[2].solvent << " " << shelf[3].solvent);
    CHECK(with.costs.size() <= 3);
    CHECK((cost != with.costs.end()) == matters);
    if (cost == with.costs.end()) continue;
    ++told;
    CHECK(cost->rungs == static_cast<int>(ladder_rungs(without).size()));
    CHECK(cost->strongest_effect == strongest(without));
  }
  CHECK(told > 0);
}

TEST_CASE("with one layer to keep there is nothing to leave out") {
  const Job job = job_with({}, "dammar_aged");
  CHECK(make_plan(job, shipped_catalogue()).costs.empty());
  CHECK(make_plan(knowing(job, "oil_paint_old"), shipped_catalogue()).costs.empty());  // both of one material
}
