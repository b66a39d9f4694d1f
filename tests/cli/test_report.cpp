// The report for the treatment file through the whole program. How it looks is measured by tests/browser.
#include "csv_cells.hpp"
#include "pages.hpp"
#include "program.hpp"

#include "io/job_file.hpp"

#include <fmt/format.h>
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <map>
#include <regex>

namespace gentlest::test {

namespace {

// Four tests: one without effect, one corrected, one with a hostile remark that worked, one withdrawn. The demo's
// shelf.
std::string write_log(const Folder& folder) {
  const std::string log = folder.file("easel.log");
  const auto record = [&](std::vector<std::string> words) {
    words.insert(words.begin(), {"record", "demo", log});
    const Result done = call(words);
    INFO(done.err);
    REQUIRE(done.code == 0);
  };
  record({"mixture=isooctane 100", "removal=no effect", "original=nothing seen", "date=2026-03-14", "who=AB",
          "passage=white cloth", "x_cm=3.5", "y_cm=41", "rolls=4", "seconds=20", "swab=white cotton, damp"});
  record(
      {"mixture=isooctane 80, acetone 20", "removal=softened or gelled", "original=nothing seen", "date=2026-03-15"});
  record({"mixture=isooctane 71, acetone 29", "removal=fully removed", "original=nothing seen", "passage=white cloth",
          "remark=<script>alert(1)</script>", "who=C, \"D\""});
  record({"test=2", "mixture=isooctane 80, acetone 20", "removal=partly removed", "original=nothing seen",
          "date=2026-03-15", "correction=seen dry"});
  record({"mixture=acetone 100", "removal=fully removed", "original=softened", "x_cm=60", "y_cm=2"});
  record({"test=4", "correction==wrong bottle", "withdrawn=yes"});
  return log;
}

// One black point: header, one stored block, end (PNG specification, ISO/IEC 15948).
std::string one_point_png() {
  return {
      "\x89PNG\r\n\x1A\n\0\0\0\rIHDR\0\0\0\1\0\0\0\1\x08\2\0\0\0\x90wS\xDE\0\0\0\x0CIDAT\x78\xDA\x63\x60\x60\x60\0\0"
      "\0\4\0\1\xC8\xEA\xEB\xF9\0\0\0\0IEND\xAE\x42\x60\x82",
      69};
}

using Row = std::map<std::string, std::string>;

std::vector<Row> rows_of(const std::string& csv) {
  const std::vector<std::vector<std::string>> cells = csv_rows(csv);
  std::vector<Row> rows;
  for (std::size_t i = 1; i < cells.size(); ++i) {
    REQUIRE(cells[i].size() == cells[0].size());
    rows.emplace_back();
    for (std::size_t k = 0; k < cells[0].size(); ++k) rows.back()[cells[0][k]] = cells[i][k];
  }
  return rows;
}

}  // namespace

TEST_CASE("the report holds layers, tests, map, choice, options, limits of the model, sources and log, in order") {
  const Folder folder;
  const Result report = call({"report", "demo", write_log(folder), "--full"});
  REQUIRE(report.code == 0);
  CHECK(holds(report.out, "<html lang=\"en\">"));
  CHECK(holds(report.out, "<title>Report of solvent tests: Pears and a blue jug"));
  std::size_t last = 0;
  for (const char* heading :
       {"In short", "Where the tests stand", "The layers, from the top down", "The tests", "What was chosen, and why",
        "Map of the tests", "Pictures of the tests", "What the tests taught", "Options considered",
        "What is not predicted", "Cautions", "Sources", "To make this report again"}) {
    INFO(heading);
    const std::size_t at = report.out.find("<h2>" + std::string(heading));
    REQUIRE(at != std::string::npos);
    CHECK(at > last);
    last = at;
  }
  CHECK(holds(report.out, "2026-03-14 to 2026-03-15"));
  CHECK(holds(report.out, "<bdi>mastic, aged</bdi></td><td><bdi>dammar, aged</bdi>"));
  CHECK(holds(report.out, "4 tests in the log, 1 of them withdrawn, 0 not counted here"));
  CHECK(holds(report.out, "&quot;mixture&quot;:&quot;isooctane 71, acetone 29&quot;"));
}

TEST_CASE("the report says what was chosen, with its margin, and which rungs were not tested") {
  const Folder folder;
  const std::string page = call({"report", "demo", write_log(folder), "--full"}).out;
  CHECK(holds(page, "The tests point to <bdi>isooctane 71, acetone 29</bdi>."));
  CHECK(holds(page, "margin, RED - 1"));
  CHECK(holds(page, "Room above it: "));
  CHECK(std::regex_search(
      page,
      std::regex("<td>to be affected</td><td>[0-9.]+ % \\([0-9.]+ % to [0-9.]+ %\\)</td><td>[0-9.]+ \\([0-9.]+ to "
                 "[0-9.]+\\)</td><td>-?[0-9.]+ \\(-?[0-9.]+ to -?[0-9.]+\\)</td>")));
  CHECK(holds(page, "<b>rung 1</b>: <bdi>isooctane 100</bdi></th><td>1</td>"));
  CHECK(std::regex_search(page, std::regex("<b>rung 6</b>: <bdi>[^<]+</bdi></th><td>not tested</td>")));
  CHECK(holds(page, "<bdi>isooctane 80, acetone 20</bdi></th><td>2</td>"));
  CHECK(holds(page, "not yet tested with it: dark background"));
  for (const char* word : {" safe ", " safe.", "recommended", "will not affect"}) CHECK_FALSE(holds(page, word));
}

TEST_CASE("the report claims no margin where the plan claims none, whichever layer the warning is on") {
  const Folder folder;
  const std::string log = write_log(folder);
  const std::string words = "none claimed: see the warning on the material";
  CHECK_FALSE(holds(call({"report", "demo", log}).out, words));
  for (const auto& [layer, flag] :
       {std::pair{"found: dammar_aged", "cross_linked"}, std::pair{"found: oil_paint_old", "resinous"}}) {
    const std::string job = replaced(demo_job_text(), layer, fmt::format("{}\n    suspected: [{}]", layer, flag));
    INFO(flag);
    CHECK(holds(call({"report", "-", log}, job).out, words));
  }
}

TEST_CASE("the report says what else a layer may be, and how sure that is after the tests") {
  const Folder folder;
  const std::string log = write_log(folder);
  const std::string job = replaced(demo_job_text(), "found: dammar_aged",
                                   "found: dammar_aged\n    possible: [{material: sandarac, percent: 30}]");
  const std::string page = call({"report", "-", log, "--full"}, job).out;
  CHECK(holds(page, "may be <bdi>sandarac</bdi> as well (30 %)"));
  CHECK(std::regex_search(page, std::regex("varnish: [0-9]+ % that it is sandarac")));
  CHECK(std::regex_search(page, std::regex("[0-9]+ % that it is none of these, or not as published")));
}

TEST_CASE("a test has one row, and a second only for what was noted besides") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(
      log,
      "{\"gentlest_log\":1}\n"
      "{\"test\":1,\"mixture\":\"isooctane 100\",\"at_edge\":true,\"removal\":\"no effect\","
      "\"original\":\"nothing seen\",\"seconds\":20}\n"
      "{\"test\":2,\"mixture\":\"isooctane 85, acetone 15\",\"at_edge\":true,\"removal\":\"no effect\","
      "\"original\":\"nothing seen\",\"seconds\":25,\"first_effect_s\":8,\"rolls\":6,\"magnification\":\"10x\"}\n");
  const std::string page = call({"report", "demo", log}).out;
  CHECK(std::regex_search(page, std::regex("<th scope=\"row\">1</th>[^\n]*</tr>\n</tbody>")));
  CHECK(std::regex_search(page, std::regex("<th scope=\"row\">2</th>[^\n]*</tr>\n<tr>[^\n]*magnification: <bdi>10x")));
  const std::string table = page.substr(page.find("<table class=\"tests\""));
  CHECK_FALSE(holds(table.substr(0, table.find("</table>")), "not noted"));
  // Time by rung: tests, contact, until it acted, rolls.
  CHECK(std::regex_search(page, std::regex("rung 2</bdi></th><td>2</td><td>25</td><td>8</td><td>6</td>")));
  CHECK(std::regex_search(page, std::regex("rung 1</bdi></th><td>1</td><td>20</td><td></td><td></td>")));
}

