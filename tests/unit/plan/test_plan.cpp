#include "shipped.hpp"

#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/plan.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

Job demo() {
  return load_job(demo_job_text(), "demo", shipped_catalogue());
}

bool names(const std::vector<WeakPoint>& points, const WeakPoint& point) {
  return std::find(points.begin(), points.end(), point) != points.end();
}

std::optional<LeftOff> why_left_off(const Plan& plan, const std::string& solvent) {
  for (const JobBottle& bottle : plan.left_off)
    if (bottle.solvent->id == solvent) return bottle.left_off;
  return std::nullopt;
}

}  // namespace

TEST_CASE("the demo painting has a ladder, gentle to strong in both numbers, within the limit") {
  const Plan plan = make_plan(demo(), shipped_catalogue());
  REQUIRE(plan.outcome == Outcome::window);
  REQUIRE(ladder_rungs(plan).size() >= 4);
  CHECK(ladder_bottles(plan).size() <= 3);
  for (std::size_t i = 1; i < ladder_rungs(plan).size(); ++i) {
    CHECK(ladder_rungs(plan)[i].effect > ladder_rungs(plan)[i - 1].effect);
    CHECK(ladder_rungs(plan)[i].risk > ladder_rungs(plan)[i - 1].risk);
  }
  CHECK(ladder_rungs(plan).front().effect < 0.2);
  CHECK(ladder_rungs(plan).back().effect >= plan.job.limits.wanted_effect);
  CHECK(ladder_rungs(plan).back().risk <= plan.job.limits.risk_limit);
  for (const JudgedMixture& rung : ladder_rungs(plan)) {
    REQUIRE(rung.outlooks.size() == plan.layers.size());
    CHECK(rung.riskiest == "oil paint");
    CHECK(rung.margin_RED);
    CHECK_FALSE(rung.hazards.signal_word.empty());
    for (const std::optional<Outlook>& outlook : rung.outlooks) {
      CHECK(outlook->RED_band.low <= outlook->RED);
      CHECK(outlook->RED <= outlook->RED_band.high);
      CHECK(outlook->may_flip == (outlook->RED_band.low < 1 && outlook->RED_band.high > 1));
    }
  }
  CHECK(plan.watch.front() == Watch{WatchKind::begin_gently});
  CHECK_FALSE(plan.cautions.empty());
  CHECK_FALSE(plan.sources.empty());
}

TEST_CASE("the plan's cautions are those of its mixtures, each once, and their sources are listed") {
  Job job = demo();
  const Plan plan = make_plan(job, shipped_catalogue());
  for (std::size_t i = 0; i < plan.cautions.size(); ++i)
    for (std::size_t k = i + 1; k < plan.cautions.size(); ++k) CHECK_FALSE(plan.cautions[i] == plan.cautions[k]);
  const auto gloves = [](const Caution& caution) { return caution.source == "mickelsen_hall_1987"; };
  CHECK(std::any_of(plan.cautions.begin(), plan.cautions.end(), gloves));
  CHECK(std::any_of(plan.sources.begin(), plan.sources.end(),
                    [](const Source& source) { return source.key == "mickelsen_hall_1987"; }));
}

TEST_CASE("a plan says which of its layers rest on stand-ins and on files only") {
  Job job = demo();
  Plan plan = make_plan(job, shipped_catalogue());
  CHECK(names(plan.weak_points, {WeakPointKind::sphere, 0}));
  CHECK(names(plan.weak_points, {WeakPointKind::found_otherwise, 0}));
  CHECK_FALSE(names(plan.weak_points, {WeakPointKind::not_examined, 0}));
  job.layers[0].found.clear();
  plan = make_plan(job, shipped_catalogue());
  CHECK(names(plan.weak_points, {WeakPointKind::not_examined, 0}));
  CHECK_FALSE(names(plan.weak_points, {WeakPointKind::found_otherwise, 0}));
  CHECK(plan.layers[0].basis == LayerBasis::recorded);
}

TEST_CASE("without a window there is no ladder, but both ways of coming near") {
  Job job = demo();
  job.limits.risk_limit = 0.01;
  const Plan plan = make_plan(job, shipped_catalogue());
  CHECK(plan.outcome == Outcome::no_window);
  CHECK(ladder_rungs(plan).empty());
  CHECK_FALSE(plan.nearest);  // isooctane alone is above 1 %
  REQUIRE(plan.least_risk_that_works);
  CHECK(plan.least_risk_that_works->effect >= job.limits.wanted_effect);
  CHECK(plan.least_risk_that_works->risk > job.limits.risk_limit);
  CHECK(plan.watch.front() == Watch{WatchKind::nothing_proposed});
  job.limits.risk_limit = 0.03;
  const Plan nearer = make_plan(job, shipped_catalogue());
  REQUIRE(nearer.nearest);
  CHECK(nearer.nearest->risk <= 0.03);
}

