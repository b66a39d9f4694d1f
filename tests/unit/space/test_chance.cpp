// The reference and the table a search uses, held against each other and against cases with a known answer.
#include "oracle/chance_reference.hpp"

#include "gentlest/plan/plan.hpp"

#include <boost/math/distributions/non_central_chi_squared.hpp>
#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>
#include <random>

using namespace gentlest;
using gentlest::test::chance_nearer_than;
using gentlest::test::chance_of_grade;

namespace {

const Response curve{{{{1.0, -12}, {0.5, -8}, {0.3, -5}, {0.2, -5}, {0.1, -3}}}, "test"};

Hansen random_point(std::mt19937_64& random) {
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
  };
  const double dD = uniform(14, 19);
  const double dP = uniform(0, 16);
  return {dD, dP, uniform(0, 25)};
}

}  // namespace

TEST_CASE("a sphere known exactly gives the plain response curve") {
  const UncertainSphere known{{{18, 8, 9}, 7}, {0, 0, 0}, 0};
  for (const Hansen& liquid : {Hansen{18, 8, 12}, Hansen{16, 5, 5}, Hansen{14.1, 0, 0}}) {
    const double red = relative_distance_RED(liquid, known.mean);
    for (int grade = 1; grade < grade_count; ++grade)
      CHECK(chance_of_grade(liquid, known, curve, grade) == test::near(chance_at_most(curve, grade, red), 1e-8));
  }
}

TEST_CASE("chance of lying nearer than a radius: the limits") {
  const Hansen liquid{16, 5, 5};
  CHECK(chance_nearer_than(liquid, liquid, {1, 1, 1}, 0) == 0);
  CHECK(chance_nearer_than(liquid, liquid, {0, 0, 0}, 0.1) == 1);
  CHECK(chance_nearer_than(liquid, {16, 5, 8}, {0, 0, 0}, 2.9) == 0);
  CHECK(chance_nearer_than(liquid, {16, 5, 8}, {0, 0, 0}, 3.1) == 1);
  // On the rim of a huge ball the surface is flat: one half.
  CHECK(chance_nearer_than({16, 5, 5}, {16, 5, 1005}, {0.01, 0.01, 0.01}, 1000) == test::near(0.5, 1e-4));
}

TEST_CASE("only one coordinate uncertain: the normal distribution by hand") {
  // Centre at dH 8 +- 2, liquid at dH 5: nearer than 4 means dH between 1 and 9.
  const double by_hand = 0.5 * (std::erfc(-0.5 / std::sqrt(2.0)) - std::erfc(3.5 / std::sqrt(2.0)));
  CHECK(chance_nearer_than({16, 5, 5}, {16, 5, 8}, {0, 0, 2}, 4) == Approx(by_hand).epsilon(1e-12));
}

TEST_CASE("the averaged chance agrees with a plain Monte Carlo") {
  const UncertainSphere sphere{{{18.7, 9, 10}, 6.5}, {0.8, 1.6, 1.8}, 1};
  const Hansen liquid{15.8, 8.8, 14};
  std::mt19937_64 random(20261125);
  const auto normal = [&] {  // sum of twelve uniforms is not good enough in the tails; Box and Muller is
    const double u = (static_cast<double>(random() >> 11) + 0.5) * 0x1p-53;
    const double v = static_cast<double>(random() >> 11) * 0x1p-53;
    return std::sqrt(-2 * std::log(u)) * std::cos(6.283185307179586 * v);
  };
  constexpr int draws = 200000;
  double sum = 0;
  for (int i = 0; i < draws; ++i) {
    Sphere drawn = sphere.mean;
    drawn.centre = {drawn.centre.dD + 0.8 * normal(), drawn.centre.dP + 1.6 * normal(),
                    drawn.centre.dH + 1.8 * normal()};
    drawn.R0 += normal();
    sum += chance_at_most(curve, 4, relative_distance_RED(liquid, drawn));
  }
  CHECK(chance_of_grade(liquid, sphere, curve, 4) == test::near(sum / draws, 0.004));  // 4 standard errors
}

