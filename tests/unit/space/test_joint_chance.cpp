// Spheres whose figures are known together, spheres that are bent in places, films that never dissolve.
#include "near.hpp"
#include "oracle/chance_reference.hpp"

#include "core/space/sphere_matrix.hpp"

#include <boost/math/distributions/non_central_chi_squared.hpp>
#include <catch2/catch.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

using namespace gentlest;
using gentlest::test::chance_by_sums;
using gentlest::test::chance_of_grade;

namespace {

const Response joint_curve{{{{1.0, -12}, {0.5, -8}, {0.3, -5}, {0.2, -5}, {0.1, -3}}}, "test"};
const Response soft{{{{0.1, -8.6}, {-2.3, -3.1}, {-1.6, -3.5}, {-1.1, -2.9}, {-0.1, -2.5}}}, "test"};
const HansenBox box{{14, 0, 0}, {19, 16, 25}};

struct Dice {
  std::mt19937_64 random;
  double even(double low, double high) { return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53; }
  double normal() {
    const double u = even(1e-12, 1);
    return std::sqrt(-2 * std::log(u)) * std::cos(even(0, 6.283185307179586));
  }
  Hansen point() {
    const double dD = even(box.low.dD, box.high.dD);
    const double dP = even(box.low.dP, box.high.dP);
    return {dD, dP, even(box.low.dH, box.high.dH)};
  }
};

// Correlations of dD with dP and dH, of dP with dH, then of each with R0.
UncertainSphere together(const Sphere& mean, const Hansen& sd, double R0_sd, const std::array<double, 6>& r) {
  UncertainSphere sphere{mean, sd, R0_sd};
  sphere.shared = {r[0] * sd.dD * sd.dP, r[1] * sd.dD * sd.dH, r[2] * sd.dP * sd.dH,
                   r[3] * sd.dD * R0_sd, r[4] * sd.dP * R0_sd, r[5] * sd.dH * R0_sd};
  return sphere;
}

const UncertainSphere usual = together({{19, 6, 8}, 8}, {0.6, 1.2, 1.3}, 1, {-0.2, 0.3, 0.4, 0.4, -0.3, 0.2});
const LocalReach bent = {{{{14.5, 0, 0}, -0.7}, {{15.8, 8.8, 19.4}, 0.6}, {{18, 1.4, 2}, 0.5}}, 2};

Hansen near_a_place(const LocalReach& reach, Dice& dice) {
  const auto which = static_cast<std::size_t>(dice.even(0, static_cast<double>(reach.places.size()) - 1e-9));
  const Hansen& at = reach.places[which].at;
  const double dD = at.dD + dice.even(-1, 1), dP = at.dP + dice.even(-2, 2), dH = at.dH + dice.even(-2, 2);
  return {std::clamp(dD, box.low.dD, box.high.dD), std::clamp(dP, box.low.dP, box.high.dP),
          std::clamp(dH, box.low.dH, box.high.dH)};
}

void check_against_sums(const FieldSubject& subject, Dice& dice, double error) {
  REQUIRE(is_possible(subject.sphere));
  const ChanceField field = std::move(chance_fields(box, {subject}).front());
  for (int i = 0; i < 12; ++i) {
    const Hansen point = i % 2 == 1 && !subject.reach.places.empty() ? near_a_place(subject.reach, dice) : dice.point();
    INFO("grade " << subject.grade << " at " << point.dD << ' ' << point.dP << ' ' << point.dH);
    CHECK(field(point) == test::near(chance_by_sums(point, subject), error));
  }
}

// Rodrigues' turn about an axis of the scaled space.
using Turn = std::array<std::array<double, 3>, 3>;
Turn turn_about(const std::array<double, 3>& axis, double angle) {
  const double length = std::hypot(axis[0], axis[1], axis[2]);
  const double x = axis[0] / length, y = axis[1] / length, z = axis[2] / length;
  const double c = std::cos(angle), s = std::sin(angle), k = 1 - c;
  return {{{c + x * x * k, x * y * k - z * s, x * z * k + y * s},
           {y * x * k + z * s, c + y * y * k, y * z * k - x * s},
           {z * x * k - y * s, z * y * k + x * s, c + z * z * k}}};
}

Hansen turned(const Turn& turn, const Hansen& about, const Hansen& point) {
  const std::array<double, 3> off = scaled({point.dD - about.dD, point.dP - about.dP, point.dH - about.dH});
  std::array<double, 3> out{};
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t k = 0; k < 3; ++k) out[i] += turn[i][k] * off[k];
  return {about.dD + out[0] / 2, about.dP + out[1], about.dH + out[2]};
}

