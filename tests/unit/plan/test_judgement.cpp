// The search and what is printed judge alike: deviations of liquids, tiny spheres, numbers at a limit.
#include "oracle/chance_reference.hpp"
#include "shipped.hpp"

#include "gentlest/answers/progress.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/plan.hpp"
#include "io/catalogue_files.hpp"
#include "io/job_file.hpp"
#include "report/phrases/words.hpp"
#include "report/plans/plan_report.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

Job judged_demo(const Catalogue& catalogue = shipped_catalogue()) {
  return load_job(demo_job_text(), "demo", catalogue);
}

bool names_point(const std::vector<WeakPoint>& points, const WeakPoint& point) {
  return std::find(points.begin(), points.end(), point) != points.end();
}

// The shipped catalogue with a deviation of acetone's own parameters.
const Catalogue& with_deviation() {
  static const Catalogue catalogue = [] {
    std::vector<NamedText> files = test::shipped_files();
    for (NamedText& file : files) {
      const std::size_t at = file.text.find("  - id: acetone\n");
      if (at == std::string::npos) continue;
      file.text.insert(file.text.find("    cas:", at),
                       "    hansen_sd: {value: [0.8, 1.5, 1.5], source: alshehri_2022, standing: measured}\n");
    }
    return read_catalogue(files);
  }();
  return catalogue;
}

}  // namespace

TEST_CASE("no rung exceeds the limit and the last one works, though a liquid's own figures are uncertain") {
  REQUIRE(with_deviation().find_solvent("acetone")->hansen_sd.has_value());
  Job job = judged_demo(with_deviation());
  for (const double limit : {0.1, 0.15, 0.2, 0.25, 0.3}) {
    job.limits.risk_limit = limit;
    const Plan plan = make_plan(job, with_deviation());
    for (const JudgedMixture& rung : ladder_rungs(plan)) CHECK(rung.risk <= limit);
    CHECK(names_point(plan.weak_points, {WeakPointKind::liquids_vary, 0}));
    CHECK(plan.layers[0].liquid_sd == Hansen{0.8, 1.5, 1.5});
    if (plan.outcome == Outcome::window) CHECK(ladder_rungs(plan).back().effect >= job.limits.wanted_effect);
    // A rung asked about alone is judged as on the ladder.
    for (const JudgedMixture& rung : ladder_rungs(plan)) {
      const JudgedMixture alone = judge_mixture(rung.mixture, plan.layers, job.limits, with_deviation());
      CHECK(std::abs(*alone.risk - *rung.risk) < 2e-4);
      CHECK(std::abs(*alone.effect - *rung.effect) < 2e-4);
      CHECK(std::abs(alone.outlooks[0]->RED_band.high - rung.outlooks[0]->RED_band.high) < 1e-9);
    }
  }
}

TEST_CASE("what is not known of the liquids widens every layer alike, on the ladder and for the next test") {
  const PlannedLayer plain = planned_layers(judged_demo(), shipped_catalogue()).front();
  const PlannedLayer wide = planned_layers(judged_demo(with_deviation()), with_deviation()).front();
  CHECK(wide.sphere == plain.sphere);
  CHECK(met_by_liquids(plain) == plain.sphere);
  CHECK(met_by_liquids(wide).sd.dP == Approx(std::hypot(plain.sphere->sd.dP, 1.5)));
  CHECK(met_by_liquids(wide).sd.dD == Approx(std::hypot(plain.sphere->sd.dD, 0.8)));
  const JudgedMixture judged =
      judge_mixture(parse_mixture("isooctane 70, acetone 30", with_deviation()), {wide}, Limits(), with_deviation());
  const UncertainSphere met = met_by_liquids(wide);
  CHECK(judged.outlooks[0]->RED_band == RED_band(judged.point, met, wide.reach));
  const double exact = test::chance_by_sums(judged.point, {met, wide.response, Limits().effect_grade, wide.reach});
  CHECK(std::abs(judged.outlooks[0]->chance - exact) < 2e-4);
  const Progress progress =
      follow_readings(make_plan(judged_demo(with_deviation()), with_deviation()), with_deviation(), {});
  CHECK(progress.task.target->prior().hypotheses.front().sphere.sd == met_by_liquids(wide).sd);
  // Off the shelf it does not count, unless a mixture holds it.
  Job job = judged_demo(with_deviation());
  std::erase_if(job.shelf, [](const ShelfBottle& bottle) { return bottle.solvent == "acetone"; });
  const PlannedLayer without = planned_layers(job, with_deviation()).front();
  CHECK(met_by_liquids(without) == without.sphere);
  const std::vector<Liquid> acetone = {make_liquid(*with_deviation().find_solvent("acetone"), "", with_deviation())};
  CHECK(met_by_liquids(without, acetone).sd == met_by_liquids(wide).sd);
}

