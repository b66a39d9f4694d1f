#include "gentlest/space/response.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>

using namespace gentlest;

namespace {
const Response told_curve{{{{1.0, -12}, {0.5, -8}, {0.3, -5}, {0.2, -5}, {0.1, -3}}}, "test"};
}

TEST_CASE("grade chances add up to 1 and agree with the cumulative chance") {
  for (const double red : {0.0, 0.3, 0.9, 1.0, 1.5, 4.0}) {
    const auto chances = grade_chances(told_curve, red);
    double sum = 0;
    for (int grade = 1; grade <= grade_count; ++grade) {
      sum += chances[static_cast<std::size_t>(grade - 1)];
      CHECK(chance_at_most(told_curve, grade, red) == test::near(sum, 1e-12));
    }
    CHECK(sum == Approx(1));
  }
}

TEST_CASE("by hand at RED 1: only the intercepts count") {
  const auto stop = [](double intercept) { return 1 / (1 + std::exp(-intercept)); };
  CHECK(chance_at_most(told_curve, 1, 1.0) == Approx(stop(1.0)));
  CHECK(chance_at_most(told_curve, 2, 1.0) == Approx(1 - (1 - stop(1.0)) * (1 - stop(0.5))));
  CHECK(chance_at_most(told_curve, 6, 1.0) == 1);
}

TEST_CASE("at RED 0 everything dissolves; farther away nothing gets stronger") {
  CHECK(chance_at_most(told_curve, 1, 0) == 1);
  for (int grade = 1; grade < grade_count; ++grade)
    for (double red = 0.05; red < 4; red += 0.05)
      CHECK(chance_at_most(told_curve, grade, red + 0.05) <= chance_at_most(told_curve, grade, red));
}
