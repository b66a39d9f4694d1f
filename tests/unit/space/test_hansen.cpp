#include "gentlest/base/quantity.hpp"
#include "gentlest/space/hansen.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

TEST_CASE("Ra counts the dispersion difference double") {
  CHECK(distance_Ra({16, 5, 5}, {17, 5, 5}) == Approx(2));
  CHECK(distance_Ra({16, 5, 5}, {16, 6, 5}) == Approx(1));
  CHECK(distance_Ra({16, 5, 5}, {16, 5, 8}) == Approx(3));
  CHECK(distance_Ra({16, 5, 5}, {18, 8, 17}) == Approx(13));  // 4, 3, 12
}

TEST_CASE("RED is Ra over R0") {
  CHECK(relative_distance_RED({16, 5, 5}, {{17, 5, 5}, 4}) == Approx(0.5));
  CHECK(relative_distance_RED({17, 5, 5}, {{17, 5, 5}, 4}) == 0);
}

TEST_CASE("Teas fractions are shares of the sum; a negative parameter counts as none") {
  const Teas teas = teas_fractions({10, 6, 4});
  CHECK(teas.fd == Approx(50));
  CHECK(teas.fp == Approx(30));
  CHECK(teas.fh == Approx(20));
  const Teas clipped = teas_fractions({16, 4, -0.8});
  CHECK(clipped.fh == 0);
  CHECK(clipped.fd + clipped.fp == Approx(100));
}

TEST_CASE("temperatures of two scales do not mix, kelvin is written out") {
  CHECK(kelvin(Celsius{25}) == Approx(298.15));
  CHECK(Celsius{12} < Celsius{23});
}
