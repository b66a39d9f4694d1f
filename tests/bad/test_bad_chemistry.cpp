// Faulty catalogue files about liquids together: one fault each, and what the program must say about it.
#include "gentlest/base/diagnostic.hpp"

#include "io/catalogue_files.hpp"
#include "io/chemistry_records.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;

namespace {

using Reader = void (*)(YamlFile&, Chemistry&);

struct Bad {
  const char* what;
  Reader reader;
  const char* text;
  const char* message;  // must appear
};

const std::vector<Bad> bad_files = {
    {"no set", read_unifac, "other: 1\n", "unifac"},
    {"four figures", read_unifac,
     "unifac:\n  source: a\n  subgroups:\n    - [1, \"CH3\", 1, 0.9]\n  interactions: []\n", "five figures"},
    {"negative surface", read_unifac,
     "unifac:\n  source: a\n  subgroups:\n    - [1, \"CH3\", 1, 0.9, -1]\n  interactions: []\n", "Q not below 0"},
    {"doubled subgroup", read_unifac,
     "unifac:\n  source: a\n  subgroups:\n    - [1, \"a\", 1, 1, 1]\n    - [1, \"b\", 1, 1, 1]\n  interactions: []\n",
     "subgroup 1 stands there twice"},
    {"doubled pair", read_unifac,
     "unifac:\n  source: a\n  subgroups: []\n  interactions:\n    - [1, 2, 5]\n    - [1, 2, 6]\n",
     "the pair 1, 2 stands there twice"},
    {"half a group", read_unifac, "unifac:\n  source: a\n  subgroups: []\n  interactions:\n    - [1.5, 2, 5]\n",
     "1.5 is no number of a group"},
    {"molecule of nothing", read_unifac,
     "unifac:\n  source: a\n  subgroups: []\n  interactions: []\n  molecules:\n    water: {16: 0}\n", "count above 0"},
    {"group that is no number", read_unifac,
     "unifac:\n  source: a\n  subgroups: []\n  interactions: []\n  molecules:\n    water: {CH3: 1}\n",
     "a group needs a number"},
    {"shares that do not add up", read_stand_ins,
     "stand_ins:\n  - {solvent: a, shares: {b: 0.5, c: 0.4}, source: x, standing: assumed}\n",
     "the shares add up to 0.9"},
    {"negative share", read_stand_ins,
     "stand_ins:\n  - {solvent: a, shares: {b: 1.5, c: -0.5}, source: x, standing: assumed}\n", "must be above 0"},
    {"stand-in without a source", read_stand_ins, "stand_ins:\n  - {solvent: a, shares: {b: 1}, standing: assumed}\n",
     "source"},
    {"a word that says nothing", read_miscibility,
     "pairs:\n  - {pair: [a, b], mixing: maybe, source: x, standing: measured}\nchart: {source: x, "
     "standing: measured}\nnumbers: {source: x, standing: measured, of: {}}\n",
     "does not say how the pair mixes"},
    {"three of a pair", read_miscibility,
     "pairs:\n  - {pair: [a, b, c], mixing: partial, source: x, standing: measured}\nchart: {source: "
     "x, standing: measured}\nnumbers: {source: x, standing: measured, of: {}}\n",
     "a pair names two solvents"},
    {"a key nobody asked for", read_miscibility,
     "pairs: []\nchart: {source: x, standing: measured, sometimes: []}\nnumbers: {source: x, "
     "standing: measured, of: {}}\n",
     "sometimes"},
    {"a limit without points", read_water_limits,
     "water_limits:\n  - {alcohol: a, other: b, temperature_C: 25, used_from_percent: 1, used_to_percent: 9, "
     "spread_percent: 1, points: [], source: x, standing: measured}\n",
     "at least one point"},
    {"limits out of order", read_water_limits,
     "water_limits:\n  - {alcohol: a, other: b, temperature_C: 25, used_from_percent: 1, used_to_percent: 9, "
     "spread_percent: 1, points: [[5, 3], [4, 3]], source: x, standing: measured}\n",
     "by rising share"},
    {"a limit that corrects without what it corrects by", read_water_limits,
     "water_limits:\n  - {alcohol: a, other: b, temperature_C: 25, used_from_percent: 1, used_to_percent: 9, "
     "spread_percent: 1, corrects: aliphatic, points: [[5, 3]], source: x, standing: measured}\n",
     "gives the computed limit at each point"},
    {"a limit that corrects nothing known", read_water_limits,
     "water_limits:\n  - {alcohol: a, other: b, temperature_C: 25, used_from_percent: 1, used_to_percent: 9, "
     "spread_percent: 1, corrects: cyclic, points: [[5, 3, 1]], source: x, standing: measured}\n",
     "write aliphatic or aromatic"},
    {"a limit beyond all", read_water_limits,
     "water_limits:\n  - {alcohol: a, other: b, temperature_C: 25, used_from_percent: 1, used_to_percent: 9, "
     "spread_percent: 1, points: [[5, 130]], source: x, standing: measured}\n",
     "130 is outside 0 to 100 %"},
    {"densities that rise", read_strengths,
     "strengths:\n  - {alcohol: a, points: [[0, 800], [100, 998]], source: x, standing: measured}\n", "densities fall"},
    {"densities up to half", read_strengths,
     "strengths:\n  - {alcohol: a, points: [[0, 998], [50, 900]], source: x, standing: measured}\n", "from 0 to 100 %"},
    {"a clash without a reason", read_cautions,
     "incompatible_pairs:\n  - {pair: [a, b], source: x, standing: measured}\ngloves: []\n", "why"},
    {"gloves without words", read_cautions,
     "incompatible_pairs: []\ngloves:\n  - {family: a, source: x, standing: measured}\n", "words"},
};

std::vector<NamedText> shipped_with(const std::string& name, const std::string& piece, const std::string& instead) {
  std::vector<NamedText> files = test::shipped_files();
  for (NamedText& file : files) {
    if (file.name != name) continue;
    const std::size_t at = file.text.find(piece);
    REQUIRE(at != std::string::npos);
    file.text.replace(at, piece.size(), instead);
  }
  return files;
}

std::string complaint_about(const std::vector<NamedText>& files) {
  try {
    read_catalogue(files);
  } catch (const InputError& error) {
    return render(error.faults());
  }
  return "no complaint";
}

}  // namespace

