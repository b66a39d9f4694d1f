// The house of docs/architecture.md, enforced: a public header includes only headers of lower layers, and each folder
// includes only what stands below it.
#include "near.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <string>

namespace {

namespace fs = std::filesystem;

const fs::path root = GENTLEST_SOURCE_DIR;

const std::map<std::string, int> layer_of_header = {
    {"quantity.hpp", 0},    {"text.hpp", 0},           {"source.hpp", 0},      {"activity.hpp", 0},
    {"letters.hpp", 0},     {"diagnostic.hpp", 1},     {"hansen.hpp", 1},      {"response.hpp", 1},
    {"chemistry.hpp", 1},   {"catalogue.hpp", 2},      {"mixture.hpp", 3},     {"job.hpp", 3},
    {"vapour.hpp", 3},      {"chance.hpp", 4},         {"hazard.hpp", 4},      {"recipe.hpp", 4},
    {"molecules.hpp", 4},   {"search.hpp", 5},         {"calibration.hpp", 5}, {"miscibility.hpp", 5},
    {"equilibrium.hpp", 5}, {"evaporation.hpp", 6},    {"ladder.hpp", 6},      {"certificate.hpp", 6},
    {"exposure.hpp", 6},    {"mixture_hazard.hpp", 7}, {"caution.hpp", 8},     {"substitute.hpp", 8},
    {"plan.hpp", 9},        {"vial.hpp", 10},          {"series.hpp", 4},      {"reading.hpp", 3},
    {"learning.hpp", 5},    {"next_test.hpp", 6},      {"own_fit.hpp", 6},     {"progress.hpp", 10},
    {"comparison.hpp", 10}, {"bench.hpp", 11},         {"review.hpp", 12},     {"grade.hpp", 3},
    {"shelf.hpp", 4},
};

std::set<std::string> includes_of(const fs::path& file, const std::regex& pattern) {
  std::ifstream in(file);
  std::set<std::string> found;
  std::smatch match;
  for (std::string line; std::getline(in, line);)
    if (std::regex_search(line, match, pattern)) found.insert(match[1]);
  return found;
}

std::set<fs::path> sources_in(const fs::path& folder) {
  std::set<fs::path> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    if (entry.path().extension() == ".cpp" || entry.path().extension() == ".hpp") files.insert(entry.path());
  return files;
}

}  // namespace

TEST_CASE("every public header stands in a layer and includes only lower ones") {
  for (const fs::path& file : sources_in(root / "include/gentlest")) {
    const std::string name = file.filename().string();
    INFO(name);
    REQUIRE(layer_of_header.count(name) == 1);
    for (const std::string& included : includes_of(file, std::regex("#include \"gentlest/([^\"]+)\""))) {
      INFO("includes " << included);
      REQUIRE(layer_of_header.count(included) == 1);
      CHECK(layer_of_header.at(included) < layer_of_header.at(name));
    }
  }
}

TEST_CASE("folders include only what stands below them") {
  const std::map<std::string, std::set<std::string>> allowed = {
      {"core", {}}, {"io", {"io"}}, {"report", {"report"}}, {"cli", {"io", "report", "cli"}}};
  for (const auto& [folder, may_use] : allowed)
    for (const fs::path& file : sources_in(root / "src" / folder))
      for (const std::string& used : includes_of(file, std::regex("#include \"(core|io|report|cli)/"))) {
        INFO(file << " includes from " << used);
        CHECK(may_use.count(used) == 1);
      }
}

TEST_CASE("outside libraries stay where they belong") {
  const std::map<std::string, std::set<std::string>> home = {
      {"yaml-cpp/", {"io"}}, {"boost/program_options", {"cli"}}, {"nlohmann/", {"io", "report"}}, {"Eigen/", {"core"}}};
  for (const auto& [library, folders] : home)
    for (const fs::path& file : sources_in(root / "src"))
      if (!includes_of(file, std::regex("#include <(" + library + ")")).empty()) {
        INFO(file << " includes " << library);
        CHECK(folders.count(file.parent_path().filename().string()) == 1);
      }
  for (const fs::path& file : sources_in(root / "include")) {
    INFO(file);
    CHECK(includes_of(file, std::regex("#include <((yaml-cpp|boost|nlohmann|Eigen|fmt)/)")).empty());
  }
}

TEST_CASE("threads are started in one place only") {  // others may guard what threads share, but start none
  for (const fs::path& file : sources_in(root / "src"))
    if (!includes_of(file, std::regex("#include <(thread|future|atomic)>")).empty())
      CHECK(file.filename() == "threads.cpp");
}

TEST_CASE("core neither prints nor reads disk, clock or environment") {
  const std::regex impure("#include <(iostream|fstream|filesystem|chrono|ctime|cstdio|thread|random)>");
  for (const fs::path& file : sources_in(root / "src/core")) {
    INFO(file);
    CHECK(includes_of(file, impure).empty());
  }
}

TEST_CASE("no check keeps a hidden relative tolerance beside its margin") {
  // See tests/near.hpp.
  const std::regex lax("\\.margin\\(|\\.epsilon\\(0\\)");
  for (const fs::path& file : sources_in(root / "tests")) {
    if (file.filename() == "test_layers.cpp") continue;
    std::ifstream in(file);
    int number = 0;
    for (std::string line; std::getline(in, line);) {
      INFO(file << ":" << ++number << ": write near(value, tolerance)");
      CHECK_FALSE(std::regex_search(line, lax));
    }
  }
}

TEST_CASE("a tolerance is what it says") {
  using gentlest::test::near;
  CHECK(1000.0 == near(1000.01, 0.0101));
  CHECK_FALSE(1000.0 == near(1000.01, 0.0099));  // within 1.2e-5 of 1000, which Approx would let pass
  CHECK_FALSE(std::nan("") == near(0, 1e9));
}
