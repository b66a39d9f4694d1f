// Spheres moved by observations, against plain weighing of draws from the prior, and on cases whose answer is known.
#include "gentlest/fitting/conditioning.hpp"

#include "gentlest/space/chance.hpp"
#include "near.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace gentlest;
using namespace gentlest::test;

namespace {

const Response& curve() {
  return shipped_catalogue().response();
}

UncertainSphere prior() {
  return {{{18, 7, 9}, 9}, {1, 1.5, 1.5}, 1.5, {}};
}

ConditioningSettings round_sphere() {
  ConditioningSettings settings;
  settings.reach_sd = 0;
  settings.prior_widening = 1;
  return settings;
}

// Mean and standard deviation of each figure by weighing 200,000 draws from the prior: nothing in common with the
// chain.
struct Weighed {
  std::array<double, 4> mean{}, sd{};
};
Weighed weigh_draws(const std::vector<GradedAction>& seen, double slip) {
  std::mt19937_64 random(7);
  std::normal_distribution<double> normal;
  std::array<double, 4> sum{}, squares{};
  double mass = 0;
  const UncertainSphere from = prior();
  for (int i = 0; i < 200000; ++i) {
    const std::array<double, 4> at = {
        from.mean.centre.dD + from.sd.dD * normal(random), from.mean.centre.dP + from.sd.dP * normal(random),
        from.mean.centre.dH + from.sd.dH * normal(random), from.mean.R0 + from.R0_sd * normal(random)};
    if (at[3] < 0.5) continue;
    double weight = 1;
    for (const GradedAction& one : seen) {
      const double red = distance_Ra(one.point, {at[0], at[1], at[2]}) / at[3] * std::exp(one.ln_further);
      const auto chances = grade_chances(curve(), red);
      double inside = 0;
      for (int grade = one.strongest; grade <= one.weakest; ++grade)
        inside += chances[static_cast<std::size_t>(grade - 1)];
      weight *= std::pow((1 - slip) * inside + slip * (one.weakest - one.strongest + 1) / 6.0, one.weight);
    }
    mass += weight;
    for (std::size_t k = 0; k < 4; ++k) {
      sum[k] += weight * at[k];
      squares[k] += weight * at[k] * at[k];
    }
  }
  Weighed result;
  for (std::size_t k = 0; k < 4; ++k) {
    result.mean[k] = sum[k] / mass;
    result.sd[k] = std::sqrt(squares[k] / mass - result.mean[k] * result.mean[k]);
  }
  return result;
}

}  // namespace

TEST_CASE("a sphere after some observations is that of weighed draws from its prior") {
  const std::vector<GradedAction> seen = {{{15.8, 8.8, 19.4}, 1, 2, 1, 0},
                                          {{14.3, 0, 0}, 5, 6, 0.7, 0},
                                          {{18, 1.4, 2}, 4, 6, 0.4, 0},
                                          {{15.5, 10.4, 7}, 1, 3, 1, 0.3}};
  const Weighed expected = weigh_draws(seen, 0.05);
  const ConditionedSphere found = condition_sphere(prior(), false, curve(), seen, round_sphere());
  const std::array<double, 4> mean = {found.sphere.mean.centre.dD, found.sphere.mean.centre.dP,
                                      found.sphere.mean.centre.dH, found.sphere.mean.R0};
  const std::array<double, 4> sd = {found.sphere.sd.dD, found.sphere.sd.dP, found.sphere.sd.dH, found.sphere.R0_sd};
  for (std::size_t k = 0; k < 4; ++k) {
    CAPTURE(k);
    CHECK(mean[k] == near(expected.mean[k], 0.1));
    CHECK(sd[k] == near(expected.sd[k], 0.08));
  }
  CHECK(found.sphere.mean.centre.dH >
        prior().mean.centre.dH + 0.5);  // alcohol dissolves it: the observations did something
  CHECK(found.effective_draws > 500);
  CHECK(found.reach.places.empty());
}