TEST_CASE("the table of a search stays within 1e-4 of the reference") {
  const std::vector<UncertainSphere> spheres = {
      {{{19.6, 5.8, 10.9}, 10.6}, {1, 2, 2.2}, 1.5},   {{{18.7, 9, 10}, 6.5}, {0.8, 1.6, 1.8}, 1},
      {{{18.2, 7.5, 8.4}, 3.5}, {0.3, 0.5, 0.5}, 0.3}, {{{18.2, 7.5, 8.4}, 3.5}, {0.01, 0.01, 0.01}, 0},
      {{{20.4, 3.4, 4.6}, 13.7}, {0.5, 3, 3}, 2},      {{{16.6, 1.4, -0.8}, 9.6}, {2, 0.1, 4}, 3},
  };
  const HansenBox box{{14, 0, 0}, {19, 16, 25}};
  std::mt19937_64 random(7);
  for (const UncertainSphere& sphere : spheres)
    for (const int grade : {1, 2, 4, 5}) {
      const ChanceField field(box, sphere, curve, grade);
      for (int i = 0; i < 12; ++i) {
        const Hansen point = random_point(random);
        INFO("R0 " << sphere.mean.R0 << " grade " << grade << " at " << point.dD << ' ' << point.dP << ' ' << point.dH);
        CHECK(field(point) == test::near(chance_of_grade(point, sphere, curve, grade), 1e-4));
      }
    }
}

TEST_CASE("what is not known of the liquid adds to what is not known of the sphere") {
  // Averaging over the liquid's own Gaussian by hand is the same as a sphere with the sum of the variances.
  const UncertainSphere sphere{{{18, 8, 9}, 7}, {0, 0, 1.5}, 0.8};
  const Hansen liquid{16, 6, 15};
  const UncertainSphere seen = seen_from(sphere, {0, 0, 2});
  CHECK(seen.sd.dH == Approx(2.5));
  double sum = 0;
  double mass = 0;
  for (int i = -60; i <= 60; ++i) {
    const double z = i / 10.0;
    const double weight = std::exp(-z * z / 2);
    sum += weight * chance_of_grade({liquid.dD, liquid.dP, liquid.dH + 2 * z}, sphere, curve, 4);
    mass += weight;
  }
  CHECK(chance_of_grade(liquid, seen, curve, 4) == test::near(sum / mass, 1e-8));
}

TEST_CASE("tables that share a lattice stay within 1e-4 of the reference as well") {
  const std::vector<FieldSubject> subjects = {{{{{19.6, 5.8, 10.9}, 10.6}, {1, 2, 2.2}, 1.5}, curve, 2},
                                              {{{{18.7, 9, 10}, 6.5}, {0.3, 0.5, 0.4}, 0.5}, curve, 4}};
  const std::vector<ChanceField> fields = chance_fields({{14, 0, 0}, {19, 16, 25}}, subjects);
  CHECK(fields[0].lattice() == fields[1].lattice());
  std::mt19937_64 random(8);
  for (std::size_t i = 0; i < subjects.size(); ++i)
    for (int round = 0; round < 25; ++round) {
      const Hansen point = random_point(random);
      const double exact = chance_of_grade(point, subjects[i].sphere, curve, subjects[i].grade);
      CHECK(fields[i](point) == test::near(exact, 1e-4));
    }
}

TEST_CASE("the RED band holds the middle and widens with what is not known") {
  const Sphere mean{{18, 8, 9}, 7};
  const Hansen liquid{15.8, 6.1, 16.4};
  const Band none = RED_band(liquid, {mean, {0, 0, 0}, 0});
  CHECK(none.low == Approx(relative_distance_RED(liquid, mean)));
  CHECK(none.high == Approx(none.low));
  const Band some = RED_band(liquid, {mean, {0.5, 1, 1}, 0.7});
  const Band much = RED_band(liquid, {mean, {1, 2, 2}, 1.5});
  CHECK(some.low < none.low);
  CHECK(some.high > none.high);
  CHECK(much.high - much.low > some.high - some.low);
}

