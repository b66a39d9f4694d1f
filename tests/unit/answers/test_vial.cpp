// Fate of a mixture inside a plan, and the study of one vial.
#include "gentlest/answers/vial.hpp"
#include "gentlest/liquids/notation.hpp"

#include "shipped_mixtures.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include "report/bottle/liquid_words.hpp"

#include <algorithm>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Job demo_job() {
  return load_job(demo_job_text(), "demo", shipped_catalogue());
}

Job with_shelf(std::vector<ShelfBottle> shelf, double risk_limit) {
  Job job = demo_job();
  job.shelf = std::move(shelf);
  job.limits.risk_limit = risk_limit;
  job.limits.wanted_effect = 0.1;
  job.limits.step_percent = 10;
  return job;
}

VialStudy study(const std::string& text, const Job& job) {
  return study_vial(mixture_from(text), planned_layers(job, shipped_catalogue()), job, shipped_catalogue());
}

template <class Holds>
bool any_rung(const Plan& plan, Holds holds) {
  return std::any_of(ladder_rungs(plan).begin(), ladder_rungs(plan).end(), holds);
}

}  // namespace

TEST_CASE("mixtures that part are proposed only when the job allows them") {
  Job job = with_shelf({{"ethanol", "90 %", {}}, {"white spirit", "", {}}}, 0.9);
  const auto parts = [](const JudgedMixture& rung) { return rung.fate.phases.phases == Phases::two_liquids; };
  CHECK_FALSE(any_rung(make_plan(job, shipped_catalogue()), parts));
  job.limits.allow_splitting = true;
  CHECK(any_rung(make_plan(job, shipped_catalogue()), parts));
}

TEST_CASE("mixtures whose risk passes the limit while they dry are proposed only when the job allows them") {
  // The gentle part leaves first, the strong one stays.
  Job job = with_shelf({{"isooctane", "", {}}, {"n-butyl acetate", "", {}}, {"ethanol", "absolute", {}}}, 0.25);
  const auto drifts = [&](const JudgedMixture& rung) { return drifts_beyond(rung.fate, job.limits.risk_limit); };
  const Plan careful = make_plan(job, shipped_catalogue());
  CHECK_FALSE(any_rung(careful, drifts));
  for (const JudgedMixture& rung : ladder_rungs(careful)) CHECK(rung.fate.risk.worst <= job.limits.risk_limit + 1e-6);
  job.limits.allow_drift = true;
  CHECK(any_rung(make_plan(job, shipped_catalogue()), drifts));
}

TEST_CASE("the risk at the start of a drift is the risk of the mixture") {
  const Job job = demo_job();
  for (const char* text : {"isooctane 70, ethanol 96 % 30", "acetone 20, white spirit 80", "isopropanol 100"}) {
    INFO(text);
    const JudgedMixture judged =
        judge_mixture(mixture_from(text), planned_layers(job, shipped_catalogue()), job.limits, shipped_catalogue());
    REQUIRE(judged.fate.drift);
    CHECK(judged.fate.risk.at_start == near(*judged.risk, 1e-3));
    CHECK(judged.fate.risk.worst >= judged.fate.risk.at_start);
  }
}

TEST_CASE("a vial in half millilitres: what is measured is judged when rounding changes it") {
  Job job = demo_job();
  const VialStudy exact = study("isooctane 85, isopropanol 15", job);
  CHECK_FALSE(exact.as_measured);
  CHECK(recipe_words(exact.recipe) == "isooctane 8.5 mL + isopropanol 1.5 mL");
  job.limits.vial_mL = 5;
  const VialStudy rounded = study("isooctane 85, isopropanol 15", job);
  REQUIRE(rounded.as_measured);
  CHECK(to_text(rounded.as_measured->mixture) == "isooctane 90, isopropanol 10");
  CHECK(rounded.as_measured->effect < rounded.judged.effect);
}

TEST_CASE("a study of one vial holds label, fire, air, cautions and gentler mixtures, each with sources") {
  const Job job = demo_job();
  const VialStudy one = study("toluene 50, isooctane 50", job);
  CHECK(one.label.signal_word == "Danger");
  REQUIRE(one.flash.estimate);
  CHECK(one.flash.estimate->value < 4);
  CHECK(one.lower_explosive_limit_percent);
  CHECK(one.start_of_boiling);
  CHECK_FALSE(one.vapour_hazards.empty());
  CHECK_FALSE(one.exposure.empty());
  CHECK_FALSE(one.cautions.empty());
  CHECK(one.gentler.found.size() == one.gentler_judged.size());
  for (const Substitute& gentler : one.gentler.found) CHECK(gentler.severity < one.gentler.severity);
  CHECK(one.sources.size() > 5);
}

TEST_CASE("where figures are missing the study says so and guesses nothing") {
  const VialStudy one = study("1-propoxy-2-propanol 50, isooctane 50", demo_job());
  CHECK_FALSE(one.judged.fate.drift);
  CHECK_FALSE(one.judged.fate.drift_missing.empty());
  CHECK_FALSE(one.flash.estimate);
  CHECK_FALSE(one.label.complete());
}
