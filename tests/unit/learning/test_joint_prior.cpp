// Priors whose figures are known together, and layers that are bent in places.
#include "core/base/random_numbers.hpp"
#include "core/learning/particles.hpp"
#include "gentlest/learning/learning.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>
#include <array>
#include <cmath>

using namespace gentlest;

namespace {

UncertainSphere tied() {
  UncertainSphere sphere{{{17.5, 6, 9}, 8}, {0.8, 1.8, 2.0}, 1.2};
  sphere.shared = {0.3 * 0.8 * 1.8, -0.2 * 0.8 * 2.0, 0.4 * 1.8 * 2.0,
                   0.2 * 0.8 * 1.2, -0.3 * 1.8 * 1.2, 0.2 * 2.0 * 1.2};
  return sphere;
}

const LocalReach bent = {{{{14.5, 0, 0}, -0.5}, {{17, 10, 10}, 0.4}}, 2};

LayerPrior prior_of(const UncertainSphere& sphere, double stray_share = 0) {
  LayerPrior prior{{{sphere, 1, "resin"}}};
  prior.stray_share = stray_share;
  return prior;
}

// A logistic step at RED 1 for every level.
ReadingCurve step_curve() {
  return ReadingCurve([](double RED) {
    const double chance = 1 / (1 + std::exp((RED - 1) / 0.08));
    return LevelChances{1, chance, chance, chance, chance};
  });
}

double covariance_in(const ParticleCloud& cloud, const std::vector<float>& a, const std::vector<float>& b) {
  double mean_a = 0, mean_b = 0, sum = 0;
  const auto count = static_cast<double>(cloud.size());
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    mean_a += static_cast<double>(a[i]) / count;
    mean_b += static_cast<double>(b[i]) / count;
  }
  for (std::size_t i = 0; i < cloud.size(); ++i)
    sum += (static_cast<double>(a[i]) - mean_a) * (static_cast<double>(b[i]) - mean_b) / count;
  return sum;
}

ParticleCloud drawn_from(const LayerPrior& prior, std::size_t count) {
  RandomNumbers random(5);
  return SpherePrior(prior).draw(count, random);
}

std::vector<float> radii_of(const ParticleCloud& cloud) {
  std::vector<float> radii;
  for (const float inverse : cloud.inverse_R0) radii.push_back(1 / inverse);
  return radii;
}

void check_covariances(const LayerPrior& prior, double factor, const Hansen& sd, double R0_sd) {
  const ParticleCloud cloud = drawn_from(prior, 60000);
  const std::vector<float> R0 = radii_of(cloud);
  const SphereCovariance shared = tied().shared;
  const double f = factor * factor;
  const auto close = [&](double found, double wanted, double a, double b) {
    CHECK(found == test::near(wanted, 0.02 * a * b));  // about five standard errors
  };
  close(covariance_in(cloud, cloud.x, cloud.x) / 4, sd.dD * sd.dD, sd.dD, sd.dD);
  close(covariance_in(cloud, cloud.y, cloud.y), sd.dP * sd.dP, sd.dP, sd.dP);
  close(covariance_in(cloud, cloud.z, cloud.z), sd.dH * sd.dH, sd.dH, sd.dH);
  close(covariance_in(cloud, R0, R0), R0_sd * R0_sd, R0_sd, R0_sd);
  close(covariance_in(cloud, cloud.x, cloud.y) / 2, f * shared.dD_dP, sd.dD, sd.dP);
  close(covariance_in(cloud, cloud.x, cloud.z) / 2, f * shared.dD_dH, sd.dD, sd.dH);
  close(covariance_in(cloud, cloud.y, cloud.z), f * shared.dP_dH, sd.dP, sd.dH);
  close(covariance_in(cloud, cloud.x, R0) / 2, f * shared.dD_R0, sd.dD, R0_sd);
  close(covariance_in(cloud, cloud.y, R0), f * shared.dP_R0, sd.dP, R0_sd);
  close(covariance_in(cloud, cloud.z, R0), f * shared.dH_R0, sd.dH, R0_sd);
}

}  // namespace

