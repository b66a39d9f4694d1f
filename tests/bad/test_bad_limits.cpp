// Limits of hazard records: what is read, and that nothing is passed over in silence.
#include "shipped.hpp"

#include "io/catalogue_records.hpp"
#include "io/specific_limits.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;
using namespace gentlest::test;

namespace {

OwnLimits read(const std::string& text) {
  std::vector<std::string> faults;
  OwnLimits own = own_limits_from(text, faults);
  INFO(text);
  for (const std::string& fault : faults) UNSCOPED_INFO(fault);
  CHECK(faults.empty());
  return own;
}

// One liquid whose record holds this line in place of its specific limits.
std::vector<Diagnostic> faults_of(const std::string& line) {
  YamlFile file("acids.yaml",
                "family: acid\nsolvents:\n  - id: x\n    name: x\n    no_hansen: none\n    hazards:\n"
                "      statements: [H301, H335]\n      source: s\n      standing: measured\n" +
                    line + "\n");
  CatalogueRecords records;
  read_liquids(file, records);
  return file.faults();
}

}  // namespace

TEST_CASE("specific limits are read as CLP Annex VI prints them", "[hazards]") {
  const OwnLimits acid = read(
      "Skin Corr. 1A; H314: C >= 90 %; Skin Corr. 1B; H314: 25 % <= C < 90 %; Skin Irrit. 2; H315: 10 % <= C < 25 %");
  REQUIRE(acid.limits.size() == 3);
  CHECK(acid.limits[0] == SpecificLimit{"H314", 90, std::nullopt});
  CHECK(acid.limits[1] == SpecificLimit{"H314", 25, 90});
  CHECK(acid.limits[2] == SpecificLimit{"H315", 10, 25});
  CHECK(read("Repr. 2; H361fd: C \xE2\x89\xA5 1 %").limits[0] == SpecificLimit{"H361fd", 1, std::nullopt});
  const OwnLimits estimates = read(
      "Oral: ATE = 1200 mg/kg bw; dermal: ATE = 300 mg/kg; inhalation: ATE = 3 mg/L (vapours); Inhalation: ATE = 1.5 "
      "mg/L (dusts or mists); M=10");
  CHECK(estimates.ATE_oral_mg_per_kg == 1200.0);
  CHECK(estimates.ATE_dermal_mg_per_kg == 300.0);
  CHECK(estimates.ATE_vapour_mg_per_L == 3.0);
  CHECK(estimates.ATE_mist_mg_per_L == 1.5);
  CHECK(estimates.M_acute == 10);
  CHECK(estimates.M_chronic == 10);
  const OwnLimits factors = read("M(acute) = 1; M(Chronic)=100; note P: H340 as well, unless below 0.1 % benzene");
  CHECK(factors.M_acute == 1);
  CHECK(factors.M_chronic == 100);
  CHECK(factors.remarks == std::vector<std::string>{"note P: H340 as well, unless below 0.1 % benzene"});
  CHECK(factors.limits.empty());
  CHECK(read("") == OwnLimits{});
}

TEST_CASE("a specific limit that cannot be read, or cannot be right, is a fault with its place", "[hazards]") {
  CHECK(faults_of("      specific_limits: \"STOT SE 3; H335: C >= 25 %\"").empty());
  CHECK(faults_of("      specific_limits: \"STOT SE 3; H336: C >= 1 %\"").empty());      // a classification by itself
  CHECK(faults_of("      specific_limits: \"Flam. Liq. 3; H226: C >= 85 %\"").empty());  // as Annex VI has formic acid
  for (const char* text :
       {"STOT SE 3; H335: C > 25 %", "H335: C >= 25", "H335: C >= 0 %", "H335: C >= 101 %", "H335 C >= 25 %",
        "H335: 25 % <= C < 10 %", "H335: C < 25 %", "H335: C >= 2,5 %", "STOT SE 3",
        "STOT SE 3; Oral: ATE = 5 mg/kg bw", "Oral: ATE 1200 mg/kg bw", "Oral: ATE = 0 mg/kg bw",
        "Oral: ATE = 3 mg/L (vapours)", "Inhalation: ATE = 3 mg/L", "Oral: ATE = 5 mg/kg bw; Oral: ATE = 6 mg/kg bw",
        "M=0.1", "M=", "see the sheet", "H335: C >= 25 %; H33: C >= 1 %",
        // a danger that the record does not name
        "H336: 10 % <= C < 25 %", "H302: C >= 25 %", "H999: C >= 1 %", "Dermal: ATE = 300 mg/kg bw",
        "Inhalation: ATE = 3 mg/L (vapours)", "M=10"}) {
    INFO(text);
    const auto faults = faults_of(std::string("      specific_limits: \"") + text + "\"");
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].where.file == "acids.yaml");
    CHECK(faults[0].where.line == 10);
    CHECK(faults[0].message.find("specific_limits") != std::string::npos);
    CHECK_FALSE(faults[0].remedy.empty());
  }
}

TEST_CASE("a statement that is none is a fault with its place", "[hazards]") {
  const auto faults = faults_of("      supplemental: [EUH066, EUH999, H22]");
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].where.line == 10);
  CHECK(faults[0].message.find("EUH999") != std::string::npos);
}
