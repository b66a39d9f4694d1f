// Whatever shows hazards says up to which day the law was seen.
#include "csv_cells.hpp"
#include "program.hpp"
#include "shipped.hpp"

#include "report/phrases/words.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace gentlest;
using gentlest::test::call;
using gentlest::test::holds;
using gentlest::test::shipped_catalogue;

namespace {

const std::string& day() {
  return shipped_catalogue().law().seen_until;
}

std::string sentence() {
  return "Law on hazards as seen until " + day();
}

// A log of one test, for the report.
std::string log_text() {
  return "{\"gentlest_log\":1}\n"
         "{\"test\":1,\"mixture\":\"isooctane 70, acetone 30\",\"removal\":\"no effect\",\"original\":\"nothing "
         "seen\"}\n";
}

std::vector<std::vector<std::string>> answers() {
  return {{"ladder", "demo", "--full"},
          {"ladder", "demo", "--full", "--risk-limit", "0.06"},  // no window
          {"mixture", "demo", "acetone 30, isooctane 70"},
          {"vial", "demo", "--full", "acetone 30, isooctane 70"},
          {"compare", "demo", "--full"},
          {"show", "acetone"},
          {"version"}};
}

}  // namespace

TEST_CASE("every text with hazards in it says up to which day the law was seen") {
  for (const auto& args : answers()) {
    INFO(args[0]);
    CHECK(holds(call(args).out, "\n" + sentence()));
  }
  CHECK_FALSE(holds(call({"show", "dammar_aged"}).out, sentence()));
}

TEST_CASE("the day of the law stands in every JSON and every row") {
  for (auto args : answers()) {
    INFO(args[0]);
    args.insert(args.end(), {"--format", "json"});
    CHECK(nlohmann::json::parse(call(args).out).at("law_seen_until") == day());
    args.back() = "csv";
    const auto rows = gentlest::test::csv_rows(call(args).out);
    REQUIRE(rows.size() > 1);
    for (std::size_t i = 0; i < rows.size(); ++i)
      CHECK(rows[i].at(rows[i].size() - 3) == (i == 0 ? "law_seen_until" : day()));
  }
}

TEST_CASE("sheet, labels and report of the tests print the day of the law") {
  gentlest::test::Folder folder;
  const std::string log = folder.file("easel.log");
  gentlest::test::write_file(log, log_text());
  for (const std::vector<std::string>& args :
       {std::vector<std::string>{"sheet", "demo"}, {"labels", "demo"}, {"report", "demo", log}}) {
    INFO(args[0]);
    CHECK(holds(call(args).out, sentence()));
  }
  CHECK(holds(call({"labels", "demo"}).out, "law seen " + day()));
  // Where a small label has no room for it the line is not cut in the middle of the day.
  const std::string small = call({"labels", "demo", "--label", "35x18"}).out;
  CHECK(holds(small, sentence()));
  CHECK((holds(small, "law seen " + day() + "<") || !holds(small, "law of")));
}

TEST_CASE("a catalogue that does not say how old its law is is called old") {
  CHECK(holds(law_words({}), "take its records for old"));
  CHECK(law_words({"2026-03-14", "all of it", ""}) ==
        "Law on hazards as seen until 2026-03-14: all of it. What came later is not in here.");
  CHECK(holds(law_words({"2026-03-14", "all of it", "a part"}), " Older: a part."));
}
