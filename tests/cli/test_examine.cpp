// The examination through the program: asked, read back, and what every answer and paper makes of it.
#include "program.hpp"

#include <catch2/catch.hpp>

#include <string>

namespace gentlest::test {

namespace {

const char* const job =
    "gentlest_job: 1\nobject: {title: Invented}\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n"
    "  - {name: paint, role: keep, found: oil_paint_old}\npassages: [{name: cloth, of: paint}]\n"
    "shelf: [isooctane, acetone, isopropanol]\nlimits: {step_percent: 10}\n";

std::string with(const std::string& findings) {
  return job + ("examination:\n" + findings);
}

}  // namespace

TEST_CASE("examine says go, not yet or do not, with exit 1 for do not alone") {
  CHECK(call({"examine", "-"}, with("  flaking: no\n")).code == 0);
  const Result none = call({"examine"});
  CHECK(none.code == 0);
  CHECK(none.out.find("Verdict: not yet.") != std::string::npos);
  const Result stop = call({"examine", "-"}, with("  flaking: widely\n"));
  CHECK(stop.code == 1);
  CHECK(stop.out.find("Verdict: do not.") != std::string::npos);
  CHECK(stop.out.find("Consolidate before any swab.") != std::string::npos);
}

TEST_CASE("where the examination says do not, next proposes nothing and no paper has a card or vial") {
  Folder folder;
  const std::string file = folder.file("job.yaml");
  const std::string log = folder.file("tests.log");
  std::ofstream(file) << with("  dry_swab: colour widely\n");
  const Result next = call({"next", file, log, "--new-log"});
  CHECK(next.code == 1);
  CHECK(next.out.find("Examination: do not.") != std::string::npos);
  CHECK(next.out.find("mL") == std::string::npos);
  const Result ladder = call({"ladder", file});
  CHECK(ladder.out.find("Examination: do not.") != std::string::npos);
  for (const char* command : {"sheet", "labels"}) {
    CAPTURE(command);
    const Result paper = call({command, file});
    CHECK(paper.code == 1);
    CHECK(paper.out.find("speaks against any solvent test") != std::string::npos);
    CHECK(paper.out.find("class=\"card\"") == std::string::npos);
    CHECK(paper.out.find("class=\"label") == std::string::npos);
  }
}

TEST_CASE("an answer that judges mixtures tells what forbids a test, and exit 1 where it plans") {
  const std::string forbidden = with("  dry_swab: colour widely\n");
  const std::string told = "Examination: do not.";
  const Result rows = call({"ladder", "-", "--format", "csv"}, forbidden);
  CHECK(rows.err.find(told) != std::string::npos);
  CHECK(rows.code == 1);
  for (const std::vector<std::string>& words : {std::vector<std::string>{"compare", "-"},
                                                {"chart", "-"},
                                                {"mixture", "-", "acetone"},
                                                {"vial", "-", "acetone"},
                                                {"explain", "-", "label", "acetone"}}) {
    CAPTURE(words);
    CHECK(call(words, forbidden).err.find(told) != std::string::npos);
    CHECK(call(words, with("  dry_swab: nothing\n")).err.find("Examination") == std::string::npos);
  }
}

TEST_CASE("new --ask writes the answers that were given and nothing else, and the program reads the file") {
  Folder folder;
  const std::string file = folder.file("job.yaml");
  // consent: by number; own_varnish: asked why, then a slip, then by word; recent_work: left open; flaking: somewhere;
  // then no more.
  const Result asked = call({"new", file, "--ask"}, "1\n?\nnever\nNO\n\n2\ncloth, \"lower\" edge\nend\n");
  CHECK(asked.code == 0);
  CHECK(asked.err.find("write one of the numbers or words") != std::string::npos);
  std::ifstream in(file);
  const std::string text((std::istreambuf_iterator<char>(in)), {});
  CHECK(
      text.find("\nexamination:\n  consent: \"yes\"\n  own_varnish: \"no\"\n  flaking: {answer: \"somewhere\", where: "
                "[\"cloth\", \"\\\"lower\\\" edge\"]}\n\n# Layers") != std::string::npos);
  CHECK(text.find("recent_work") == std::string::npos);
  CHECK(call({"check", file}).code == 0);
  CHECK(call({"new", folder.file("empty.yaml"), "--ask"}, "").code == 0);
  CHECK(call({"check", folder.file("empty.yaml")}).code == 0);
}

TEST_CASE("the page to fill in has every question, ticks what was found, and keeps hostile words harmless") {
  const Result page = call({"examine", "-", "--html"},
                           with("  flaking: {answer: somewhere, where: [\"<script>alert(1)</script>\"]}\n"));
  CHECK(page.code == 0);
  CHECK(page.out.find("<script") == std::string::npos);
  CHECK(page.out.find("box ticked") != std::string::npos);
  const Result blank = call({"examine", "--html"});
  CHECK(blank.out.find("box ticked") == std::string::npos);
  CHECK(call({"examine", "--html", "--format", "json"}).code == 2);
}

}  // namespace gentlest::test
