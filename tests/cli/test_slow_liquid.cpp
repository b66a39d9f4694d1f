// A liquid that hardly evaporates must not be said to dry as fast as a varnish solvent.
#include "program.hpp"

#include <catch2/catch.hpp>

#include <sstream>
#include <string>
#include <vector>

using namespace gentlest::test;

namespace {

// Second column of the drying table's row for this share: the time, n-butyl acetate = 1.
double time_until_dried(const std::string& vial, const std::string& percent) {
  std::istringstream lines(vial);
  bool in_table = false;
  for (std::string line; std::getline(lines, line);) {
    std::istringstream cells(line);
    std::string first;
    double time = 0;
    if (line.find("% dried") != std::string::npos) in_table = true;
    if (in_table && cells >> first && first == percent && cells >> time) return time;
  }
  return -1;
}

}  // namespace

TEST_CASE("triacetin stays on the painting for days, not for minutes") {
  // 0.33 Pa at 25 C (safety card 1203) against 1.5 kPa of n-butyl acetate: at the same flux law a thousand times
  // slower.
  const Result pure = call({"vial", "demo", "--full", "triacetin 100"});
  REQUIRE(pure.code == 0);
  CHECK(time_until_dried(pure.out, "90") > 2000);
  CHECK(time_until_dried(pure.out, "90") < 20000);
  CHECK(pure.out.find("starts to boil at 259 C") != std::string::npos);
  CHECK(pure.out.find("flash point 138 C") != std::string::npos);
  // In a mixture the acetone goes and the triacetin stays.
  const Result mixed = call({"vial", "demo", "--full", "triacetin 50, acetone 50"});
  REQUIRE(mixed.code == 0);
  CHECK(time_until_dried(mixed.out, "40") < 1);
  CHECK(time_until_dried(mixed.out, "80") > 1000);
  CHECK(mixed.out.find("Most of what dries last comes from triacetin") != std::string::npos);
}

TEST_CASE("sec-butyl acetate is no longer said to flash below freezing") {
  const Result vial = call({"vial", "demo", "--full", "sec-butyl acetate 100"});
  REQUIRE(vial.code == 0);
  CHECK(vial.out.find("flash point 17 C") != std::string::npos);
}
