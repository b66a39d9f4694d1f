// Hazard records and limits for the air against the printed law, and each record against itself.
#include "csv.hpp"
#include "shipped.hpp"

#include "gentlest/learning/reading.hpp"
#include "gentlest/safety/exposure.hpp"
#include "io/catalogue_records.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <optional>
#include <set>

using namespace gentlest;
using gentlest::test::read_table;
using gentlest::test::Row;
using gentlest::test::shipped_catalogue;

namespace {

using Words = std::set<std::string>;

std::vector<std::string> split(const std::string& text, const std::string& by) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find(by, from), text.size());
    parts.push_back(text.substr(from, to - from));
    from = to + by.size();
  }
  return parts;
}

Words set_of(const std::vector<std::string>& words) {
  return {words.begin(), words.end()};
}

// What a class of CLP Annex I stands for: its statements, its pictogram and signal word (tables of label elements in
// Annex I, parts 2 to 5; class words of Annex VI, table 1.1; recalled, and borne out by the rows of Table 3 below).
struct HazardClass {
  Words statements;
  std::string pictogram;  // empty: none
  std::string signal;     // empty: none
};

std::map<std::string, HazardClass> hazard_classes() {
  std::map<std::string, HazardClass> table = {{"Flam. Liq. 1", {{"H224"}, "GHS02", "Danger"}},
                                              {"Flam. Liq. 2", {{"H225"}, "GHS02", "Danger"}},
                                              {"Flam. Liq. 3", {{"H226"}, "GHS02", "Warning"}},
                                              {"Met. Corr. 1", {{"H290"}, "GHS05", "Warning"}},
                                              {"Acute Tox. 1", {{"H300", "H310", "H330"}, "GHS06", "Danger"}},
                                              {"Acute Tox. 2", {{"H300", "H310", "H330"}, "GHS06", "Danger"}},
                                              {"Acute Tox. 3", {{"H301", "H311", "H331"}, "GHS06", "Danger"}},
                                              {"Acute Tox. 4", {{"H302", "H312", "H332"}, "GHS07", "Warning"}},
                                              {"Skin Irrit. 2", {{"H315"}, "GHS07", "Warning"}},
                                              {"Eye Dam. 1", {{"H318"}, "GHS05", "Danger"}},
                                              {"Eye Irrit. 2", {{"H319"}, "GHS07", "Warning"}},
                                              {"Resp. Sens. 1", {{"H334"}, "GHS08", "Danger"}},
                                              {"Muta. 2", {{"H341"}, "GHS08", "Warning"}},
                                              {"Carc. 2", {{"H351"}, "GHS08", "Warning"}},
                                              {"Repr. 2", {{"H361", "H361d", "H361f", "H361fd"}, "GHS08", "Warning"}},
                                              {"STOT SE 1", {{"H370"}, "GHS08", "Danger"}},
                                              {"STOT SE 2", {{"H371"}, "GHS08", "Warning"}},
                                              {"STOT SE 3", {{"H335", "H336"}, "GHS07", "Warning"}},
                                              {"STOT RE 1", {{"H372"}, "GHS08", "Danger"}},
                                              {"STOT RE 2", {{"H373"}, "GHS08", "Warning"}},
                                              {"Asp. Tox. 1", {{"H304"}, "GHS08", "Danger"}},
                                              {"Aquatic Acute 1", {{"H400"}, "GHS09", "Warning"}},
                                              {"Aquatic Chronic 1", {{"H410"}, "GHS09", "Warning"}},
                                              {"Aquatic Chronic 2", {{"H411"}, "GHS09", ""}},
                                              {"Aquatic Chronic 3", {{"H412"}, "", ""}},
                                              {"Aquatic Chronic 4", {{"H413"}, "", ""}},
                                              {"Ozone 1", {{"H420"}, "GHS07", "Warning"}}};
  for (const char* category : {"1", "1A", "1B", "1C"})
    table["Skin Corr. " + std::string(category)] = {{"H314"}, "GHS05", "Danger"};
  for (const char* category : {"1", "1A", "1B"})
    table["Skin Sens. " + std::string(category)] = {{"H317"}, "GHS07", "Warning"};
  for (const char* category : {"1A", "1B"}) {
    const std::string end = category;
    table["Muta. " + end] = {{"H340"}, "GHS08", "Danger"};
    table["Carc. " + end] = {{"H350"}, "GHS08", "Danger"};
    table["Repr. " + end] = {{"H360", "H360D", "H360F", "H360FD", "H360Df", "H360Fd"}, "GHS08", "Danger"};
  }
  return table;
}