TEST_CASE("the next test is told once in the report") {
  const Folder folder;
  const std::string log = log_of(folder,
                                 "{\"test\":1,\"mixture\":\"isooctane 100\",\"at_edge\":true,\"removal\":\"no effect\","
                                 "\"original\":\"nothing seen\"}\n");
  const std::string page = call({"report", "demo", log}).out;
  const std::size_t first = page.find("rung 2, at the edge: isooctane 85, acetone 15");
  REQUIRE(first != std::string::npos);
  CHECK(page.find("rung 2, at the edge: isooctane 85, acetone 15", first + 1) == std::string::npos);
}

TEST_CASE("photographs stand side by side under their test; what cannot be shown is told and fails nothing") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(folder.file("before.png"), one_point_png());
  write_file(folder.file("after.png"), one_point_png());
  write_file(folder.file("phone.heic"), std::string("\0\0\0\x18", 4) + "ftypheic");
  write_file(log,
             "{\"gentlest_log\":1}\n"
             "{\"test\":1,\"mixture\":\"isooctane 100\",\"at_edge\":true,\"removal\":\"no effect\",\"original\":"
             "\"nothing seen\",\"photo_before\":\"before.png; 17\",\"photo\":\"after.png; gone.jpg; phone.heic\"}\n");
  const Result report = call({"report", "demo", log});
  CHECK(report.code == 0);
  CHECK(std::regex_search(
      report.out, std::regex("<div class=\"photos\">\\s*<figure class=\"photo\"><img src=\"data:image/jpeg;base64,/9j/"
                             "[^\"]+\" alt=\"Test 1, photo before: before.png\">")));
  CHECK(holds(report.out, "alt=\"Test 1, photo after: after.png\""));
  CHECK(holds(report.out, "photo before: <bdi>17</bdi>"));
  CHECK(holds(report.out, "photo after: <bdi>gone.jpg</bdi>, not shown: "));
  CHECK(holds(report.out, "<bdi>this is an HEIC picture; save it as JPEG</bdi>"));
  CHECK(holds(report.err, "gone.jpg: warning: photograph of test 1 not shown: cannot be read"));
  CHECK(holds(report.err, "phone.heic: warning: photograph of test 1 not shown: this is an HEIC picture"));
  CHECK_FALSE(holds(report.err, "before.png: warning"));
}

