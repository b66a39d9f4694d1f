// `sheet --log`, `labels --log` and `chart --log` through the whole program; what they say: tests/unit/paper.
#include "pages.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

namespace {

// As logs were written before anything was said of the edge: no such key, no colour, no seconds.
const char* const old_log =
    "{\"gentlest_log\":1}\n"
    "{\"test\":1,\"mixture\":\"isooctane 100\",\"removal\":\"no effect\",\"original\":\"nothing seen\"}\n"
    "{\"test\":2,\"mixture\":\"isooctane 50, ethanol 96 % 50\",\"removal\":\"fully removed\","
    "\"original\":\"colour on the swab\"}\n";

const char* const ended_log =
    "{\"gentlest_log\":1}\n"
    "{\"test\":1,\"mixture\":\"isooctane 50, ethanol 96 % 50\",\"passage\":\"white cloth\",\"original\":\"softened\"}\n"
    "{\"test\":2,\"mixture\":\"isooctane 50, acetone 50\",\"passage\":\"dark background\",\"original\":\"softened\"}\n";

}  // namespace

TEST_CASE("sheet and labels of an old log stand where next stands, with its exit code") {
  const Folder folder;
  for (const char* text : {"{\"gentlest_log\":1}\n", old_log, ended_log}) {
    INFO(text);
    const std::string log = folder.file("easel.log");
    write_file(log, text);
    const Result next = call({"next", "demo", log});
    CHECK(call({"sheet", "demo", "--log", log}).code == next.code);
    CHECK(call({"labels", "demo", "--log", log}).code == next.code);
    CHECK(call({"chart", "demo", "--kind", "timeline", "--log", log}).code == next.code);
  }
}

TEST_CASE("a colour that nobody named is harm on paper too") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(log, old_log);
  const std::string sheet = call({"sheet", "demo", "--log", log}).out;
  CHECK(holds(sheet, "HARM on oil paint"));
  CHECK(holds(sheet, "not noted of what, so it counts as original"));
}

TEST_CASE("after two harms the sheet has no card, the page of labels no label, and both say why") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(log, ended_log);
  const Result sheet = call({"sheet", "demo", "--log", log});
  CHECK(sheet.code == 1);
  CHECK(count_of(sheet.out, "<div class=\"card\">") == 0);
  CHECK(holds(sheet.out, "No card: <bdi>stop, look, talk it over</bdi>"));
  const Result labels = call({"labels", "demo", "--log", log});
  CHECK(labels.code == 1);
  CHECK(count_of(labels.out, "<div class=\"sheet\"") == 0);
  CHECK(holds(labels.out, "No label: nothing is proposed."));
}

TEST_CASE("pictures of the tests need the log, those of the plan take none, and a log must be there") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(log, old_log);
  for (const char* kind : {"timeline", "swabs"}) {
    const Result chart = call({"chart", "demo", "--kind", kind, "--log", log});
    REQUIRE(spoken_on(chart.out).size() == 1);
    CHECK(holds(spoken_on(chart.out).front().description,
                kind == std::string("timeline") ? "Test 2: isooctane 50, ethanol 96 % 50, picture: HARM" : "2 (HARM)"));
    CHECK(call({"chart", "demo", "--kind", kind}).code == 2);
    CHECK(call({"chart", "demo", "--kind", kind, "--log", folder.file("none.log")}).code == 3);
  }
  CHECK(call({"chart", "demo", "--kind", "risk", "--log", log}).code == 2);
  CHECK(call({"labels", "demo", "--log", folder.file("none.log")}).code == 3);
}

TEST_CASE("next in full holds the matrix of mixtures against places") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(log, old_log);
  CHECK_FALSE(holds(call({"next", "demo", log}).out, "What was seen where"));
  const std::string full = call({"next", "demo", log, "--full"}).out;
  CHECK(holds(full, "What was seen where"));
  CHECK(holds(unwrapped(full), "closed (test 2)"));
}

}  // namespace gentlest::test
