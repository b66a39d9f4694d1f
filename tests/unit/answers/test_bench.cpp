// From the plan to the vial, and the pictures of it.
#include "gentlest/answers/bench.hpp"
#include "gentlest/answers/vial.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/catalogue_files.hpp"
#include "io/job_file.hpp"
#include "report/charts/charts.hpp"
#include "report/draw/pictogram.hpp"
#include "report/paper/bench_sheet.hpp"
#include "report/paper/label_sheet.hpp"
#include "report/ranges/shadow.hpp"
#include "report/screen/vial_report.hpp"
#include "report/tested/test_map.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>
#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>
#include <cmath>
#include <regex>
#include <set>

using namespace gentlest;

namespace {

struct Demo {
  Catalogue catalogue = read_kept_catalogue(embedded_catalogue());
  Job job = load_job(demo_job_text(), "demo", catalogue);
};

bool polygon_holds(const std::vector<Teas>& corners, const Teas& point) {
  bool inside = false;
  for (std::size_t i = 0, k = corners.size() - 1; i < corners.size(); k = i++) {
    const bool between = (corners[i].fp > point.fp) != (corners[k].fp > point.fp);
    if (between &&
        point.fd < (corners[k].fd - corners[i].fd) * (point.fp - corners[i].fp) / (corners[k].fp - corners[i].fp) +
                       corners[i].fd)
      inside = !inside;
  }
  return inside;
}

// Whether some positive multiple of the direction lies in the sphere, by trying many.
bool ray_meets(const Sphere& sphere, const Teas& direction) {
  for (double t = 0; t < 1; t += 0.0005)
    if (distance_Ra({t * direction.fd, t * direction.fp, t * direction.fh}, sphere.centre) <= sphere.R0) return true;
  return false;
}

double between(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 10001) / 10000.0;
}

}  // namespace

TEST_CASE("the bench measures what the plan proposes") {
  const Demo demo;
  const Plan plan = make_plan(demo.job, demo.catalogue);
  const Bench bench = prepare_bench(plan, demo.catalogue);
  REQUIRE(bench.mixtures.size() == ladder_rungs(plan).size());
  double total_mL = 0;
  for (std::size_t i = 0; i < bench.mixtures.size(); ++i) {
    const BenchMixture& mixture = bench.mixtures[i];
    CHECK(mixture.judged.origin == Origin{OriginKind::rung, static_cast<int>(i + 1), 0});
    CHECK(to_text(mixture.judged.mixture) == to_text(ladder_rungs(plan)[i].mixture));
    CHECK(mixture.recipe.total.value == Approx(10));
    CHECK_FALSE(mixture.as_measured);  // steps of 5 % are whole half millilitres
    REQUIRE(mixture.chance_bands.size() == plan.layers.size());
    for (const std::optional<Band>& band : mixture.chance_bands) CHECK(band->low <= band->high);
    REQUIRE(as_made(mixture).fate.drift);
    REQUIRE(as_made(mixture).fate.drying_risk.size() == as_made(mixture).fate.drift->path.size());
    CHECK(as_made(mixture).fate.drying_risk.front() == test::near(as_made(mixture).fate.risk.at_start, 2e-4));
  }
  for (const SessionTotal& one : bench.totals) total_mL += one.volume.value;
  CHECK(total_mL == Approx(10.0 * static_cast<double>(ladder_rungs(plan).size())));
}

TEST_CASE("a coarse measure changes the mixture, and the bench judges what is measured") {
  Demo demo;
  demo.job.limits.vial_mL = 3;
  demo.job.limits.measure_mL = 1;
  Plan plan = make_plan(demo.job, demo.catalogue);
  const Bench bench = prepare_bench(plan, demo.catalogue);
  const auto rounded = std::find_if(bench.mixtures.begin(), bench.mixtures.end(),
                                    [](const BenchMixture& mixture) { return mixture.as_measured.has_value(); });
  REQUIRE(rounded != bench.mixtures.end());
  CHECK(rounded->as_measured->mixture.parts().size() == rounded->recipe.lines.size());
  CHECK(rounded->as_measured->risk != rounded->judged.risk);
  CHECK(&as_made(*rounded) == &*rounded->as_measured);
  plan.job.limits.measure_mL = 4;
  CHECK_THROWS_AS(prepare_bench(plan, demo.catalogue), InputError);
}