// The Australian list writes the same classes out.
std::string clp_word(const std::string& word) {
  static const std::map<std::string, std::string> words = {
      {"Acute toxicity", "Acute Tox."},
      {"Acute toxicity (ingestion)", "Acute Tox."},
      {"Aspiration hazard", "Asp. Tox."},
      {"Eye damage", "Eye Dam."},
      {"Eye irritation", "Eye Irrit."},
      {"Reproductive toxicity", "Repr."},
      {"Skin corrosion", "Skin Corr."},
      {"Skin irritation", "Skin Irrit."},
      {"Skin sensitisation", "Skin Sens."},
      {"Specific target organ toxicity (repeated exposure)", "STOT RE"},
      {"Specific target organ toxicity (single exposure)", "STOT SE"}};
  const std::size_t dash = word.find(" - category ");
  if (dash == std::string::npos) return word;
  const auto known = words.find(word.substr(0, dash));
  const std::string category = word.substr(dash + 12);
  return known == words.end() ? word : known->second + " " + (category == "2A" ? "2" : category);
}

// Pictograms by CLP Article 26: GHS06 drives GHS07 out; corrosion GHS05 drives out the GHS07 of skin and eye
// irritation.
Words pictograms_of(const std::vector<std::string>& classes) {
  const auto table = hazard_classes();
  const bool corrodes = std::any_of(classes.begin(), classes.end(), [](const std::string& word) {
    return word.rfind("Skin Corr.", 0) == 0 || word.rfind("Eye Dam.", 0) == 0;
  });
  Words pictograms;
  for (const std::string& word : classes) {
    const bool irritates = word == "Skin Irrit. 2" || word == "Eye Irrit. 2";
    if (!table.at(word).pictogram.empty() && !(irritates && corrodes)) pictograms.insert(table.at(word).pictogram);
  }
  if (pictograms.count("GHS06") == 1) pictograms.erase("GHS07");
  return pictograms;
}

std::string signal_of(const std::vector<std::string>& classes) {
  const auto table = hazard_classes();
  std::string signal;
  for (const std::string& word : classes)
    if (signal != "Danger" && !table.at(word).signal.empty()) signal = table.at(word).signal;
  return signal;
}

// The liquids as the files record them; a Catalogue may complete what it is given.
const std::vector<Solvent>& recorded_liquids() {
  static const std::vector<Solvent> liquids = [] {
    CatalogueRecords records;
    for (const NamedText& named : test::shipped_files()) {
      if (named.name.rfind("liquids/", 0) != 0) continue;
      YamlFile file(named.name, named.text);
      read_liquids(file, records);
    }
    return records.solvents;
  }();
  return liquids;
}

const Solvent* recorded(const std::string& cas) {
  for (const Solvent& solvent : recorded_liquids())
    if (solvent.cas == cas) return &solvent;
  return nullptr;
}

bool is_eu(const ExposureLimit& limit) {
  return limit.authority.rfind("EU ", 0) == 0;
}

const ExposureLimit* eu_limit(const Solvent& solvent) {
  for (const ExposureLimit& limit : solvent.exposure_limits)
    if (is_eu(limit)) return &limit;
  return nullptr;
}

}  // namespace

