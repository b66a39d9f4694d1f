// names.yaml and the other names of records, wrongly written: one line each with place and remedy.
#include "gentlest/base/diagnostic.hpp"

#include "io/catalogue_files.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace gentlest;

namespace {

std::string complaint_with(const std::string& file, const std::string& text) {
  std::vector<NamedText> files = test::shipped_files();
  for (NamedText& one : files)
    if (one.name == file) one.text = text;
  try {
    read_catalogue(files);
  } catch (const InputError& error) {
    return render(error.faults());
  }
  return "no complaint";
}

std::string names_yaml(const std::string& solvents) {
  return "solvents:\n" + solvents + "materials: []\n";
}

}  // namespace

TEST_CASE("a faulty names.yaml is refused, each fault with its place and remedy") {
  struct Bad {
    const char* what;
    std::string text;
    const char* message;
  };
  const std::string two = "    choices: [{id: acetone, word: a}, {id: ethanol, word: b}]\n";
  const Bad table[] = {
      {"unknown id", names_yaml("  - names: [zz]\n    choices: [{id: acetone, word: a}, {id: ethnol, word: b}]\n"),
       "solvents/names.yaml:3:39: error: \"zz\" offers \"ethnol\", which the catalogue does not have"},
      {"the nearest id", names_yaml("  - names: [zz]\n    choices: [{id: acetone, word: a}, {id: ethnol, word: b}]\n"),
       "did you mean \"ethanol\"?"},
      {"a record's name", names_yaml("  - names: [EtOH]\n" + two),
       "solvents/names.yaml:2:13: error: \"EtOH\" is to be asked back, but is a name of \"ethanol\""},
      {"one choice", names_yaml("  - names: [zz]\n    choices: [{id: acetone, word: a}]\n"),
       "solvents/names.yaml:2:13: error: \"zz\" is to be asked back with fewer than two choices"},
      {"no word", names_yaml("  - names: [zz]\n    choices: [{id: acetone}, {id: ethanol, word: b}]\n"), "\"word\""},
      {"id and no_record",
       names_yaml("  - names: [zz]\n    choices: [{id: acetone, no_record: x, word: a}, {id: ethanol, word: b}]\n"),
       "either id or no_record"},
      {"no names", names_yaml("  - names: []\n" + two), "has no names"},
      {"no such language", names_yaml("  - names: {pt: [zz]}\n" + two), "\"pt\" is not a language of names"},
      {"a key nobody asked for", names_yaml("  - names: [zz]\n    chioces: []\n" + two), "chioces"},
      {"no materials", "solvents: []\n", "materials"}};
  for (const Bad& bad : table) {
    INFO(bad.what);
    const std::string said = complaint_with("names.yaml", bad.text);
    INFO(said);
    CHECK(said.find(bad.message) != std::string::npos);
    CHECK(said.find("solvents/names.yaml:") != std::string::npos);
  }
  CHECK(complaint_with("names.yaml", names_yaml("  - names: {de: [zz], trade: [Zz 1]}\n" + two)) == "no complaint");
}

TEST_CASE("an other name that two records claim is told with its place") {
  const std::string records =
      "family: water\nsolvents:\n  - id: water\n    name: water\n    other_names: {de: [Wasser, Aceton]}\n"
      "    no_hansen: \"a test\"\n";
  const std::string said = complaint_with("liquids/water.yaml", records);
  INFO(said);
  CHECK(said.find("are both called \"aceton\"") != std::string::npos);
  CHECK(said.find(":5:") != std::string::npos);
}