TEST_CASE("the plan keeps its shelf and a frontier that nothing on it beats") {
  const Demo demo;
  const Plan plan = make_plan(demo.job, demo.catalogue);
  CHECK(plan.shelf.size() == demo.job.shelf.size());
  REQUIRE(plan.frontier.size() > 10);
  for (std::size_t i = 1; i < plan.frontier.size(); ++i) {
    CHECK(plan.frontier[i].risk > plan.frontier[i - 1].risk);
    CHECK(plan.frontier[i].effect > plan.frontier[i - 1].effect);
  }
  for (const JudgedMixture& rung : ladder_rungs(plan))
    for (const Verdict& verdict : plan.frontier)
      if (verdict.risk <= rung.risk && verdict.effect < *rung.effect - 1e-6) {
        INFO(verdict.risk << " " << verdict.effect);
        CHECK(std::any_of(plan.frontier.begin(), plan.frontier.end(), [&](const Verdict& other) {
          return other.risk <= *rung.risk + 1e-6 && other.effect >= *rung.effect - 1e-6;
        }));
        break;
      }
}

TEST_CASE("without a window the bench holds the nearest mixtures under their names") {
  Demo demo;
  demo.job.limits.risk_limit = 0.06;
  const Plan plan = make_plan(demo.job, demo.catalogue);
  const Bench bench = prepare_bench(plan, demo.catalogue);
  REQUIRE(bench.mixtures.size() == 2);
  CHECK(bench.mixtures[0].judged.origin.kind == OriginKind::strongest_within_limit);
  CHECK(bench.mixtures[1].judged.origin.kind == OriginKind::least_risk_that_works);
}

TEST_CASE("a sphere's shadow in the triangle holds what the rays through it hit") {
  rc::check([] {
    const Sphere sphere{{between(14, 20), between(2, 12), between(2, 14)}, between(3, 9)};
    const std::vector<Teas> shadow = shadow_in_triangle(sphere);
    RC_ASSERT(shadow.size() > 50);
    const Teas middle = teas_fractions(sphere.centre);
    const double fp = between(-10, 60);
    const double fh = between(-10, 60);
    const Teas point{100 - fp - fh, fp, fh};
    RC_ASSERT(polygon_holds(shadow, middle));
    // Near the edge both answers are right: the outline has corners, the ray is tried in steps.
    const auto moved = [&](double share) {
      return Teas{middle.fd + share * (point.fd - middle.fd), middle.fp + share * (point.fp - middle.fp),
                  middle.fh + share * (point.fh - middle.fh)};
    };
    if (polygon_holds(shadow, point) && polygon_holds(shadow, moved(1.05))) RC_ASSERT(ray_meets(sphere, point));
    if (!polygon_holds(shadow, point) && !polygon_holds(shadow, moved(0.95))) RC_ASSERT_FALSE(ray_meets(sphere, point));
  });
  CHECK(shadow_in_triangle({{1, 1, 1}, 9}).empty());
}

