// The small parts that all reports are made of.
#include "csv_cells.hpp"

#include "report/form/format.hpp"
#include "report/form/sheet.hpp"
#include "report/form/table.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace gentlest::test {

TEST_CASE("numbers become text without exponents, stray zeros or a negative zero") {
  CHECK(fixed(-0.04, 1) == "0.0");
  CHECK(fixed(-0.06, 1) == "-0.1");
  CHECK(fixed(2.345, 2) == "2.35");
  CHECK(as_recorded(18.0) == "18");
  CHECK(as_recorded(0.0000123456789) == "0.0000123457");
  CHECK(as_recorded(1234567) == "1234567");
  CHECK(as_recorded(-0.8) == "-0.8");
  CHECK(as_data(0.1 + 0.2) == "0.3");
  CHECK(data_value(1.0 / 3) == 0.333333333333);
  CHECK(computed_value(0.12345649) == 0.123456);
  CHECK(with_commas(999) == "999");
  CHECK(with_commas(1234567) == "1,234,567");
  CHECK(fixed_or_unknown(std::nullopt, 1) == "not known");
}

TEST_CASE("a chance is never shown as none or as certain") {
  CHECK(per_cent(0) == "<0.1 %");
  CHECK(per_cent(0.0004) == "<0.1 %");
  CHECK(per_cent(0.0006) == "0.1 %");
  CHECK(per_cent(0.1234) == "12.3 %");
  CHECK(per_cent(0.19949) == "19.9 %");
  CHECK(per_cent(0.1996) == "20 %");
  CHECK(per_cent(0.994) == "99 %");
  CHECK(per_cent(1) == ">99 %");
}

TEST_CASE("a chance is never printed as none or as certainty, nor on the wrong side of a limit") {
  for (const double chance : {0.99994, 0.995001, 1.0}) CHECK(per_cent(chance) == ">99 %");
  CHECK(per_cent_beside(0.4968, 0.5) == "49.7 %");
  CHECK(per_cent_beside(0.49996, 0.5) == "49.996 %");
  CHECK(per_cent_beside(0.5, 0.5) == "50 %");
  CHECK(per_cent_beside(0.5 - 1e-12, 0.5) == "50 %");
  CHECK(per_cent_beside(0.5004, 0.5) == "50.04 %");
  CHECK(per_cent_beside(0.504, 0.5) == "50.4 %");
  CHECK(per_cent_beside(0.2540, 0.25) == "25.4 %");
  CHECK(per_cent_beside(0.4958, 0.496) == "49.58 %");
  CHECK(per_cent_beside(0.61, 0.5) == "61 %");
  CHECK(per_cent_beside(0.0004, 0.5) == "<0.1 %");
  CHECK(per_cent_beside(0.99994, 0.5) == ">99 %");
  CHECK(setting_per_cent(0.025) == "2.5 %");
  CHECK(setting_per_cent(0.2) == "20 %");
}

TEST_CASE("width counts letters as a terminal shows them") {
  CHECK(display_width("Öl") == 2);
  CHECK(display_width("e\xCC\x81") == 1);
  CHECK(display_width("\xE9\x9D\x99\xE7\x89\xA9") == 4);
  CHECK(display_width("\xFF\xFE") == 2);
  CHECK(without_controls("a\033[1mb\tc\nd\xC2\x9B") == "a\\x1b[1mb c d\\x9b");
}

TEST_CASE("wrapping keeps all words and the width") {
  const std::vector<std::string> lines = wrap("red lake over a brown ground", 9);
  CHECK(lines == std::vector<std::string>{"red lake", "over a", "brown", "ground"});
  CHECK(wrap("", 9) == std::vector<std::string>{""});
  CHECK(wrap("methyl_isobutyl_ketone", 10) == std::vector<std::string>{"methyl_", "isobutyl_", "ketone"});
  CHECK(wrap("\xE9\x9D\x99\xE7\x89\xA9\xE9\x9D\x99", 4) ==
        std::vector<std::string>{"\xE9\x9D\x99\xE7\x89\xA9", "\xE9\x9D\x99"});
}

TEST_CASE("a table wider than the page comes in pieces, each with the first column and no number broken") {
  Table table;
  table.columns = {{"name", Align::left, true}};
  std::vector<std::string> row = {"rung"};
  for (int i = 0; i < 20; ++i) {
    table.columns.push_back({"c" + std::to_string(i), Align::right, false});
    row.push_back("12.34" + std::to_string(i));
  }
  table.rows = {row};
  const std::string text = to_text(table, {false, 60});
  for (const std::string& cell : row) CHECK(text.find(cell) != std::string::npos);
  std::size_t names = 0;
  for (std::size_t at = text.find("rung"); at != std::string::npos; at = text.find("rung", at + 1)) ++names;
  CHECK(names == 4);
}

TEST_CASE("a table that is too wide is narrowed, words last") {
  Table table;
  table.columns = {{"name", Align::left, true}, {"value", Align::right, false}};
  for (int i = 0; i < 12; ++i) table.columns.push_back({"c" + std::to_string(i), Align::left, true});
  std::vector<std::string> row(14, "some words here");
  row[1] = "12.5";
  table.rows = {row};
  for (const std::size_t width : {narrowest_width, usual_width, widest_width}) {
    const std::string text = to_text(table, {false, width});
    std::size_t from = 0;
    for (std::size_t to = text.find('\n'); to != std::string::npos; to = text.find('\n', from)) {
      CHECK(display_width(text.substr(from, to - from)) <= width);
      from = to + 1;
    }
    CHECK(text.find("12.5") != std::string::npos);
  }
  CHECK(to_text(Table{table.columns, {}}, {}).empty());
}

TEST_CASE("CSV keeps commas, quotes and line breaks, and disarms formulas") {
  Sheet sheet{"things", {{"words", "words", -1, false}, {"count", "count", -1, false}}, {}};
  sheet.rows = {
      {std::string("a, \"b\"\r\nc"), 1.5}, {std::string("=HYPERLINK(1)"), Cell()}, {std::string("-1+2"), -2.0}};
  const auto rows = csv_rows(sheet_csv(sheet, {"1", "2", {"2026-03-14", "law", ""}}));
  REQUIRE(rows.size() == 4);
  CHECK(rows[1] == std::vector<std::string>{"a, \"b\"\r\nc", "1.5", "2026-03-14", "1", "2"});
  CHECK(rows[2] == std::vector<std::string>{"'=HYPERLINK(1)", "not known", "2026-03-14", "1", "2"});
  CHECK(rows[3] == std::vector<std::string>{"'-1+2", "-2", "2026-03-14", "1", "2"});
}

TEST_CASE("JSON says null for what is not known and survives broken letters") {
  Sheet sheet{"things", {{"words", "", -1, false}, {"count", "", -1, false}}, {{std::string("\xFF"), Cell()}}};
  const auto json = nlohmann::json::parse(sheet_json(sheet, {"1", "2"}));
  CHECK(json.at("things")[0].at("count").is_null());
  CHECK(json.at("format") == 1);
}

}  // namespace gentlest::test
