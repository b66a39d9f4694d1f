#include "gentlest/ladder/line.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

TEST_CASE("lines of all demanded bottles stay alone, and without one all stay") {
  StockLine two, three;
  two.stocks.active = {1};
  three.stocks.active = {1, 2};
  std::vector<StockLine> lines = {two, three, two};
  prefer_lines_of(lines, 3);
  REQUIRE(lines.size() == 1);
  CHECK(lines.front().stocks.active.size() == 2);
  lines = {two, two};
  prefer_lines_of(lines, 3);
  CHECK(lines.size() == 2);
  prefer_lines_of(lines, 2);
  CHECK(lines.size() == 2);
}

}  // namespace gentlest::test