TEST_CASE("no margin is claimed where the paint is like the varnish or the varnish has cross-linked") {
  for (const Flag flag : {Flag::resinous, Flag::waxy, Flag::bituminous}) {
    Job job = demo();
    job.passages[1].suspected = {flag};
    const Plan plan = make_plan(job, shipped_catalogue());
    CHECK_FALSE(plan.margin_claimed);
    for (const JudgedMixture& rung : ladder_rungs(plan)) CHECK_FALSE(rung.margin_RED);
  }
  Job job = demo();
  job.layers[0].suspected = {Flag::cross_linked};
  CHECK_FALSE(make_plan(job, shipped_catalogue()).margin_claimed);
}

TEST_CASE("what is to be avoided is left off, with the reason") {
  Job job = demo();
  job.shelf.push_back({"toluene", "", {}});
  job.limits.avoid_families = {"ketone"};
  job.limits.avoid_solvents = {"ethyl acetate"};
  const Plan plan = make_plan(job, shipped_catalogue());
  CHECK(why_left_off(plan, "toluene") == LeftOff{LeftOffWhy::statement, "H361d"});
  CHECK(why_left_off(plan, "acetone") == LeftOff{LeftOffWhy::family});
  CHECK(why_left_off(plan, "ethyl_acetate") == LeftOff{LeftOffWhy::solvent});
  for (const JudgedMixture& rung : ladder_rungs(plan))
    for (const Part& part : rung.mixture.parts()) CHECK(part.liquid.solvent->family != "ketone");
}

TEST_CASE("unknown hazards can be refused, and are named when they are not") {
  // Two bottles that are needed together, one of them without a hazard record.
  const Solvent* unknown = nullptr;
  for (const Solvent& solvent : shipped_catalogue().solvents())
    if (!solvent.hazards && solvent.hansen && solvent.family == "ester" && !solvent.reference_only) unknown = &solvent;
  REQUIRE(unknown);
  Job job = demo();
  job.shelf = {{"isooctane", "", {}}, {unknown->id, "", {}}};
  const auto named = [](const Plan& plan) {
    std::vector<JudgedMixture> shown = ladder_rungs(plan);
    for (const auto& one : {plan.nearest, plan.least_risk_that_works})
      if (one) shown.push_back(*one);
    return std::any_of(shown.begin(), shown.end(),
                       [](const JudgedMixture& mixture) { return !mixture.hazards.without_record.empty(); });
  };
  CHECK(named(make_plan(job, shipped_catalogue())));
  job.limits.allow_unknown_hazards = false;
  const Shelf shelf = shelf_of(job, shipped_catalogue());
  const std::vector<JobBottle> left_off = bottles_left_off(shelf);
  CHECK(usable_liquids(shelf).size() == 1);
  REQUIRE(left_off.size() == 1);
  CHECK(left_off[0].left_off == LeftOff{LeftOffWhy::no_hazard_record});
  CHECK_FALSE(named(make_plan(job, shipped_catalogue())));
}

TEST_CASE("the order of the shelf does not change the plan") {
  Job job = demo();
  const Plan forward = make_plan(job, shipped_catalogue());
  std::reverse(job.shelf.begin(), job.shelf.end());
  const Plan backward = make_plan(job, shipped_catalogue());
  REQUIRE(forward.lines.size() == backward.lines.size());
  for (std::size_t line = 0; line < forward.lines.size(); ++line) {
    CHECK(forward.lines[line].bottles == backward.lines[line].bottles);
    const std::vector<JudgedMixture>& rungs = forward.lines[line].rungs;
    REQUIRE(rungs.size() == backward.lines[line].rungs.size());
    for (std::size_t i = 0; i < rungs.size(); ++i) {
      CHECK(to_text(rungs[i].mixture) == to_text(backward.lines[line].rungs[i].mixture));
      CHECK(rungs[i].effect == backward.lines[line].rungs[i].effect);
    }
  }
}

TEST_CASE("the demo's lines: two bottles each, a family each, even steps; no mixture of the plan stands twice") {
  const Plan plan = make_plan(demo(), shipped_catalogue());
  REQUIRE(plan.lines.size() == 3);
  std::vector<std::string> families;
  for (std::size_t line = 0; line < plan.lines.size(); ++line) {
    const LadderLine& one = plan.lines[line];
    CHECK(one.bottles.size() == 2);
    REQUIRE(one.active);
    CHECK(one.reason == (line == 0 ? LineReason::gives_up_least : LineReason::other_family));
    CHECK(std::count(families.begin(), families.end(), one.family) == 0);
    families.push_back(one.family);
    REQUIRE(one.active_percent.size() == one.rungs.size());
    REQUIRE(one.risk_given_up);
    CHECK(*one.risk_given_up >= 0);
    CHECK(one.rungs.back().effect >= plan.job.limits.wanted_effect);
    for (std::size_t i = 0; i < one.rungs.size(); ++i) {
      CHECK(one.rungs[i].origin == Origin{OriginKind::rung, static_cast<int>(i + 1), 0, static_cast<int>(line + 1)});
      CHECK(one.active_percent[i] == static_cast<int>(i) * one.step_percent);
    }
  }
  std::vector<std::string> recipes;
  for (const JudgedMixture* mixture : planned_mixtures(plan)) {
    CHECK(std::count(recipes.begin(), recipes.end(), to_text(mixture->mixture)) == 0);
    recipes.push_back(to_text(mixture->mixture));
  }
  for (const LadderLine& line : plan.lines)
    for (const JudgedMixture& rung : line.rungs)
      CHECK(std::count(recipes.begin(), recipes.end(), to_text(rung.mixture)) == 1);
  CHECK(ladder_mixtures(plan).size() == plan.lines.front().rungs.size());
}

