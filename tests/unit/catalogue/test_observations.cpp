// Observations of the catalogue: what they must name, when they contradict each other, how they are found.
#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/catalogue/catalogue.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

Observation ethanol_on_resin() {
  Observation seen;
  seen.material = "resin";
  seen.parts = {{"ethanol", 100}};
  seen.contact = Contact::swab;
  seen.result = ObservedResult::removed;
  seen.grades = GradeRange{1, 2};
  seen.source = "book";
  seen.where = {"observations/resins.yaml", 7, 5};
  return seen;
}

CatalogueRecords records_with(std::vector<Observation> observations) {
  CatalogueRecords records;
  records.version = "1";
  records.sources = {{"book", "A Book 1999", "seen"}, {"letter", "A Letter 2001", "seen"}};
  records.response.source = "book";
  for (const char* id : {"ethanol", "isooctane"}) {
    Solvent solvent;
    solvent.id = solvent.name = id;
    records.solvents.push_back(solvent);
  }
  for (const char* id : {"resin", "paint"}) {
    Material material;
    material.id = material.name = id;
    records.materials.push_back(material);
  }
  records.observations = std::move(observations);
  return records;
}

std::vector<Diagnostic> faults_of(std::vector<Observation> observations) {
  try {
    Catalogue catalogue(records_with(std::move(observations)));
  } catch (const InputError& error) {
    return error.faults();
  }
  return {};
}

// The one fault of this row, with its place.
std::string fault_of(const Observation& seen) {
  const std::vector<Diagnostic> faults = faults_of({seen});
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].where == seen.where);
  CHECK_FALSE(faults[0].remedy.empty());
  return faults[0].message + " -> " + faults[0].remedy;
}

bool holds(const std::string& text, const char* part) {
  return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("an observation that fits is taken and found by its material and its liquids", "[observations]") {
  Observation mixed = ethanol_on_resin();
  mixed.material = "paint";
  mixed.parts = {{"isooctane", 70}, {"ethanol", 30}};
  const Catalogue catalogue(records_with({ethanol_on_resin(), mixed}));
  REQUIRE(catalogue.observations().size() == 2);
  const auto on_paint = catalogue.observations_on(*catalogue.find_material("paint"));
  REQUIRE(on_paint.size() == 1);
  CHECK(*on_paint[0] == mixed);
  CHECK(catalogue.observations_with(*catalogue.find_solvent("ethanol")).size() == 2);
  CHECK(catalogue.observations_with(*catalogue.find_solvent("isooctane")).size() == 1);
}

TEST_CASE("an observation names a material, liquids and a source that exist", "[observations]") {
  Observation seen = ethanol_on_resin();
  seen.material = "resine";
  CHECK(holds(fault_of(seen), "\"resine\" is no material of the catalogue -> did you mean \"resin\"?"));
  seen = ethanol_on_resin();
  seen.parts = {{"etanol", 100}};
  CHECK(holds(fault_of(seen), "\"etanol\" is no liquid of the catalogue -> did you mean \"ethanol\"?"));
  seen = ethanol_on_resin();
  seen.source = "boook";
  CHECK(holds(fault_of(seen), "\"boook\" is no source of sources.yaml -> did you mean \"book\"?"));
  seen.source = "";
  CHECK(holds(fault_of(seen), "add it to sources.yaml"));
}

TEST_CASE("an observation whose grades leave out its own result contradicts itself", "[observations]") {
  Observation seen = ethanol_on_resin();
  seen.grades = GradeRange{3, 6};
  CHECK(holds(fault_of(seen), "leave out its own result, \"removed\""));
  seen.result = ObservedResult::not_removed;
  CHECK(faults_of({seen}).empty());
  seen.grades = GradeRange{1, 2};
  CHECK(holds(fault_of(seen), "\"not_removed\""));
  seen.result = ObservedResult::nothing_seen;
  seen.grades = GradeRange{4, 5};
  CHECK(holds(fault_of(seen), "\"nothing_seen\""));
  seen.grades = GradeRange{4, 6};
  CHECK(faults_of({seen}).empty());
}

TEST_CASE("the same test by the same source stands there once, and with one answer", "[observations]") {
  const Observation first = ethanol_on_resin();
  Observation second = first;
  second.where.line = 12;
  std::vector<Diagnostic> faults = faults_of({first, second});
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].where.line == 12);
  CHECK(holds(faults[0].message, "stands there twice"));
  second.result = ObservedResult::not_removed;
  second.grades = GradeRange{5, 6};
  faults = faults_of({first, second});
  REQUIRE(faults.size() == 1);
  CHECK(holds(faults[0].message, "contradict each other"));
  Observation other = second;
  other.source = "letter";  // sources may well disagree
  CHECK(faults_of({first, other}).empty());
  other = second;
  other.duration = "20 minutes";
  CHECK(faults_of({first, other}).empty());
  other = second;
  other.state = "aged";
  CHECK(faults_of({first, other}).empty());
  other = second;
  other.contact = Contact::poultice;
  CHECK(faults_of({first, other}).empty());
  Observation mixed = first;
  mixed.parts = {{"isooctane", 70}, {"ethanol", 30}};
  Observation turned = mixed;
  std::swap(turned.parts[0], turned.parts[1]);  // the order of the parts makes no other mixture
  CHECK(faults_of({mixed, turned}).size() == 1);
}

TEST_CASE("the shipped observations are as many as the README says", "[observations]") {
  const std::vector<Observation>& all = shipped_catalogue().observations();
  const auto count = [&](Witness witness) {
    return std::to_string(std::count_if(
        all.begin(), all.end(), [&](const Observation& seen) { return seen.grades && seen.witness == witness; }));
  };
  const auto told = std::count_if(all.begin(), all.end(), [](const Observation& seen) { return !seen.grades; });
  std::ifstream in(std::string(GENTLEST_SOURCE_DIR) + "/solvents/README.md");
  std::string readme;
  for (std::string word; in >> word;) readme += word + " ";
  CHECK(holds(readme, ("- " + count(Witness::seen) + " rows rest on a text").c_str()));
  CHECK(holds(readme, (count(Witness::memory) + " on memory").c_str()));
  CHECK(holds(readme, (count(Witness::practice) + " on common practice").c_str()));
  CHECK(holds(readme, (std::to_string(told) + " older rows tell in words").c_str()));
  CHECK(all.size() >= 600);
  std::set<std::string> materials;
  for (const Observation& seen : all) materials.insert(seen.material);
  CHECK(materials.size() >= 50);
}

TEST_CASE("memory and practice name no publication, and a publication is seen", "[observations]") {
  for (const Observation& seen : shipped_catalogue().observations()) {
    INFO(seen.where.file << ":" << seen.where.line);
    CHECK((seen.witness == Witness::memory) == (seen.source == "recalled"));
    CHECK((seen.witness == Witness::practice) == (seen.source == "common_practice"));
  }
}