TEST_CASE("hazard records are those of the consolidated law of July 2026") {
  Words in_table;
  for (const Row& row : read_table("annex_vi_2026.csv")) {
    INFO(row.at("cas"));
    const Solvent* solvent = recorded(row.at("cas"));
    REQUIRE(solvent);
    in_table.insert(solvent->id);
    const Hazards& hazards = solvent->hazards.value();
    CHECK(hazards.source == "clp_annex_vi_2026");
    const bool note_P = row.at("limits") == "note P";
    Words law;
    for (const std::string& one : split(row.at("classes"), "; "))
      if (!note_P || (one.find("H340") == std::string::npos && one.find("H350") == std::string::npos)) law.insert(one);
    Words ours;
    for (std::size_t i = 0; i < hazards.statements.size(); ++i)
      ours.insert(hazards.classes.at(i) + " " + hazards.statements[i]);
    CHECK(ours == law);
    CHECK(set_of(hazards.pictograms) == set_of(split(row.at("pictograms"), " ")));
    CHECK(hazards.signal_word == row.at("signal"));
    CHECK(set_of(hazards.supplemental) == set_of(split(row.at("supplemental"), " ")));
    CHECK((note_P ? hazards.specific_limits.substr(0, 6) : hazards.specific_limits) == row.at("limits"));
  }
  for (const Solvent& solvent : recorded_liquids()) {
    INFO(solvent.id);
    if (solvent.hazards && solvent.hazards->source == "clp_annex_vi_2026") CHECK(in_table.count(solvent.id) == 1);
  }
  CHECK(in_table.size() == 96);
}

TEST_CASE("classes, statements, pictograms and signal word of every record belong together") {
  const auto table = hazard_classes();
  int records = 0;
  for (const Solvent& solvent : recorded_liquids()) {
    if (!solvent.hazards) continue;
    INFO(solvent.id);
    const Hazards& hazards = *solvent.hazards;
    REQUIRE(hazards.classes.size() == hazards.statements.size());
    std::vector<std::string> classes;
    for (std::size_t i = 0; i < hazards.classes.size(); ++i) {
      classes.push_back(clp_word(hazards.classes[i]));
      INFO(classes.back() << " with " << hazards.statements[i]);
      REQUIRE(table.count(classes.back()) == 1);
      CHECK(table.at(classes.back()).statements.count(hazards.statements[i]) == 1);
    }
    CHECK(set_of(hazards.pictograms) == pictograms_of(classes));
    CHECK(hazards.pictograms.size() == set_of(hazards.pictograms).size());
    CHECK(hazards.signal_word == signal_of(classes));
    ++records;
  }
  CHECK(records >= 138);
}

// The rule of solvents/README.md; the law beside it: REACH Annex XVII, entries 28 to 30 (not for the public).
TEST_CASE("nobody is led to what may cause cancer or harm genes, fertility or the unborn child") {
  int such = 0;
  for (const Solvent& solvent : recorded_liquids()) {
    if (!solvent.hazards) continue;
    INFO(solvent.id);
    for (const std::string& code : solvent.hazards->statements)
      for (const char* grave : {"H340", "H350", "H360"})
        if (code.rfind(grave, 0) == 0) {
          CHECK(solvent.reference_only);
          ++such;
        }
  }
  CHECK(such >= 20);
  for (const char* id : {"cumene", "methoxyethoxyethanol"}) CHECK(shipped_catalogue().find_solvent(id)->reference_only);
}

// Annexes as read: Directives 2009/161/EU and (EU) 2019/1831, Directive 2004/37/EC Annex III (consolidated), and the
// list of substances that Directive (EU) 2022/431 moved there. 0 stands for no figure.
TEST_CASE("limits of the European Union are those of the annexes") {
  struct Printed {
    const char* cas;
    bool binding;
    double mg, ppm, brief_mg, brief_ppm;
    bool skin;
  };
  const Printed annexes[] = {{"68-12-2", true, 15, 5, 30, 10, true},
                             {"75-15-0", false, 15, 5, 0, 0, true},
                             {"109-86-4", true, 0, 1, 0, 0, true},
                             {"110-49-6", true, 0, 1, 0, 0, true},
                             {"110-80-5", true, 8, 2, 0, 0, true},
                             {"111-15-9", true, 11, 2, 0, 0, true},
                             {"123-91-1", false, 73, 20, 0, 0, false},
                             {"872-50-4", true, 40, 10, 80, 20, true},
                             {"1634-04-4", false, 183.5, 50, 367, 100, false},
                             {"98-82-8", false, 50, 10, 250, 50, true},
                             {"105-46-4", false, 241, 50, 723, 150, false},
                             {"110-19-0", false, 241, 50, 723, 150, false},
                             {"123-51-3", false, 18, 5, 37, 10, false},
                             {"123-86-4", false, 241, 50, 723, 150, false},
                             {"71-43-2", true, 0.66, 0.2, 0, 0, true},
                             {"79-01-6", true, 54.7, 10, 164.1, 30, true},
                             {"79-46-9", true, 18, 5, 0, 0, false},
                             {"110-86-1", false, 15, 5, 0, 0, false}};
  for (const Printed& printed : annexes) {
    INFO(printed.cas);
    const Solvent* solvent = recorded(printed.cas);
    REQUIRE(solvent);
    const ExposureLimit* limit = eu_limit(*solvent);
    REQUIRE(limit);
    CHECK(limit->authority == (printed.binding ? "EU binding" : "EU indicative"));
    CHECK(limit->long_term_mg_per_m3.value_or(0) == printed.mg);
    CHECK(limit->long_term_ppm.value_or(0) == printed.ppm);
    CHECK(limit->short_term_mg_per_m3.value_or(0) == printed.brief_mg);
    CHECK(limit->short_term_ppm.value_or(0) == printed.brief_ppm);
    CHECK(limit->skin == printed.skin);
    CHECK(limit->standing == Standing::measured);
  }
  CHECK(eu_limit(*shipped_catalogue().find_solvent("dimethylacetamide"))->authority == "EU binding");
}