TEST_CASE("photographs that are kept in the log stand in the report though their files are gone") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(folder.file("spot.png"), one_point_png());
  const std::vector<std::string> record = {
      "record", "demo", log, "mixture=isooctane 100", "removal=no effect", "photo=spot.png; 17"};
  const auto with = [&](std::vector<std::string> more) {
    std::vector<std::string> words = record;
    words.insert(words.end(), more.begin(), more.end());
    return call(words);
  };
  REQUIRE(with({"--keep-photographs"}).code == 0);
  const std::string kept = read_file(log);
  CHECK(holds(kept, "{\"photograph\":\"spot.png\",\"jpeg\":\"/9j/"));
  std::filesystem::remove(folder.file("spot.png"));
  const Result report = call({"report", "demo", log, "--full"});
  CHECK(report.code == 0);
  CHECK(report.err.empty());
  CHECK(holds(report.out, "<img src=\"data:image/jpeg;base64,/9j/"));
  // The log itself stands in the report without the letters of the picture.
  CHECK(holds(report.out, "(a picture of 1 kB)"));
  // A photograph that is not there is told before anything is written; the log only grows.
  const Result gone = with({"photo_before=gone.jpg", "--keep-photographs"});
  CHECK(gone.code == 3);
  CHECK(holds(gone.err, "gone.jpg"));
  CHECK(read_file(log) == kept);
  // One that the log holds need not be beside it any more, and two readings of one file keep it once.
  REQUIRE(call({"record", "demo", log, "test=1", "photo=spot.png", "photo_before=spot.png", "correction=light",
                "--keep-photographs"})
              .code == 0);
  CHECK(count_of(read_file(log), "{\"photograph\"") == 1);
  // Another picture under the same name is refused, the same one is not kept twice.
  write_file(folder.file("spot.png"), one_point_png());
  REQUIRE(with({"--keep-photographs"}).code == 0);
  CHECK(count_of(read_file(log), "\"photograph\"") == 1);
  CHECK(read_file(log).rfind(kept, 0) == 0);
}

