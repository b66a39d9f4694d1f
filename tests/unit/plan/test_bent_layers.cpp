// Layers whose figures are known together, that observations bend, or that swell and never dissolve: judged by all of
// it, in search and print alike.
#include "near.hpp"
#include "oracle/chance_reference.hpp"
#include "shipped.hpp"

#include "gentlest/answers/observed.hpp"
#include "gentlest/answers/progress.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/plan/plan.hpp"
#include "io/catalogue_files.hpp"
#include "io/job_file.hpp"
#include "report/charts/charts.hpp"
#include "report/phrases/judged.hpp"
#include "report/ranges/range_outline.hpp"
#include "report/ranges/shadow.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

Job demo(const Catalogue& catalogue) {
  return load_job(demo_job_text(), "demo", catalogue);
}

UncertainSphere& sphere_of(PlannedLayer& layer) {
  return *layer.sphere;
}

const LocalReach bent = {{{{15.8, 6, 11}, 0.4}, {{15.5, 7, 4}, -0.3}}, 3};

// The demo's varnish, round and its figures independent, whatever observations make of it.
PlannedLayer plain_layer() {
  PlannedLayer layer = planned_layers(demo(shipped_catalogue()), shipped_catalogue()).front();
  sphere_of(layer).shared = {};
  layer.reach = {};
  return layer;
}

// The same, its figures tied and its range bent.
PlannedLayer tied_and_bent() {
  PlannedLayer layer = plain_layer();
  UncertainSphere& sphere = sphere_of(layer);
  sphere.shared.dP_dH = 0.5 * sphere.sd.dP * sphere.sd.dH;
  sphere.shared.dH_R0 = 0.4 * sphere.sd.dH * sphere.R0_sd;
  layer.reach = bent;
  return layer;
}

// The shipped catalogue, this written behind the id of one material.
Catalogue with_record(const std::string& id, const std::string& lines) {
  std::vector<NamedText> files = test::shipped_files();
  for (NamedText& file : files) {
    const std::string head = "  - id: " + id + "\n";
    const std::size_t at = file.text.find(head);
    if (at == std::string::npos || file.text.find("kind:", at) == std::string::npos) continue;
    std::size_t end = file.text.find("\n  - id: ", at + head.size());
    if (end == std::string::npos) end = file.text.size();
    std::string record = file.text.substr(at, end - at);
    for (const char* key : {"    strongest_grade:", "    harm_grade:"}) {
      const std::size_t from = record.find(key);
      if (from == std::string::npos) continue;
      std::size_t to = record.find("\n    ", from + 1);
      while (to != std::string::npos && record.compare(to, 6, "\n     ") == 0) to = record.find("\n    ", to + 1);
      record.erase(from, to == std::string::npos ? std::string::npos : to + 1 - from);
    }
    record.insert(head.size(), lines);
    file.text.replace(at, end - at, record);
  }
  return read_catalogue(files);
}

constexpr const char* swells_only =
    "    strongest_grade: {value: 3, source: burke_1984, standing: assumed}\n"
    "    harm_grade: {value: 5, source: burke_1984, standing: assumed}\n";

}  // namespace

TEST_CASE("a layer tied and bent is judged by all of it, and the search's figure is the reference's") {
  const PlannedLayer layer = tied_and_bent();
  for (const char* words : {"ethanol 60, isooctane 40", "acetone 50, isooctane 50"}) {
    const JudgedMixture judged =
        judge_mixture(parse_mixture(words, shipped_catalogue()), {layer}, Limits(), shipped_catalogue());
    const Outlook& outlook = *judged.outlooks.front();
    const UncertainSphere met = met_by_liquids(layer);
    CHECK(met.shared == tied_and_bent().sphere->shared);
    const double factor = reach_factor(bent, judged.point);
    CHECK(std::abs(std::log(factor)) > 0.02);
    CHECK(outlook.reach_factor == factor);
    CHECK(outlook.RED == Approx(outlook.Ra / (met.mean.R0 * factor)));
    CHECK(outlook.RED_band == RED_band(judged.point, met, bent));
    CHECK(outlook.chance ==
          test::near(test::chance_by_sums(judged.point, {met, layer.response, Limits().effect_grade, bent}), 2e-4));
  }
}

TEST_CASE("JSON says how far a layer's range is bent and its figures are tied, and only where they are") {
  const PlannedLayer plain = plain_layer();
  const PlannedLayer layer = tied_and_bent();
  const JudgedMixture judged = judge_mixture(parse_mixture("ethanol 60, isooctane 40", shipped_catalogue()),
                                             {layer, plain}, Limits(), shipped_catalogue());
  const Json outlooks = judged_json(judged, {layer, plain}, Limits())["layers"];
  CHECK(outlooks[0]["reach_factor"].get<double>() == Approx(reach_factor(bent, judged.point)).epsilon(1e-4));
  CHECK(outlooks[1].count("reach_factor") == 0);
  const Json layers = layers_json({layer, plain}, Limits());
  CHECK(layers[0]["correlations"]["dP_dH"].get<double>() == Approx(0.5));
  CHECK(layers[0]["correlations"]["dH_R0"].get<double>() == Approx(0.4));
  CHECK(layers[0]["correlations"]["dD_R0"].get<double>() == 0);
  CHECK(layers[0]["reach"]["places"].size() == 2);
  CHECK(layers[0]["grade_that_counts"] == 2);
  CHECK(layers[1].count("correlations") == 0);
  CHECK(layers[1].count("reach") == 0);
}

