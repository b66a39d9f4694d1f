// Limits on flash point, label and shares that enter the search.
#include "core/plan/proposal.hpp"

#include "shipped_mixtures.hpp"

#include "gentlest/answers/progress.hpp"
#include "gentlest/plan/plan.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Job proposed_demo() {
  Job job = load_job(demo_job_text(), "demo", shipped_catalogue());
  job.limits.step_percent = 10;
  return job;
}

ShelfBottle& bottle(Job& job, const std::string& solvent) {
  return *std::find_if(job.shelf.begin(), job.shelf.end(),
                       [&](const ShelfBottle& one) { return one.solvent == solvent; });
}

// Every mixture that a plan shows keeps to the property.
template <class Holds>
bool all_shown(const Plan& plan, Holds holds) {
  const auto check = [&](const std::optional<JudgedMixture>& one) { return !one || holds(one->mixture); };
  return check(plan.nearest) && check(plan.least_risk_that_works) &&
         std::all_of(ladder_rungs(plan).begin(), ladder_rungs(plan).end(),
                     [&](const JudgedMixture& rung) { return holds(rung.mixture); });
}

double share_of(const Mixture& mixture, const std::string& id) {
  double share = 0;
  for (const Part& part : mixture.parts())
    if (part.liquid.solvent->id == id) share += part.fraction;
  return share;
}

bool flashes_below(const Mixture& mixture, double limit_C) {
  const FlashPoint flash = flash_point(mixture, shipped_catalogue());
  return flash.estimate && flash.estimate->value < limit_C;
}

bool carries(const Mixture& mixture, const std::string& code) {
  const MixtureLabel label = label_of(mixture, shipped_catalogue());
  return std::any_of(label.statements.begin(), label.statements.end(),
                     [&](const LabelStatement& statement) { return statement.code == code; });
}

// What nothing beats, by judging every mixture that the limits let pass, with no search at all.
std::vector<double> effects_by_trying_all(const Job& job) {
  const Catalogue& catalogue = shipped_catalogue();
  SearchTask task;
  task.shelf = usable_liquids(shelf_of(job, catalogue));
  task.step_percent = job.limits.step_percent;
  std::vector<std::uint16_t> all(task.shelf.size());
  for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<std::uint16_t>(i);
  std::vector<Verdict> verdicts;
  const std::vector<PlannedLayer> layers = planned_layers(job, catalogue);
  for_each_composition(all, job.limits.parts, 100 / task.step_percent, [&](const Composition& composition) {
    const Mixture mixture = mixture_of(task, composition);
    if (flashes_below(mixture, job.limits.lowest_flash_point_C.value_or(-300))) return;
    for (const std::string& code : job.limits.avoid_label)
      if (carries(mixture, code)) return;
    for (const ShelfBottle& one : job.shelf)
      if (100 * share_of(mixture, one.solvent) > one.at_most_percent + 1e-9) return;
    const JudgedMixture judged = judge_mixture(mixture, layers, job.limits, catalogue);
    verdicts.push_back({*judged.effect, *judged.risk, -1});
  });
  std::vector<double> effects;
  std::sort(verdicts.begin(), verdicts.end(), [](const Verdict& a, const Verdict& b) {
    return a.risk != b.risk ? a.risk < b.risk : a.effect > b.effect;
  });
  for (const Verdict& verdict : verdicts)
    if (effects.empty() || verdict.effect > effects.back() + 1e-6) effects.push_back(verdict.effect);
  return effects;
}

}  // namespace

TEST_CASE("no mixture holds more of a bottle than the job says") {
  Job job = proposed_demo();
  job.limits.lines = 0;
  const auto few = [](const Mixture& mixture) { return share_of(mixture, "ethyl_acetate") <= 0.1 + 1e-9; };
  REQUIRE_FALSE(all_shown(make_plan(job, shipped_catalogue()), few));
  bottle(job, "ethyl_acetate").at_most_percent = 15;  // 10 % is the largest multiple of the step
  CHECK(all_shown(make_plan(job, shipped_catalogue()), few));
}

