// Sheet, labels, report and `next` are one plan: what one of them says of a series of readings, the others say too.
// They are read as a person reads them, out of the pages themselves (docs/conduct.md, rules 1, 6 and 12).
#include "cli/csv_cells.hpp"
#include "cli/pages.hpp"
#include "demo_plan.hpp"
#include "property/conduct_sessions.hpp"
#include "scale.hpp"
#include "shipped.hpp"

#include "gentlest/answers/ahead.hpp"
#include "gentlest/answers/review.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/job_file.hpp"
#include "report/tested/progress_charts.hpp"
#include "report/paper/label_sheet.hpp"
#include "report/paper/test_report.hpp"
#include "report/rules/passage_matrix.hpp"
#include "report/screen/progress_report.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cctype>
#include <map>
#include <regex>
#include <set>

using namespace gentlest;
using namespace gentlest::test;

namespace {

struct Pages {
  std::map<std::string, std::string> next;  // the row of the table of `next`
  std::string sheet, labels, report;
  Progress progress;
};

Pages pages_of(const Plan& plan, const std::vector<Reading>& readings) {
  const Catalogue& catalogue = shipped_catalogue();
  Pages pages{{}, {}, {}, {}, follow_readings(plan, catalogue, readings)};
  const auto rows = csv_rows(progress_report(plan, pages.progress, std::nullopt, false, Form::csv, {}, {}));
  REQUIRE(rows.size() == 2);
  for (std::size_t i = 0; i < rows[0].size(); ++i) pages.next[rows[0][i]] = rows[1][i];
  const Bench bench = prepare_bench(plan, catalogue);
  TestReportInputs inputs;
  inputs.sheet.followed = FollowedTests{pages.progress, tests_ahead(plan, pages.progress, catalogue)};
  inputs.sheet.tests_so_far = static_cast<int>(readings.size());
  pages.sheet = bench_sheet(plan, bench, inputs.sheet);
  LabelInputs label_inputs;
  label_inputs.progress = pages.progress;
  Bench vials = bench;
  vials.mixtures = vials_ahead(plan, pages.progress, bench, catalogue);
  pages.labels = label_sheet(plan, vials, label_inputs);
  const TestReview review = review_tests(plan, pages.progress, readings, catalogue);
  pages.report =
      test_report_page({plan, pages.progress, review, catalogue}, labels_of_tests(review, catalogue), inputs);
  return pages;
}

std::vector<std::string> found(const std::string& text, const std::string& pattern) {
  const std::regex all(pattern);
  std::vector<std::string> words;
  for (std::sregex_iterator at(text.begin(), text.end(), all), end; at != end; ++at)
    words.push_back(unescaped((*at)[1]));
  return words;
}

// What the cards are for, in their order; the blanks left out.
std::vector<std::string> cards_on(const std::string& sheet) {
  return found(sheet, "class=\"when\"><bdi>([^<]*)</bdi>");
}

std::vector<std::string> labels_on(const std::string& labels) {
  return found(labels, "<title id=\"label-[0-9]+-title\">([^<]*)</title>");
}

// "rung 5, 6: closed by test 8" of the first line of `next`: 5 and 6.
std::set<std::string> closed_in_next(const std::string& closed) {
  std::set<std::string> rungs;
  for (const std::string& list : found(closed, "rung ([0-9, ]+)(?: of line 1)?: closed"))
    for (const std::string& rung : found(list, "([0-9]+)")) rungs.insert(rung);
  return rungs;
}

std::set<std::string> struck_on(const std::string& sheet) {
  const auto struck = found(sheet, "<s><span class=\"number\">([0-9]+)</span></s>");
  return {struck.begin(), struck.end()};
}

std::string capital(std::string text) {
  text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  return text;
}

bool is_known(const std::string& cell) {
  return cell != "not known";
}

void check_agreement(const Pages& pages) {
  const std::string step = pages.next.at("step");
  const std::string rung = pages.next.at("rung");
  const std::vector<std::string> cards = cards_on(pages.sheet);
  const std::vector<std::string> labels = labels_on(pages.labels);
  // Harms stand in the first line of each page.
  const std::string harms = pages.next.at("harms");
  const std::size_t count = is_known(harms) ? count_of(harms, "HARM on ") : 0;
  for (const std::string* page : {&pages.sheet, &pages.report}) {
    CHECK(count_of(*page, "<p class=\"harm\">") == count);
    if (count > 0) CHECK(page->find("<p class=\"harm\">") < page->find("<h1>"));
  }
  // What is closed is struck out, and has neither card nor label.
  std::set<std::string> closed = closed_in_next(pages.next.at("closed"));
  if (step == "test" && rung.rfind("rung ", 0) == 0) closed.erase(rung.substr(5));
  CHECK(struck_on(pages.sheet) == closed);
  for (const std::string& number : closed) {
    INFO("closed: rung " << number);
    for (const std::string& card : cards) CHECK(card.rfind("rung " + number + ",", 0) != 0);
    if (step == "test") CHECK(std::count(labels.begin(), labels.end(), "Rung " + number) == 0);
  }
  // The first card and the first label are the test that is proposed; after a stop there is none.
  if (step != "test") {
    CHECK(cards.empty());
    CHECK(count_of(pages.sheet, "<div class=\"card\">") == 0);
    CHECK(labels.size() == (step == "found" || step == "unsure" ? 1 : 0));
    CHECK(holds(unescaped(pages.sheet), pages.next.at("reason")));
    return;
  }
  REQUIRE_FALSE(cards.empty());
  REQUIRE_FALSE(labels.empty());
  const std::string place = pages.next.at("place");
  const std::string passage = pages.next.at("passage");
  const std::string where =
      place == "edge" ? "at the edge" : "on the picture" + (is_known(passage) ? ", " + passage : std::string());
  if (is_known(rung)) {
    CHECK(cards.front() == rung + ", " + where);
    CHECK(labels.front() == capital(rung));
  } else {
    CHECK(holds(cards.front(), where));
  }
  for (std::size_t i = 1; i < cards.size(); ++i) CHECK(holds(cards[i], ", only if test "));
  CHECK(holds(unescaped(pages.report), pages.next.at("mixture")));
}

Reading swab(int test, const std::string& mixture, bool at_edge, const std::string& passage, RemovalReading removal,
             OriginalReading original) {
  Reading reading;
  reading.test = test;
  reading.mixture = mixture;
  reading.at_edge = at_edge;
  reading.passage = passage;
  reading.removal = removal;
  reading.original = original;
  return reading;
}

std::string rung(std::size_t number) {
  return to_text(ladder_rungs(demo_plan())[number - 1].mixture);
}

// A blank, two rungs at the edge and on the light passage, then a stronger one that harmed the dark one.
std::vector<Reading> harmed_once() {
  const OriginalReading nothing = OriginalReading::nothing_seen;
  Reading blank = swab(1, "dry swab", false, "white cloth", RemovalReading::no_effect, nothing);
  return {blank,
          swab(2, rung(1), true, {}, RemovalReading::no_effect, nothing),
          swab(3, rung(2), true, {}, RemovalReading::softened, nothing),
          swab(4, rung(1), false, "white cloth", RemovalReading::no_effect, nothing),
          swab(5, rung(2), false, "white cloth", RemovalReading::fully, nothing),
          swab(6, rung(3), false, "dark background", RemovalReading::fully, OriginalReading::recovers)};
}

}  // namespace

