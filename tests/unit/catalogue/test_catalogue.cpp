#include "shipped.hpp"

#include "gentlest/base/diagnostic.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

using namespace gentlest;
using gentlest::test::shipped_catalogue;

namespace {

std::string complaint_about(CatalogueRecords records) {
  try {
    Catalogue catalogue(std::move(records));
  } catch (const InputError& error) {
    return render(error.faults());
  }
  return "no complaint";
}

CatalogueRecords two_solvents() {
  CatalogueRecords records;
  records.version = "1";
  records.sources = {{"book", "A Book 1999", "seen"}};
  records.response.source = "book";
  Solvent a;
  a.id = "a";
  a.name = "Alpha";
  a.cas = "64-17-5";
  Solvent b;
  b.id = "b";
  b.name = "Beta";
  b.other_names = {OtherName{"Second"}};
  records.solvents = {a, b};
  return records;
}

// A CAS number's last digit is a checksum of the others.
bool checksum_fits(const std::string& cas) {
  int sum = 0;
  int weight = 0;
  for (std::size_t i = cas.size() - 1; i-- > 0;)
    if (cas[i] != '-') sum += ++weight * (cas[i] - '0');
  return sum % 10 == cas.back() - '0';
}

}  // namespace

TEST_CASE("records are found by every name, whatever the case") {
  const Catalogue catalogue(two_solvents());
  CHECK(catalogue.find_solvent("a")->name == "Alpha");
  CHECK(catalogue.find_solvent(" ALPHA ")->id == "a");
  CHECK(catalogue.find_solvent("64-17-5")->id == "a");
  CHECK(catalogue.find_solvent("second")->id == "b");
  CHECK(catalogue.find_solvent("third") == nullptr);
  CHECK(catalogue.find_material("a") == nullptr);
  CHECK(catalogue.find_source("book")->citation == "A Book 1999");
}

TEST_CASE("a name that two records claim is refused") {
  CatalogueRecords records = two_solvents();
  records.solvents[1].other_names.push_back(OtherName{"alpha"});
  CHECK(complaint_about(records).find("\"a\" and \"b\" are both called \"alpha\"") != std::string::npos);
}

TEST_CASE("a figure without an existing source is refused, wherever it stands") {
  CatalogueRecords records = two_solvents();
  records.solvents[0].density_g_per_cm3 = Known<double>{{0.8, "boook", Standing::measured, ""}, {}, ""};
  CHECK(complaint_about(records).find("did you mean \"book\"?") != std::string::npos);
  records = two_solvents();
  records.solvents[0].density_g_per_cm3 =
      Known<double>{{0.8, "book", Standing::measured, ""}, {{0.81, "", Standing::memory, ""}}, "x"};
  CHECK(complaint_about(records).find("\"a\" names the source \"\"") != std::string::npos);
  records = two_solvents();
  records.solvents[0].hazards = Hazards{};
  CHECK(complaint_about(records) != "no complaint");
  records = two_solvents();
  records.solvents[0].exposure_limits = {ExposureLimit{}};
  CHECK(complaint_about(records) != "no complaint");
}

TEST_CASE("a sphere whose deviations are unknown is refused, and so is a stand-in for nothing") {
  CatalogueRecords records = two_solvents();
  Material material;
  material.id = "m";
  material.name = "M";
  material.sphere = SphereRecord{};
  material.sphere->sphere.chosen = {{{18, 5, 8}, 7}, "book", Standing::measured, ""};
  material.sphere->grade = SphereGrade::weak;
  records.materials = {material};
  CHECK(complaint_about(records).find("no standard deviations") != std::string::npos);
  records.spreads = {{SphereGrade::weak, {1, 2, 3}, 4, "book"}};
  const Catalogue catalogue(records);
  const UncertainSphere sphere = *uncertain_sphere(catalogue.materials()[0], catalogue);
  CHECK(sphere.mean == Sphere{{18, 5, 8}, 7});
  CHECK(sphere.sd == Hansen{1, 2, 3});
  CHECK(sphere.R0_sd == 4);
  records.materials[0].sphere->stand_in_for = "nobody";
  CHECK(complaint_about(records).find("is no material") != std::string::npos);
}

