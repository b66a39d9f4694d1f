// Faulty files of conditioned spheres: one fault each, its place, and what the program must say about it.
#include "gentlest/base/diagnostic.hpp"

#include "io/catalogue_files.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace gentlest;

namespace {

const std::string sound =
    "swab_ln_further: 0.3\n"
    "reach_length: 3\n"
    "conditioned:\n"
    "  - material: dammar_aged\n"
    "    sphere: [17.0, 9.5, 14.0, 11.5]\n"
    "    sd: [1.2, 1.9, 1.7, 1.9]\n"
    "    covariances: [0.1, 0.1, 0.1, 0.1, 0.1, 0.1]\n"
    "    reach:\n"
    "      - [15.8, 8.8, 19.4, 0.1]\n"
    "    observations: 3\n"
    "    sources: 2\n"
    "    clear_cut: 1\n"
    "    right: 1\n"
    "    brier: 0.01\n";

// What is said of the shipped catalogue with this file in place of its own.
std::string complaint_about(const std::string& text) {
  std::vector<NamedText> files = test::shipped_files();
  for (NamedText& file : files)
    if (file.name == "conditioned.yaml") file.text = text;
  try {
    read_catalogue(files);
  } catch (const InputError& error) {
    const Diagnostic& fault = error.faults().front();
    return fault.where.file + ":" + std::to_string(fault.where.line) + ": " + fault.message;
  }
  return {};
}

std::string with(const std::string& from, const std::string& to) {
  std::string text = sound;
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("a faulty file of conditioned spheres is refused with its place") {
  CHECK(complaint_about(sound).empty());
  struct Bad {
    const char* from;
    const char* to;
    const char* message;
  };
  const Bad table[] = {
      {"dammar_aged", "dammar_agde", "\"dammar_agde\" is no material"},
      {"17.0, 9.5, 14.0, 11.5", "17.0, 9.5, 14.0, 0", "the radius R0 must be above 0"},
      {"17.0, 9.5, 14.0, 11.5", "17.0, 9.5, 14.0", "conditioned.yaml:5:"},
      {"1.2, 1.9, 1.7, 1.9", "1.2, -1.9, 1.7, 1.9", "a standard deviation cannot be below 0"},
      {"0.1, 0.1, 0.1, 0.1, 0.1, 0.1", "9, 0.1, 0.1, 0.1, 0.1, 0.1", "has covariances that contradict its deviations"},
      {"0.1, 0.1, 0.1, 0.1, 0.1, 0.1", "9, 0.1", "conditioned.yaml:7:"},
      {"15.8, 8.8, 19.4, 0.1", "15.8, 8.8, 19.4", "conditioned.yaml:9:"},
      {"observations: 3", "observations: many", "conditioned.yaml:10:"},
      {"    sources: 2\n", "", "lacks the key \"sources\""},
      {"brier: 0.01", "brier: 2", "conditioned.yaml:14:"},
      {"    brier", "    colour: red\n    brier", "no key \"colour\""},
      {"swab_ln_further: 0.3", "swab_ln_further: -1", "conditioned.yaml:1:"},
      {"dammar_aged\n    sphere: [17.0, 9.5, 14.0, 11.5]\n    sd: [1.2, 1.9, 1.7, 1.9]\n    covariances: [0.1, 0.1, "
       "0.1, 0.1, 0.1, 0.1]\n",
       "animal_glue\n", "\"animal_glue\" has no sphere that could be moved or bent"},
  };
  for (const Bad& bad : table) {
    CAPTURE(bad.to);
    CHECK_THAT(complaint_about(with(bad.from, bad.to)), Catch::Contains(bad.message));
  }
  CHECK_THAT(complaint_about(sound + sound.substr(sound.find("  - material"))),
             Catch::Contains("\"dammar_aged\" stands twice in this file"));
}
