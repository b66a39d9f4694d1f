// What a plan has to say beside its figures, in words.
#include "shipped.hpp"

#include "gentlest/plan/plan.hpp"
#include "io/job_file.hpp"
#include "report/phrases/advice_words.hpp"
#include "report/phrases/words.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

Job demo() {
  return load_job(demo_job_text(), "demo", shipped_catalogue());
}

// Layers and job without a search: the words look nowhere else.
Plan unplanned(const Job& job) {
  Plan plan;
  plan.job = job;
  plan.layers = planned_layers(job, shipped_catalogue());
  return plan;
}

}  // namespace

TEST_CASE("weak figures are told with their layer and what stands for it") {
  Job job = demo();
  Plan plan = unplanned(job);
  PlannedLayer& varnish = plan.layers[0];
  const auto words = [&](WeakPointKind kind) { return words_of(WeakPoint{kind, 0, 0}, plan); };
  const std::string of_sphere = words(WeakPointKind::sphere);
  CHECK(of_sphere.find(varnish.name + " (" + varnish.material_name + "): ") == 0);
  CHECK(of_sphere.find(varnish.assumption) != std::string::npos);
  CHECK(of_sphere.find("observations of it moved and bent the sphere") != std::string::npos);
  varnish.observations_fitted = 0;
  CHECK(words(WeakPointKind::sphere) == varnish.name + " (" + varnish.material_name + "): " + varnish.assumption);
  std::set<std::string> by_grade;
  for (const SphereGrade grade : {SphereGrade::recalled, SphereGrade::unbracketed, SphereGrade::weak,
                                  SphereGrade::unsupported, SphereGrade::assumed}) {
    varnish.grade = grade;
    by_grade.insert(words(WeakPointKind::sphere));
  }
  CHECK(by_grade.size() == 5);
  varnish.liquid_sd = {0.8, 1.5, 1.25};
  CHECK(words(WeakPointKind::liquids_vary).find("(dD 0.8, dP 1.5, dH 1.2 MPa^0.5)") != std::string::npos);
  CHECK(words(WeakPointKind::surer_than_liquids).find("below 0.125 (dD) or 0.25 (dP, dH)") != std::string::npos);
  varnish.possible = {{"shellac_aged", "shellac, aged", {}, 0.4}};
  CHECK(words(WeakPointKind::may_be_else).find("varnish: may be shellac, aged as well (40 %)") == 0);
  CHECK(words(WeakPointKind::not_examined).find("varnish: taken as the files record it") == 0);
  CHECK(words(WeakPointKind::found_otherwise).find("recorded as mastic_aged, found to be dammar_aged") !=
        std::string::npos);
}

TEST_CASE("what to watch names the layers and passages that are meant, with a source") {
  Job job = demo();
  job.passages[0].note = "thin";
  job.passages[1].note.clear();
  const Plan plan = unplanned(job);
  std::set<std::string> all;
  for (const WatchKind kind :
       {WatchKind::begin_gently, WatchKind::nothing_proposed, WatchKind::two_places, WatchKind::softening,
        WatchKind::colour_on_swab, WatchKind::passage, WatchKind::may_part}) {
    const Remark remark = words_of(Watch{kind}, plan);
    CHECK_FALSE(remark.source.empty());
    all.insert(remark.text);
  }
  for (const Flag flag : {Flag::resinous, Flag::waxy, Flag::bituminous, Flag::water_sensitive}) {
    const Remark remark = words_of(Watch{WatchKind::flag, 0, flag, {"paint", "sky"}}, plan);
    CHECK(remark.text.rfind("\"paint\", \"sky\": ", 0) == 0);
    CHECK_FALSE(remark.source.empty());
    all.insert(remark.text);
  }
  CHECK(all.size() == 11);
  CHECK(words_of(Watch{WatchKind::passage, 0}, plan).text.find(job.passages[0].name + "\": a working mixture") !=
        std::string::npos);
  CHECK(words_of(Watch{WatchKind::passage, 0}, plan).text.find(": thin") != std::string::npos);
  CHECK(words_of(Watch{WatchKind::passage, 1}, plan).text.back() == '.');
}

TEST_CASE("other ways are told where there is no window only") {
  Plan plan;
  plan.outcome = Outcome::no_window;
  CHECK_FALSE(other_ways_words(plan).empty());
  plan.outcome = Outcome::window;
  CHECK(other_ways_words(plan).empty());
}

TEST_CASE("the basis of every layer has its word") {
  PlannedLayer layer;
  layer.passage_of = "oil paint";
  std::set<std::string> words;
  for (const LayerBasis basis : {LayerBasis::found, LayerBasis::recorded, LayerBasis::own_tests, LayerBasis::passage}) {
    layer.basis = basis;
    words.insert(basis_words(layer));
  }
  CHECK(words == std::set<std::string>{"found", "recorded, not examined", "own tests", "passage of oil paint"});
  CHECK(material_in_words(layer) == "own tests");
  layer.material_name = "dammar";
  CHECK(material_in_words(layer) == "dammar");
}
