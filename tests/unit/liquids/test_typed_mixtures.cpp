// Mixtures as people write them: what each spelling means, or what is asked. The meanings stand on plain sums: a ratio
// of 1:3 is 25 % and 75 %, 3 mL and 7 mL are 30 % and 70 %.
#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/notation.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

std::string meaning_of(const std::string& text, const std::vector<Liquid>& shelf = {}) {
  try {
    return to_text(parse_mixture(text, shipped_catalogue(), shelf));
  } catch (const InputError& error) {
    CHECK(error.kind() == Fault::usage);
    return render(error.faults());
  }
}

struct Spelling {
  const char* text;
  const char* meaning;
};

}  // namespace

TEST_CASE("a mixture is read as people write it", "[typed]") {
  const char* half = "acetone 50, isooctane 50";
  const char* three_tenths = "isooctane 70, ethanol 30";
  const char* quarter = "isooctane 75, acetone 25";
  const char* fifth = "isooctane 80, acetone 20";
  const char* eighth = "isooctane 87.5, ethanol 12.5";
  const char* graded = "isooctane 70, ethanol 96 % 30";
  const char* dioxane = "isooctane 80, 1,4-dioxane 20";
  const Spelling table[] = {
      {"ethanol 30, isooctane 70", three_tenths},
      {"30% ethanol, 70% isooctane", three_tenths},
      {"30 % ethanol 70 % isooctane", three_tenths},
      {"30% ethanol 70% isooctane", three_tenths},
      {"30 ethanol, 70 isooctane", three_tenths},
      {"30 ethanol 70 isooctane", three_tenths},
      {"ethanol 30 isooctane 70", three_tenths},
      {"ethanol 30 % isooctane 70 %", three_tenths},
      {"ethanol 30%, isooctane 70%", three_tenths},
      {"ethanol 30 and isooctane 70", three_tenths},
      {"ethanol 30 + isooctane 70", three_tenths},
      {"ethanol 30+isooctane 70", three_tenths},
      {"ethanol 30 & isooctane 70", three_tenths},
      {"30 % ethanol in 70 % isooctane", three_tenths},
      {"30 % ethanol in isooctane", three_tenths},
      {"30 vol% ethanol in isooctane", three_tenths},
      {"3 mL ethanol, 7 mL isooctane", three_tenths},
      {"3mL ethanol and 7mL isooctane", three_tenths},
      {"ethanol 3 ml, isooctane 7 ml", three_tenths},
      {"1.5 mL ethanol, 3.5 mL isooctane", three_tenths},
      {"1,5 mL ethanol, 3,5 mL isooctane", three_tenths},
      {"3 parts ethanol, 7 parts isooctane", three_tenths},
      {"ethanol 3 parts, isooctane 7 parts", three_tenths},
      {"ethanol/isooctane 30/70", three_tenths},
      {"ethanol 3, isooctane 7", three_tenths},
      {"Ethanol 30, ISOOCTANE 70", three_tenths},
      {"0.3 ethanol, 0.7 isooctane", three_tenths},
      {"ethanol 0,3, isooctane 0,7", three_tenths},
      {"1:3 acetone / isooctane", quarter},
      {"1:3 acetone/isooctane", quarter},
      {"1:3 acetone:isooctane", quarter},
      {"acetone : isooctane 1:3", quarter},
      {"acetone/isooctane 25/75", quarter},
      {"acetone/isooctane 25:75", quarter},
      {"acetone-isooctane 25:75", "error"},
      {"isooctane / acetone 3:1", quarter},
      {"acetone, isooctane 1:3", quarter},
      {"acetone and isooctane 1:3", quarter},
      {"acetone isooctane 1:3", quarter},
      {"acetone 1:3 isooctane", quarter},
      {"acetone 1 isooctane 3", quarter},
      {"acetone 1, isooctane 4", fifth},
      {"1 acetone, 4 isooctane", fifth},
      {"1 part acetone to 4 parts isooctane", fifth},
      {"1 part of acetone to 4 parts of isooctane", fifth},
      {"1 part acetone, 4 parts isooctane", fifth},
      {"1 Teil acetone, 4 Teile isooctane", fifth},
      {"acetone 1, white spirit dearomatised 4", "dearomatised white spirit 80, acetone 20"},
      {"1:4 acetone / dearomatised white spirit", "dearomatised white spirit 80, acetone 20"},
      {"dearomatised white spirit 80 acetone 20", "dearomatised white spirit 80, acetone 20"},
      {"1:1 acetone isooctane", half},
      {"acetone/isooctane 1:1", half},
      {"1:1:2 acetone / ethanol / isooctane", "isooctane 50, acetone 25, ethanol 25"},
      {"ethanol 12,5 isooctane 87,5", eighth},
      {"ethanol 12,5, isooctane 87,5", eighth},
      {"ethanol 12,5 %; isooctane 87,5 %", eighth},
      {"12,5 % ethanol, 87,5 % isooctane", eighth},
      {"30 % ethanol 96 %, 70 % isooctane", graded},
      {"30 % ethanol 96 % 70 % isooctane", graded},
      {"ethanol 96 % 30 isooctane 70", graded},
      {"3:7 ethanol 96 % / isooctane", graded},
      {"ethanol absolute 30 isooctane 70", "isooctane 70, ethanol absolute 30"},
      {"1,4-dioxane 20, isooctane 80", dioxane},
      {"1,4-dioxane 20 isooctane 80", dioxane},
      {"20 % 1,4-dioxane, 80 % isooctane", dioxane},
      {"1:4 1,4-dioxane / isooctane", dioxane},
      {"1-butanol 20 isooctane 80", "isooctane 80, 1-butanol 20"},
      {"64-17-5 30 540-84-1 70", three_tenths},
      {"Solvesso 100 20 isooctane 80", "isooctane 80, aromatic naphtha 20"},
      {"20 % Solvesso 100, 80 % isooctane", "isooctane 80, aromatic naphtha 20"},
      {"acetone", "acetone 100"},
      {"100 % acetone", "acetone 100"},
      // What is wrong, or is asked.
      {"ethanol 96 isooctane 4", "is \"96\" the grade of ethanol or its share?"},
      {"ethanol 96 % isooctane 4 %", "is \"96 %\" the grade of ethanol or its share?"},
      {"ethanol 30, isooctane 50", "add up to 80"},
      {"ethanol 30 isooctane 50", "add up to 80"},
      {"30 % ethanol, 50 % isooctane", "add up to 80"},
      {"ethanol 25, isooctane 5", "add up to 30"},
      {"ethanol 1.5, isooctane 3", "add up to 4.5"},
      {"1:3 acetone", "error"},
      {"1:3:2 acetone / isooctane", "the ratio holds 3 numbers for 2 liquids"},
      {"30 % ethnol, 70 % isooctane", "did you mean \"ethanol\"?"},
      {"1:3 acetne / isooctane", "did you mean \"acetone\"?"},
      {"3 mL ethanol, 70 % isooctane", "not all of one kind"},
      {"1 part ethanol, 70 % isooctane", "not all of one kind"},
      {"30 ethanol 70, isooctane 70", "has a share already"},
      {"ethanol and isooctane", "error"},
      {"1 in 4 acetone isooctane", "error"},
      {"30 % ethanol, isooctane", "error"},
      {"ethanol 0 and isooctane 100", "above 0"},
  };
  CHECK(std::size(table) >= 60);
  for (const Spelling& one : table) {
    INFO(one.text);
    const std::string meaning = meaning_of(one.text);
    INFO(meaning);
    CHECK(meaning.find(one.meaning) != std::string::npos);
    CHECK((meaning.find("error") != std::string::npos) == (meaning.find("mixture:") != std::string::npos));
  }
}

TEST_CASE("what was read is written so that it is read alike", "[typed]") {
  for (const char* text : {"1:3 acetone / isooctane", "ethanol 12,5 isooctane 87,5", "1:2 acetone / isooctane"}) {
    const std::string once = meaning_of(text);
    CHECK(meaning_of(once) == once);
  }
}

TEST_CASE("a grade of the shelf goes with the name in free words too", "[typed]") {
  const Catalogue& catalogue = shipped_catalogue();
  const std::vector<Liquid> shelf = {make_liquid(*catalogue.find_solvent("ethanol"), "96 %", catalogue)};
  CHECK(meaning_of("3:7 ethanol/isooctane", shelf) == "isooctane 70, ethanol 96 % 30");
  CHECK(meaning_of("30 % ethanol in isooctane", shelf) == "isooctane 70, ethanol 96 % 30");
}