TEST_CASE("where no line works the walk over the best of the whole shelf is the ladder, and asked for it is so too") {
  Job job = demo();
  job.limits.lines = 0;
  const Plan walk = make_plan(job, shipped_catalogue());
  REQUIRE(walk.lines.size() == 1);
  CHECK(walk.lines.front().reason == LineReason::frontier);
  CHECK(ladder_bottles(walk) == std::vector<std::string>{"ethanol 96 %", "ethyl acetate", "isooctane"});
  // A wax to keep lies nearest to the hydrocarbon itself, so every line would lead away from it.
  job.limits.lines = 3;
  Layer wax;
  wax.name = "wax";
  wax.found = "beeswax";
  job.layers.push_back(wax);
  const Plan plan = make_plan(job, shipped_catalogue());
  REQUIRE(plan.outcome == Outcome::window);
  CHECK(plan.lines.front().reason == LineReason::frontier);
  CHECK_FALSE(plan.lines.front().active);
  CHECK(plan.lines.size() <= 3);
  for (std::size_t line = 1; line < plan.lines.size(); ++line)
    CHECK(plan.lines[line].rungs.back().effect >= job.limits.wanted_effect / 2);
}

TEST_CASE("where one share alone works nobody is sent there in one step") {
  Job job = demo();
  job.limits.risk_limit = 0.08;  // of the way to 55 % of acetone only the end works
  const Plan plan = make_plan(job, shipped_catalogue());
  const std::vector<int>& percent = plan.lines.at(0).active_percent;
  REQUIRE(percent.size() >= 4);
  for (std::size_t i = 1; i < percent.size(); ++i) CHECK(percent[i] - percent[i - 1] <= 10);
  CHECK(*ladder_rungs(plan).back().effect >= job.limits.wanted_effect);
}

TEST_CASE("a higher limit is told where there is no window, by a plan that has that limit") {
  Job job = demo();
  job.limits.risk_limit = 0.05;
  const Plan closed = make_plan(job, shipped_catalogue());
  REQUIRE(closed.at_higher_limit);
  job.limits.risk_limit = closed.at_higher_limit->risk_limit;
  CHECK(job.limits.risk_limit == 0.15);
  const Plan open = make_plan(job, shipped_catalogue());
  CHECK(static_cast<int>(ladder_rungs(open).size()) == closed.at_higher_limit->rungs);
  CHECK(*ladder_rungs(open).back().effect == closed.at_higher_limit->strongest_effect);
  CHECK_FALSE(make_plan(demo(), shipped_catalogue()).at_higher_limit);  // rungs enough
}

TEST_CASE("a passage with a material of its own is kept like a layer") {
  Job job = demo();
  job.passages.push_back({"glaze", "oil paint", "oil_resin_glaze", {}, "", {}});
  const Plan plan = make_plan(job, shipped_catalogue());
  REQUIRE(plan.layers.size() == 3);
  CHECK(plan.layers[2].name == "glaze");
  CHECK(plan.layers[2].role == Role::keep);
  CHECK(plan.layers[2].basis == LayerBasis::passage);
  CHECK(plan.layers[2].passage_of == "oil paint");
}

TEST_CASE("own tests win over the catalogue") {
  Job job = demo();
  job.layers[1].own_sphere = OwnSphere{{{{18, 10, 9}, 4}, {0.3, 0.5, 0.5}, 0.3}, "tests on a sample"};
  const Plan plan = make_plan(job, shipped_catalogue());
  CHECK(plan.layers[1].basis == LayerBasis::own_tests);
  CHECK(plan.layers[1].sphere->mean.R0 == 4);
  CHECK(ladder_rungs(plan).back().effect > ladder_rungs(make_plan(demo(), shipped_catalogue())).back().effect);
}

TEST_CASE("a shelf of 30 liquids in three parts is planned") {
  Job job = demo();
  job.shelf.clear();
  for (const Solvent& solvent : shipped_catalogue().solvents())
    if (solvent.hansen && !solvent.reference_only && job.shelf.size() < 30) job.shelf.push_back({solvent.id, "", {}});
  REQUIRE(job.shelf.size() == 30);
  const Plan plan = make_plan(job, shipped_catalogue());
  CHECK(plan.mixtures_judged > 500000);
  CHECK((plan.outcome == Outcome::no_window || !ladder_rungs(plan).empty()));
}

TEST_CASE("a target that is not there is named with the nearest one") {
  try {
    make_plan(demo(), shipped_catalogue(), "varnsh");
    FAIL("no fault");
  } catch (const InputError& error) {
    CHECK(error.kind() == Fault::usage);
    CHECK(render(error.faults()).find("did you mean \"varnish\"?") != std::string::npos);
  }
}