TEST_CASE("in the three views a range is a circle: dD stands at twice the scale") {
  const Demo demo;
  Plan plan = make_plan(demo.job, demo.catalogue);
  for (PlannedLayer& layer : plan.layers) layer.reach = {};  // observations bend it; how is tested with bent layers
  const std::string svg = chart_of("planes", plan, prepare_bench(plan, demo.catalogue)).drawing.body;
  const std::regex path("<path d=\"(M[^\"]*Z)\"[^>]*fill=\"" + std::string(remove_ink) + "\"");
  std::size_t found = 0;
  for (std::sregex_iterator at(svg.begin(), svg.end(), path), end; at != end; ++at, ++found) {
    const std::string data = (*at)[1];
    const std::regex pair("([-0-9.]+) ([-0-9.]+)");
    double low_x = 1e9, high_x = -1e9, low_y = 1e9, high_y = -1e9;
    for (std::sregex_iterator one(data.begin(), data.end(), pair), last; one != last; ++one) {
      low_x = std::min(low_x, std::stod((*one)[1]));
      high_x = std::max(high_x, std::stod((*one)[1]));
      low_y = std::min(low_y, std::stod((*one)[2]));
      high_y = std::max(high_y, std::stod((*one)[2]));
    }
    CHECK(high_x - low_x == test::near(high_y - low_y, 0.1));
  }
  CHECK(found == 3);
}

TEST_CASE("every chart is a picture with title, caption and editions") {
  Demo demo;
  for (const double limit : {0.25, 0.06, 0.0001}) {
    demo.job.limits.risk_limit = limit;
    const Plan plan = make_plan(demo.job, demo.catalogue);
    const Bench bench = prepare_bench(plan, demo.catalogue);
    for (const std::string& kind : chart_kinds()) {
      INFO(kind << " at a limit of " << limit);
      const Chart chart = chart_of(kind, plan, bench);
      CHECK(chart.kind == kind);
      CHECK(chart.caption.size() > 15);
      const std::string file = chart_file(chart, {"1.2.3", "4.5.6"});
      CHECK(file.rfind("<svg xmlns=", 0) == 0);
      CHECK(file.find("gentlest 1.2.3, catalogue 4.5.6") != std::string::npos);
      CHECK(file.find("nan") == std::string::npos);
      CHECK(file.find("inf ") == std::string::npos);
    }
  }
}

TEST_CASE("all nine pictograms are drawn, and only those asked for") {
  CHECK(pictogram_codes().size() == 9);
  for (const std::string& code : pictogram_codes()) CHECK_FALSE(pictogram_words(code).empty());
  CHECK(pictogram_words("GHS10").empty());
  const std::string two = pictogram_definitions({"GHS02", "GHS07"});
  CHECK(two.find("id=\"GHS02\"") != std::string::npos);
  CHECK(two.find("id=\"GHS08\"") == std::string::npos);
  CHECK(pictogram("<b>") == "&lt;b&gt;");
}

TEST_CASE("labels: as many as fit, common sheets by their sizes") {
  CHECK(count_labels({50, 25, 5, 0}, Paper::A4) == GridCount{4, 11});
  CHECK(count_labels({63.5, 38.1, 7, 4}, Paper::A4) == GridCount{2, 6});
  CHECK(count_labels({63.5, 38.1, 7, 0}, Paper::A4) == GridCount{3, 7});
  CHECK(count_labels({66.7, 25.4, 4.7, 3.1}, Paper::letter) == GridCount{3, 9});
  CHECK(count_labels({300, 25, 5, 0}, Paper::A4).columns == 0);
}

TEST_CASE("a label names the mixture, its parts as measured and its hazards") {
  const Demo demo;
  Plan plan = make_plan(demo.job, demo.catalogue);
  Bench bench = prepare_bench(plan, demo.catalogue);
  const std::vector<LabelLine> lines = label_lines(bench.mixtures[2]);
  CHECK(lines[0].text == "Rung 3");
  std::string parts;
  for (const Part& part : ladder_rungs(plan)[2].mixture.parts())
    parts += fmt::format("{}{} {:.0f} %", parts.empty() ? "" : ", ", part.liquid.label, 100 * part.fraction);
  REQUIRE(ladder_rungs(plan)[2].mixture.parts().size() >= 2);
  CHECK(lines[1].text == parts);
  CHECK(lines[2].text == "Danger");
  bench.mixtures[2].judged.fate.phases.phases = Phases::two_liquids;
  bench.mixtures[2].label.not_known = {{LabelGap::What::record, {"isooctane"}, 40}};
  std::string all;
  for (const LabelLine& line : label_lines(bench.mixtures[2])) all += line.text + "\n";
  CHECK(all.find("two layers: shake\n") != std::string::npos);
  CHECK(all.find("hazard record missing: more may apply\n") != std::string::npos);
}

