#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/plan/check_job.hpp"
#include "io/job_file.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

TEST_CASE("the demo and the template load without fault") {
  const Job demo = load_job(demo_job_text(), "demo", shipped_catalogue());
  CHECK(demo.layers.size() >= 2);
  CHECK(demo.layers.front().role == Role::remove);
  CHECK(demo.shelf.size() >= 5);
  const Job fresh = load_job(job_template(), "template", shipped_catalogue());
  CHECK(fresh.layers.size() == 2);
  CHECK(fresh.limits.parts == 3);
}

TEST_CASE("every key of a job reaches the record") {
  const char* text = R"(gentlest_job: 1
object: {title: "T", owner_number: "7", width_cm: 62.5, height_cm: 48, paint_age_years: 150, note: "n"}
layers:
  - name: varnish
    role: remove
    recorded: mastic_aged
    found: dammar_aged
    suspected: [cross_linked]
    possible: [{material: sandarac, percent: 25}]
    light: uv_filtered
    years: 40
    note: "green"
  - name: paint
    role: keep
    own_sphere: {dD: 18, dP: 6, dH: 9, R0: 8, sd_dD: 0.8, sd_dP: 1.5, sd_dH: 1.5, sd_R0: 1, source: "own tests"}
passages:
  - {name: red glaze, of: paint, material: oil_resin_glaze, suspected: [resinous], note: "thin"}
shelf:
  - isooctane
  - {solvent: ethanol, grade: "96 %"}
examination:
  flaking: no
  glazes: {answer: somewhere, where: [red glaze], note: "microscope"}
series:
  - {name: ours, mixtures: ["isooctane 100"]}
grades: {"++": fully removed}
afterwards:
  - {put_on: dammar_fresh, as: varnish, in: turpentine, light: strong, years: 12.5}
limits:
  parts: 2
  bottles: 4
  step_percent: 10
  rungs: 5
  lines: 2
  risk_limit: 0.2
  wanted_effect: 0.4
  effect_grade: 1
  risk_grade: 3
  avoid_families: [ketone]
  avoid_statements: [H360]
  avoid_solvents: [acetone]
  allow_acting: [ethanol]
  exactly: [isooctane]
  lowest_flash_point_C: -5
  avoid_label: [H304]
  allow_unknown_hazards: false
  allow_splitting: true
  allow_drift: true
  prefer_healthier: true
  edge_tests: 3
  vial_mL: 20
  measure_mL: 0.25
  room_C: 22
)";
  const Job job = load_job(text, "job.yaml", shipped_catalogue());
  CHECK(job.object.title == "T");
  CHECK(job.object.width->value == 62.5);
  CHECK(*job.object.paint_age_years == 150);
  REQUIRE(job.layers.size() == 2);
  CHECK(job.layers[0].found == "dammar_aged");
  CHECK(job.layers[0].suspected == std::vector<Flag>{Flag::cross_linked});
  CHECK(job.layers[0].where.line == 7);
  CHECK(job.layers[0].recorded_where.line == 6);
  REQUIRE(job.examination.size() == 2);
  CHECK(job.examination[0] == Finding{"flaking", "no", {}, {}, {}});
  CHECK(job.examination[1] == Finding{"glazes", "somewhere", {"red glaze"}, "microscope", {}});
  CHECK(job.series.size() == 1);
  CHECK(job.grades.removal.at("++") == "fully removed");
  CHECK(job.layers[0].light == Light::uv_filtered);
  CHECK(job.layers[0].years == 40);
  CHECK(job.layers[1].light == Light::not_told);
  REQUIRE(job.afterwards.size() == 1);
  CHECK(job.afterwards[0] == ProposedCoat{"dammar_fresh", FinishUse::varnish, "turpentine", Light::strong, 12.5, {}});
  CHECK(job.layers[0].possible == std::vector<PossibleMaterial>{{"sandarac", 25, {}}});
  REQUIRE(job.layers[1].own_sphere);
  CHECK(job.layers[1].own_sphere->sphere.mean == Sphere{{18, 6, 9}, 8});
  CHECK(job.layers[1].own_sphere->sphere.sd == Hansen{0.8, 1.5, 1.5});
  CHECK(job.passages.at(0).material == "oil_resin_glaze");
  CHECK(job.shelf.at(1).grade == "96 %");
  CHECK(job.limits.parts == 2);
  CHECK(job.limits.bottles == 4);
  CHECK(job.limits.step_percent == 10);
  CHECK(job.limits.rungs == 5);
  CHECK(job.limits.risk_limit == 0.2);
  CHECK(job.limits.wanted_effect == 0.4);
  CHECK(job.limits.effect_grade == 1);
  CHECK(job.limits.risk_grade == 3);
  CHECK(job.limits.avoid_families == std::vector<std::string>{"ketone"});
  CHECK(job.limits.avoid_statements == std::vector<std::string>{"H360"});
  CHECK(job.limits.avoid_solvents == std::vector<std::string>{"acetone"});
  CHECK(job.limits.allow_acting == std::vector<std::string>{"ethanol"});
  CHECK_FALSE(job.limits.allow_unknown_hazards);
  CHECK(job.limits.lowest_flash_point_C == -5.0);
  CHECK(job.limits.avoid_label == std::vector<std::string>{"H304"});
  CHECK(job.limits.allow_splitting);
  CHECK(job.limits.allow_drift);
  CHECK(job.limits.prefer_healthier);
  CHECK(job.limits.edge_tests == 3);
  CHECK(job.limits.vial_mL == 20);
  CHECK(job.limits.measure_mL == 0.25);
  CHECK(job.limits.room_C == 22);
  for (const Limit& limit : all_limits()) {
    INFO(limit.key);  // named above with a value of its own
    CHECK(std::visit([&](auto member) { return job.limits.*member != Limits().*member; }, limit.member));
  }
  CHECK(check_job(job, shipped_catalogue()).empty());
}