// A sphere whose centre alone is uncertain along the axes, with its centre's Gaussian turned.
UncertainSphere turned(const Turn& turn, const UncertainSphere& plain) {
  const std::array<double, 3> sd = scaled(plain.sd);
  std::array<std::array<double, 3>, 3> all{};
  for (std::size_t i = 0; i < 3; ++i)
    for (std::size_t j = 0; j < 3; ++j)
      for (std::size_t k = 0; k < 3; ++k) all[i][j] += turn[i][k] * sd[k] * sd[k] * turn[j][k];
  UncertainSphere out = plain;
  out.sd = {std::sqrt(all[0][0]) / 2, std::sqrt(all[1][1]), std::sqrt(all[2][2])};
  out.shared = {all[0][1] / 2, all[0][2] / 2, all[1][2], 0, 0, 0};
  return out;
}

}  // namespace

TEST_CASE("the plain sums agree with the other reference where nothing is shared") {
  const UncertainSphere plain{{{18.7, 9, 10}, 6.5}, {0.8, 1.6, 1.8}, 1};
  Dice dice{std::mt19937_64(3)};
  for (const int grade : {1, 2, 4})
    for (int i = 0; i < 4; ++i) {
      const Hansen point = dice.point();
      CHECK(chance_by_sums(point, {plain, joint_curve, grade}) ==
            test::near(chance_of_grade(point, plain, joint_curve, grade), 2e-6));
    }
}

TEST_CASE("the plain sums agree with a plain Monte Carlo where figures are shared") {
  const SphereMatrix root = root_of(covariance_of(usual));
  Dice dice{std::mt19937_64(4)};
  const Hansen liquid{16.2, 8.8, 12};
  constexpr int draws = 200000;
  double sum = 0;
  for (int i = 0; i < draws; ++i) {
    const std::array<double, 4> z = {dice.normal(), dice.normal(), dice.normal(), dice.normal()};
    std::array<double, 4> off{};
    for (std::size_t a = 0; a < 4; ++a)
      for (std::size_t b = 0; b <= a; ++b) off[a] += root[a][b] * z[b];
    const Sphere drawn{{19 + off[0] / 2, 6 + off[1], 8 + off[2]}, 8 + off[3]};
    sum += chance_at_most(joint_curve, 4, relative_distance_RED(liquid, drawn, bent));
  }
  CHECK(chance_by_sums(liquid, {usual, joint_curve, 4, bent}) == test::near(sum / draws, 0.004));  // 4 standard errors
}

TEST_CASE("the table of a sphere whose figures are known together stays within 1e-4 of the reference") {
  Dice dice{std::mt19937_64(5)};
  const std::vector<UncertainSphere> spheres = {
      usual,
      together({{19, 6, 8}, 10.6}, {1, 2, 2.2}, 1.9, {-0.2, 0.3, 0.3, 0.2, -0.3, 0.5}),
      together({{18.2, 7.5, 8.4}, 3.5}, {0.3, 0.5, 0.5}, 0.3, {-0.6, 0.2, 0.3, 0.7, -0.3, 0.5}),
      together({{16.6, 1.4, 1}, 9.6}, {2, 0.3, 4}, 3, {0.5, 0.2, 0.3, 0.5, -0.3, 0.4}),      // vague in every way
      together({{18.2, 7.5, 8.4}, 8}, {0.9, 1.2, 1.8}, 2, {0.5, 0.2, 0.3, 0.2, 0.1, 0.93}),  // its edge is known
      together({{18, 7, 9}, 3}, {0.6, 1, 1.5}, 2.5, {-0.3, 0.2, 0.3, 0.3, -0.3, 0.5}),       // its radius cut off at 0
  };
  for (const UncertainSphere& sphere : spheres)
    for (const int grade : {2, 4}) {
      INFO("R0 " << sphere.mean.R0 << ", deviation " << sphere.R0_sd);
      check_against_sums({sphere, soft, grade}, dice, 1e-4);
    }
  check_against_sums({spheres[0], joint_curve, 1}, dice, 1e-4);
  check_against_sums({spheres[4], joint_curve, 2}, dice, 1e-4);
}