TEST_CASE("law: sheet, labels, report and next say the same of any series of readings") {
  std::set<std::string> steps;
  // Three at least: of one alone it may be that it never stops.
  for (int number = 0; number < std::max(3, cases(8)); ++number) {
    ConductSession session(demo_plan(), shipped_catalogue(), 20261126 + static_cast<std::uint64_t>(number));
    for (int test = 0; test < 12; ++test) {
      if (test % 4 == 0) {
        INFO("session " << number << ", after " << test << " tests");
        const Pages pages = pages_of(demo_plan(), session.readings());
        check_agreement(pages);
        steps.insert(pages.next.at("step"));
      }
      session.go_on();
    }
  }
  CHECK(steps.count("test") == 1);
  CHECK(steps.size() > 1);  // stops among them
}

TEST_CASE(
    "the sheet begins with the harm, strikes closed rungs out and says why, and its first card is the next test") {
  const Pages pages = pages_of(demo_plan(), harmed_once());
  check_agreement(pages);
  CHECK(struck_on(pages.sheet).count("3") == 1);
  CHECK(holds(pages.sheet, "<b><bdi>closed: it harmed in test 6</bdi></b>"));
  CHECK(holds(pages.sheet, "<b>Test 7</b>"));
  const std::string first = pages.sheet.substr(pages.sheet.find("<body>"));
  CHECK(first.find("HARM on oil paint (picture, dark background): test 6") < first.find("<h1>"));
  CHECK(holds(pages.labels, "HARM on oil paint"));
  CHECK(holds(pages.labels, "What is closed has no label."));
}

TEST_CASE("before the first test the blanks have the first cards, then the gentlest rung at the edge") {
  const Pages pages = pages_of(demo_plan(), {});
  check_agreement(pages);
  const std::size_t dry = pages.sheet.find("dry swab</span>");
  const std::size_t water = pages.sheet.find("water or saliva");
  const std::size_t solvent = pages.sheet.find("class=\"when\"><bdi>rung 1, at the edge");
  CHECK(dry < water);
  CHECK(water < solvent);
  CHECK(solvent != std::string::npos);
  CHECK_FALSE(holds(pages.sheet, "class=\"harm\""));
}