TEST_CASE("where one part has no hazard record, label, sheet and vial study all say so") {
  Demo demo;
  const auto without =
      std::find_if(demo.catalogue.solvents().begin(), demo.catalogue.solvents().end(), [](const Solvent& solvent) {
        return !solvent.hazards && solvent.hansen && solvent.molar_mass_g_per_mol && solvent.molar_volume_cm3_per_mol &&
               solvent.family != "water";
      });
  REQUIRE(without != demo.catalogue.solvents().end());
  const Mixture mixture({{make_liquid(*demo.catalogue.find_solvent("isooctane"), "", demo.catalogue), 0.5},
                         {make_liquid(*without, "", demo.catalogue), 0.5}});
  Plan plan = make_plan(demo.job, demo.catalogue);
  plan.lines.front().rungs = {judge_mixture(mixture, plan.layers, plan.job.limits, demo.catalogue)};
  const Bench bench = prepare_bench(plan, demo.catalogue);
  const MixtureLabel& label = bench.mixtures.front().label;
  CHECK_FALSE(label.complete());
  CHECK(std::any_of(label.not_known.begin(), label.not_known.end(),
                    [&](const LabelGap& gap) { return gap.of == std::vector{without->name}; }));
  // Before the codes, so that it is not what a small label cuts off.
  const auto lines = label_lines(bench.mixtures.front());
  const auto line_that = [&](const std::string& start) {
    return std::find_if(lines.begin(), lines.end(), [&](const auto& line) { return line.text.rfind(start, 0) == 0; });
  };
  REQUIRE(line_that("hazard record missing: more may apply") != lines.end());
  CHECK(line_that("hazard record missing: more may apply") < line_that("H225"));
  CHECK(label_sheet(plan, bench, {}).find("Not known, and so missing on the labels") != std::string::npos);
  const VialStudy study = study_vial(mixture, plan.layers, plan.job, demo.catalogue);
  CHECK(study.label.statements == label.statements);
  CHECK(study.label.not_known == label.not_known);
  CHECK(vial_report({plan.job, plan.layers, study}, Form::text, {}, {"1", "1"}).find("NOT KNOWN: ") !=
        std::string::npos);
}

TEST_CASE("what is not known of a label is said beside its signs, on the sheet as on the label") {
  MixtureLabel label;
  CHECK(label_signs(label) == " no signal word");
  label.not_known = {{LabelGap::What::record, {"x"}, 100}};
  CHECK(label_signs(label) == " record missing");
  label.statements = {{"H318", {}}};
  label.signal_word = "Danger";
  label.pictograms = {"GHS05"};
  const std::string signs = label_signs(label);
  CHECK(signs.find("GHS05, corrosion") != std::string::npos);
  CHECK(signs.find("> Danger (a minimum: records missing)") != std::string::npos);
}