TEST_CASE("faulty files about liquids together are refused, each with its place") {
  for (const Bad& bad : bad_files) {
    INFO(bad.what);
    YamlFile file("test.yaml", bad.text);
    REQUIRE(file.faults().empty());
    Chemistry chemistry;
    bad.reader(file, chemistry);
    const std::string said = render(file.faults());
    INFO(said);
    CHECK(said.find(bad.message) != std::string::npos);
    CHECK(said.find("test.yaml:") != std::string::npos);
  }
}

TEST_CASE("records on liquids together name only what the catalogue has") {
  CHECK(complaint_about(shipped_with("miscibility.yaml", "[methanol, cyclohexane]", "[methanol, cyclohexan]"))
            .find("did you mean \"cyclohexane\"?") != std::string::npos);
  CHECK(complaint_about(shipped_with("stand_ins.yaml", "n_octane: 0.56", "octane_n: 0.56")).find("\"octane_n\"") !=
        std::string::npos);
  CHECK(complaint_about(shipped_with("cautions.yaml", "[chloroform, ketone]", "[chloroform, ketones]"))
            .find("\"ketones\"") != std::string::npos);
  CHECK(complaint_about(shipped_with("unifac.yaml", "source: unifac", "source: onifac")).find("\"onifac") !=
        std::string::npos);
  CHECK(complaint_about(test::shipped_files()) == "no complaint");
}

TEST_CASE("a range that runs backwards and a grade that is none are faults") {
  CHECK(complaint_about(shipped_with("liquids/petroleum_fractions.yaml", "value: [95, 160]", "value: [160, 95]"))
            .find("the end of a range cannot lie below its beginning") != std::string::npos);
  for (const char* grade : {"7", "0", "2.5"}) {
    const std::string instead = std::string("strongest_grade: {value: ") + grade;
    INFO(instead);
    CHECK(complaint_about(shipped_with("materials/oil_and_alkyd.yaml", "strongest_grade: {value: 3", instead))
              .find("a grade is 1 (dissolves) to 6 (nothing seen)") != std::string::npos);
  }
}