TEST_CASE("the shipped spheres that observations moved are tabulated within 1e-4 beside the liquids that were seen") {
  const HansenBox box{{14, 0, 0}, {19, 16, 25}};
  int number = 0, moved = 0;
  for (const Material& material : shipped_catalogue().materials()) {
    const std::optional<UncertainSphere> sphere = uncertain_sphere(material, shipped_catalogue());
    if (!sphere || !material.conditioning || ++number % 4 != 0) continue;
    ++moved;
    const FieldSubject subject{*sphere, response_of(material, shipped_catalogue()), 3, local_reach(material)};
    const ChanceField field = std::move(chance_fields(box, {subject}).front());
    for (std::size_t i = 0; i < subject.reach.places.size(); i += 5) {
      const Hansen& at = subject.reach.places[i].at;
      const Hansen point{std::clamp(at.dD + 0.3, 14.0, 19.0), std::clamp(at.dP + 0.4, 0.0, 16.0),
                         std::clamp(at.dH + 0.5, 0.0, 25.0)};
      INFO(material.id << " at " << point.dD << ' ' << point.dP << ' ' << point.dH);
      CHECK(field(point) == test::near(test::chance_by_sums(point, subject), 1e-4));
    }
  }
  CHECK(moved > 5);
}

TEST_CASE("which grades count: the job's word, else the material's, else the usual; no stronger than ever happens") {
  PlannedLayer kept;
  Limits limits;
  CHECK(grade_that_counts(kept, limits) == 4);
  kept.harm_grade = 5;
  CHECK(grade_that_counts(kept, limits) == 5);
  limits.risk_grade = 3;
  CHECK(grade_that_counts(kept, limits) == 3);
  PlannedLayer target;
  target.role = Role::remove;
  target.harm_grade = 5;
  CHECK(grade_that_counts(target, limits) == 2);
  target.response.strongest = 3;
  CHECK(grade_that_counts(target, limits) == 3);
  limits.effect_grade = 4;
  CHECK(grade_that_counts(target, limits) == 4);
}

TEST_CASE("a film that only swells: its grades reach plan, words, next test and card") {
  const Catalogue catalogue = with_record("oil_paint_old", swells_only);
  const Job job = demo(catalogue);
  const std::vector<PlannedLayer> layers = planned_layers(job, catalogue);
  const auto paint = std::find_if(layers.begin(), layers.end(),
                                  [](const PlannedLayer& layer) { return layer.material == "oil_paint_old"; });
  REQUIRE(paint != layers.end());
  REQUIRE(paint->role == Role::keep);
  CHECK(paint->response.strongest == 3);
  CHECK_FALSE(paint->own_response);
  CHECK(grade_that_counts(*paint, job.limits) == 5);
  const std::string words = affected_words(layers, job.limits, [](const std::string& name) { return name; });
  CHECK(words.find("\"swells a little\" or stronger") != std::string::npos);
  const Progress progress = follow_readings(make_plan(job, catalogue), catalogue, {});
  const auto belief = std::find_if(progress.task.kept.begin(), progress.task.kept.end(),
                                   [&](const KeptBelief& kept) { return kept.name == paint->name; });
  REQUIRE(belief != progress.task.kept.end());
  CHECK(belief->risk_level == 1);  // under a swab any reaction is harm, whatever the plan counts
  // The level "fully" still has its chance: the cap concerns the grade's name.
  CHECK(belief->belief.curve().at_least(4, 0.3) > 0.3);
  const Material& material = *catalogue.find_material("oil_paint_old");
  const Mixture acetone = parse_mixture("acetone 100", catalogue);
  const ActionChances chances = chances_on(material, {acetone}, catalogue).front();
  CHECK(chances.moves_grade == 3);
  CHECK(chances.affects_grade == 5);
  const UncertainSphere sphere = *uncertain_sphere(material, catalogue);
  const FieldSubject subject{sphere, response_of(material, catalogue), 3, local_reach(material)};
  CHECK(chances.moves == test::near(test::chance_by_sums(mix(acetone), subject), 2e-4));
  CHECK(compare({3, 3}, chances) == (chances.moves >= 0.5 ? Agreement::agrees : Agreement::disagrees));
}

