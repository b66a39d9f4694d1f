// Laws of plans where layers have no sphere, over jobs drawn at random with a fixed seed.
#include "unjudged_job.hpp"

#include "gentlest/answers/progress.hpp"
#include "gentlest/plan/plan.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const std::vector<std::string>& without_sphere() {
  static const std::vector<std::string> ids = {"animal_glue",        "gum_arabic", "casein",
                                               "egg_tempera",        "copal_hard", "oil_wax_paint",
                                               "poly_vinyl_alcohol", "unknown"};
  return ids;
}

class Draw {
 public:
  explicit Draw(unsigned seed) : engine_(seed) {}

  std::size_t below(std::size_t count) { return engine_() % count; }
  const std::string& one_of(const std::vector<std::string>& all) { return all[below(all.size())]; }

  std::string shelf() {
    static const std::vector<std::string> bottles = {
        "isooctane",         "xylene",       "toluene",  "{solvent: ethanol, grade: \"96 %\"}",
        "isopropanol",       "acetone",      "butanone", "water",
        "diacetone_alcohol", "ethyl_acetate"};
    std::string shelf = "isooctane";
    for (const std::string& bottle : bottles)
      if (bottle != "isooctane" && below(2) == 0) shelf += ", " + bottle;
    return shelf;
  }

 private:
  std::mt19937 engine_;
};

}  // namespace

TEST_CASE("law: a job with layers without a sphere is never refused, and no figure of them is made up") {
  Draw draw(20261126);
  for (int i = 0; i < 40; ++i) {
    std::vector<std::string> keep = {draw.one_of(without_sphere())};
    if (draw.below(2) == 0) keep.push_back("oil_paint_old");
    if (draw.below(2) == 0) keep.push_back(draw.one_of(without_sphere()));
    const std::string remove = draw.below(3) == 0 ? draw.one_of(without_sphere()) : "dammar_aged";
    const std::string text = unjudged_job_text(remove, keep, draw.shelf(), "parts: 2, step_percent: 20, rungs: 4");
    INFO(text);
    const Job job = load_job(text, "job.yaml", shipped_catalogue());
    const Plan plan = make_plan(job, shipped_catalogue());
    CHECK((plan.outcome == Outcome::no_ladder) == !plan.layers[0].sphere);
    CHECK_FALSE(plan.margin_claimed);
    CHECK(plan.first_tests.front().kind == FirstTestKind::dry_swab);
    for (const JudgedMixture* mixture : planned_mixtures(plan))
      for (std::size_t k = 0; k < plan.layers.size(); ++k)
        CHECK(mixture->outlooks[k].has_value() == plan.layers[k].sphere.has_value());
    for (const Liquid& liquid : plan.shelf)
      for (const LayerSighting& seen : sightings_of(Mixture({{liquid, 1}}), plan.layers, shipped_catalogue()))
        if (seen.role == Role::keep) CHECK(seen.seen != Sighting::acts);
    CHECK(follow_readings(plan, shipped_catalogue(), {}).layers.size() == plan.layers.size());
  }
}

TEST_CASE("law: a layer to keep without a sphere leaves effect and risk as they were, but for what it leaves off") {
  Draw draw(7);
  for (int i = 0; i < 12; ++i) {
    const std::string shelf = draw.shelf();
    const std::string limits = "parts: 2, step_percent: 10, rungs: 5";
    const std::string& added = draw.one_of(without_sphere());
    INFO(added << " on " << shelf);
    const Plan before = make_plan(unjudged_job("dammar_aged", {"oil_paint_old"}, shelf, limits), shipped_catalogue());
    const Plan after =
        make_plan(unjudged_job("dammar_aged", {"oil_paint_old", added}, shelf, limits), shipped_catalogue());
    if (after.shelf.size() != before.shelf.size()) continue;
    CHECK(after.outcome == before.outcome);
    CHECK(after.frontier == before.frontier);
    REQUIRE(ladder_rungs(after).size() == ladder_rungs(before).size());
    for (std::size_t k = 0; k < ladder_rungs(after).size(); ++k) {
      CHECK(ladder_rungs(after)[k].effect == ladder_rungs(before)[k].effect);
      CHECK(ladder_rungs(after)[k].risk == ladder_rungs(before)[k].risk);
    }
  }
}
