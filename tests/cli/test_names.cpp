// Names as people type them, on the command line and in a job.
#include "program.hpp"
#include "scratch.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>

namespace gentlest::test {

TEST_CASE("list materials: names first, ids whole, one line each") {
  const std::string text = call({"list", "materials"}).out;
  const auto all = nlohmann::json::parse(call({"list", "materials", "--format", "json"}).out).at("materials");
  REQUIRE(all.size() > 30);
  for (const auto& material : all) {
    const std::string name = material.at("name");
    const std::string id = material.at("id");
    INFO(name);
    const std::size_t at = text.find("  " + name + "  ");
    REQUIRE(at != std::string::npos);
    const std::string line = text.substr(at, text.find('\n', at) - at);
    CHECK((at == 0 || text[at - 1] == '\n'));
    CHECK(line.find("  " + id) != std::string::npos);
    CHECK(holds(line, "no sphere") == (material.at("sphere_grade") == "no sphere"));
    CHECK(line.size() <= 100);
  }
  CHECK(static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')) == all.size() + 3);  // a gap, two lines
}

TEST_CASE("show takes the names of five languages and marks trade names") {
  for (const char* name : {"Terpentinöl", "terpentinoel", "essence de térébenthine", "EtOH", "MEK", "Paraloid B-72",
                           "paraloid b72", "xylenes"}) {
    INFO(name);
    CHECK(call({"show", name}).code == 0);
  }
  const std::string card = call({"show", "Paraloid", "B-72"}).out;
  CHECK(holds(card, "ethyl_methacrylate_methyl_acrylate_copolymer"));
  CHECK(holds(card, "(trade name; composition by"));
  CHECK(holds(call({"show", "IMS"}).out, "denatured"));
}

TEST_CASE("a job in the words of the studio is planned; denatured ethanol is told at the bottle") {
  const std::string job =
      "gentlest_job: 1\nobject: {title: a test}\nlayers:\n"
      "  - {name: varnish, role: remove, found: gealterter Dammarfirnis}\n"
      "  - {name: paint, role: keep, found: peinture à l'huile ancienne}\n"
      "shelf: [isooctane, {solvent: IMS, grade: \"96 %\"}, Aceton]\n";
  const Result result = call({"ladder", "-", "--full"}, job);
  INFO(result.out << result.err);
  CHECK((result.code == 0 || result.code == 1));
  const Result vial = call({"vial", "-", "--full", "IMS 96 % 30, isooctane 70"}, job);
  INFO(vial.out << vial.err);
  CHECK(holds(vial.out, "denatured ethanol 96 %"));
  CHECK(holds(vial.out, "its denaturant (often methanol)"));
}

TEST_CASE("an ambiguous name is asked back wherever a name is read") {
  const std::string layers =
      "gentlest_job: 1\nobject: {title: a test}\nlayers:\n"
      "  - {name: varnish, role: remove, found: dammar_aged}\n"
      "  - {name: paint, role: keep, found: oil_paint_old}\n";
  const std::string solvent = "\"propanol\" may be more than one solvent";
  const std::string material = "\"dammar\" may be more than one material";
  const auto said = [](const std::string& job) { return call({"check", "-"}, job).out; };
  CHECK(holds(said(layers + "shelf: [acetone, propanol]\n"), solvent));
  CHECK(holds(said(layers + "shelf: [acetone]\nlimits: {avoid_solvents: [propanol]}\n"), solvent));
  CHECK(
      holds(said(layers + "passages:\n  - {name: glaze, of: paint, material: dammar}\nshelf: [acetone]\n"), material));
  const std::string possible = ", possible: [{material: dammar, percent: 20}]";
  std::string with_possible = layers;
  with_possible.insert(with_possible.find("dammar_aged") + 11, possible);
  CHECK(holds(said(with_possible + "shelf: [acetone]\n"), material));
  CHECK(holds(call({"mixture", "demo", "propanol 30, isooctane 70"}).err, solvent));
  const ScratchFolder folder;
  write_file(folder.file("own.csv"), "solvent,dissolves\npropanol,yes\nEtOH,no\n");
  const std::string fit = call({"fit", folder.file("own.csv")}).err;
  CHECK(holds(fit, "own.csv:2:1: error: " + solvent));
  CHECK_FALSE(holds(fit, "EtOH"));
}

}  // namespace gentlest::test