TEST_CASE("what a layer may be else is checked as a whole") {
  Job job = load_job(demo_job_text(), "demo", shipped_catalogue());
  const auto faults = [&](std::vector<PossibleMaterial> possible) {
    job.layers[0].possible = std::move(possible);
    return check_job(job, shipped_catalogue());
  };
  CHECK(faults({{"sandarac", 25, {}}, {"rosin", 74, {}}}).empty());
  CHECK(faults({{"sandrac", 25, {}}}).at(0).remedy == "did you mean \"sandarac\"?");
  CHECK(faults({{"copal_hard", 25, {}}}).empty());  // it has no sphere: named, not weighed
  CHECK(faults({{"dammar_aged", 25, {}}}).at(0).message.find("twice") != std::string::npos);
  CHECK(faults({{"sandarac", 50, {}}, {"rosin", 50, {}}}).at(0).message.find("100 %") != std::string::npos);
  CHECK(faults({{"sandarac", 0, {}}}).size() == 1);
}

TEST_CASE("two jobs that say the same are equal wherever their lines stand") {
  const std::string text = demo_job_text();
  const Job moved = load_job("# moved\n\n" + text, "a.yaml", shipped_catalogue());
  CHECK(load_job(text, "a.yaml", shipped_catalogue()).layers == moved.layers);
}

TEST_CASE("an unknown name is told at its own line, of what the files say as of what was found") {
  const std::string text =
      "gentlest_job: 1\nlayers:\n  - name: varnish\n    role: remove\n    recorded: mastik_aged\n    found: "
      "dammar_aged\n  - {name: paint, role: keep, found: oil_paint_old}\nshelf: [isooctane]\n";
  try {
    load_job(text, "job.yaml", shipped_catalogue());
    FAIL("it was taken");
  } catch (const InputError& error) {
    REQUIRE(error.faults().size() == 1);
    CHECK(error.faults()[0].where.line == 5);
  }
}
