#include "gentlest/fitting/calibration.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <stdexcept>

using namespace gentlest;

namespace {

// A lattice of liquids around a sphere; grade 1 inside, 6 outside.
std::vector<Score> graded_lattice(const Sphere& sphere) {
  std::vector<Score> scores;
  for (int d = 0; d <= 5; ++d)
    for (int p = 0; p <= 8; ++p)
      for (int h = 0; h <= 8; ++h) {
        const Hansen point{13.0 + 2 * d, -2.0 + 2.5 * p, -2.0 + 2.5 * h};
        scores.push_back({"", point, distance_Ra(point, sphere.centre) < sphere.R0 ? 1 : 6});
      }
  return scores;
}

}  // namespace

TEST_CASE("logistic regression finds the closed form of a two-valued predictor") {
  // At x = 0: 3 of 4 yes; at x = 1: 2 of 6 yes. The best figures reproduce both shares: ln(3), ln(1/2) - ln(3).
  std::vector<double> x;
  std::vector<bool> yes;
  for (int i = 0; i < 4; ++i) {
    x.push_back(0);
    yes.push_back(i < 3);
  }
  for (int i = 0; i < 6; ++i) {
    x.push_back(1);
    yes.push_back(i < 2);
  }
  const Response::Stage stage = fit_logistic(x, yes);
  CHECK(stage.intercept == Approx(std::log(3.0)).epsilon(1e-9));
  CHECK(stage.slope == Approx(std::log(0.5) - std::log(3.0)).epsilon(1e-9));
}

TEST_CASE("a rising answer gives a flat curve at the overall share") {
  const Response::Stage stage = fit_logistic({0, 0, 1, 1, 1}, {false, false, true, true, false});
  CHECK(stage.slope == 0);
  CHECK(stage.intercept == Approx(std::log(2.0 / 3.0)));
}

TEST_CASE("answers that do not overlap end with a steep finite curve, single answers with a flat one") {
  const Response::Stage steep = fit_logistic({-1, -0.5, 0.5, 1}, {true, true, false, false});
  CHECK(std::isfinite(steep.intercept));
  CHECK(std::isfinite(steep.slope));
  CHECK(steep.slope < -10);
  const Response::Stage always = fit_logistic({0, 1}, {true, true});
  CHECK(always.slope == 0);
  CHECK(always.intercept == Approx(std::log(5.0)));
}

TEST_CASE("stages of the response are fitted to the cases that reach them") {
  std::vector<GradedRED> seen;
  const auto add = [&](double red, int grade, int times) {
    for (int i = 0; i < times; ++i) seen.push_back({red, grade});
  };
  add(1, 1, 6), add(1, 2, 3), add(1, 6, 1);
  add(2, 1, 1), add(2, 2, 2), add(2, 6, 7);
  const Response response = fit_response(seen);
  // With two REDs the shares are reproduced: P(1) = 0.6 and 0.1, P(2 | not 1) = 3/4 and 2/9.
  CHECK(grade_chances(response, 1)[0] == Approx(0.6));
  CHECK(grade_chances(response, 2)[0] == Approx(0.1));
  CHECK(grade_chances(response, 1)[1] == Approx(0.4 * 0.75));
  CHECK(grade_chances(response, 2)[1] == Approx(0.9 * 2 / 9));
  for (int grade = 1; grade < grade_count; ++grade)
    for (double red = 0.1; red < 4; red += 0.1)
      CHECK(chance_at_most(response, grade, red) >= chance_at_most(response, grade, red + 0.1));
  CHECK_THROWS_AS(fit_response({{0, 1}}), std::invalid_argument);
}