TEST_CASE("without observations the prior stays, as wide as it is made") {
  ConditioningSettings settings = round_sphere();
  settings.prior_widening = 2;
  const ConditionedSphere found = condition_sphere(prior(), false, curve(), {}, settings);
  CHECK(found.sphere.mean.centre.dP == near(7, 0.1));
  CHECK(found.sphere.sd.dP == near(3, 0.1));
  CHECK(found.sphere.R0_sd == near(3, 0.1));
  CHECK(std::abs(found.sphere.shared.dP_R0) < 0.3);
}

TEST_CASE("a published sphere stands and only its reach is fitted; round where nothing contradicts it") {
  const Hansen alcohol{15.8, 8.8, 19.4};
  const UncertainSphere sphere{{{18, 7, 5}, 8}, {0.3, 0.5, 0.4}, 0.5, {}};
  const ConditionedSphere found = condition_sphere(
      sphere, true, curve(), {{alcohol, 1, 2, 1, 0}, {{18, 7, 5}, 1, 1, 1, 0}}, ConditioningSettings());
  CHECK(found.sphere == sphere);
  CHECK(reach_factor(found.reach, alcohol) > 1.1);
  CHECK(reach_factor(found.reach, {18, 7, 5}) == near(1, 0.02));
  CHECK(reach_factor(found.reach, {20, 1, -6}) == near(1, 0.01));
}

TEST_CASE("what is seen shortens the reach where the sphere says too much, and its chance falls there") {
  const Hansen alkane{14.3, 0, 0};
  const std::vector<GradedAction> seen = {{alkane, 5, 6, 1, 0}};
  const UncertainSphere sphere{{{17, 4, 4}, 9}, {0.3, 0.5, 0.4}, 0.5, {}};
  const ConditionedSphere found = condition_sphere(sphere, true, curve(), seen, ConditioningSettings());
  const auto moved = [](const std::array<double, grade_count>& chances) { return chances[0] + chances[1]; };
  CHECK(reach_factor(found.reach, alkane) < 0.95);
  CHECK(moved(expected_grades(found, curve(), alkane)) <
        moved(expected_grades({sphere, {}, 0}, curve(), alkane)) - 0.1);
}

TEST_CASE("expected grades are those of the tables that a search uses, on a sphere with covariances and a reach") {
  UncertainSphere sphere{{{17, 9, 13}, 11}, {1.2, 1.9, 1.7}, 1.9, {0.3, -0.2, 0.4, 0.5, 0.9, -0.6}};
  const LocalReach reach{{{{15.8, 8.8, 19.4}, 0.2}, {{14.1, 0, 0}, -0.2}}, 3};
  const HansenBox box{{14, 0, 0}, {19, 16, 24}};
  const std::vector<ChanceField> fields =
      chance_fields(box, {{sphere, curve(), 2, reach}, {sphere, curve(), 4, reach}});
  for (const Hansen& point : {Hansen{14.1, 0, 0}, Hansen{15.8, 8.8, 19.4}, Hansen{18, 1.4, 2}, Hansen{16, 10, 8}}) {
    const auto chances = expected_grades({sphere, reach, 0}, curve(), point);
    CHECK(chances[0] + chances[1] == near(fields[0](point), 0.004));
    CHECK(1 - chances[4] - chances[5] == near(fields[1](point), 0.004));
  }
}

TEST_CASE("a contact that acts as if further off pulls the sphere less") {
  const std::vector<GradedAction> bath = {{{15.5, 10.4, 7}, 5, 6, 1, 0}};
  std::vector<GradedAction> swab = bath;
  swab.front().ln_further = 0.8;
  const double R0_by_bath = condition_sphere(prior(), false, curve(), bath, round_sphere()).sphere.mean.R0;
  const double R0_by_swab = condition_sphere(prior(), false, curve(), swab, round_sphere()).sphere.mean.R0;
  CHECK(R0_by_bath < R0_by_swab - 0.2);
}