TEST_CASE("no mixture flashes below the limit, and the label of none carries what is to be avoided") {
  Job job = proposed_demo();
  const auto cool = [](const Mixture& mixture) { return !flashes_below(mixture, 15); };
  const auto clean = [](const Mixture& mixture) { return !carries(mixture, "H304"); };
  const Plan free = make_plan(job, shipped_catalogue());
  REQUIRE_FALSE(all_shown(free, cool));
  REQUIRE_FALSE(all_shown(free, clean));
  job.limits.lowest_flash_point_C = 15;
  CHECK(all_shown(make_plan(job, shipped_catalogue()), cool));
  job.limits.lowest_flash_point_C.reset();
  job.limits.avoid_label = {"H304"};
  const Plan avoiding = make_plan(job, shipped_catalogue());
  CHECK(all_shown(avoiding, clean));
  CHECK((avoiding.nearest || !ladder_rungs(avoiding).empty()));
}

TEST_CASE("under all these limits together the search misses nothing that trying every mixture finds") {
  Job job = proposed_demo();
  job.shelf = {{"white_spirit_dearomatised", "", {}},
               {"isooctane", "", {}},
               {"methoxypropanol", "", {}},
               {"diacetone_alcohol", "", {}}};
  job.limits.parts = 2;
  job.limits.step_percent = 5;
  job.limits.allow_splitting = job.limits.allow_drift = true;
  const std::size_t without_limits = make_plan(job, shipped_catalogue()).frontier.size();
  job.limits.lowest_flash_point_C = 5;
  job.limits.avoid_label = {"H319"};
  bottle(job, "white_spirit_dearomatised").at_most_percent = 80;
  const std::vector<double> expected = effects_by_trying_all(job);
  const Plan plan = make_plan(job, shipped_catalogue());
  REQUIRE(expected.size() > 1);
  CHECK(plan.frontier.size() != without_limits);
  REQUIRE(plan.frontier.size() == expected.size());
  for (std::size_t i = 0; i < expected.size(); ++i) CHECK(plan.frontier[i].effect == near(expected[i], 1e-3));
}

TEST_CASE("what is not known breaks a limit, unless unknown hazards are allowed") {
  Limits limits;
  const Mixture unknown = mixture_from("1-propoxy-2-propanol 50, isooctane 50");
  REQUIRE_FALSE(flash_point(unknown, shipped_catalogue()).estimate);
  REQUIRE_FALSE(label_of(unknown, shipped_catalogue()).complete());
  CHECK(keeps_hazard_limits(unknown, limits, shipped_catalogue()));
  limits.allow_unknown_hazards = false;
  CHECK(keeps_hazard_limits(unknown, limits, shipped_catalogue()));  // nothing was asked
  limits.lowest_flash_point_C = -50;
  CHECK_FALSE(keeps_hazard_limits(unknown, limits, shipped_catalogue()));
  limits.lowest_flash_point_C.reset();
  limits.avoid_label = {"H350"};
  CHECK_FALSE(keeps_hazard_limits(unknown, limits, shipped_catalogue()));
  limits.allow_unknown_hazards = true;
  limits.lowest_flash_point_C = -50;
  CHECK(keeps_hazard_limits(unknown, limits, shipped_catalogue()));
}

TEST_CASE("a liquid that does not burn keeps any limit on the flash point") {
  Limits limits;
  limits.allow_unknown_hazards = false;
  limits.lowest_flash_point_C = 100;
  CHECK(keeps_hazard_limits(mixture_from("water 100"), limits, shipped_catalogue()));
  CHECK_FALSE(keeps_hazard_limits(mixture_from("isooctane 100"), limits, shipped_catalogue()));
}

