// Sheets, labels and charts through the whole program. How they look is measured by tests/browser.
#include "pages.hpp"

#include "io/job_file.hpp"

#include <catch2/catch.hpp>

#include <regex>

namespace gentlest::test {

namespace {

std::string hostile_job() {
  std::string job = replaced(demo_job_text(), "Pears and a blue jug (invented demonstration painting)",
                             "<script>alert(1)</script> & co");
  job = replaced(job, "name: varnish", "name: \"<img src=x onerror=y>\"");
  return replaced(job, "name: white cloth", "name: \"\\\"><svg onload=z>\"");
}

// Each heading stands on the page, after the one before it.
void check_order(const std::string& page, const std::vector<const char*>& headings) {
  std::size_t last = 0;
  for (const char* heading : headings) {
    INFO(heading);
    const std::size_t at = page.find(">" + std::string(heading) + "</");
    REQUIRE(at != std::string::npos);
    CHECK(at > last);
    last = at;
  }
}

}  // namespace

TEST_CASE(
    "the sheet holds the ladder, cards, map and what is not predicted; with --full pictures, sources and the job") {
  const Result sheet = call({"sheet", "demo"});
  REQUIRE(sheet.code == 0);
  CHECK(holds(sheet.out, "<html lang=\"en\">"));
  CHECK(holds(sheet.out, "<title>Solvent tests: Pears and a blue jug"));
  check_order(sheet.out, {"At a glance", "What to watch", "The tests, to be filled in", "Map of the tests",
                          "Beside the ladder", "What is not predicted", "Cautions", "To make this sheet again"});
  CHECK(holds(sheet.out, "Command: gentlest sheet <bdi>demo</bdi>"));
  CHECK(holds(sheet.out, "8.5 mL"));
  for (const char* behind : {"gentlest_job: 1", "<h2>Pictures", "<h2>Sources"}) {
    CHECK_FALSE(holds(sheet.out, behind));
    CHECK(holds(call({"sheet", "demo", "--full"}).out, behind));
  }
}

TEST_CASE("every page that may be carried off says when to stop and what is not predicted") {
  const std::string sheet = call({"sheet", "demo"}).out;
  // The ladder's page and each page of cards.
  CHECK(count_of(sheet, "class=\"page cards\"") == 3);
  CHECK(count_of(sheet, "<b>Not predicted:</b>") == 4);
  CHECK(count_of(sheet, "class=\"running\"") == 5);
  CHECK(holds(sheet, "The tests, to be filled in</b>, page 3 of 3"));
  CHECK_FALSE(holds(sheet, "Hazard records are missing"));
  for (const char* command : {"labels", "report"}) {
    INFO(command);
    const Folder folder;
    const std::string log = folder.file("easel.log");
    write_file(log, "{\"gentlest_log\":1}\n");
    const std::string page = call(std::string(command) == "report" ? std::vector<std::string>{command, "demo", log}
                                                                   : std::vector<std::string>{command, "demo"})
                                 .out;
    CHECK(holds(page, "<b>Not predicted:</b>"));
  }
}

TEST_CASE("the cards are to be ticked in the words of the log") {
  const std::string sheet = call({"sheet", "demo"}).out;
  for (const char* word : {"no effect", "softened or gelled", "fully removed", "nothing seen", "change that recovers",
                           "colour on the swab", "retouching", "not known", "medium"})
    CHECK(holds(sheet, "<span class=\"tick\">" + std::string(word) + "</span>"));
}

TEST_CASE("pages are whole in themselves: no script, no link, typed text escaped") {
  for (const char* command : {"sheet", "labels", "chart"}) {
    INFO(command);
    const Result page = call({command, "-"}, hostile_job());
    REQUIRE(page.code == 0);
    CHECK_FALSE(holds(page.out, "<script"));
    CHECK_FALSE(holds(page.out, "<img"));
    CHECK_FALSE(holds(page.out, "<svg onload"));
    CHECK_FALSE(std::regex_search(page.out, std::regex("(src|href)=\"(?!#)")));
  }
  CHECK(holds(call({"sheet", "-"}, hostile_job()).out, "&lt;script&gt;alert(1)&lt;/script&gt; &amp; co"));
}

TEST_CASE("no window is an answer on paper too") {
  const Result sheet = call({"sheet", "demo", "--risk-limit", "0.06"});
  CHECK(sheet.code == 1);
  CHECK(holds(sheet.out, "<b>No window.</b>"));
  CHECK(holds(sheet.out, "What people then consider"));
  CHECK(holds(sheet.out, "--risk-limit 0.06"));
  CHECK(call({"labels", "demo", "--risk-limit", "0.06"}).code == 1);
  CHECK(call({"chart", "demo", "--kind", "chances", "--risk-limit", "0.06"}).code == 1);
}

TEST_CASE("the vial and the measuring step reach the recipe") {
  CHECK(holds(call({"sheet", "demo", "--vial", "20"}).out, "17 mL"));
  const Result coarse = call({"sheet", "demo", "--vial", "3", "--measure", "1"});
  CHECK(holds(coarse.out, "as measured (rounded)"));
  CHECK(call({"sheet", "demo", "--vial", "1", "--measure", "2"}).code == 2);
  CHECK(call({"sheet", "demo", "--vial", "ten"}).code == 2);
}

TEST_CASE("sites are put on the map and into its table") {
  const Result sheet = call({"sheet", "demo", "--sites", "12.5,30; 40,10"});
  CHECK(holds(sheet.out, "<td>12.5</td><td>30</td>"));
  const Result bad = call({"sheet", "demo", "--sites", "12.5;40,10"});
  CHECK(bad.code == 2);
  CHECK(holds(bad.err, "write x,y in cm"));
}

TEST_CASE("the places of a log's tests are put on the map, and the cards go on from its numbers") {
  const Folder folder;
  const std::string log =
      log_of(folder,
             "{\"test\":1,\"mixture\":\"isooctane 100\",\"x_cm\":3.5,\"y_cm\":41,\"removal\":\"no effect\"}\n"
             "{\"test\":3,\"mixture\":\"<script>\",\"x_cm\":7,\"y_cm\":8,\"removal\":\"no effect\"}\n"
             "{\"test\":3,\"correction\":\"wrong bottle\",\"withdrawn\":true}\n");
  const Result sheet = call({"sheet", "demo", "--log", log});
  REQUIRE(sheet.code == 0);
  CHECK(holds(sheet.out, "<td>3.5</td><td>41</td><td><bdi>isooctane 100</bdi></td>"));
  CHECK(holds(sheet.out, "<td>7</td><td>8</td><td><bdi>&lt;script&gt; (withdrawn)</bdi></td>"));
  CHECK_FALSE(holds(sheet.out, "<b>Test 3</b>"));
  CHECK(holds(sheet.out, "<b>Test 4</b>"));
  CHECK(call({"sheet", "demo", "--log", log, "--sites", "1,2"}).code == 2);
  CHECK(call({"sheet", "demo", "--log", folder.file("none.log")}).code == 3);
}

TEST_CASE("a background picture travels inside the sheet; other files are refused") {
  const Folder folder;
  const std::string picture = folder.file("photo.png");
  write_file(picture, "\x89PNG\r\n\x1A\n1234");
  const Result sheet = call({"sheet", "demo", "--background", picture});
  CHECK(sheet.code == 0);
  CHECK(holds(sheet.out, "href=\"data:image/png;base64,iVBORw0KGgoxMjM0\""));
  write_file(picture, "<svg onload=x>");
  const Result bad = call({"sheet", "demo", "--background", picture});
  CHECK(bad.code == 3);
  CHECK(holds(bad.err, "is neither a PNG nor a JPEG picture"));
  CHECK(call({"sheet", "demo", "--background", folder.file("none.png")}).code == 3);
}

TEST_CASE("labels come in any size that can be read, as many as asked for") {
  const auto count = [](const std::string& text) {
    std::size_t found = 0;
    for (std::size_t at = text.find(">Rung 6</text>"); at != std::string::npos;
         at = text.find(">Rung 6</text>", at + 1))
      ++found;
    return found;
  };
  CHECK(count(call({"labels", "demo"}).out) == 1);
  const Result many = call({"labels", "demo", "--copies", "12", "--paper", "letter", "--date", "2026-03-14"});
  CHECK(count(many.out) == 12);
  CHECK(holds(many.out, "made 2026-03-14"));
  CHECK(holds(many.out, "@page { size: letter; }"));
  CHECK(call({"labels", "demo", "--label", "20x10"}).code == 2);
  CHECK(call({"labels", "demo", "--label", "400x25"}).code == 2);
  for (const char* size : {"50", "x", "50x", "axb", "50x25x2"})
    CHECK(call({"labels", "demo", "--label", size}).code == 2);
}

TEST_CASE("pages and pictures refuse other forms and unknown kinds") {
  for (const char* command : {"sheet", "labels", "chart"}) {
    const Result result = call({command, "demo", "--format", "csv"});
    CHECK(result.code == 2);
    CHECK(holds(result.err, "no CSV or JSON"));
  }
  const Result near = call({"chart", "demo", "--kind", "plane"});
  CHECK(near.code == 2);
  CHECK(holds(near.err, "did you mean \"planes\"?"));
  CHECK(call({"sheet", "demo", "--paper", "a5"}).code == 2);
}

TEST_CASE("the same call gives the same pages") {
  for (const std::vector<std::string>& args :
       {std::vector<std::string>{"sheet", "demo"}, {"labels", "demo"}, {"chart", "demo", "--kind", "triangle"}}) {
    const std::string first = call(args).out;
    // The last plan is kept; with another in between it is worked out again.
    REQUIRE(call({"ladder", "demo", "--rungs", "2"}).code == 0);
    CHECK(call(args).out == first);
  }
}

}  // namespace gentlest::test
