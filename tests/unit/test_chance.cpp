// The reference and the table a search uses, held against each other and against cases with a known answer.
#include "gentlest/chance.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>
#include <random>

using namespace gentlest;

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
