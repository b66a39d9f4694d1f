// Names of the trade in a mixture: some end in a number, some mean more than one liquid, some hide a denaturant.
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/safety/caution.hpp"
#include "gentlest/safety/mixture_hazard.hpp"

#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

std::string read_back(const std::string& text, const std::vector<Liquid>& shelf = {}) {
  try {
    return to_text(parse_mixture(text, shipped_catalogue(), shelf));
  } catch (const InputError& error) {
    return render(error.faults());
  }
}

bool holds(const std::string& text, const char* piece) {
  return text.find(piece) != std::string::npos;
}

Liquid bottle_of(const char* name, const char* grade) {
  return make_liquid(shipped_catalogue().meaning_of_solvent(name), grade, shipped_catalogue());
}

}  // namespace

TEST_CASE("a name that ends in a number is a name, and its share still has to follow") {
  CHECK(read_back("Solvesso 100") == "aromatic naphtha 100");
  CHECK(read_back("Solvesso 100 30, isooctane 70") == "isooctane 70, aromatic naphtha 30");
  CHECK(read_back("isooctane 70, solvesso-100 30 %") == "isooctane 70, aromatic naphtha 30");
  CHECK(read_back("Solvesso 100 0.3, isooctane 0.7") == "isooctane 70, aromatic naphtha 30");
  CHECK(holds(read_back("Solvesso 100, isooctane 70"), "\"Solvesso 100\" has no share"));
  CHECK(holds(read_back("Solvesso 100 %"), "unknown solvent \"Solvesso\""));
  CHECK(read_back("isooctane 100") == "isooctane 100");
  CHECK(holds(read_back("d5 100"), "decamethylcyclopentasiloxane has no Hansen parameters"));
}

TEST_CASE("an ambiguous name in a mixture is asked back with the choices") {
  for (const char* text : {"propanol 30, isooctane 70", "propanol 96 % 30, isooctane 70", "propanol"}) {
    INFO(text);
    const std::string said = read_back(text);
    INFO(said);
    CHECK(holds(said, "mixture:1:1: error: \"propanol\" may be more than one solvent"));
    CHECK(holds(said, "n_propanol (1-propanol) or isopropanol"));
  }
  CHECK(holds(read_back("Testbenzinn 30, acetone 70"), "did you mean \"Testbenzin\"?"));
}

TEST_CASE("denatured ethanol keeps its word: in the label, in the cautions, and as a gap of the GHS label") {
  CHECK(read_back("IMS 30, isooctane 70") == "isooctane 70, denatured ethanol 30");
  CHECK(read_back("meths 96 % 30, isooctane 70") == "isooctane 70, denatured ethanol 96 % 30");
  const Mixture mixture = parse_mixture("isooctane 70, denatured ethanol 96 % 30", shipped_catalogue());
  CHECK(to_text(mixture) == "isooctane 70, denatured ethanol 96 % 30");
  const MixtureLabel label = label_of(mixture, shipped_catalogue());
  CHECK_FALSE(label.complete());
  const auto cautions = cautions_for(mixture, label, shipped_catalogue());
  const auto told = std::find_if(cautions.begin(), cautions.end(),
                                 [](const Caution& one) { return one.kind == CautionKind::denatured; });
  REQUIRE(told != cautions.end());
  CHECK(told->liquids == std::vector<std::string>{"denatured ethanol 96 %"});
  const Mixture pure = parse_mixture("isooctane 70, ethanol 96 % 30", shipped_catalogue());
  CHECK(label_of(pure, shipped_catalogue()).complete());
  // A pure one alone too: the record of ethanol is not that of the bottle.
  CHECK_FALSE(label_of(parse_mixture("IMS", shipped_catalogue()), shipped_catalogue()).complete());
}

TEST_CASE("a name without a grade means the bottle of the shelf, denatured or not") {
  CHECK(read_back("ethanol 30, isooctane 70", {bottle_of("IMS", "96 %")}) == "isooctane 70, denatured ethanol 96 % 30");
  CHECK(read_back("IMS 30, isooctane 70", {bottle_of("IMS", "96 %"), bottle_of("ethanol", "absolute")}) ==
        "isooctane 70, denatured ethanol 96 % 30");
  CHECK(read_back("IMS 30, isooctane 70", {bottle_of("ethanol", "96 %")}) == "isooctane 70, denatured ethanol 30");
}
