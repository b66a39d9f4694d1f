// The exact projection against an exact quadratic program, and the refined mixture against a fine grid.
#include "gentlest/search/certificate.hpp"

#include "small_shelf.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>
#include <cmath>

#ifdef GENTLEST_HAVE_CGAL
#include <CGAL/Gmpq.h>
#include <CGAL/QP_functions.h>
#include <CGAL/QP_models.h>
#endif

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::vector<Hansen> random_liquids(Dice& dice, std::size_t count) {
  std::vector<Hansen> liquids;
  for (const Liquid& liquid : small_shelf(dice, count)) liquids.push_back(liquid.hansen);
  return liquids;
}

Hansen random_aim(Dice& dice) {
  const double dD = dice.between(14, 18);
  const double dP = dice.between(-2, 8);
  return {dD, dP, dice.between(-2, 9)};
}

}  // namespace

#ifdef GENTLEST_HAVE_CGAL
namespace {

// Least squared Ra over all fractions that are not negative and add up to 1, in rational numbers.
double least_Ra(const std::vector<Hansen>& liquids, const Hansen& aim) {
  using Exact = CGAL::Gmpq;
  CGAL::Quadratic_program<Exact> program(CGAL::EQUAL, true, 0, false, 0);
  std::vector<std::array<Exact, 3>> places;
  for (const Hansen& liquid : liquids)
    places.push_back({Exact(2) * (Exact(liquid.dD) - Exact(aim.dD)), Exact(liquid.dP) - Exact(aim.dP),
                      Exact(liquid.dH) - Exact(aim.dH)});
  for (std::size_t i = 0; i < places.size(); ++i) {
    program.set_a(static_cast<int>(i), 0, 1);
    for (std::size_t j = 0; j <= i; ++j)  // the program minimises half of x D x
      program.set_d(
          static_cast<int>(i), static_cast<int>(j),
          Exact(2) * (places[i][0] * places[j][0] + places[i][1] * places[j][1] + places[i][2] * places[j][2]));
  }
  program.set_b(0, 1);
  const auto solution = CGAL::solve_quadratic_program(program, Exact());
  REQUIRE(solution.is_optimal());
  return std::sqrt(std::max(CGAL::to_double(solution.objective_value()), 0.0));
}

}  // namespace

TEST_CASE("nearest blend: the exact quadratic program finds the same distance") {
  Dice dice(11);
  for (int round = 0; round < 400; ++round) {
    const std::size_t count = static_cast<std::size_t>(dice.pick(1, round % 10 == 0 ? 12 : 4));
    const std::vector<Hansen> liquids = random_liquids(dice, count);
    const Hansen aim = random_aim(dice);
    INFO("round " << round << " liquids " << count);
    CHECK(nearest_blend(liquids, aim).Ra == near(least_Ra(liquids, aim), 1e-9));
  }
}
#endif

TEST_CASE("nearest blend: fractions are a mixture, and no liquid lies farther towards the aim") {
  Dice dice(12);
  for (int round = 0; round < 500; ++round) {
    const std::vector<Hansen> liquids = random_liquids(dice, static_cast<std::size_t>(dice.pick(1, 20)));
    const Hansen aim = random_aim(dice);
    const Blend blend = nearest_blend(liquids, aim);
    double sum = 0;
    for (const double fraction : blend.fractions) {
      CHECK(fraction >= 0);
      sum += fraction;
    }
    CHECK(sum == Approx(1).epsilon(1e-12));
    // The necessary and sufficient condition for the nearest point of a hull.
    const Hansen& x = blend.point;
    for (const Hansen& p : liquids) {
      const double towards =
          4 * (aim.dD - x.dD) * (p.dD - x.dD) + (aim.dP - x.dP) * (p.dP - x.dP) + (aim.dH - x.dH) * (p.dH - x.dH);
      CHECK(towards <= 1e-9);
    }
  }
}

TEST_CASE("nearest blend by hand: a corner, the middle of a segment, a point inside") {
  const std::vector<Hansen> corners = {{15, 0, 0}, {17, 0, 0}, {16, 4, 0}, {16, 2, 5}};
  CHECK(nearest_blend(corners, {14, -1, -1}).fractions == std::vector<double>{1, 0, 0, 0});
  CHECK(nearest_blend({corners[0], corners[1]}, {16, 3, 0}).fractions == std::vector<double>{0.5, 0.5});
  CHECK(nearest_blend(corners, {16, 1.5, 1}).Ra == near(0, 1e-12));
}

TEST_CASE("the refined mixture is no worse than the rung and than a 0.25 % grid of the same bottles") {
  Dice dice(13);
  for (int round = 0; round < 12; ++round) {
    const std::vector<ChanceField> fields = small_fields(dice, 3);
    SearchTask task;
    task.shelf = small_shelf(dice, 3);
    task.target.push_back(fields[0]);
    task.kept = {fields[1], fields[2]};
    const std::vector<std::uint16_t> bottles = {0, 1, 2};
    const std::vector<Candidate> frontier = find_frontier(task);
    const Candidate& rung = frontier[frontier.size() / 2];
    const Certificate certificate = certify(task, rung, bottles, {17, 3, 4});
    CHECK(certificate.risk_given_up >= 0);
    CHECK(certificate.verdict.effect >= rung.verdict.effect);
    double least = rung.verdict.risk;
    for (int a = 0; a <= 400; ++a)
      for (int b = 0; a + b <= 400; ++b) {
        const double c = 400 - a - b;
        const Hansen &A = task.shelf[0].hansen, &B = task.shelf[1].hansen, &C = task.shelf[2].hansen;
        const Verdict verdict =
            judge(task, {(a * A.dD + b * B.dD + c * C.dD) / 400, (a * A.dP + b * B.dP + c * C.dP) / 400,
                         (a * A.dH + b * B.dH + c * C.dH) / 400});
        if (verdict.effect >= rung.verdict.effect) least = std::min(least, verdict.risk);
      }
    INFO("round " << round);
    CHECK(certificate.verdict.risk <= least + 2e-5);
  }
}
