#include "gentlest/base/diagnostic.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

TEST_CASE("a fault shows its place, its line and a caret") {
  const Diagnostic fault{{"job.yaml", 3, 5}, "what is wrong", "what would be right", "  - watr"};
  CHECK(render(fault) ==
        "job.yaml:3:5: error: what is wrong\n"
        "      - watr\n"
        "        ^\n"
        "    what would be right\n");
}

TEST_CASE("a fault without a place is one line") {
  CHECK(render(Diagnostic{{}, "no", "", ""}) == "error: no\n");
  CHECK(render(Diagnostic{{"f", 0, 0}, "no", "", ""}) == "f: error: no\n");
}

TEST_CASE("the caret stands under the character, not under its bytes") {
  const std::string text = render(Diagnostic{{"f", 1, 4},
                                             "m",
                                             "",
                                             "\xC3\xA4"
                                             "bc"});  // column counts bytes
  CHECK(text ==
        "f:1:4: error: m\n    \xC3\xA4"
        "bc\n      ^\n");
  CHECK(render(Diagnostic{{"f", 1, 2}, "m", "", "\tb"}) == "f:1:2: error: m\n    \tb\n    \t^\n");
}

TEST_CASE("a long line is cut around the fault") {
  const std::string text = render(Diagnostic{{"f", 1, 2000}, "m", "", std::string(5000, 'x')});
  CHECK(text.size() < 300);
  CHECK(text.find('^') != std::string::npos);
}

TEST_CASE("many faults come in order of their place, and the rest is counted") {
  std::vector<Diagnostic> faults;
  for (int line = 30; line > 0; --line) faults.push_back({{"f", line, 1}, "m", "", ""});
  const std::string text = render(faults, 3);
  CHECK(text == "f:1:1: error: m\nf:2:1: error: m\nf:3:1: error: m\n... and 27 more\n");
}

TEST_CASE("an InputError carries its faults and a summary") {
  const InputError error(Fault::usage, "message", "remedy");
  CHECK(error.kind() == Fault::usage);
  REQUIRE(error.faults().size() == 1);
  CHECK(error.faults()[0].remedy == "remedy");
  CHECK(std::string(error.what()) == "message");
}

TEST_CASE("the nearest name forgives slips and does not guess wildly") {
  const std::vector<std::string> known = {"ethanol", "methanol", "acetone", "isooctane"};
  CHECK(nearest_name("ethnaol", known) == "ethanol");
  CHECK(nearest_name("Acetonne", known) == "acetone");
  CHECK(nearest_name("iso-octane", known) == "isooctane");
  CHECK(nearest_name("xylene", known).empty());
  CHECK(nearest_name("", known).empty());
  CHECK(nearest_name(std::string(100000, 'e'), known).empty());
}
