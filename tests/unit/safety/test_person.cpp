// What a mixture does to the person: a worst statement, the breath by one list, the skin; a missing record is told.
#include "shipped.hpp"
#include "shipped_mixtures.hpp"

#include "gentlest/catalogue/statements.hpp"
#include "gentlest/safety/person.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using namespace gentlest::test;

namespace {

PersonHazard hazard_of(const char* text) {
  const Mixture mixture = mixture_from(text);
  return person_hazard(mixture, label_of(mixture, shipped_catalogue()), shipped_catalogue());
}

}  // namespace

TEST_CASE("the worst statement decides, and fire does not count", "[hazards]") {
  CHECK(severity_of_statements({"H225", "H336", "H304"}) == 2);
  CHECK(worst_statement({"H225", "H336", "H304"}) == "H304");
  CHECK(severity_of_statements({"H336", "H360FD"}) == 5);
  CHECK(worst_statement({"H336", "H360FD"}) == "H360FD");
  CHECK(severity_of_statements({"H225"}) == 0);
  CHECK(worst_statement({"H225"}).empty());
  CHECK(worst_statement({}).empty());
}

// Classifications: Regulation (EC) 1272/2008, Annex VI, as the catalogue's records cite them.
TEST_CASE("breath and skin of known bottles", "[hazards]") {
  const PersonHazard acetone = hazard_of("acetone 100");
  CHECK(acetone.severity == 1);
  CHECK(acetone.skin == SkinHarm::dries);
  CHECK(acetone.is_complete);
  CHECK(hazard_of("isooctane 100").skin == SkinHarm::irritates);
  CHECK(hazard_of("toluene 100").severity == 3);  // H361d, H373
  CHECK(hazard_of("methanol 100").skin == SkinHarm::through_skin);
  // Vapour hazard ratio of a pure liquid: its vapour pressure over the air's, in ppm, over its limit. Acetone: 24.7 kPa
  // at 20 C (Antoine constants of Poling, Prausnitz, O'Connell 2001), 500 ppm (2000/39/EC).
  const auto ratio = vapour_ratio(acetone, "EU");
  REQUIRE(ratio);
  CHECK(*ratio == Approx(24.7 / 101.325 * 1e6 / 500).epsilon(0.03));
}

TEST_CASE("ratios compare within one list, the one that most of them are on", "[hazards]") {
  PersonHazard a, b;
  a.vapour = {{"EU", std::nullopt, {"x"}}, {"OSHA PEL", 10.0, {}}};
  b.vapour = {{"EU", 3.0, {}}, {"OSHA PEL", 20.0, {}}};
  CHECK(list_for_all({a, b}) == "OSHA PEL");
  CHECK(list_for_all({b}) == "EU");
  CHECK(list_for_all({a, a}) == "OSHA PEL");
  CHECK(list_for_all({}).empty());
  CHECK_FALSE(vapour_ratio(a, "EU"));
  // None of them complete: one list all the same, so that what lacks a limit can be named.
  PersonHazard c;
  c.vapour = {{"EU", std::nullopt, {"x"}}};
  CHECK(list_for_all({c}) == "EU");
}

TEST_CASE("a part without a record leaves the skin untold, never unharmed", "[hazards]") {
  Solvent unknown;
  unknown.id = unknown.name = "unknown";
  const Mixture mixture({{{unknown.name, &unknown, 0, {}}, 1.0}});
  MixtureLabel label;
  label.not_known.push_back({LabelGap::What::record, {"unknown"}, 100, {}});
  const PersonHazard hazard = person_hazard(mixture, label, shipped_catalogue());
  CHECK(hazard.skin == SkinHarm::untold);
  CHECK_FALSE(hazard.is_complete);
  label.not_known.clear();
  CHECK(person_hazard(mixture, label, shipped_catalogue()).skin == SkinHarm::none_recorded);
}