TEST_CASE("what a mixture asks to be minded stands on the sheet") {
  const Demo demo;
  Plan plan = make_plan(demo.job, demo.catalogue);
  const auto marks = [&] {
    std::string all;
    const Bench bench = prepare_bench(plan, demo.catalogue);
    for (const std::string& mark : marks_of(bench.mixtures[2], plan)) all += mark + "\n";
    return all;
  };
  CHECK(marks().empty());
  Fate& fate = plan.lines.front().rungs[2].fate;
  fate.phases.basis = PhasesBasis::computed;
  fate.phases.phases = Phases::two_liquids;
  CHECK(marks() == "two layers (group method alone): shake, or leave it out\n");
  fate.phases.phases = Phases::near_border;
  CHECK(marks() == "may cloud or part (group method alone): look at the vial\n");
  fate.phases.phases = Phases::unknown;
  CHECK(marks() == "not known whether it stays one liquid: look at the vial\n");
  fate.phases.phases = Phases::one_liquid;
  fate.risk.beyond_limit_at = 0.4;
  fate.risk.worst = 0.31;
  CHECK(marks() == "drying: risk passes the limit when 40 % has gone, up to 31 %\n");
  fate.drift->parts_at = 0.6;
  CHECK(marks().find("drying: may part into two liquids when 60 % has gone\n") != std::string::npos);
  fate.drift.reset();
  CHECK(marks() == "drying: not known\n");
  plan.lines.front().rungs[2].risk = 0.26;
  CHECK(marks().rfind("BEYOND THE RISK LIMIT of 25 %: not proposed\n", 0) == 0);
}

TEST_CASE("only what passes the limit is beyond it") {
  const Demo demo;
  const Plan plan = make_plan(demo.job, demo.catalogue);
  JudgedMixture judged = ladder_rungs(plan).front();
  judged.risk = 0.25;
  CHECK_FALSE(is_beyond_limit(judged, demo.job.limits));
  judged.risk = 0.2500001;
  CHECK(is_beyond_limit(judged, demo.job.limits));
}

TEST_CASE("vial and printed label agree on the mixture as measured") {
  Demo demo;
  demo.job.limits.vial_mL = 3;
  demo.job.limits.measure_mL = 1;
  const Plan plan = make_plan(demo.job, demo.catalogue);
  for (const BenchMixture& mixture : prepare_bench(plan, demo.catalogue).mixtures) {
    const VialStudy study = study_vial(mixture.judged.mixture, plan.layers, plan.job, demo.catalogue);
    CHECK(study.label.statements == mixture.label.statements);
    CHECK(study.label.pictograms == mixture.label.pictograms);
    CHECK(study.label.signal_word == mixture.label.signal_word);
  }
}

TEST_CASE("sites are read in centimetres, every fault is named") {
  const std::vector<MapSite> sites = parse_sites("12.5,30; 40 , 10");
  CHECK(sites == std::vector<MapSite>{{"1", 12.5, 30}, {"2", 40, 10}});
  try {
    parse_sites("1;2,x;3,4;");
    FAIL("faults went unnoticed");
  } catch (const InputError& fault) {
    CHECK(fault.faults().size() == 3);
  }
}

TEST_CASE("the map is to scale and names sites outside the painting below it") {
  PaintingObject object;
  object.width = Centimetres{62};
  object.height = Centimetres{31};
  const Chart map = test_map(object, {{"1", 31, 15.5}, {"2", 70, 10}});
  CHECK(map.drawing.body.find(">Outside the painting: test 2 at x 70, y 10 cm<") != std::string::npos);
  CHECK(map.drawing.body.find("data-test=\"1\"") != std::string::npos);
  CHECK(map.drawing.body.find("data-test=\"2\"") == std::string::npos);
  const std::regex frame("<rect x=\"[0-9.]+\" y=\"[0-9.]+\" width=\"([0-9.]+)\" height=\"([0-9.]+)\"");
  std::smatch match;
  REQUIRE(std::regex_search(map.drawing.body, match, frame));
  CHECK(std::stod(match[1]) == test::near(2 * std::stod(match[2]), 0.05));
}

TEST_CASE("base64 as in RFC 4648, section 10") {
  CHECK(base64("") == "");
  CHECK(base64("f") == "Zg==");
  CHECK(base64("fo") == "Zm8=");
  CHECK(base64("foo") == "Zm9v");
  CHECK(base64("foobar") == "Zm9vYmFy");
  CHECK(base64("\xFF\xFE") == "//4=");
}
