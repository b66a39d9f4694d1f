// Finished paintings through the whole room: what they taught, and what of them is handed on.
#include "gentlest/base/text.hpp"
#include "gentlest/studio/shared.hpp"
#include "gentlest/studio/studio.hpp"
#include "io/job_file.hpp"
#include "io/studio_folder.hpp"
#include "near.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Reading reading_of(const char* mixture, RemovalReading removal, OriginalReading original) {
  Reading reading;
  reading.mixture = mixture;
  reading.removal = removal;
  reading.original = original;
  reading.seconds = 20;
  reading.confidence = ReadingConfidence::high;
  return reading;
}

StudioPainting painting_of(const std::vector<Reading>& readings) {
  StudioPainting painting;
  painting.job = load_job(demo_job_text(), "demo", shipped_catalogue());
  painting.name = "demo.yaml";
  for (const Reading& reading : readings) {
    painting.readings.push_back(reading);
    painting.readings.back().test = static_cast<int>(painting.readings.size());
  }
  return painting;
}

// A varnish that lets go in the gentlest mixtures, and a paint that bears the strongest.
StudioPainting easy_painting() {
  using R = RemovalReading;
  using O = OriginalReading;
  return painting_of({reading_of("isooctane 90, acetone 10", R::fully, O::nothing_seen),
                      reading_of("isooctane 80, acetone 20", R::fully, O::nothing_seen),
                      reading_of("isooctane 90, ethanol 96 % 10", R::fully, O::nothing_seen),
                      reading_of("acetone 100", R::fully, O::nothing_seen)});
}

// The other way round.
StudioPainting hard_painting() {
  using R = RemovalReading;
  using O = OriginalReading;
  return painting_of({reading_of("isooctane 60, acetone 40", R::no_effect, O::nothing_seen),
                      reading_of("isooctane 40, acetone 60", R::no_effect, O::recovers),
                      reading_of("isooctane 60, ethanol 96 % 40", R::no_effect, O::recovers)});
}

const StudioMaterial& material_in(const Studio& studio, const std::string& id) {
  const auto found = std::find_if(studio.materials.begin(), studio.materials.end(),
                                  [&](const StudioMaterial& one) { return one.material == id; });
  REQUIRE(found != studio.materials.end());
  return *found;
}

// Of the demo's layer with this material, before any test.
double chance_at(const Studio& studio, const std::string& id, const Hansen& point, int level) {
  Job job = load_job(demo_job_text(), "demo", shipped_catalogue());
  job.starts = starts_of(studio);
  for (const PlannedLayer& layer : planned_layers(job, shipped_catalogue()))
    if (layer.material == id) return LayerBelief(prior_of(layer), curve_of(layer)).chance(point, level);
  return -1;
}

constexpr Hansen weak_mixture = {14.5, 2.1, 1.4};  // isooctane 80, acetone 20

}  // namespace

TEST_CASE("paintings whose varnish let go easily let the next begin there", "[studio]") {
  const Studio none;
  const Studio easy = learn_from_paintings({easy_painting(), easy_painting(), easy_painting()}, shipped_catalogue());
  const Studio hard = learn_from_paintings({hard_painting(), hard_painting(), hard_painting()}, shipped_catalogue());
  const double before = chance_at(none, "dammar_aged", weak_mixture, 3);
  CHECK(chance_at(easy, "dammar_aged", weak_mixture, 3) > before + 0.1);
  CHECK(chance_at(hard, "dammar_aged", weak_mixture, 3) < before);
  const double risk = chance_at(none, "oil_paint_old", {15.2, 6.5, 4.2}, 1);
  CHECK(chance_at(easy, "oil_paint_old", {15.2, 6.5, 4.2}, 1) < risk);
  CHECK(chance_at(hard, "oil_paint_old", {15.2, 6.5, 4.2}, 1) > risk);
  const StudioMaterial& varnish = material_in(easy, "dammar_aged");
  CHECK(varnish.start.paintings == 3);
  CHECK(varnish.paintings[0].tests == 4);
  CHECK(varnish.start.moved > 0.1);
  CHECK(is_possible(varnish.start.sphere));
  CHECK(easy.tests == std::vector<int>{8, 8, 8});
}

TEST_CASE("more paintings that agree move the start further, one does little", "[studio]") {
  const auto moved_by = [](std::size_t count) {
    const std::vector<StudioPainting> paintings(count, easy_painting());
    return chance_at(learn_from_paintings(paintings, shipped_catalogue()), "dammar_aged", weak_mixture, 3);
  };
  CHECK(moved_by(1) < moved_by(6));
}

TEST_CASE("a painting's own sphere and what nobody knows teach no material", "[studio]") {
  StudioPainting painting = easy_painting();
  painting.job.layers[0].own_sphere = OwnSphere{{{{16, 5, 6}, 6}, {1, 1, 1}, 1}, "own tests"};
  painting.job.layers[1].found = unknown_material;
  const Studio studio = learn_from_paintings({painting}, shipped_catalogue());
  CHECK(studio.materials.empty());
  CHECK(studio.tests == std::vector<int>{0});
}