TEST_CASE("a photograph of the log that is damaged is told, and the readings count") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(
      log,
      "{\"gentlest_log\":1}\n{\"photograph\":\"a.jpg\",\"jpeg\":\"not base64!\"}\n{\"photograph\":5,\"jpeg\":\"\"}\n"
      "{\"test\":1,\"mixture\":\"isooctane 100\",\"removal\":\"no effect\"}\n");
  const Result read = call({"readings", log, "--format", "csv"});
  CHECK(read.code == 0);
  CHECK(count_of(read.err, "the photograph of this line cannot be read") == 2);
  CHECK(csv_rows(read.out).size() == 2);
}

TEST_CASE("corrections and withdrawals stay to be seen") {
  const Folder folder;
  const std::string page = call({"report", "demo", write_log(folder)}).out;
  CHECK(holds(page,
              "the layer to go: &quot;softened or gelled&quot; became &quot;partly removed&quot;. Reason: seen dry"));
  CHECK(holds(page, "<tbody class=\"test withdrawn\">"));
  CHECK(holds(page, "withdrawn: =wrong bottle"));
  CHECK(holds(page, "<span class=\"nowrap\">60 / 2 cm</span>"));
}

TEST_CASE("without a success the report says that nothing was chosen") {
  const Folder folder;
  const std::string log = log_of(folder);
  const Result none = call({"report", "demo", log});
  CHECK(none.code == 0);
  CHECK(holds(none.out, "No mixture has been chosen."));
  CHECK(holds(none.out, "The log holds no test."));
  CHECK(holds(none.out, "rung 1, at the edge: isooctane 100"));
  for (const char* mixture : {"mixture=acetone 100", "mixture=acetone 50, isooctane 50"})
    call({"record", "demo", log, mixture, "removal=no effect", "original=softened"});
  const Result closed = call({"report", "demo", log});
  CHECK(closed.code == 0);
  CHECK(holds(closed.out, "stop, look, talk it over"));
  CHECK_FALSE(holds(closed.out, "at the edge: isooctane 100"));
}

TEST_CASE("a report is whole in itself: no script, no link, typed text escaped") {
  const Folder folder;
  const std::string log = write_log(folder);
  const std::string job = replaced(replaced(demo_job_text(), "Pears and a blue jug", "<script>alert(2)</script>"),
                                   "name: varnish", "name: \"<img src=x onerror=y>\"");
  const Result page = call({"report", "-", log, "--full"}, job);
  REQUIRE(page.code == 0);
  CHECK_FALSE(holds(page.out, "<script"));
  CHECK_FALSE(holds(page.out, "<img"));
  CHECK_FALSE(std::regex_search(page.out, std::regex("(src|href)=\"(?!#)")));
  CHECK(holds(page.out, "<bdi>&lt;script&gt;alert(1)&lt;/script&gt;</bdi>"));
  CHECK(holds(page.out, "&lt;script&gt;alert(2)&lt;/script&gt;"));
  CHECK(call({"report", "-", log, "--full"}, job).out == page.out);
}