TEST_CASE("the shipped catalogue is as large as it says") {
  const Catalogue& catalogue = shipped_catalogue();
  CHECK(catalogue.solvents().size() >= 90);
  CHECK(catalogue.materials().size() >= 30);
  CHECK(catalogue.spreads().size() == 6);
  std::set<std::string> families;
  for (const Solvent& solvent : catalogue.solvents()) families.insert(solvent.family);
  for (const char* family : {"alcohol", "aliphatic hydrocarbon", "petroleum fraction", "aromatic hydrocarbon", "ketone",
                             "ester", "ether", "glycol ether", "carbonate", "chlorinated", "siloxane", "water"}) {
    INFO(family);
    CHECK(families.count(family) == 1);
  }
}

TEST_CASE("shipped figures lie where such figures can lie") {
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    INFO(solvent.id);
    if (solvent.hansen) {
      const Hansen& h = solvent.hansen->chosen.value;
      CHECK((h.dD >= 11 && h.dD <= 23));
      CHECK((h.dP >= 0 && h.dP <= 30));
      CHECK((h.dH >= 0 && h.dH <= 45));
    }
    if (!solvent.cas.empty()) {
      CHECK(std::regex_match(solvent.cas, std::regex("[0-9]{2,7}-[0-9]{2}-[0-9]")));
      CHECK(checksum_fits(solvent.cas));
    }
    if (solvent.density_g_per_cm3) CHECK(std::abs(solvent.density_g_per_cm3->chosen.value - 1.1) < 0.65);
    if (solvent.molar_mass_g_per_mol && solvent.density_g_per_cm3 && solvent.molar_volume_cm3_per_mol)
      CHECK(solvent.molar_mass_g_per_mol->chosen.value / solvent.density_g_per_cm3->chosen.value ==
            Approx(solvent.molar_volume_cm3_per_mol->chosen.value).epsilon(0.03));
    if (solvent.explosive_limits && solvent.explosive_limits->chosen.value.upper_percent)
      CHECK(solvent.explosive_limits->chosen.value.lower_percent <
            *solvent.explosive_limits->chosen.value.upper_percent);
    if (solvent.flash_point_C && solvent.boiling_point_C)
      CHECK(solvent.flash_point_C->chosen.value < solvent.boiling_point_C->chosen.value);
    if (solvent.hazards && !solvent.hazards->signal_word.empty())
      CHECK((solvent.hazards->signal_word == "Danger" || solvent.hazards->signal_word == "Warning"));
  }
}

TEST_CASE("vapour pressure at the boiling point is about one atmosphere") {
  int compared = 0;
  for (const Solvent& solvent : shipped_catalogue().solvents()) {
    if (!solvent.antoine || !solvent.boiling_point_C) continue;
    const Antoine& a = solvent.antoine->chosen.value;
    const double T = kelvin(Celsius{solvent.boiling_point_C->chosen.value});
    if (T > a.to_K + 10 || T < a.from_K) continue;
    INFO(solvent.id);
    CHECK(std::pow(10, a.A - a.B / (T + a.C)) == Approx(101.325).epsilon(0.25));  // a slip of unit would be far off
    ++compared;
  }
  CHECK(compared >= 20);
}

TEST_CASE("the README's table of keys is the one the files give") {
  std::map<std::string, int> count;
  const std::regex key_line("^    ([a-z_A-Z0-9]+):|^  - ([a-z_A-Z0-9]+):");
  for (const NamedText& file : test::shipped_files()) {
    if (file.name.rfind("liquids/", 0) != 0) continue;
    std::istringstream in(file.text);
    std::smatch match;
    for (std::string line; std::getline(in, line);)
      if (std::regex_search(line, match, key_line)) ++count[match[1].matched ? match[1].str() : match[2].str()];
  }
  count.erase("id");
  count.erase("name");
  std::string expected;
  for (const auto& [key, solvents] : count) expected += "| `" + key + "` | " + std::to_string(solvents) + " |\n";
  std::ifstream in(std::string(GENTLEST_SOURCE_DIR) + "/solvents/README.md");
  std::string found;
  bool inside = false;
  for (std::string line; std::getline(in, line);) {
    if (line == "<!-- keys: end -->") inside = false;
    if (inside && line.rfind("| `", 0) == 0) found += line + "\n";
    if (line == "<!-- keys: begin -->") inside = true;
  }
  CHECK(found == expected);
}