TEST_CASE("the RED band holds the middle 90 %: the oracle is a noncentral chi-squared") {
  // Spread alike in all directions: (Ra / sd)^2 is noncentral chi-squared with 3 degrees (Boost.Math).
  for (const double sd : {0.3, 1.0, 2.5})
    for (const double away : {0.4, 2.0, 7.0, 15.0}) {
      const Sphere mean{{17, 8, 9}, 6};
      const Hansen liquid{17 + away / 4, 8 + away / 2, 9 + away * std::sqrt(0.5)};
      INFO("sd " << sd << ", away " << away);
      REQUIRE(distance_Ra(liquid, mean.centre) == Approx(away));
      const Band band = RED_band(liquid, {mean, {sd / 2, sd, sd}, 0});
      const boost::math::non_central_chi_squared oracle(3, away * away / (sd * sd));
      const auto share_below = [&](double RED) {
        const double scaled = RED * mean.R0 / sd;
        return cdf(oracle, scaled * scaled);
      };
      CHECK(std::abs(share_below(band.low) - 0.05) < 0.003);
      CHECK(std::abs(share_below(band.high) - 0.95) < 0.003);
    }
}

TEST_CASE("the RED band holds the middle 90 % where one figure alone is uncertain: by hand") {
  constexpr double z = 1.6448536269514722;  // of the normal distribution at 95 %
  const Sphere mean{{17, 8, 9}, 6};
  const Hansen liquid{17, 8, 19};
  const Band by_radius = RED_band(liquid, {mean, {0, 0, 0}, 0.8});
  CHECK(std::abs(by_radius.low - 10 / (6 + z * 0.8)) < 0.003);
  CHECK(std::abs(by_radius.high - 10 / (6 - z * 0.8)) < 0.003);
  const Band by_place = RED_band(liquid, {mean, {0, 0, 1.5}, 0});
  CHECK(std::abs(by_place.low - (10 - z * 1.5) / 6) < 0.003);
  CHECK(std::abs(by_place.high - (10 + z * 1.5) / 6) < 0.003);
  // All four at once, spread as the default of a stand-in is; the oracle is Boost's distribution averaged over R0.
  const UncertainSphere sphere{mean, {0.5, 1, 1}, 1.2};
  const Band band = RED_band(liquid, sphere);
  const boost::math::non_central_chi_squared oracle(3, 100);
  const auto share_below = [&](double RED) {
    double sum = 0, mass = 0;
    for (int i = -80; i <= 80; ++i) {
      const double R0 = 6 + 1.2 * i / 20;
      const double weight = std::exp(-i * i / 800.0);
      mass += weight;
      if (R0 > 0) sum += weight * cdf(oracle, RED * R0 * RED * R0);
    }
    return sum / mass;
  };
  CHECK(std::abs(share_below(band.low) - 0.05) < 0.003);
  CHECK(std::abs(share_below(band.high) - 0.95) < 0.003);
}

TEST_CASE("the border lies in a band as it is printed") {
  CHECK(holds_the_border({0.6, 0.998}));  // printed as 0.60 to 1.00
  CHECK(holds_the_border({1.004, 1.5}));  // printed as 1.00 to 1.50
  CHECK(holds_the_border({0.5, 2}));
  CHECK_FALSE(holds_the_border({0.6, 0.994}));
  CHECK_FALSE(holds_the_border({1.006, 1.5}));
}

namespace {

// The chance by another way: the response over the distribution of the distance, which Boost knows where the spread is
// alike in all directions. Radius known exactly.
double chance_by_distance(const Hansen& liquid, const Sphere& sphere, double sd, int grade) {
  const double away = distance_Ra(liquid, sphere.centre);
  const boost::math::non_central_chi_squared oracle(3, away * away / (sd * sd));
  const double first = std::max(away - 8 * sd, 0.0), last = away + 8 * sd;
  constexpr int steps = 4000;
  double sum = 0, before = first > 0 ? cdf(oracle, first * first / (sd * sd)) : 0;
  for (int i = 1; i <= steps; ++i) {
    const double to = first + (last - first) * i / steps;
    const double below = cdf(oracle, to * to / (sd * sd));
    const double middle = to - (last - first) / steps / 2;
    sum += (below - before) * chance_at_most(curve, grade, middle / sphere.R0);
    before = below;
  }
  return sum;
}

}  // namespace