TEST_CASE("the table of the report has one row a test, units in its header") {
  const Folder folder;
  const std::string log = write_log(folder);
  const Result csv = call({"report", "demo", log, "--format", "csv"});
  REQUIRE(csv.code == 0);
  const std::vector<Row> rows = rows_of(csv.out);
  REQUIRE(rows.size() == 4);
  CHECK(rows[0].at("x_cm") == "3.5");
  CHECK(rows[0].at("seconds") == "20");
  CHECK(rows[0].at("rung") == "rung 1");
  CHECK(rows[0].at("dD_MPa05") == "14.1");
  CHECK(rows[1].at("removal") == "partly removed");
  CHECK(holds(rows[1].at("corrections"), "Reason: seen dry"));
  CHECK(rows[2].at("remark") == "<script>alert(1)</script>");
  CHECK(rows[2].at("who") == "C, \"D\"");
  CHECK(rows[2].at("chosen") == "yes");
  CHECK(rows[1].at("chosen") == "no");
  CHECK(std::stod(rows[2].at("effect_low")) < std::stod(rows[2].at("effect")));
  CHECK(std::stod(rows[2].at("effect")) < std::stod(rows[2].at("effect_high")));
  CHECK(rows[3].at("status") == "withdrawn: =wrong bottle");
  CHECK(rows[3].at("mixture") == "acetone 100");
  const auto json = nlohmann::json::parse(call({"report", "demo", log, "--format", "json"}).out);
  REQUIRE(json.at("report").size() == 4);
  CHECK(json.at("report")[0].at("x_cm") == 3.5);
  CHECK(json.at("report")[3].at("effect").is_null());
}

TEST_CASE("a harm that only a later look saw stands in the row of its test, in table and JSON") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  const std::vector<std::vector<std::string>> lines = {
      {"mixture=isooctane 80, acetone 20", "removal=partly removed", "original=nothing seen", "passage=white cloth"},
      {"test=1", "looked_after=the next day", "original=softened"}};
  for (std::vector<std::string> words : lines) {
    words.insert(words.begin(), {"record", "demo", log});
    const Result done = call(words);
    INFO(done.err);
    REQUIRE(done.code == 0);
  }
  const std::vector<Row> rows = rows_of(call({"report", "demo", log, "--format", "csv"}).out);
  REQUIRE(rows.size() == 1);
  CHECK(rows[0].at("original") == "softened");
  const auto json = nlohmann::json::parse(call({"report", "demo", log, "--format", "json"}).out);
  CHECK(json.at("report")[0].at("original") == "softened");
}

TEST_CASE("a bottle that makes peroxides is told on the report's first screen") {
  const Folder folder;
  const std::string job = folder.file("ether.yaml");
  write_file(job, R"(gentlest_job: 1
object: {title: With an ether}
layers:
  - {name: varnish, role: remove, found: dammar_aged}
  - {name: paint, role: keep, found: oil_paint_old}
shelf: [tetrahydrofuran]
limits: {risk_limit: 0.99}
)");
  const std::string log = folder.file("easel.log");
  write_file(log, "{\"gentlest_log\":1}\n");
  Surroundings terminal;
  terminal.to_terminal = true;
  const Result report = call({"report", job, log}, "", terminal);
  INFO(report.out << report.err);
  CHECK(holds(report.out, "peroxide"));
}

TEST_CASE("lines that cannot be read, and mixtures that the shelf does not know, are told in the report") {
  const Folder folder;
  const std::string log = folder.file("easel.log");
  write_file(log,
             "{\"gentlest_log\":1}\n{\"test\":1,\"mixture\":\"moonshine 100\",\"removal\":\"no effect\"}\n"
             "{\"test\":2,\"mixtu\n");
  const Result page = call({"report", "demo", log});
  REQUIRE(page.code == 0);
  CHECK(holds(page.err, "cannot be read"));
  CHECK(holds(page.out, "Lines of the log that could not be read whole"));
  CHECK(holds(page.out, "line 3: "));
  CHECK(holds(page.out, "not counted: "));
  CHECK(holds(page.out, "moonshine"));
  CHECK(call({"report", "demo", folder.file("none.log")}).code == 3);
  CHECK(call({"report", "demo"}).code == 2);
}

}  // namespace gentlest::test