TEST_CASE("a prior whose figures settle each other wholly is still drawn and weighed") {
  UncertainSphere sphere{{{17.5, 6, 9}, 8}, {0.8, 1.8, 2.0}, 1.2};
  sphere.shared.dP_R0 = 1.8 * 1.2;
  REQUIRE(is_possible(sphere));
  const double density = SpherePrior(prior_of(sphere)).density({35, 7.8, 9}, 9.2);
  CHECK(std::isfinite(density));
  CHECK(density > 0);
}

TEST_CASE("drawn spheres have the covariances of their prior") {
  REQUIRE(is_possible(tied()));
  check_covariances(prior_of(tied()), 1, {0.8, 1.8, 2.0}, 1.2);
}

TEST_CASE("stray spheres have them by the square of the factor, and floors raise the deviations alone") {
  LayerPrior prior = prior_of(tied(), 1);
  prior.stray_factor = 1.25;
  prior.stray_sd = {1.3, 0.1, 0.1};
  prior.stray_R0_sd = 1.8;
  check_covariances(prior, 1.25, {1.3, 1.25 * 1.8, 1.25 * 2.0}, 1.8);
}

TEST_CASE("the density of a prior gives every part the share that was drawn of it") {
  LayerPrior prior = prior_of(tied(), 0.3);
  UncertainSphere other{{{19, 9, 11}, 7}, {0.5, 1.5, 1.0}, 1.0};
  other.shared.dP_R0 = 1.2;
  prior.hypotheses.push_back({other, 0.5, "other"});
  const SpherePrior parts(prior);
  const ParticleCloud cloud = drawn_from(prior, 40000);
  std::array<double, 4> sums{};
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    const std::vector<double> shares = parts.shares(
        {static_cast<double>(cloud.x[i]), static_cast<double>(cloud.y[i]), static_cast<double>(cloud.z[i])},
        1 / static_cast<double>(cloud.inverse_R0[i]));
    for (std::size_t k = 0; k < 4; ++k) sums[k] += shares[k] / static_cast<double>(cloud.size());
  }
  CHECK(sums[0] == test::near(0.7 * 2 / 3, 0.01));
  CHECK(sums[1] == test::near(0.3 * 2 / 3, 0.01));
  CHECK(sums[2] == test::near(0.7 / 3, 0.01));
  CHECK(sums[3] == test::near(0.3 / 3, 0.01));
}

TEST_CASE("the density of a prior is that of its Gaussian: ratios by hand") {
  UncertainSphere sphere{{{17.5, 6, 9}, 8}, {0.8, 1.8, 2.0}, 1.2};
  sphere.shared.dP_dH = 0.6 * 1.8 * 2.0;
  const SpherePrior prior(prior_of(sphere));
  const double middle = prior.density({35, 6, 9}, 8);
  // Two figures with a correlation r: exp(-(a^2 - 2 r a b + b^2) / (2 (1 - r^2))).
  CHECK(prior.density({35, 7.8, 11}, 8) / middle == Approx(std::exp(-0.8 / (2 * 0.64))));
  CHECK(prior.density({35, 7.8, 7}, 8) / middle == Approx(std::exp(-3.2 / (2 * 0.64))));
  CHECK(prior.density({36.6, 6, 9}, 9.2) / middle == Approx(std::exp(-1.0)));
}

TEST_CASE("readings are weighed by a prior known together, on a layer that is bent: brute force") {
  LayerPrior prior = prior_of(tied());
  prior.hypotheses.front().reach = bent;
  LearningSettings settings;
  settings.particles = 20000;
  const ReadingCurve curve = step_curve();
  LayerBelief belief(prior, curve, settings);
  const std::vector<Evidence> evidence = {{{15, 1, 1}, match_of_level(4, 0.04), 1, false},
                                          {{17, 11, 11}, match_of_level(0, 0.04), 1.1, false},
                                          {{15.8, 8.8, 19.4}, match_of_level(0, 0.04), 1, false}};
  for (const Evidence& one : evidence) belief.learn(one);
  const ParticleCloud drawn = drawn_from(prior, 400000);
  for (const Hansen& at : {Hansen{14.6, 0.5, 0.5}, Hansen{17, 9.5, 10}, Hansen{18, 3, 14}}) {
    double sum = 0, total = 0;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
      const Sphere sphere{
          {static_cast<double>(drawn.x[i]) / 2, static_cast<double>(drawn.y[i]), static_cast<double>(drawn.z[i])},
          1 / static_cast<double>(drawn.inverse_R0[i])};
      double weight = 1;
      for (const Evidence& one : evidence) {
        const LevelChances chances = curve.chances(relative_distance_RED(one.point, sphere, bent) / one.radius_factor);
        double match = 0;
        for (std::size_t k = 0; k < chances.size(); ++k) match += chances[k] * one.match[k];
        weight *= match;
      }
      sum += weight * curve.at_least(2, relative_distance_RED(at, sphere, bent));
      total += weight;
    }
    CHECK(belief.chance(at, 2) == test::near(sum / total, 0.015));
  }
}