TEST_CASE("the matrix holds each reading as it was read, at its place, and what is closed") {
  const Plan& plan = demo_plan();
  const Progress progress = follow_readings(plan, shipped_catalogue(), harmed_once());
  const PassageMatrix matrix = passage_matrix(plan, progress);
  REQUIRE(matrix.columns.size() == 3);
  CHECK(matrix.columns[0].title == "edge");
  CHECK(matrix.columns[1].title == "white cloth");
  CHECK(matrix.columns[2].title == "dark background");
  CHECK(matrix.columns[2].note == "closed by test 6: keep a border");
  const auto cell = [&](const std::string& name, std::size_t column) {
    for (const MatrixRow& row : matrix.rows)
      if ((row.name.empty() ? row.mixture : row.name) == name) return cell_words(row.cells[column], progress.conduct);
    FAIL("no row " << name);
    return std::vector<std::string>();
  };
  using Words = std::vector<std::string>;
  CHECK(cell("dry swab", 1) == Words{"test 1: no effect; nothing seen"});
  CHECK(cell("rung 1", 0) == Words{"test 2: no effect; nothing seen"});
  CHECK(cell("rung 2", 0) == Words{"test 3: softened or gelled; nothing seen"});
  CHECK(cell("rung 2", 1) == Words{"test 5: fully removed; nothing seen"});
  CHECK(cell("rung 3", 2) == Words{"HARM, test 6: fully removed; change that recovers", "closed"});
  CHECK(cell("rung 3", 1) == Words{"closed (test 6)"});
  CHECK(cell("rung 1", 2) == Words{"closed (test 6)"});
}

TEST_CASE("places that the job does not list share a column, and the cells name them") {
  std::vector<Reading> readings = harmed_once();
  readings[4].passage = "the moon";
  const Progress progress = follow_readings(demo_plan(), shipped_catalogue(), readings);
  const PassageMatrix matrix = passage_matrix(demo_plan(), progress);
  REQUIRE(matrix.columns.size() == 4);
  CHECK(matrix.columns[3].is_elsewhere);
  for (const MatrixRow& row : matrix.rows)
    if (row.name == "rung 2")
      CHECK(row.cells[3].read == std::vector<std::string>{"test 5: fully removed; nothing seen (the moon)"});
}

TEST_CASE("the matrix says where the working mixture was not tested") {
  const Plan& plan = demo_plan();
  std::vector<Reading> readings = harmed_once();
  readings.pop_back();
  const Progress progress = follow_readings(plan, shipped_catalogue(), readings);
  REQUIRE(progress.next.working);
  const PassageMatrix matrix = passage_matrix(plan, progress);
  for (const MatrixRow& row : matrix.rows)
    for (std::size_t i = 0; i < row.cells.size(); ++i)
      CHECK(row.cells[i].is_wanted == (row.name == "rung 2" && matrix.columns[i].title == "dark background"));
}

TEST_CASE("the timeline and the ladder say each test, what it did and what it closed") {
  const Plan& plan = demo_plan();
  const Progress progress = follow_readings(plan, shipped_catalogue(), harmed_once());
  const Chart timeline = timeline_chart(plan, progress);
  CHECK(timeline.title == "The tests in their order");
  CHECK(holds(timeline.description, "Test 1: dry swab, picture, white cloth: no effect; nothing seen."));
  CHECK(holds(timeline.description, "Test 3: rung 2, edge: softened or gelled; nothing seen."));
  CHECK(holds(timeline.description, "Test 6: rung 3, picture, dark background: HARM, fully removed"));
  CHECK(holds(timeline.drawing.body, ">closed by test 6<"));
  // Squares at the edge, circles on the picture, one more of each kind of look in the legend.
  CHECK(count_of(timeline.drawing.body, "<rect ") == 2 + 1);
  CHECK(count_of(timeline.drawing.body, "<circle ") == 4 + 3);
  const Chart swabs = swabs_chart(plan, progress);
  CHECK(holds(swabs.description, "rung 1: effect "));
  CHECK(holds(swabs.description, "test 6 (HARM); closed by test 6."));
  CHECK(std::regex_search(swabs.description, std::regex("effect [0-9.]+ % planned, [0-9.]+ % now; risk ")));
  CHECK(count_of(swabs.drawing.body, "clip-closed-") > 0);
  for (const std::string& kind : progress_chart_kinds()) CHECK(progress_chart_of(kind, plan, progress).kind == kind);
}

TEST_CASE("the map shows what came of each test, and the border of a closed passage") {
  std::vector<Reading> readings = harmed_once();
  readings[1].site = Site{Centimetres{1}, Centimetres{40}};
  readings[4].site = Site{Centimetres{20}, Centimetres{30}};
  readings[5].site = Site{Centimetres{30}, Centimetres{12}};
  const Progress progress = follow_readings(demo_plan(), shipped_catalogue(), readings);
  std::vector<MapSite> sites = sites_of(tests_in(readings));
  const PaintingObject& object = demo_plan().job.object;
  const Chart plain = test_map(object, sites);
  show_results(sites, progress.conduct);
  const Chart shown = test_map(object, sites);
  CHECK(sites[0].look->place == Place::edge);
  CHECK(sites[1].look->moved);
  CHECK(sites[2].look->harmed);
  CHECK_FALSE(sites[0].is_on_closed);
  CHECK_FALSE(sites[1].is_on_closed);
  CHECK(sites[2].is_on_closed);
  CHECK(holds(shown.description, "at the edge: the layer did not move as wanted"));
  CHECK(holds(shown.description, "the original reacted, on a passage that is closed"));
  CHECK(holds(shown.drawing.body, ">on a passage that is closed: keep a border<"));
  CHECK(shown.drawing.height > plain.drawing.height);
}
