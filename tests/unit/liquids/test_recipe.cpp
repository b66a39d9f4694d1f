#include "gentlest/liquids/recipe.hpp"

#include "gentlest/base/diagnostic.hpp"

#include "invented_shelf.hpp"

#include "report/bottle/liquid_words.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace gentlest;
using namespace gentlest::test;

namespace {

Mixture mixture_of_shares(const InventedShelf& shelf, const std::vector<double>& shares) {
  std::vector<Part> parts;
  for (std::size_t i = 0; i < shares.size(); ++i) parts.push_back({shelf.liquids[i], shares[i]});
  return Mixture(std::move(parts));
}

std::vector<double> volumes_of(const Recipe& recipe) {
  std::vector<double> volumes;
  for (const RecipeLine& line : recipe.lines) volumes.push_back(line.volume.value);
  return volumes;
}

}  // namespace

TEST_CASE("volumes by hand") {
  const InventedShelf shelf(3, 1);
  CHECK(volumes_of(round_recipe(mixture_of_shares(shelf, {0.85, 0.15}), {{10}, {0.5}})) ==
        std::vector<double>{8.5, 1.5});
  // 5 mL in half millilitres: 4.25 and 0.75 round to 4.5 + 0.5 or 4 + 1; a tie goes to the larger part.
  const Recipe tie = round_recipe(mixture_of_shares(shelf, {0.85, 0.15}), {{5}, {0.5}});
  CHECK(volumes_of(tie) == std::vector<double>{4.5, 0.5});
  CHECK(tie.largest_change == Approx(0.05));
  // Thirds of 10 mL in half millilitres: 3.5 + 3.5 + 3.
  const Recipe thirds = round_recipe(mixture_of_shares(shelf, {1.0 / 3, 1.0 / 3, 1.0 / 3}), {{10}, {0.5}});
  CHECK(volumes_of(thirds) == std::vector<double>{3.5, 3.5, 3});
  // 2 % of 5 mL is 0.1 mL: below half a millilitre, so it becomes one step and the mixture another one.
  const Recipe little = round_recipe(mixture_of_shares(shelf, {0.98, 0.02}), {{5}, {0.5}});
  CHECK(volumes_of(little) == std::vector<double>{4.5, 0.5});
  CHECK(little.as_measured.parts()[1].fraction == Approx(0.1));
  CHECK(little.largest_change == Approx(0.08));
}

TEST_CASE("a vial that is no whole number of steps is filled as far as steps reach") {
  const InventedShelf shelf(2, 1);
  const Recipe recipe = round_recipe(mixture_of_shares(shelf, {0.6, 0.4}), {{7.3}, {0.5}});
  CHECK(recipe.total.value == Approx(7));
  CHECK(volumes_of(recipe) == std::vector<double>{4, 3});
}

TEST_CASE("drops are counted, not poured") {
  const InventedShelf shelf(2, 1);
  const Recipe recipe = round_recipe(mixture_of_shares(shelf, {0.95, 0.05}), {{1}, {drop_mL}});
  CHECK(recipe_words(recipe) == "liquid a 19 drops + liquid b 1 drop");
  CHECK(recipe_words(round_recipe(mixture_of_shares(shelf, {0.95, 0.05}), {{10}, {0.1}})) ==
        "liquid a 9.5 mL + liquid b 0.5 mL");
}

TEST_CASE("whatever the shares: volumes add up, are measurable, and are off by less than a step") {
  InventedShelf shelf(4, 7);
  for (int round = 0; round < 500; ++round) {
    std::vector<double> shares;
    double sum = 0;
    for (int i = 0; i < 4; ++i) sum += shares.emplace_back(shelf.between(0.001, 1));
    for (double& share : shares) share /= sum;
    const Mixture mixture = mixture_of_shares(shelf, shares);
    const Measuring measuring{{10}, {round % 2 == 0 ? 0.5 : 0.1}};
    const Recipe recipe = round_recipe(mixture, measuring);
    double total = 0;
    bool any_too_small = false;
    for (std::size_t i = 0; i < recipe.lines.size(); ++i) {
      const double wanted = mixture.parts()[i].fraction * 10;
      CHECK(recipe.lines[i].volume.value >= measuring.step.value - 1e-12);
      any_too_small = any_too_small || wanted < measuring.step.value;
      total += recipe.lines[i].volume.value;
    }
    CHECK(total == Approx(10).epsilon(1e-12));
    if (!any_too_small) CHECK(recipe.largest_change * 10 < measuring.step.value);
  }
}

TEST_CASE("totals of a session") {
  const InventedShelf shelf(3, 1);
  const std::vector<Recipe> recipes = {round_recipe(mixture_of_shares(shelf, {0.85, 0.15}), {{10}, {0.5}}),
                                       round_recipe(mixture_of_shares(shelf, {0.5, 0.3, 0.2}), {{10}, {0.5}})};
  const std::vector<SessionTotal> totals = session_totals(recipes);
  REQUIRE(totals.size() == 3);
  CHECK(totals[0].label == "liquid a");
  CHECK(totals[0].volume.value == Approx(13.5));
  CHECK(totals[1].volume.value == Approx(4.5));
  CHECK(totals[2].volume.value == Approx(2));
}

TEST_CASE("topping up keeps the balance of mass: what was in the vial and what comes in is what the share says") {
  CHECK(top_up(Millilitres{10}, 0.3, 0.45).value == Approx(1.5 / 0.55));  // (3 + x) / (10 + x) = 0.45
  CHECK(top_up(Millilitres{10}, 0, 0).value == 0);
  for (int from = 0; from < 100; from += 7)
    for (int to = from; to < 100; to += 5) {
      const double volume = 4.0 + to;
      const double added = top_up(Millilitres{volume}, from / 100.0, to / 100.0).value;
      CHECK((volume * from / 100.0 + added) / (volume + added) == Approx(to / 100.0));
    }
}

TEST_CASE("vials that cannot be filled are refused") {
  const InventedShelf shelf(3, 1);
  const Mixture mixture = mixture_of_shares(shelf, {0.5, 0.3, 0.2});
  CHECK_THROWS_AS(round_recipe(mixture, {{1}, {0.5}}), InputError);
  CHECK_THROWS_AS(round_recipe(mixture, {{0}, {0.5}}), InputError);
  CHECK_THROWS_AS(round_recipe(mixture, {{10}, {0}}), InputError);
  CHECK_THROWS_AS(round_recipe(mixture, {{10}, {-1}}), InputError);
  CHECK_THROWS_AS(round_recipe(mixture, {{std::nan("")}, {0.5}}), InputError);
  CHECK_THROWS_AS(round_recipe(mixture, {{0.1}, {0.5}}), InputError);
}
