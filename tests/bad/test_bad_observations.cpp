// Faulty files of observations: one fault each, its place, and what the program must say about it.
#include "gentlest/base/diagnostic.hpp"

#include "io/catalogue_files.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace gentlest;

namespace {

struct BadRow {
  const char* what;
  std::string text;
  const char* message;  // must appear
};

// A row that is right, with one line changed or left out.
std::string row_with(const std::string& from, const std::string& to) {
  std::string text =
      "observations:\n"
      "  - material: shellac_fresh\n"
      "    state: a state of its own\n"
      "    liquid: \"isooctane 70, ethanol 30\"\n"
      "    contact: swab\n"
      "    duration: seconds\n"
      "    result: removed\n"
      "    grades: [1, 2]\n"
      "    general: one_sample\n"
      "    source: common_practice\n"
      "    standing: common practice\n"
      "    confidence: low\n";
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

std::vector<Diagnostic> faults_with(const std::string& text) {
  std::vector<NamedText> files = test::shipped_files();
  files.push_back({"observations/added.yaml", text});
  try {
    read_catalogue(files);
  } catch (const InputError& error) {
    return error.faults();
  }
  return {};
}

const char* const two_parts = "\"isooctane 70, ethanol 30\"";

}  // namespace

TEST_CASE("a right row beside the shipped ones is taken") {
  CHECK(faults_with(row_with("shellac_fresh", "shellac_fresh")).empty());
  CHECK(faults_with(row_with(two_parts, "ethanol")).empty());
  CHECK(faults_with(row_with("    result: removed\n    grades: [1, 2]\n", "    said: came off in flakes\n")).empty());
  CHECK(faults_with(row_with(std::string("liquid: ") + two_parts, "liquids_in_words: alcohols")).empty());
}

TEST_CASE("a faulty observation is one fault with place and remedy", "[bad]") {
  const std::vector<BadRow> rows = {
      {"no source", row_with("    source: common_practice\n", ""), "lacks the key \"source\""},
      {"empty source", row_with("source: common_practice", "source: \"\""), "source is empty"},
      {"unknown source", row_with("source: common_practice", "source: comon_practice"),
       "\"comon_practice\" is no source of sources.yaml"},
      {"unknown material", row_with("material: shellac_fresh", "material: shelac"), "\"shelac\" is no material"},
      {"a name in place of the id", row_with("material: shellac_fresh", "material: \"dammar, aged\""),
       "\"dammar, aged\" is no material"},
      {"unknown liquid", row_with("ethanol 30", "etanol 30"), "\"etanol\" is no liquid"},
      {"shares that do not add up", row_with("ethanol 30", "ethanol 20"), "add up to 90 per cent, not 100"},
      {"a liquid without its share", row_with("ethanol 30", "ethanol"), "\"ethanol\" is no liquid with its share"},
      {"a share that is none", row_with("ethanol 30", "ethanol 0"), "\"ethanol 0\" is no liquid with its share"},
      {"a liquid twice", row_with("ethanol 30", "isooctane 30"), "\"isooctane\" stands twice"},
      {"nothing between commas", row_with("ethanol 30", "ethanol 30,"), "is no liquid with its share"},
      {"no liquid", row_with(std::string("    liquid: ") + two_parts + "\n", ""), "either liquid or liquids_in_words"},
      {"two kinds of liquid", row_with("    contact", "    liquids_in_words: alcohols\n    contact"),
       "either liquid or liquids_in_words"},
      {"contact that is none", row_with("contact: swab", "contact: swabs"), "contact \"swabs\" is none of the words"},
      {"result that is none", row_with("result: removed", "result: gone"), "result \"gone\" is none of the words"},
      {"result without grades", row_with("    grades: [1, 2]\n", ""), "lacks the key \"grades\""},
      {"grades without result", row_with("    result: removed\n", ""), "lacks the key \"result\""},
      {"result and said", row_with("    result", "    said: gone\n    result"), "either result and grades, or said"},
      {"grade 0", row_with("[1, 2]", "[0, 2]"), "[0, 2] is no range of grades"},
      {"grade 7", row_with("[1, 2]", "[1, 7]"), "[1, 7] is no range of grades"},
      {"half a grade", row_with("[1, 2]", "[1.5, 2]"), "[1.5, 2] is no range of grades"},
      {"grades the wrong way round", row_with("[1, 2]", "[2, 1]"), "[2, 1] is no range of grades"},
      {"one grade", row_with("[1, 2]", "[1]"), "must hold 2 numbers"},
      {"contradicts itself", row_with("[1, 2]", "[5, 6]"), "leave out its own result, \"removed\""},
      {"standing of a figure", row_with("standing: common practice", "standing: measured"),
       "standing \"measured\" is none of the words"},
      {"confidence that is none", row_with("confidence: low", "confidence: none"), "confidence \"none\""},
      {"generality that is none", row_with("one_sample", "two_samples"), "general \"two_samples\""},
      {"a key nobody asked for", row_with("    confidence", "    given: f203\n    confidence"), "given"},
      {"no list", "observation: []\n", "observation"}};
  for (const BadRow& bad : rows) {
    INFO(bad.what);
    const std::vector<Diagnostic> faults = faults_with(bad.text);
    INFO(render(faults));
    REQUIRE_FALSE(faults.empty());
    if (std::string(bad.what) != "no list") CHECK(faults.size() == 1);
    CHECK(faults[0].where.file == "solvents/observations/added.yaml");
    CHECK(faults[0].where.line >= 1);
    CHECK(render(faults).find(bad.message) != std::string::npos);
  }
}

TEST_CASE("a row told twice in the files is one fault", "[bad]") {
  const std::string row = row_with("shellac_fresh", "shellac_fresh");
  const std::vector<Diagnostic> faults = faults_with(row + row.substr(row.find('\n') + 1));
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].where.line == 13);
  CHECK(faults[0].message.find("stands there twice") != std::string::npos);
}