TEST_CASE("a plan names a layer that only swells among what is weak, and whose curve is borrowed") {
  const Catalogue catalogue = with_record("oil_paint_old", swells_only);
  const Plan plan = make_plan(demo(catalogue), catalogue);
  const auto paint = std::find_if(plan.layers.begin(), plan.layers.end(),
                                  [](const PlannedLayer& layer) { return layer.material == "oil_paint_old"; });
  REQUIRE(paint != plan.layers.end());
  const WeakPoint only_swells{WeakPointKind::only_swells, static_cast<std::size_t>(paint - plan.layers.begin())};
  CHECK(std::count(plan.weak_points.begin(), plan.weak_points.end(), only_swells) == 1);
}

TEST_CASE("what may be else brings its reach into the belief; a sphere of one's own has none") {
  Job job = demo(shipped_catalogue());
  job.layers[0].possible = {{"sandarac", 40, {}}};
  const PlannedLayer layer = planned_layers(job, shipped_catalogue()).front();
  REQUIRE(layer.possible.size() == 1);
  CHECK(layer.possible[0].reach == local_reach(*shipped_catalogue().find_material("sandarac")));
  CHECK(layer.possible[0].response == response_of(*shipped_catalogue().find_material("sandarac"), shipped_catalogue()));
  job.layers[0].own_sphere = OwnSphere{{{{17, 6, 9}, 7}, {0.5, 1, 1}, 1}, "mine"};
  const PlannedLayer own = planned_layers(job, shipped_catalogue()).front();
  CHECK(own.reach.places.empty());
  CHECK(own.response.stages == shipped_catalogue().response().stages);
}

TEST_CASE("a bent range is drawn where RED is 1") {
  const PlannedLayer layer = tied_and_bent();
  const Sphere mean = layer.sphere->mean;
  double nearest = 1e9, farthest = 0;
  for (const CutPoint& point : cut_through_range(layer, Coordinate::dP, Coordinate::dH)) {
    const Hansen at{mean.centre.dD, point.across, point.up};
    CHECK(relative_distance_RED(at, mean, bent) == Approx(1).epsilon(1e-6));
    nearest = std::min(nearest, distance_Ra(at, mean.centre));
    farthest = std::max(farthest, distance_Ra(at, mean.centre));
  }
  CHECK(farthest > 1.03 * nearest);
  for (const CutPoint& point : cut_through_range(layer, Coordinate::dD, Coordinate::dH))
    CHECK(relative_distance_RED({point.across, mean.centre.dP, point.up}, mean, bent) == Approx(1).epsilon(1e-6));
}

TEST_CASE("how far the edge may lie counts that centre and radius are tied: by hand") {
  PlannedLayer layer;
  layer.sphere = {{{17, 6, 9}, 6}, {0.5, 1, 2}, 1.5};
  sphere_of(layer).shared.dP_R0 = -1.2;
  sphere_of(layer).shared.dP_dH = 0.8;
  const auto across = [&](double sds) {
    return cut_through_range(layer, Coordinate::dP, Coordinate::dH, sds).front();  // towards larger dP
  };
  CHECK(across(0).across == Approx(12));
  CHECK(across(0).up == Approx(9));
  CHECK(across(1).across == Approx(12 + std::sqrt(1 + 2.25 - 2.4)));
  CHECK(across(-1).across == Approx(12 - std::sqrt(1 + 2.25 - 2.4)));
  // Half way between the axes: (P + H) / sqrt 2 + R.
  const CutPoint slanted = cut_through_range(layer, Coordinate::dP, Coordinate::dH, 1).at(9);
  const double sd = std::sqrt(0.5 * (1 + 4 + 2 * 0.8) + 2.25 - 2 * std::sqrt(0.5) * 1.2);
  CHECK(slanted.across == Approx(6 + (6 + sd) * std::sqrt(0.5)));
}

TEST_CASE("the shadow of a bent range holds the rays that meet it, and no others") {
  const Sphere sphere{{17, 8, 9}, 5};
  const LocalReach longer{{{{15.8, 8.8, 19.4}, 0.9}}, 3};
  const std::vector<Teas> plain = shadow_in_triangle(sphere), shadow = shadow_in_triangle(sphere, longer);
  REQUIRE(plain.size() == shadow.size());
  const auto most_fh = [](const std::vector<Teas>& outline) {
    double most = 0;
    for (const Teas& corner : outline) most = std::max(most, corner.fh);
    return most;
  };
  CHECK(most_fh(shadow) > most_fh(plain) + 0.5);
  const LocalReach nowhere{{{{60, 60, 60}, 0.5}}, 1};
  const std::vector<Teas> same = shadow_in_triangle(sphere, nowhere);
  for (std::size_t i = 0; i < plain.size(); ++i) {
    CHECK(same[i].fd == test::near(plain[i].fd, 0.4));
    CHECK(same[i].fh == test::near(plain[i].fh, 0.4));
  }
}