TEST_CASE("a code to be avoided stands for all that begin with it") {
  Limits limits;
  limits.avoid_label = {"H361"};
  CHECK_FALSE(keeps_hazard_limits(mixture_from("toluene 50, isooctane 50"), limits, shipped_catalogue()));
  // Below 3 % of toluene the rules leave the statement off the label.
  CHECK(keeps_hazard_limits(mixture_from("toluene 1, isooctane 99"), limits, shipped_catalogue()));
}

TEST_CASE("a flame that only the flash point tells is avoided like a recorded one") {
  Limits limits;
  limits.avoid_label = {"H226"};
  const Mixture spirit = mixture_from("white_spirit_dearomatised 100");  // 38 C; its record names no flammable class
  CHECK_FALSE(keeps_hazard_limits(spirit, limits, shipped_catalogue()));
  limits.avoid_label.clear();
  limits.avoid_statements = {"H226"};
  CHECK(reason_to_leave_off(*spirit.parts()[0].liquid.solvent, limits, shipped_catalogue()) ==
        LeftOff{LeftOffWhy::statement, "H226"});
}

TEST_CASE("where no bottle is limited there are no largest shares") {
  Job job = proposed_demo();
  const std::vector<Liquid> shelf = usable_liquids(shelf_of(job, shipped_catalogue()));
  CHECK(largest_shares(shelf, job, shipped_catalogue()).empty());
  bottle(job, "ethanol").at_most_percent = 30;  // its grade is part of the label
  const std::vector<int> shares = largest_shares(shelf, job, shipped_catalogue());
  REQUIRE(shares.size() == shelf.size());
  for (std::size_t i = 0; i < shelf.size(); ++i) CHECK(shares[i] == (shelf[i].solvent->id == "ethanol" ? 30 : 100));
}

TEST_CASE("a vial that cannot hold the job's parts is refused before the search") {
  Job job = proposed_demo();
  job.limits.vial_mL = 1;
  CHECK_THROWS_AS(make_plan(job, shipped_catalogue()), InputError);
  job.limits.parts = 2;
  CHECK_NOTHROW(make_plan(job, shipped_catalogue()));
}

TEST_CASE("a plan names what its bottles part from, and the grade that would not") {
  Job job = load_job(demo_job_text(), "demo", shipped_catalogue());
  job.shelf = {{"ethanol", "96 %", {}}, {"isooctane", "", {}}, {"toluene", "", {}}};
  const std::vector<Liquid> shelf = usable_liquids(shelf_of(job, shipped_catalogue()));
  const std::vector<PartingPair> pairs =
      parting_pairs(shelf, job.limits.step_percent, Celsius{job.limits.room_C}, shipped_catalogue());
  REQUIRE(pairs.size() == 1);  // toluene bears it
  CHECK(pairs[0].bottle == "ethanol 96 %");
  CHECK(pairs[0].other == "isooctane");
  CHECK(pairs[0].from_percent == 5);
  CHECK(pairs[0].to_percent >= 30);  // tests/published/tables/verdicts_ethanol96.csv
  CHECK(pairs[0].to_percent < 40);
  CHECK(pairs[0].basis == PhasesBasis::corrected);
  REQUIRE(pairs[0].stays_one_liquid);
  // What it names does stay one liquid, and one per cent less does not.
  const auto parts = [&](const std::string& grade) {
    for (int percent = pairs[0].from_percent; percent <= pairs[0].to_percent; percent += 5) {
      const Mixture mixture({{make_liquid(*shelf[0].solvent, grade, shipped_catalogue()), percent / 100.0},
                             {shelf[1], 1 - percent / 100.0}});
      if (phases_of(mixture, shipped_catalogue()).phases != Phases::one_liquid) return true;
    }
    return false;
  };
  CHECK(pairs[0].stays_one_liquid == std::optional<std::string>("ethanol 99 %"));
  CHECK_FALSE(parts("99 %"));
  CHECK(parts("98 %"));
}