TEST_CASE("a sphere known all but exactly, its figures together, keeps to 2e-4") {
  Dice dice{std::mt19937_64(6)};
  const UncertainSphere known =
      together({{18.2, 7.5, 8.4}, 5}, {0.125, 0.25, 0.25}, 0.1, {0.5, 0.2, 0.3, 0.3, 0.1, 0.2});
  check_against_sums({known, soft, 2}, dice, 2e-4);
}

TEST_CASE("the table of a bent sphere stays within 1e-4 of the reference, near its places too") {
  Dice dice{std::mt19937_64(7)};
  const UncertainSphere plain{{{19, 6, 8}, 8}, {0.6, 1.2, 1.3}, 1};
  check_against_sums({plain, soft, 2, bent}, dice, 1e-4);
  check_against_sums({usual, soft, 4, bent}, dice, 1e-4);
}

TEST_CASE("a table of a plain sphere is the same beside none as without reach, and bits do not change") {
  const UncertainSphere plain{{{19, 6, 8}, 8}, {0.6, 1.2, 1.3}, 1};
  const ChanceField one(box, plain, soft, 2);
  const std::vector<ChanceField> same = chance_fields(box, {{plain, soft, 2, LocalReach{{}, 3}}});
  CHECK(one.lattice() == same.front().lattice());
  CHECK(one.values() == same.front().values());
}

TEST_CASE("plain and other spheres share one lattice") {
  const UncertainSphere plain{{{18.7, 9, 10}, 6.5}, {0.8, 1.6, 1.8}, 1};
  const std::vector<FieldSubject> subjects = {{plain, soft, 2}, {usual, soft, 4}, {plain, soft, 4, bent}};
  const std::vector<ChanceField> fields = chance_fields(box, subjects);
  Dice dice{std::mt19937_64(8)};
  for (std::size_t i = 0; i < subjects.size(); ++i) {
    CHECK(fields[i].lattice() == fields[0].lattice());
    for (int round = 0; round < 6; ++round) {
      const Hansen point = dice.point();
      CHECK(fields[i](point) == test::near(chance_by_sums(point, subjects[i]), 1e-4));
    }
  }
}

TEST_CASE("turned about its centre, a sphere gives the turned chances: the exact answer") {
  const UncertainSphere plain{{{16.5, 8, 12}, 6}, {0.2, 1.8, 0.7}, 1};
  Dice dice{std::mt19937_64(9)};
  for (const double angle : {0.5, 1.3}) {
    const Turn turn = turn_about({1, 2, -1.5}, angle);
    const UncertainSphere slanted = turned(turn, plain);
    REQUIRE(is_possible(slanted));
    const ChanceField field = std::move(chance_fields(box, {{slanted, soft, 2}}).front());
    for (int i = 0; i < 12; ++i) {
      const Hansen point{16.5 + dice.even(-1.2, 1.2), 8 + dice.even(-3, 3), 12 + dice.even(-3, 3)};
      const Hansen seen = turned(turn, plain.mean.centre, point);
      CHECK(field(seen) == test::near(chance_of_grade(point, plain, soft, 2), 1e-4));
    }
  }
}

TEST_CASE("a film that never dissolves: a table of nothing for stronger grades, and all of the others") {
  Response swells = soft;
  swells.strongest = 3;
  const UncertainSphere plain{{{18.7, 9, 10}, 6.5}, {0.8, 1.6, 1.8}, 1};
  for (const UncertainSphere& sphere : {plain, usual}) {
    const std::vector<ChanceField> fields =
        chance_fields(box, {{sphere, swells, 2}, {sphere, swells, 3}, {sphere, soft, 3}, {sphere, soft, 2}});
    Dice dice{std::mt19937_64(10)};
    double largest = 0;
    for (int i = 0; i < 20; ++i) {
      const Hansen point = dice.point();
      CHECK(fields[0](point) == 0);
      CHECK(fields[1](point) == fields[2](point));
      largest = std::max(largest, fields[3](point));
    }
    CHECK(largest > 0.3);
    const ChanceField alone = std::move(chance_fields(box, {{sphere, swells, 2}}).front());
    CHECK(alone(dice.point()) == 0);
    CHECK(std::move(chance_fields(box, {{sphere, soft, 6}}).front())(dice.point()) == Approx(1));
  }
}

