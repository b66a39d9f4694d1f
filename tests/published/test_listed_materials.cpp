// What a paintings conservator meets and must be able to plan with, by common names. Which of them have a sphere, and
// which of them swell but never dissolve, is listed exactly: a record that loses or gains one shows.
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <set>
#include <string>
#include <vector>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

const std::vector<const char*> with_a_sphere = {"shellac, fresh",
                                                "shellac, aged",
                                                "sandarac",
                                                "rosin",
                                                "soft copal",
                                                "aged dammar",
                                                "aged mastic",
                                                "fresh dammar",
                                                "fresh mastic",
                                                "beeswax",
                                                "microcrystalline wax",
                                                "fresh ketone resin",
                                                "aged ketone resin",
                                                "reduced ketone resin",
                                                "aged reduced ketone resin",
                                                "urea-aldehyde resin",
                                                "aged urea-aldehyde resin",
                                                "hydrogenated hydrocarbon resin",
                                                "aged hydrogenated hydrocarbon resin",
                                                "fresh poly(n-butyl methacrylate)",
                                                "aged poly(n-butyl methacrylate)",
                                                "fresh poly(isobutyl methacrylate)",
                                                "aged poly(isobutyl methacrylate)",
                                                "poly(ethyl methacrylate)",
                                                "ethyl methacrylate copolymer",
                                                "aged ethyl methacrylate copolymer",
                                                "poly(vinyl acetate)",
                                                "aged PVAc",
                                                "nitrocellulose",
                                                "aged nitrocellulose",
                                                "acrylic dispersion paint",
                                                "acrylic solution paint",
                                                "alkyd paint",
                                                "young oil paint",
                                                "old oil paint",
                                                "lean oil paint",
                                                "rich oil paint",
                                                "oil-resin glaze",
                                                "oil retouching",
                                                "heat-seal adhesive"};

const std::vector<const char*> without_a_sphere = {
    "egg tempera", "casein",  "animal glue",       "gum arabic",         "old copal varnish",
    "hard copal",  "bitumen", "polyvinyl alcohol", "oil paint with wax", "tempera retouching"};

const std::vector<const char*> asked_back = {"shell-lac",
                                             "copal resin",
                                             "ketone resin",
                                             "dammar",
                                             "mastic",
                                             "poly(n-butyl methacrylate)",
                                             "poly(isobutyl methacrylate)",
                                             "alkyd",
                                             "oil paint",
                                             "glaze",
                                             "retouching",
                                             "resin retouching",
                                             "glue",
                                             "tempera",
                                             "acrylic paint",
                                             "wax"};

std::string listed(const std::vector<std::string>& found) {
  std::string text;
  for (const std::string& one : found) text += one + "; ";
  return text;
}

}  // namespace

TEST_CASE("every material that a conservator meets is found, with a sphere or the reason why not") {
  for (const char* name : with_a_sphere) {
    const Material* material = shipped_catalogue().find_material(name);
    INFO(name);
    REQUIRE(material);
    CHECK(material->sphere);
  }
  for (const char* name : without_a_sphere) {
    const Material* material = shipped_catalogue().find_material(name);
    INFO(name);
    REQUIRE(material);
    CHECK_FALSE(material->sphere);
    CHECK(material->no_sphere.size() > 40);
  }
}

TEST_CASE("a name that may mean several materials is asked back") {
  for (const char* name : asked_back) {
    const Meaning<Material> meaning = shipped_catalogue().meaning_of_material(name);
    INFO(name);
    CHECK_FALSE(meaning.record);
    REQUIRE(meaning.ask);
    CHECK(meaning.ask->choices.size() >= 2);
  }
}

TEST_CASE("a sphere that is borrowed says from whom and why") {
  std::vector<std::string> silent;
  for (const Material& material : shipped_catalogue().materials())
    if (material.sphere && material.sphere->grade == SphereGrade::assumed &&
        (material.sphere->assumption.empty() || !shipped_catalogue().find_material(material.sphere->stand_in_for)))
      silent.push_back(material.id);
  INFO(listed(silent));
  CHECK(silent.empty());
}

// Phenix and Sutherland 2001 (oil films swell, soften and are leached); Michalski 1990; the grades are our reading.
TEST_CASE("films that swell but never dissolve, and what counts as harm to them") {
  std::set<std::string> capped;
  std::set<std::string> early;
  std::set<std::string> late;
  for (const Material& material : shipped_catalogue().materials()) {
    if (material.strongest_grade) {
      INFO(material.id);
      CHECK(material.strongest_grade->value == 3);
      CHECK(shipped_catalogue().find_source(material.strongest_grade->source));
      capped.insert(material.id);
    }
    if (!material.harm_grade) continue;
    INFO(material.id);
    CHECK(shipped_catalogue().find_source(material.harm_grade->source));
    (material.harm_grade->value == 4 ? early : late).insert(material.id);
  }
  CHECK(capped == std::set<std::string>{"alkyd_paint", "oil_paint_lean", "oil_paint_old", "oil_paint_rich",
                                        "oil_paint_young", "oil_retouching"});
  CHECK(late == std::set<std::string>{"alkyd_paint", "oil_paint_old", "oil_paint_rich"});
  CHECK(early == std::set<std::string>{"oil_paint_lean", "oil_paint_young", "oil_resin_glaze", "oil_retouching",
                                       "oil_wax_paint"});
}