TEST_CASE("every question about a bent layer counts its reach at the point") {
  LayerPrior prior = prior_of(tied());
  LayerBelief plain(prior, step_curve());
  prior.hypotheses.front().reach = bent;
  LayerBelief belief(prior, step_curve());
  const Hansen at{17, 10, 10};
  const double factor = reach_factor(bent, at);
  REQUIRE(factor > 1.3);
  CHECK(belief.radius_factor_at(at) == Approx(factor));
  CHECK(plain.radius_factor_at(at) == 1);
  // The particles are the same, so every RED is that of the plain layer over the factor.
  CHECK(belief.RED_estimate(at).mean == Approx(plain.RED_estimate(at).mean / factor));
  CHECK(belief.RED_estimate(at).high == Approx(plain.RED_estimate(at).high / factor));
  double chance = 0;
  const ParticleCloud& cloud = belief.particles();
  for (std::size_t i = 0; i < cloud.size(); ++i) {
    const Sphere sphere{
        {static_cast<double>(cloud.x[i]) / 2, static_cast<double>(cloud.y[i]), static_cast<double>(cloud.z[i])},
        1 / static_cast<double>(cloud.inverse_R0[i])};
    chance +=
        static_cast<double>(cloud.weight[i]) * belief.curve().at_least(2, relative_distance_RED(at, sphere, bent));
  }
  CHECK(belief.chance(at, 2) == test::near(chance, 1e-4));
  CHECK(belief.chance_estimate(at, 2).mean == test::near(chance, 1e-4));
  CHECK(belief.before().chance(at, 2) == belief.chance(at, 2));
  belief.learn({at, match_of_level(1, 0.05), 1.2, false});
  CHECK(belief.seen().back().radius_factor == Approx(1.2 * factor));
}

TEST_CASE("of several materials the mean of the logarithms counts, each as far as it is believed") {
  LayerPrior prior = prior_of(tied());
  prior.hypotheses.front().weight = 3;
  prior.hypotheses.front().reach = bent;
  prior.hypotheses.push_back({tied(), 1, "not bent"});
  const Hansen at{17, 10, 10};
  CHECK(LayerBelief(prior, step_curve()).radius_factor_at(at) == Approx(std::pow(reach_factor(bent, at), 0.75)));
}

TEST_CASE("the curve of readings leaves out that a film never dissolves, and mixes those of several materials") {
  Response one{{{{1, -6}, {0.5, -5}, {0.5, -4}, {0.2, -4}, {0, -3}}}, "test"}, capped = one, other = one;
  capped.strongest = 3;
  other.stages[0].intercept = -3;
  for (const double RED : {0.3, 0.8, 1.1, 2.0})
    for (int level = 1; level < reading_levels; ++level) {
      CHECK(borrowed_curve(capped).at_least(level, RED) == borrowed_curve(one).at_least(level, RED));
      const double mixed = borrowed_curve({{one, 3}, {other, 1}}).at_least(level, RED);
      CHECK(mixed == test::near(0.75 * borrowed_curve(one).at_least(level, RED) +
                                    0.25 * borrowed_curve(other).at_least(level, RED),
                                1e-6));
      CHECK(borrowed_curve({{one, 0.4}, {capped, 0.6}}).at_least(level, RED) ==
            borrowed_curve(one).at_least(level, RED));
    }
  CHECK(borrowed_curve(capped).at_least(4, 0.5) > 0.5);
}
