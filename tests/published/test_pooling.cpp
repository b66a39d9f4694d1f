// Several paintings pooled, against closed forms and general-purpose libraries. The figures of numpy, scipy and
// statsmodels: `python3 tests/oracle/pooling.py`.
#include "gentlest/studio/pooling.hpp"
#include "near.hpp"

#include <Eigen/LU>

#include <catch2/catch.hpp>

#include <cmath>

using namespace gentlest;
using test::near;

namespace {

using Matrix4 = Eigen::Matrix4d;
using Vector4 = Eigen::Vector4d;

// Nothing is held before, and nothing is assumed: the plain random-effects model.
constexpr double flat = 1e7;
constexpr SphereTable no_idea = {{{flat, 0, 0, 0}, {0, flat, 0, 0}, {0, 0, flat, 0}, {0, 0, 0, flat}}};

PoolSettings plain_settings() {
  PoolSettings settings;
  settings.odd_count_less = false;
  settings.assumed_paintings = 0;
  settings.most_rounds = 20'000;
  return settings;
}

// One figure, on the axis of the radius; the others say nothing.
PaintingSays one_figure(double value, double variance) {
  PaintingSays says;
  says.information[3][3] = 1 / variance;
  says.pull[3] = value / variance;
  return says;
}

PaintingSays says_of(const Vector4& value, const Matrix4& covariance) {
  const Matrix4 information = covariance.inverse();
  const Vector4 pull = information * value;
  PaintingSays says;
  for (std::size_t i = 0; i < 4; ++i) {
    says.pull[i] = pull[static_cast<Eigen::Index>(i)];
    for (std::size_t j = 0; j < 4; ++j)
      says.information[i][j] = information(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j));
  }
  return says;
}

}  // namespace

// Thirteen trials of a vaccine, log risk ratios (Colditz et al. 1994; counts from memory). Restricted maximum
// likelihood by scipy: tau^2 0.313243, mean -0.714532, standard error 0.179782; the same stands in the handbook of a
// widely used package for such analyses (0.3132, -0.7145, 0.1798; from memory). DerSimonian and Laird's moments by
// statsmodels: 0.308760, -0.714117, 0.178742, to which it must lie near.
TEST_CASE("one figure of thirteen trials is pooled as restricted maximum likelihood has it", "[studio]") {
  constexpr double y[] = {-0.889311, -1.585389, -1.348073, -1.441551, -0.217547, -0.786116, -1.620898,
                          0.011952,  -0.469418, -1.371345, -0.339359, 0.445913,  -0.017314};
  constexpr double v[] = {0.325585, 0.194581, 0.415368, 0.020010, 0.051210, 0.006906, 0.223017,
                          0.003962, 0.056434, 0.073025, 0.012412, 0.532506, 0.071405};
  std::vector<PaintingSays> trials;
  for (std::size_t i = 0; i < std::size(y); ++i) trials.push_back(one_figure(y[i], v[i]));
  const Pool pool = pool_paintings(no_idea, trials, plain_settings());
  CHECK(pool.between_R0 * pool.between_R0 == near(0.313243, 2e-5));
  CHECK(pool.moved[3] == near(-0.714532, 2e-5));
  CHECK(std::sqrt(pool.moved_covariance[3][3]) == near(0.179782, 2e-5));
  CHECK(pool.moved[3] == near(-0.714117, 0.001));
  CHECK(pool.between_R0 * pool.between_R0 == near(0.308760, 0.01));
}

// Six paintings of four figures with full covariances; restricted maximum likelihood of two scatters by scipy.
TEST_CASE("four figures with full covariances are pooled as a general-purpose optimiser has it", "[studio]") {
  const Vector4 points[] = {{1.0, 2.0, -1.0, 1.5}, {3.0, -1.0, 0.5, 4.5}, {-2.0, 1.5, 2.0, -1.5},
                            {0.5, 4.0, 1.0, 0.0},  {2.5, 0.0, -3.0, 3.0}, {-1.0, -2.0, 0.0, -4.5}};
  std::vector<PaintingSays> paintings;
  for (int k = 1; k <= 6; ++k) {
    Matrix4 root;
    root << 1, 0, 0, 0, 0.3 * k, 0.8, 0, 0, -0.2, 0.1 * k, 1.2, 0, 0.4, -0.3, 0.2 * k, 0.9;
    paintings.push_back(says_of(points[k - 1], root * root.transpose() * (0.2 + 0.2 * k)));
  }
  const Pool pool = pool_paintings(no_idea, paintings, plain_settings());
  CHECK(pool.between_centre * pool.between_centre / 3 == near(2.51726065, 2e-4));
  CHECK(pool.between_R0 * pool.between_R0 == near(7.8415667, 2e-3));
  const double mean[] = {0.78598272, 1.03082116, 0.02390718, 0.7255174};
  const double sd[] = {0.73844026, 0.82217735, 0.8057594, 1.24706665};
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(pool.moved[i] == near(mean[i], 5e-4));
    CHECK(std::sqrt(pool.moved_covariance[i][i]) == near(sd[i], 5e-4));
  }
}

// With the scatter known the middle is the weighted mean, in closed form: here no scatter is found beside what is
// assumed of so many paintings that the few do not count.
TEST_CASE("with a known scatter the middle is the weighted mean of the stand-in and the paintings", "[studio]") {
  PoolSettings settings = plain_settings();
  settings.assumed_paintings = 1e9;
  settings.between_centre = 3;
  const SphereTable stand_in = {{{4, 0, 0, 0}, {0, 4, 0, 0}, {0, 0, 4, 0}, {0, 0, 0, 2.25}}};
  std::vector<PaintingSays> paintings;
  double sum = 0, weights = 1 / 4.0;
  for (const auto& [value, variance] : {std::pair(3.0, 1.0), std::pair(-1.0, 0.5), std::pair(6.0, 8.0)}) {
    PaintingSays says;
    says.information[1][1] = 1 / variance;
    says.pull[1] = value / variance;
    paintings.push_back(says);
    sum += value / (variance + 3);  // 3^2 / 3 axes
    weights += 1 / (variance + 3);
  }
  const Pool pool = pool_paintings(stand_in, paintings, settings);
  CHECK(pool.moved[1] == near(sum / weights, 1e-6));
  CHECK(pool.moved_covariance[1][1] == near(1 / weights, 1e-6));
  CHECK(pool.moved[0] == near(0, 1e-12));
  CHECK(pool.moved_covariance[0][0] == near(4, 1e-6));
}
