#include "near.hpp"

#include "gentlest/sums/term.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

TEST_CASE("a number keeps the digits that are printed and no others") {
  CHECK(number(1.23456789, 3).value == 1.235);
  CHECK(number(-0.0004, 3).value == 0);
  CHECK(!std::signbit(number(-0.0004, 3).value));
  CHECK(number(14.1).places == 1);
  CHECK(number(0.7).places == 1);
  CHECK(number(3).places == 0);
  CHECK(number(1.0 / 3).places == 9);
  CHECK(number(1.0 / 3).value == 0.333333333);
}

TEST_CASE("a sum is reckoned from its printed numbers") {
  const Term third = number(1.0 / 3, 2);  // 0.33
  CHECK(value_of(product_of({number(3), third})) == near(0.99, 1e-15));
  CHECK(value_of(sum_of({number(1), number(2), number(3)})) == 6);
  CHECK(value_of(difference_of(number(5), number(7))) == -2);
  CHECK(value_of(quotient_of(number(1), number(8))) == 0.125);
  CHECK(value_of(apply(Operation::square, number(-3))) == 9);
  CHECK(value_of(apply(Operation::square_root, number(9))) == 3);
  CHECK(value_of(apply(Operation::power_of_ten, number(2))) == near(100, 1e-12));
  CHECK(value_of(apply(Operation::logarithm, apply(Operation::exponential, number(2)))) == near(2, 1e-12));
  CHECK(value_of(largest_of({number(2), number(5), number(3)})) == 5);
  CHECK(sum_of({number(4)}) == number(4));
}

}  // namespace gentlest::test