TEST_CASE("the RED band of a turned sphere holds the middle 90 % of the one that was turned") {
  // Spread alike in two directions and not at all along the third; turned, both must give the same shares.
  const UncertainSphere plain{{{17, 8, 9}, 6}, {0.4, 1.6, 0.5}, 0.6};
  const Turn turn = turn_about({-1, 0.4, 2}, 0.9);
  const UncertainSphere slanted = turned(turn, plain);
  for (const Hansen& liquid : {Hansen{17.5, 10, 12}, Hansen{15, 3, 20}, Hansen{17, 8, 10}}) {
    const Band band = RED_band(turned(turn, plain.mean.centre, liquid), slanted);
    const Band same = RED_band(liquid, plain);
    CHECK(band.low == Approx(same.low).epsilon(0.012));
    CHECK(band.high == Approx(same.high).epsilon(0.012));
  }
}

TEST_CASE("the RED band where the centre goes with the radius: by hand") {
  constexpr double z = 1.6448536269514722;
  // All of dH's deviation is that of R0: dH = 9 + d, R0 = 6 + d, the liquid 10 above: RED = (10 - d) / (6 + d).
  const UncertainSphere tied = together({{17, 8, 9}, 6}, {0, 0, 0.8}, 0.8, {0, 0, 0, 0, 0, 1});
  const Band band = RED_band({17, 8, 19}, tied);
  CHECK(std::abs(band.low - (10 - z * 0.8) / (6 + z * 0.8)) < 0.004);
  CHECK(std::abs(band.high - (10 + z * 0.8) / (6 - z * 0.8)) < 0.004);
  // The other way round the edge stays where it is, and so does RED near 1.
  const UncertainSphere follows = together({{17, 8, 9}, 6}, {0, 0, 0.8}, 0.8, {0, 0, 0, 0, 0, -1});
  const Band edge = RED_band({17, 8, 15}, follows);
  CHECK(edge.low == Approx(1));
  CHECK(edge.high == Approx(1));
}

TEST_CASE("a reach scales RED and its band at the liquid's point alone") {
  const Hansen there{15.8, 8.8, 19.4}, away{14.2, 15, 8};
  const double factor = reach_factor(bent, there);
  CHECK(factor == Approx(std::exp(0.6)).epsilon(1e-3));  // the other places are ten lengths off
  CHECK(relative_distance_RED(there, usual.mean, bent) == Approx(relative_distance_RED(there, usual.mean) / factor));
  const Band bare = RED_band(there, usual), band = RED_band(there, usual, bent);
  CHECK(band.low == Approx(bare.low / factor));
  CHECK(band.high == Approx(bare.high / factor));
  CHECK(RED_band(away, usual, bent).low == Approx(RED_band(away, usual).low).epsilon(0.01));
  CHECK(relative_distance_RED(there, usual.mean, {}) == relative_distance_RED(there, usual.mean));
}

TEST_CASE("figures that cannot stand together are told from those that can") {
  UncertainSphere sphere{{{17, 8, 9}, 6}, {0.5, 1, 1}, 1};
  CHECK(is_possible(sphere));
  sphere.shared.dP_dH = 1;  // wholly tied: at the border
  CHECK(is_possible(sphere));
  sphere.shared.dP_dH = 1.01;
  CHECK_FALSE(is_possible(sphere));
  sphere.shared = {0.3, 0.3, -0.6, 0, 0, 0};  // each possible, not all three
  CHECK_FALSE(is_possible(sphere));
  sphere.shared = {};
  sphere.sd.dP = -1;
  CHECK_FALSE(is_possible(sphere));
  CHECK_FALSE(is_possible({{{17, 8, 9}, 0}, {1, 1, 1}, 1}));
}

TEST_CASE("deviations without covariances come back from the matrix bit for bit") {
  Dice dice{std::mt19937_64(11)};
  for (int i = 0; i < 200; ++i) {
    const UncertainSphere sphere{{{17, 8, 9}, 6}, {dice.even(0, 3), dice.even(0, 3), dice.even(0, 3)}, dice.even(0, 3)};
    const SphereMatrix root = root_of(covariance_of(sphere));
    const std::array<double, 3> sd = scaled(sphere.sd);
    for (std::size_t k = 0; k < 3; ++k) CHECK(root[k][k] == sd[k]);
    CHECK(root[3][3] == sphere.R0_sd);
  }
}
