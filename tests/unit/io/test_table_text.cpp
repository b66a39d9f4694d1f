// Old tables are in old encodings, sometimes in two at once.
#include "gentlest/base/diagnostic.hpp"
#include "io/table_text.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

TEST_CASE("each line is UTF-8 or Windows-1252 by itself", "[table]") {
  const TableText table = table_text(
      "\xEF\xBB\xBFmixture;who\nacetone 100;M\xFCller\nacetone 100;M\xC3\xBCller\nacetone 100;\x80 5 \x96 6\n",
      "t.csv");
  CHECK(
      table.text ==
      "mixture;who\nacetone 100;M\xC3\xBCller\nacetone 100;M\xC3\xBCller\nacetone 100;\xE2\x82\xAC 5 \xE2\x80\x93 6\n");
  CHECK(table.converted_lines == 2);
  CHECK(table.odd_lines.empty());
}

TEST_CASE("a line that is neither is named and stays a line", "[table]") {
  const TableText table = table_text(std::string("a\nb\x81\nc\nd") + '\0' + "e\nf\r\n", "t.csv");
  CHECK(table.odd_lines == std::vector<int>{2, 4});
  CHECK(table.converted_lines == 0);
  CHECK(table.text ==
        "a\nb\xEF\xBF\xBD\nc\nd\xEF\xBF\xBD"
        "e\nf\r\n");
}

TEST_CASE("lines that end in CR alone, and what is no text", "[table]") {
  CHECK(table_text("a;b\rc;d", "t.csv").text == "a;b\nc;d");
  CHECK(table_text("a;b\r\nc;d", "t.csv").text == "a;b\r\nc;d");
  CHECK(table_text("", "t.csv").text.empty());
  CHECK_THROWS_AS(table_text("\xFF\xFE"
                             "a",
                             "t.csv"),
                  InputError);
  CHECK_THROWS_AS(table_text("%PDF-1.4", "t.csv"), InputError);
}
