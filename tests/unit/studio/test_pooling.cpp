// What pooling must never do: be dragged by one odd painting, or be surer than the paintings are alike.
#include "core/base/random_numbers.hpp"
#include "gentlest/studio/pooling.hpp"
#include "near.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

using namespace gentlest;
using test::near;

namespace {

constexpr SphereTable stand_in = {{{5, 0, 0, 0}, {0, 4, 0, 0}, {0, 0, 3, 0}, {0, 0, 0, 4}}};

// Known to within 1 MPa^0.5 on each figure.
PaintingSays painting_at(const SphereFigures& place, double variance = 1) {
  PaintingSays says;
  for (std::size_t i = 0; i < 4; ++i) {
    says.information[i][i] = 1 / variance;
    says.pull[i] = place[i] / variance;
  }
  return says;
}

std::vector<PaintingSays> scattered(std::size_t count, double scatter, std::uint64_t seed, double variance = 1) {
  RandomNumbers random(seed);
  std::vector<PaintingSays> paintings;
  for (std::size_t i = 0; i < count; ++i) {
    const double sd = std::sqrt(scatter * scatter / 3 + variance);
    paintings.push_back(painting_at({2 + sd * random.normal(), sd * random.normal(), sd * random.normal(),
                                     std::sqrt(1 + variance) * random.normal()},
                                    variance));
  }
  return paintings;
}

double centre_trace(const SphereTable& table) {
  return table[0][0] + table[1][1] + table[2][2];
}

}  // namespace

TEST_CASE("without paintings the stand-in remains", "[studio]") {
  const Pool pool = pool_paintings(stand_in, {});
  CHECK(pool.moved == SphereFigures{});
  CHECK(pool.spread == stand_in);
}

TEST_CASE("a painting that says nothing changes next to nothing", "[studio]") {
  const Pool pool = pool_paintings(stand_in, {PaintingSays{}, PaintingSays{}});
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(pool.moved[i] == near(0, 1e-9));
    CHECK(pool.spread[i][i] <= stand_in[i][i] * 1.05 + 0.05);
    CHECK(pool.spread[i][i] >= stand_in[i][i] * 0.95);
  }
}

TEST_CASE("one odd painting does not drag the middle, however far it lies", "[studio]") {
  const std::vector<PaintingSays> alike = scattered(8, 2, 5);
  const Pool without = pool_paintings(stand_in, alike);
  double before = 100;
  for (const double away : {10.0, 20.0, 40.0, 80.0}) {
    std::vector<PaintingSays> paintings = alike;
    paintings.push_back(painting_at({0, away, 0, 0}));
    const Pool pool = pool_paintings(stand_in, paintings);
    const double dragged = std::abs(pool.moved[1] - without.moved[1]);
    INFO("away " << away << " dragged " << dragged << " weight " << pool.weights.back());
    CHECK(dragged < 0.5);
    CHECK(pool.weights.back() < before);
    CHECK(pool.weights.back() < *std::min_element(pool.weights.begin(), pool.weights.end() - 1));
    before = pool.weights.back();
    // If all counted alike it would be dragged with it.
    PoolSettings alike_settings;
    alike_settings.odd_count_less = false;
    const double moved_alike = std::abs(pool_paintings(stand_in, paintings, alike_settings).moved[1] -
                                        pool_paintings(stand_in, alike, alike_settings).moved[1]);
    CHECK(moved_alike > 2 * dragged);
  }
}

TEST_CASE("the spread narrows with the paintings, no further than they differ", "[studio]") {
  for (const auto& [scatter, variance] :
       {std::pair(2.0, 0.05), std::pair(2.0, 1.0), std::pair(2.0, 3.0), std::pair(5.0, 0.05), std::pair(5.0, 2.0)}) {
    double sum = 0, spread = 0;
    constexpr int studios = 12;
    for (int i = 0; i < studios; ++i) {
      const Pool pool = pool_paintings(stand_in, scattered(40, scatter, 100 + static_cast<std::uint64_t>(i), variance));
      sum += pool.between_centre / studios;
      spread += std::sqrt(centre_trace(pool.spread)) / studios;
      for (std::size_t k = 0; k < 4; ++k) CHECK(pool.spread[k][k] >= pool.moved_covariance[k][k]);
    }
    INFO("scatter " << scatter << " known to " << variance << " found " << sum << " spread " << spread);
    CHECK(sum > 0.93 * scatter);
    // The assumed 5 counts as three paintings more, and the more the less is known of each.
    CHECK(sum < (variance < 1 ? 1.3 : 1.65) * scatter);
    CHECK(spread > 0.93 * scatter);
  }
}

TEST_CASE("few paintings widen nothing that they do not show", "[studio]") {
  for (const std::size_t count : {1u, 2u, 3u}) {
    const Pool pool = pool_paintings(stand_in, scattered(count, 1, 7));
    CHECK(centre_trace(pool.spread) <= centre_trace(stand_in) * 1.02);
    CHECK(pool.spread[3][3] <= stand_in[3][3] * 1.02);
  }
  // Paintings that lie far apart do.
  const Pool wide = pool_paintings(stand_in, scattered(12, 9, 8));
  CHECK(centre_trace(wide.spread) > 1.5 * centre_trace(stand_in));
}

TEST_CASE("the middle goes where the paintings lie", "[studio]") {
  const Pool one = pool_paintings(stand_in, scattered(1, 0.1, 3, 0.01));
  const Pool many = pool_paintings(stand_in, scattered(30, 2, 3));
  CHECK(one.moved[0] > 0.1);
  CHECK(one.moved[0] < 1.5);  // one painting is one painting
  CHECK(many.moved[0] == near(2, 0.7));
  CHECK(many.moved[1] == near(0, 0.7));
}

TEST_CASE("paintings in another order teach the same", "[studio]") {
  std::vector<PaintingSays> paintings = scattered(9, 3, 21);
  const Pool forward = pool_paintings(stand_in, paintings);
  std::reverse(paintings.begin(), paintings.end());
  const Pool backward = pool_paintings(stand_in, paintings);
  for (std::size_t i = 0; i < 4; ++i) CHECK(forward.moved[i] == near(backward.moved[i], 1e-9));
}
