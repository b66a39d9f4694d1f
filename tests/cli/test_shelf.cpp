// One swab, one liquid: every command reads the same words as the same bottle, whatever a limit leaves off.
#include "program.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <utility>

using namespace gentlest;
using namespace gentlest::test;

TEST_CASE("mixture, vial, record and next read a bottle that is left off as the same liquid") {
  const Folder folder;
  const std::string job = folder.file("job.yaml");
  write_file(job, replaced(demo_job_text(), "\nlimits:\n", "\nlimits:\n  avoid_solvents: [ethanol]\n"));
  for (const char* command : {"mixture", "vial"}) {
    const Result shown = call({command, job, "ethanol 40, isooctane 60"});
    INFO(shown.err);
    CHECK(holds(unwrapped(shown.out), "ethanol 96 % 40"));
  }
  const std::string wet = folder.file("wet.log");
  const std::string plain = folder.file("plain.log");
  for (const auto& [log, mixture] : {std::pair(wet, "mixture=ethanol 96 % 40, isooctane 60"),
                                     std::pair(plain, "mixture=ethanol 40, isooctane 60")}) {
    const Result recorded = call({"record", job, log, mixture, "removal=no effect", "original=nothing seen"});
    INFO(recorded.err);
    REQUIRE(recorded.code == 0);
  }
  const Result next = call({"next", job, plain});
  INFO(next.err);
  const auto from_next = [](const std::string& text) { return text.substr(text.find("\nNext")); };
  CHECK(from_next(next.out) == from_next(call({"next", job, wet}).out));
  CHECK(holds(unwrapped(call({"next", job, plain, "--full"}).out), "bottle left off: ethanol 96 %: is to be avoided"));
  CHECK(holds(call({"next", job, plain, "--format", "csv"}).out, "ethanol 96 %: is to be avoided"));
  CHECK(holds(unwrapped(call({"ladder", job, "--full"}).out), "ethanol 96 %: is to be avoided"));
}

TEST_CASE("a ladder names the grade that would not part, on screen, on the sheet and in JSON") {
  const std::string words = "ethanol 96 % in isooctane: two liquids from 5 to 3";
  CHECK(holds(unwrapped(call({"ladder", "demo", "--full"}).out), words));
  CHECK(holds(unwrapped(call({"sheet", "demo"}).out), words));
  const Result json = call({"ladder", "demo", "--full", "--format", "json"});
  CHECK(holds(json.out, "\"parting\": ["));
  CHECK(holds(unwrapped(json.out), "\"bottle\": \"ethanol 96 %\", \"other\": \"isooctane\""));
}