TEST_CASE("a sphere inside the cloud is found again") {
  for (const Sphere& truth : {Sphere{{18, 8, 8}, 6}, Sphere{{17.2, 9.5, 6.1}, 5}, Sphere{{18.7, 6.4, 9.3}, 7}}) {
    const std::vector<Score> scores = graded_lattice(truth);
    const SphereFit fit = fit_sphere(scores);
    INFO(truth.centre.dD << " " << truth.centre.dP << " " << truth.centre.dH << " " << truth.R0);
    CHECK(fit.quality.misplaced == 0);
    CHECK(fit.quality.data_fit == 1);
    // The lattice is 4 wide in 2 dD and 2.5 in dP and dH: the sphere is known to a part of that.
    CHECK(distance_Ra(fit.sphere.centre, truth.centre) < 1.0);
    CHECK(std::abs(fit.sphere.R0 - truth.R0) < 1.0);
    CHECK(fit.doubts.empty());
  }
}

TEST_CASE("a boundary that is a plane is reported as not held in place") {
  std::vector<Score> scores = graded_lattice({{18, 8, 8}, 6});
  for (Score& score : scores) score.grade = score.hansen.dP + score.hansen.dH > 12 ? 6 : 1;
  CHECK_FALSE(fit_sphere(scores).doubts.empty());
}

TEST_CASE("a set without a bad solvent gives a finite sphere and says what is wrong, one without a good one throws") {
  std::vector<Score> scores = graded_lattice({{18, 8, 8}, 6});
  for (Score& score : scores) score.grade = 1;
  const SphereFit fit = fit_sphere(scores);
  CHECK(std::isfinite(fit.sphere.R0));
  CHECK(fit.quality.misplaced == 0);
  CHECK_FALSE(fit.doubts.empty());
  for (Score& score : scores) score.grade = 3;
  CHECK_THROWS_AS(fit_sphere(scores), std::invalid_argument);
}

TEST_CASE("the data fit of a sphere counts how far solvents are misplaced") {
  // One good solvent 2 outside, one bad solvent 1 inside, two well placed: exp(-(2 + 1) / 4).
  const Sphere sphere{{18, 0, 0}, 5};
  const std::vector<Score> scores = {
      {"", {18, 7, 0}, 1}, {"", {18, 0, 4}, 6}, {"", {18, 1, 0}, 1}, {"", {18, 0, 9}, 2}};
  const SphereQuality quality = judge_sphere(scores, sphere);
  CHECK(quality.misplaced == 2);
  CHECK(quality.data_fit == Approx(std::exp(-0.75)));
}

TEST_CASE("held-out REDs come from spheres that did not see the solvent") {
  // Turning the grade of one solvent round must not change its own RED, but that of others.
  ScoreSet set;
  set.scores = graded_lattice({{18, 8, 8}, 6});
  const std::vector<GradedRED> before = held_out_REDs(set);
  const std::size_t turned = 5 * 40 + 3;
  set.scores[turned].grade = set.scores[turned].grade == 1 ? 6 : 1;
  const std::vector<GradedRED> after = held_out_REDs(set);
  REQUIRE(before.size() == after.size());
  bool others_moved = false;
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (i % fold_count == turned % fold_count)
      CHECK(before[i].RED == after[i].RED);
    else
      others_moved = others_moved || before[i].RED != after[i].RED;
  }
  CHECK(others_moved);
}

TEST_CASE("independent spreads move the boundary as far as asked") {
  const Sphere first{{18, 8, 8}, 6};
  const Sphere second{{18, 9, 8}, 6};
  const SpherePair pair{first, second, {{18, 14, 8}, {18, 2, 8}}};
  const SphereScatter seen = scatter_of({pair}, 6);
  CHECK(seen.centre.dP == Approx(1));
  CHECK(seen.centre.dD == Approx(0));
  CHECK(seen.boundary == Approx(1));  // both solvents lie on the line along which the centre moved
  // Shape 1 in dP and 1 in R0: independent, they would move these solvents by sqrt 2.
  SphereScatter shape;
  shape.centre.dP = 1;
  shape.R0 = 1;
  const SphereScatter spread = independent_spread({pair}, shape, seen.boundary);
  CHECK(spread.centre.dP == Approx(std::sqrt(0.5)));
  CHECK(spread.R0 == Approx(std::sqrt(0.5)));
  CHECK(scatter_of({{first, {{18, 30, 8}, 6}, {}}}, 6).centre.dP == Approx(6));
}
