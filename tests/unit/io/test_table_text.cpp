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
  CHECK_THROWS_AS(table_text("%PDF-1.4", "t.csv"), InputError);
}

TEST_CASE("a table that a spreadsheet saved as Unicode text, either byte first", "[table]") {
  // Bytes by python3: b"\xff\xfe" + text.encode("utf-16-le"), and the same the other way round.
  const std::string low_first = std::string(
      "\377\376\155\000\151\000\170\000\164\000\165\000\162\000\145\000\073\000\167\000\150\000\157\000\015\000\012\000"
      "\141\000\143\000\145\000\164\000\157\000\156\000\145\000\040\000\061\000\060\000\060\000\073\000\115\000\374\000"
      "\154\000\154\000\145\000\162\000\040\000\254\040\040\000\075\330\214\335\012\000",
      76);
  const std::string high_first = std::string(
      "\376\377\000\155\000\151\000\170\000\164\000\165\000\162\000\145\000\073\000\167\000\150\000\157\000\015\000\012"
      "\000\141\000\143\000\145\000\164\000\157\000\156\000\145\000\040\000\061\000\060\000\060\000\073\000\115\000\374"
      "\000\154\000\154\000\145\000\162\000\040\040\254\000\040\330\075\335\214\000\012",
      76);
  for (const std::string& bytes : {low_first, high_first}) {
    const TableText table = table_text(bytes, "t.txt");
    CHECK(table.text == "mixture;who\r\nacetone 100;M\303\274ller \342\202\254 \360\237\226\214\n");
    CHECK(table.odd_lines.empty());
    CHECK(table.converted_lines == 0);
  }
  // Half a letter at the end, and half of a pair of surrogates: the line is odd, the others stay.
  CHECK(table_text(low_first + "a", "t.txt").odd_lines == std::vector<int>{3});
  CHECK(table_text(std::string("\377\376a\0\n\0\075\330b\0\n\0", 12), "t.txt").odd_lines == std::vector<int>{2});
}