TEST_CASE("wherever a tiny sphere lies between the nodes of its table, the chance is right to 4e-3") {
  const HansenBox everything{{13, 0, 0}, {21, 30, 43}};
  std::mt19937_64 random(11);
  const auto even = [&](double width) { return width * (static_cast<double>(random() >> 11) * 0x1p-53 - 0.5); };
  for (const double R0 : {0.1, 0.2, 0.4})
    for (const int grade : {1, 4})
      for (int round = 0; round < 3; ++round) {
        const double dD = 17 + even(0.2), dP = 6 + even(0.3), dH = 9 + even(0.3);
        const Sphere mean{{dD, dP, dH}, R0};
        const ChanceField field(everything, {mean, best_known_sd, 0}, curve, grade);
        for (int i = 0; i < 6; ++i) {
          const double by_D = even(0.1), by_P = even(0.4), by_H = even(0.4);
          const Hansen point{dD + by_D, dP + by_P, dH + by_H};
          INFO("R0 " << R0 << ", grade " << grade << ", round " << round);
          CHECK(std::abs(field(point) - chance_by_distance(point, mean, best_known_sd.dP, grade)) < 4e-3);
        }
      }
}

TEST_CASE("however sharp a sphere is, its table stays small and within 4e-3") {
  const HansenBox everything{{13, 0, 0}, {21, 30, 43}};  // more than all liquids of the catalogue
  const double sd = best_known_sd.dP;
  REQUIRE(best_known_sd == Hansen{sd / 2, sd, sd});
  for (const double R0 : {0.1, 0.4, 1.4, 3.0}) {
    const Sphere mean{{17.3, 6.2, 9.1}, R0};
    const ChanceField field(everything, {mean, best_known_sd, 0}, curve, 4);
    CHECK(field.values().size() <= 6000000);
    for (const double away : {0.0, 0.1, 0.2, 0.5, 1.0, 1.5, 2.5, 3.1, 6.0})
      for (const int turn : {0, 1, 2}) {
        const double side = away * std::sqrt(0.5);
        const Hansen point = turn == 0   ? Hansen{17.3 + away / 2, 6.2, 9.1}
                             : turn == 1 ? Hansen{17.3, 6.2 + side, 9.1 + side}
                                         : Hansen{17.3 - away / 4, 6.2 - away / 2, 9.1 + side};
        INFO("R0 " << R0 << ", away " << away << ", turn " << turn);
        CHECK(std::abs(field(point) - chance_by_distance(point, mean, sd, 4)) < 4e-3);
      }
  }
}

TEST_CASE("a sphere both tiny and vague is bounded as well, and so is one known exactly") {
  const HansenBox box{{14, 0, 0}, {19, 18, 27}};
  const UncertainSphere tiny{{{17, 8, 9}, 0.1}, {0.125, 3, 10}, 2};
  const ChanceField field(box, tiny, curve, 4);
  CHECK(field.values().size() <= 6000000);
  std::mt19937_64 random(5);
  std::normal_distribution<double> normal;
  double sum = 0, count = 0;
  while (count < 100000) {
    const Sphere drawn{{17 + 0.125 * normal(random), 8 + 3 * normal(random), 9 + 10 * normal(random)},
                       0.1 + 2 * normal(random)};
    if (drawn.R0 <= 0) continue;
    sum += chance_at_most(curve, 4, relative_distance_RED({17, 8, 9}, drawn));
    ++count;
  }
  CHECK(std::abs(field({17, 8, 9}) - sum / count) < 0.008);  // 4 standard errors and 4e-3
  CHECK(ChanceField(box, {{{17, 8, 9}, 0.1}, {0, 0, 0}, 0}, curve, 1).values().size() <= 6000000);
}