// ppm and mg/m3 of one limit must fit by the molar volume at 20 C, 24.04 L/mol, on which the directives count; prints
// are rounded, 15 for 16.4 at the worst.
TEST_CASE("ppm and mg/m3 of a European limit say the same, and binding ones come from the directive on carcinogens") {
  int compared = 0;
  for (const Solvent& solvent : recorded_liquids()) {
    INFO(solvent.id);
    const auto& limits = solvent.exposure_limits;
    CHECK(std::count_if(limits.begin(), limits.end(), is_eu) <= 1);
    const ExposureLimit* limit = eu_limit(solvent);
    if (!limit) continue;
    const bool of_carcinogens = limit->source == "eu_2004_37" || limit->source == "eu_2022_431";
    CHECK((limit->authority == "EU binding") == of_carcinogens);
    if (!of_carcinogens) CHECK(limit->authority == "EU indicative");
    if (!solvent.molar_mass_g_per_mol) continue;
    const double per_ppm = solvent.molar_mass_g_per_mol->chosen.value / 24.04;
    for (const auto& [ppm, mg] : {std::pair{limit->long_term_ppm, limit->long_term_mg_per_m3},
                                  std::pair{limit->short_term_ppm, limit->short_term_mg_per_m3}}) {
      if (!ppm || !mg) continue;
      CHECK(std::abs(*mg / (*ppm * per_ppm) - 1) < 0.1);
      ++compared;
    }
  }
  CHECK(compared >= 80);
}

TEST_CASE("binding and indicative limits of the Union make one list") {
  const Catalogue& catalogue = shipped_catalogue();
  const Solvent* formamide = catalogue.find_solvent("dimethylformamide");
  const Solvent* acetone = catalogue.find_solvent("acetone");
  CHECK(limit_ppm(*formamide, "EU", 73.1) == 5);
  CHECK(limit_ppm(*acetone, "EU", 58.1) == 500);
  CHECK_FALSE(limit_ppm(*formamide, "EU indicative", 73.1));
  const Mixture mixture({{{formamide->name, formamide, 0, formamide->hansen->chosen.value}, 0.5},
                         {{acetone->name, acetone, 0, acetone->hansen->chosen.value}, 0.5}});
  int lists = 0;
  for (const VapourHazard& hazard : vapour_hazards(mixture, catalogue, Celsius{20})) {
    INFO(hazard.authority);
    CHECK(hazard.authority != "EU binding");
    CHECK(hazard.authority != "EU indicative");
    if (hazard.authority != "EU") continue;
    CHECK(hazard.without.empty());
    CHECK(hazard.ratio.has_value());
    ++lists;
  }
  CHECK(lists == 1);
}

TEST_CASE("the catalogue says up to which day the law was seen") {
  const Law& law = shipped_catalogue().law();
  CHECK(is_date(law.seen_until));
  CHECK(law.seen_until >= "2026-07-01");  // the consolidated text it rests on
  CHECK_FALSE(law.seen.empty());
  int older = 0;
  for (const Solvent& solvent : recorded_liquids())
    older += solvent.hazards && solvent.hazards->source != "clp_annex_vi_2026";
  CHECK((older > 0) == !law.older.empty());
}
