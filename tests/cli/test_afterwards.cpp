// `gentlest afterwards` through the whole program: one screen, every cell in the table, a page, faults in one line.
#include "csv_cells.hpp"
#include "program.hpp"

#include "report/form/table.hpp"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>
#include <sstream>

namespace gentlest::test {

namespace {

const char* const job_begin =
    "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged}\n"
    "  - {name: paint, role: keep, found: oil_paint_old}\nshelf: [isooctane, acetone, isopropanol]\n";

}  // namespace

TEST_CASE("afterwards: a first answer fits one screen and says what it rests on", "[afterwards]") {
  const Result result = call({"afterwards", "demo"}, {}, page_of(80));
  CHECK(result.code == 0);
  CHECK(std::count(result.out.begin(), result.out.end(), '\n') <= 40);
  std::istringstream lines(result.out);
  for (std::string line; std::getline(lines, line);) CHECK(display_width(line) <= 80);
  for (const char* words : {"oil paint", "hydrocarbon resin", "isooctane", "safety data sheet", "Swabs"})
    CHECK(holds(result.out, words));
}

TEST_CASE("afterwards: what a layer may be besides is said, on the screen and on the page", "[afterwards]") {
  const std::string unsure =
      "gentlest_job: 1\nlayers:\n  - {name: varnish, role: remove, found: dammar_aged, possible: [{material: "
      "mastic_aged, percent: 30}]}\n"
      "  - {name: paint, role: keep, found: oil_paint_old, possible: [{material: egg_tempera, percent: 20}]}\nshelf: "
      "[isooctane, acetone]\n";
  const Result text = call({"afterwards", "-"}, unsure, page_of(80));
  INFO(text.out << text.err);
  CHECK(holds(text.out, "\"paint\" may be "));
  CHECK_FALSE(holds(text.out, "\"varnish\" may be"));
  CHECK(holds(call({"afterwards", "-", "--html"}, unsure).out, "(20 %) instead"));
  CHECK_FALSE(holds(call({"afterwards", "-"}, std::string(job_begin)).out, "instead:"));
}

TEST_CASE("afterwards: every cell has an answer, a basis and a reason in the table", "[afterwards]") {
  const Result result = call({"afterwards", "demo", "--format", "csv", "--light", "daylight"});
  const auto rows = csv_rows(result.out);
  REQUIRE(rows.size() > 200);
  const auto column = [&](const char* name) {
    return static_cast<std::size_t>(std::find(rows[0].begin(), rows[0].end(), name) - rows[0].begin());
  };
  for (const char* name : {"verdict", "basis", "why", "sources", "lower"}) {
    REQUIRE(column(name) < rows[0].size());
    for (const auto& row : rows) CHECK(!row[column(name)].empty());
  }
}

TEST_CASE("afterwards: a stack of the job is asked about, and its failing is the exit code", "[afterwards]") {
  const std::string good = std::string(job_begin) +
                           "afterwards:\n  - {put_on: hydrogenated_hydrocarbon_resin, as: varnish, in: isooctane}\n";
  CHECK(call({"afterwards", "-"}, good).code == 0);
  const std::string bad =
      good + "  - {put_on: ethyl_methacrylate_methyl_acrylate_copolymer, as: retouching, in: toluene}\n";
  const Result result = call({"afterwards", "-", "--full"}, bad);
  CHECK(result.code == 1);
  CHECK(holds(result.out, "this stack: no"));
}

TEST_CASE("afterwards: mixtures are shown on every coat, from the top", "[afterwards]") {
  const Result result = call({"afterwards", "demo", "--liquid", "isooctane; toluene 60, acetone 40"});
  CHECK(holds(result.out, "isooctane 100"));
  CHECK(holds(result.out, "toluene 60, acetone 40"));
}

// A page shows what JSON says, so what ranks a stack, who speaks and what is dangerous must stand in it.
TEST_CASE("afterwards: JSON names the weakest link, its support, sources and dangers", "[afterwards]") {
  using Json = nlohmann::json;
  const Json answer = Json::parse(call({"afterwards", "demo", "--format", "json"}).out);
  const std::string text = call({"afterwards", "demo", "--full"}, {}, page_of(400)).out;
  std::set<std::string> keys;
  for (const Json& source : answer.at("sources")) keys.insert(source.at("key").get<std::string>());
  std::set<std::string> dangers;
  for (const Json& one : answer.at("dangers")) {
    dangers.insert(one.at("mixture").get<std::string>());
    CHECK(holds(text, one.at("mixture").get<std::string>() + ": " + one.at("words").get<std::string>()));
  }
  REQUIRE(answer.at("stacks").size() > 20);
  for (const Json& stack : answer.at("stacks")) {
    INFO(stack.at("group") << " " << stack.at("rank"));
    const Json& cell = stack.at("weakest_cell");
    const Json& act = stack.at("coats").at(cell.at("coat").get<std::size_t>()).at(cell.at("act").get<std::string>());
    const Json& below = cell.at("below");
    const Json& judged = below.is_null() ? act.at("itself") : act.at("under").at(below.get<std::size_t>());
    CHECK(judged.at("verdict") == stack.at("weakest"));
    if (!below.is_null()) CHECK(act.at("under_counts").at(below.get<std::size_t>()) == true);
    CHECK(stack.at("support").is_null() == (stack.at("weakest") != "yes"));
    if (!stack.at("support").is_null())
      CHECK(stack.at("weakest_words") == "yes, " + stack.at("support").get<std::string>());
    for (const Json& coat : stack.at("coats"))
      for (const char* name : {"put_on", "off_fresh", "off_aged"}) {
        const Json& one = coat.at(name);
        if (one.is_null()) continue;
        CHECK(one.at("under_counts").size() == one.at("under").size());
        if (!one.at("mixture").is_null()) CHECK(dangers.count(one.at("mixture").get<std::string>()) == 1);
        for (const Json& voice : one.at("itself").at("voices"))
          CHECK(keys.count(voice.at("source").get<std::string>()) == 1);
      }
  }
}

TEST_CASE("afterwards: a page without scripts, the stacks drawn", "[afterwards]") {
  const Result result = call({"afterwards", "demo", "--html"});
  CHECK(result.code == 0);
  CHECK(holds(result.out, "<svg"));
  CHECK(!holds(result.out, "<script"));
  CHECK(holds(result.out, "weakest link"));
}

TEST_CASE("afterwards: what is asked wrongly is told in one line each", "[afterwards]") {
  CHECK(holds(call({"afterwards", "demo", "--light", "daylght"}).err, "did you mean \"daylight\"?"));
  CHECK(call({"afterwards", "demo", "--light", "daylght"}).code == 2);
  CHECK(call({"afterwards", "demo", "--html", "--format", "csv"}).code == 2);
  CHECK(call({"afterwards", "demo", "--liquid", "moonshine"}).code == 2);
  const auto fault = [](const std::string& lines) {
    const Result result = call({"afterwards", "-"}, std::string(job_begin) + lines);
    CHECK(result.code == 3);
    CHECK(result.out.empty());
    return result.err;
  };
  CHECK(holds(fault("afterwards:\n  - {put_on: damar_fresh, as: varnish}\n"), "no material \"damar_fresh\" is known"));
  CHECK(holds(fault("afterwards:\n  - {put_on: dammar_fresh, as: polish}\n"), "write retouching or varnish"));
  CHECK(holds(fault("afterwards:\n  - {put_on: dammar_fresh}\n"), "as"));
  CHECK(holds(fault("afterwards:\n  - {put_on: dammar_fresh, as: varnish, in: moonshine}\n"), "moonshine"));
  CHECK(
      holds(fault("afterwards:\n  - {put_on: dammar_fresh, as: varnish, light: candle}\n"), "\"candle\" is no light"));
}

}  // namespace gentlest::test