TEST_CASE("an own sphere, however small and sure, is planned with bounded tables") {
  for (const double R0 : {0.1, 0.7, 1.4}) {
    Job job = judged_demo();
    job.layers[0].own_sphere = OwnSphere{{{{16.5, 4.2, 5.1}, R0}, {0, 0, 0}, 0}, "mine"};
    const Plan plan = make_plan(job, shipped_catalogue());
    CHECK(plan.mixtures_judged > 1000);
    CHECK(met_by_liquids(plan.layers[0]).sd == best_known_sd);
    CHECK(plan.layers[0].sphere->sd == Hansen{0, 0, 0});
    CHECK(names_point(plan.weak_points, {WeakPointKind::surer_than_liquids, 0}));
    CHECK_FALSE(names_point(plan.weak_points, {WeakPointKind::sphere, 0}));
  }
}

TEST_CASE("of the user's own tests nothing is said to be published") {
  Job job = judged_demo();
  job.layers[0].own_sphere = OwnSphere{{{{17, 6, 9}, 8}, {0.5, 1, 1}, 1}, "swatches, May"};
  const PlannedLayer own = planned_layers(job, shipped_catalogue()).front();
  CHECK(own.basis == LayerBasis::own_tests);
  CHECK(sphere_in_words(own) == "your own tests: swatches, May");
  const PlannedLayer other = planned_layers(judged_demo(), shipped_catalogue()).front();
  CHECK(other.basis == LayerBasis::found);
  CHECK(sphere_in_words(other).find("stand-in, fitted to") != std::string::npos);
  Job resol = judged_demo();
  resol.layers[0].found = "phenolic_resol";  // published, and nothing was seen of it
  const PlannedLayer published = planned_layers(resol, shipped_catalogue()).front();
  CHECK(sphere_in_words(published).find(grade_in_words(published.grade)) != std::string::npos);
}

TEST_CASE("a liquid that cannot drift is worst where it begins, whatever the last bit says") {
  const Plan plan = make_plan(judged_demo(), shipped_catalogue());
  for (const Liquid& liquid : plan.shelf) {
    const JudgedMixture judged =
        judge_mixture(Mixture({{liquid, 1}}), plan.layers, plan.job.limits, shipped_catalogue());
    if (!judged.fate.drift || liquid.water_fraction > 0) continue;
    INFO(liquid.label);
    CHECK(judged.fate.risk.worst_at == 0);
  }
  // The same sum with noise in its last bits.
  Drift drift;
  for (int i = 0; i <= 9; ++i) drift.path.push_back({});
  for (std::size_t i = 0; i < drift.path.size(); ++i) drift.path[i].evaporated = 0.1 * static_cast<double>(i);
  int call = 0;
  const DriftRisk risk = judge_drift(
      drift, [&](const Hansen&) { return 0.3 + 1e-16 * (call++ % 3 == 1 ? 1 : 0); }, 0.5);
  CHECK(risk.worst_at == 0);
  CHECK(risk.worst == Approx(0.3));
}