TEST_CASE("the user's own tests go before the studio, and the studio before the stand-in", "[studio]") {
  const Studio studio = learn_from_paintings({easy_painting()}, shipped_catalogue());
  Job job = load_job(demo_job_text(), "demo", shipped_catalogue());
  job.starts = starts_of(studio);
  const std::vector<PlannedLayer> layers = planned_layers(job, shipped_catalogue());
  REQUIRE(layers[0].studio);
  CHECK(*layers[0].sphere == material_in(studio, "dammar_aged").start.sphere);
  CHECK(*layers[0].without_studio == material_in(studio, "dammar_aged").stand_in);
  job.layers[0].own_sphere = OwnSphere{{{{16, 5, 6}, 6}, {1, 1, 1}, 1}, "own tests"};
  const std::vector<PlannedLayer> own = planned_layers(job, shipped_catalogue());
  CHECK_FALSE(own[0].studio);
  CHECK(own[0].sphere->mean.R0 == 6);
}

TEST_CASE("left out, a painting like the others is foretold better than by the stand-in", "[studio]") {
  const Studio studio = learn_from_paintings({easy_painting(), easy_painting(), easy_painting()}, shipped_catalogue());
  int seen = 0;
  for (const LeftOutPainting& one : leave_one_out(studio)) {
    if (one.material != "dammar_aged") continue;
    ++seen;
    CHECK(one.readings == 4);
    CHECK(one.with_studio > one.without);
  }
  CHECK(seen == 3);
  CHECK(leave_one_out(learn_from_paintings({easy_painting()}, shipped_catalogue())).empty());
}

TEST_CASE("what is shared says what was seen, and nothing that names it", "[studio]") {
  StudioPainting painting = easy_painting();
  for (Reading& reading : painting.readings) {
    reading.who = "Zanzibar";
    reading.date = "1987-06-05";
    reading.remark = "Quetzal";
    reading.signs = "Xylophone";
    reading.passage = "white cloth";
    reading.photo = "Wombat.jpg";
    reading.clearing = "Narwhal";
    reading.window_mm = "5 x 8";
    reading.site = Site{{3.25}, {4.75}};
  }
  painting.readings[1].mixture = "aqueous: Mongoose 2 %";
  painting.readings[2].mixture = "Mongoose 100";
  int left_out = 0;
  const std::vector<SharedTest> shared = shared_tests(painting, 7, shipped_catalogue(), left_out);
  REQUIRE(shared.size() == 3);
  CHECK(left_out == 1);
  CHECK(shared[0].painting == 7);
  CHECK(shared[0].removed_material == "dammar_aged");
  CHECK(shared[0].original_material == "oil_paint_old");
  CHECK(shared[0].paint_age_years == 150);
  CHECK(shared[0].mixture == "isooctane 90, acetone 10");
  CHECK(shared[0].reading.removal == RemovalReading::fully);
  CHECK(shared[0].reading.seconds == 20);
  CHECK(shared[1].mixture == "aqueous: not named");
  Reading plain = shared[0].reading;
  CHECK(plain.who + plain.date + plain.remark + plain.signs + plain.passage + plain.photo + plain.clearing == "");
  CHECK_FALSE(plain.site);
}

TEST_CASE("what was shared teaches as the painting itself does", "[studio]") {
  const StudioPainting painting = easy_painting();
  int left_out = 0;
  const std::vector<StudioPainting> back =
      paintings_from(shared_tests(painting, 1, shipped_catalogue(), left_out), "others.csv");
  REQUIRE(back.size() == 1);
  CHECK(back[0].source == "others.csv");
  const Studio own = learn_from_paintings({painting}, shipped_catalogue());
  const Studio shared = learn_from_paintings(back, shipped_catalogue());
  REQUIRE(shared.materials.size() == own.materials.size());
  for (std::size_t i = 0; i < own.materials.size(); ++i) {
    CHECK(shared.materials[i].material == own.materials[i].material);
    CHECK(shared.materials[i].paintings[0].tests == own.materials[i].paintings[0].tests);
    CHECK(shared.materials[i].start.moved == near(own.materials[i].start.moved, 0.25));
  }
}

TEST_CASE("rows of a shared table that are not understood are told, the others count", "[studio]") {
  const std::string head =
      "shared_format,painting,removed_material,original_material,paint_age_years,mixture,removal,original\n";
  std::vector<Diagnostic> faults;
  const std::vector<SharedTest> tests =
      read_shared_table(head +
                            "1,1,dammar_aged,oil_paint_old,150,acetone 100,fully removed,nothing seen\n"
                            "2,1,dammar_aged,oil_paint_old,150,acetone 100,fully removed,nothing seen\n"
                            "1,1,no such thing,oil_paint_old,150,acetone 100,fully removed,nothing seen\n"
                            "1,1,dammar_aged,not known,not known,no such liquid 100,fully removed,nothing seen\n"
                            "1,1,dammar_aged,not known,not known,acetone 100,gone,nothing seen\n"
                            "1,2,dammar_aged,not known,not known,water,no effect,nothing seen\n",
                        "o.csv", shipped_catalogue(), faults);
  REQUIRE(tests.size() == 2);
  CHECK(tests[1].original_material.empty());
  REQUIRE(faults.size() == 4);
  for (std::size_t i = 0; i < 4; ++i) CHECK(faults[i].where.line == static_cast<int>(i) + 3);
  CHECK_THROWS_AS(read_shared_table("a,b\n1,2\n", "o.csv", shipped_catalogue(), faults), InputError);
}
