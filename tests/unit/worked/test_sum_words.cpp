#include "report/worked/sum_words.hpp"

#include <catch2/catch.hpp>

namespace gentlest::test {

TEST_CASE("brackets stand where they are needed, and nowhere else") {
  const Term a = number(2);
  const Term b = number(0.5);
  CHECK(sum_text(sum_of({product_of({a, b}), b})) == "2 x 0.5 + 0.5");
  CHECK(sum_text(product_of({sum_of({a, b}), b})) == "(2 + 0.5) x 0.5");
  CHECK(sum_text(difference_of(a, sum_of({b, b}))) == "2 - (0.5 + 0.5)");
  CHECK(sum_text(quotient_of(a, product_of({b, b}))) == "2 / (0.5 x 0.5)");
  CHECK(sum_text(quotient_of(product_of({a, b}), b)) == "2 x 0.5 / 0.5");
  CHECK(sum_text(apply(Operation::square, difference_of(a, b))) == "(2 - 0.5)^2");
  CHECK(sum_text(apply(Operation::square, a)) == "2^2");
  CHECK(sum_text(sum_of({a, product_of({number(-3), apply(Operation::logarithm, b)})})) == "2 + (-3) x ln(0.5)");
  CHECK(sum_text(largest_of({a, b})) == "max(2, 0.5)");
  CHECK(sum_text(apply(Operation::square_root, sum_of({a, b}))) == "sqrt(2 + 0.5)");
}

TEST_CASE("a line holds the sum, its result and the figure printed elsewhere") {
  SumStep step;
  step.kind = StepKind::RED;
  step.of = "paint";
  step.sum = quotient_of(number(7.12), number(8.3));
  step.result = number(0.857831, 6);
  step.printed_as = PrintedAs::two_decimals;
  step.printed = 0.8578313;
  CHECK(step_line(step) == "RED, paint: 7.12 / 8.3 = 0.857831, printed as 0.86");
  step.printed_as = PrintedAs::nowhere;
  step.limit = 10;
  CHECK(step_line(step) == "RED, paint: 7.12 / 8.3 = 0.857831; the limit is 10 %");
}

TEST_CASE("an input says where it is from, and what no hand repeats says so") {
  SumInput input;
  input.kind = InputKind::dD;
  input.of = "isooctane";
  input.value = number(14.1);
  input.source = "somebody_2000";
  input.standing = Standing::estimated;
  CHECK(input_title(input) == "dD, isooctane");
  CHECK(input_from(input) == "catalogue, somebody_2000, estimated");
  input.from = InputFrom::program;
  CHECK(input_from(input).find("not to be redone by hand") != std::string::npos);
}

}  // namespace gentlest::test
