// The distribution behind the chances, against published tables. Sources stand in the head of each table file.
#include "oracle/chance_reference.hpp"

#include "csv.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <boost/math/distributions/non_central_chi_squared.hpp>

#include <cmath>

using namespace gentlest;
using namespace gentlest::test;

TEST_CASE("noncentral chi-squared with 3 degrees of freedom: published rows and the general library") {
  // Equal spread s in the scaled space: P(Ra < R0) = F(R0^2 / s^2; 3, Ra^2 / s^2).
  std::size_t rows = 0;
  for (const Row& row : read_table("noncentral_chi2.csv")) {
    if (number(row, "df") != 3) continue;
    ++rows;
    const double offset = std::sqrt(number(row, "lambda"));
    const double chance = chance_nearer_than({0, 0, 0}, {0, 0, offset}, {0.5, 1, 1}, std::sqrt(number(row, "x")));
    INFO("lambda " << row.at("lambda") << " x " << row.at("x"));
    CHECK(chance == near(number(row, "P"), row.at("source") == "NAG" ? 5e-5 : 1e-10));
  }
  INFO("rows with three degrees of freedom: " << rows);
  for (const double s : {0.05, 0.3, 1.0, 3.0, 10.0})
    for (const double Ra : {0.1, 2.0, 6.0, 14.0})
      for (const double R0 : {1.0, 5.0, 13.7}) {
        const double lambda = Ra * Ra / (s * s);
        const double oracle = boost::math::cdf(boost::math::non_central_chi_squared(3, lambda), R0 * R0 / (s * s));
        INFO("s " << s << " Ra " << Ra << " R0 " << R0);
        CHECK(chance_nearer_than({16, 4, 4}, {16 + Ra * 0.3, 4, 4 + Ra * 0.8}, {s / 2, s, s}, R0) ==
              near(oracle, 1e-10));
      }
}

TEST_CASE("spreads from 0.001 to 10: no silent failure of the quadrature") {
  // Equal spread s: three degrees of freedom have a closed form (Phi and phi are the normal distribution and density):
  // P = Phi(r - b) - Phi(-r - b) - (phi(r - b) - phi(r + b)) / b with r = R0 / s, b = Ra / s.
  const auto Phi = [](double z) { return 0.5 * std::erfc(-z / std::sqrt(2.0)); };
  const auto phi = [](double z) { return std::exp(-z * z / 2) / std::sqrt(2 * 3.14159265358979323846); };
  for (const double s : {0.001, 0.003, 0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 10.0})
    for (const double Ra : {2.0, 6.0, 14.0})
      for (const double z : {-4.0, -1.0, 0.0, 0.5, 3.0}) {
        const double R0 = Ra + z * s;
        if (R0 <= 0) continue;
        const double r = R0 / s;
        const double b = Ra / s;
        const double closed = Phi(r - b) - Phi(-r - b) - (phi(r - b) - phi(r + b)) / b;
        const Hansen liquid{16, 4, 4};
        const Hansen centre{16 + Ra * 0.3, 4, 4 + Ra * 0.8};
        INFO("s " << s << " Ra " << Ra << " R0 " << R0);
        CHECK(chance_nearer_than(liquid, centre, {s / 2, s, s}, R0) == near(closed, 1e-10));
      }
}

TEST_CASE("a layer that answers inside and not outside: the table of a search gives the published distribution") {
  // The response is as good as a step at RED 1, so the chance is that of lying nearer than R0, unequal spreads too.
  const Response step{{{{0, -400}, {0, -400}, {0, -400}, {0, -400}, {0, -400}}}, "test"};
  const Hansen centre{17, 7, 9};
  for (const Hansen& sd : {Hansen{0.5, 1, 1}, Hansen{0.4, 1.5, 0.8}, Hansen{0.8, 0.5, 2.5}})
    for (const double R0 : {3.0, 8.0}) {
      const ChanceField field({{14, 0, 0}, {20, 16, 25}}, {{centre, R0}, sd, 0}, step, 1);
      for (const Hansen& liquid : {Hansen{16, 4, 4}, Hansen{17.5, 9, 14}, Hansen{15, 7, 17}, Hansen{17, 7, 10}}) {
        INFO("R0 " << R0 << " sd " << sd.dD << ' ' << sd.dP << ' ' << sd.dH << " dH " << liquid.dH);
        CHECK(field(liquid) == near(chance_nearer_than(liquid, centre, sd, R0), 5e-4));
      }
    }
}

TEST_CASE("one and two uncertain coordinates: published noncentral chi-squared rows") {
  std::size_t rows = 0;
  for (const Row& row : read_table("noncentral_chi2.csv")) {
    const double df = number(row, "df");
    if (df != 1 && df != 2) continue;
    ++rows;
    const Hansen sd = df == 1 ? Hansen{0, 0, 1} : Hansen{0, 1, 1};
    const double offset = std::sqrt(number(row, "lambda"));
    INFO("df " << df << " lambda " << row.at("lambda") << " x " << row.at("x"));
    CHECK(chance_nearer_than({0, 0, 0}, {0, 0, offset}, sd, std::sqrt(number(row, "x"))) ==
          near(number(row, "P"), row.at("source") == "NAG" ? 5e-5 : 1e-10));
  }
  CHECK(rows >= 3);
}

TEST_CASE("quadratic form of Imhof with weights 6, 3, 1 and one degree of freedom each") {
  std::size_t rows = 0;
  for (const Row& row : read_table("imhof_table.csv")) {
    if (row.at("form") != "Q1" || row.at("dof") != "1;1;1") continue;
    ++rows;
    const double chance =
        chance_nearer_than({0, 0, 0}, {0, 0, 0}, {std::sqrt(6.0) / 2, std::sqrt(3.0), 1}, std::sqrt(number(row, "c")));
    CHECK(chance == near(number(row, "P_less_than_c"), 1.5e-4));
  }
  CHECK(rows == 2);
}
