// Activity coefficients against published worked examples, and properties that hold whatever the figures.
#include "gentlest/catalogue/activity.hpp"

#include "csv.hpp"
#include "shipped.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <cmath>
#include <sstream>

using namespace gentlest;
using namespace gentlest::test;

namespace {

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, at);) parts.push_back(part);
  return parts;
}

Groups groups_from(const std::string& text) {
  Groups groups;
  for (const std::string& group : split(text, ' ')) {
    const std::vector<std::string> cells = split(group, ':');
    groups.push_back({std::stoi(cells.at(0)), std::stoi(cells.at(1))});
  }
  return groups;
}

std::vector<double> numbers_from(const std::string& text) {
  std::vector<double> numbers;
  for (const std::string& cell : split(text, ';')) numbers.push_back(std::stod(cell));
  return numbers;
}

const Groups ethanol = {{1, 1}, {2, 1}, {14, 1}};
const Groups heptane = {{1, 2}, {2, 5}};
const Groups water = {{16, 1}};

// Gibbs-Duhem along a line of compositions: sum x_i d ln gamma_i = 0, by central differences.
double gibbs_duhem_defect(const Activity& activity, double x) {
  const double step = 1e-5;
  const std::vector<double> above = activity.ln_gamma({x + step, 1 - x - step});
  const std::vector<double> below = activity.ln_gamma({x - step, 1 - x + step});
  return (x * (above[0] - below[0]) + (1 - x) * (above[1] - below[1])) / (2 * step);
}

}  // namespace

TEST_CASE("published worked examples of the original UNIFAC") {
  const std::vector<Row> rows = read_table("unifac_examples.csv");
  REQUIRE(rows.size() == 7);
  for (const Row& row : rows) {
    INFO(row.at("case"));
    std::vector<Groups> molecules;
    for (const std::string& text : split(row.at("components"), ';')) molecules.push_back(groups_from(text));
    const auto activity = activity_of(molecules, shipped_catalogue().chemistry().unifac, number(row, "T_K"));
    REQUIRE(activity);
    const std::vector<double> published = numbers_from(row.at("gamma"));
    const std::vector<double> ours = activity->ln_gamma(numbers_from(row.at("x")));
    REQUIRE(ours.size() == published.size());
    for (std::size_t i = 0; i < ours.size(); ++i)
      CHECK(std::exp(ours[i]) == near(published[i], number(row, "tolerance")));
  }
}

TEST_CASE("activity coefficients are one for a pure liquid and obey Gibbs and Duhem, in both sets") {
  for (const GroupTable* table :
       {&shipped_catalogue().chemistry().unifac, &shipped_catalogue().chemistry().unifac_modified}) {
    const Activity activity({ethanol, heptane}, *table, 298.15);
    CHECK(activity.ln_gamma({1, 0})[0] == near(0, 1e-12));
    CHECK(activity.ln_gamma({0, 1})[1] == near(0, 1e-12));
    CHECK(activity.ln_gamma({0, 1})[0] > 2);  // ethanol is far from at home in heptane
    for (const double x : {0.05, 0.3, 0.7, 0.95}) CHECK(gibbs_duhem_defect(activity, x) == near(0, 1e-7));
  }
}

TEST_CASE("a liquid mixed with itself is ideal, and the order of the molecules does not matter") {
  const GroupTable& table = shipped_catalogue().chemistry().unifac;
  const Activity twice({ethanol, ethanol}, table, 300);
  for (const double value : twice.ln_gamma({0.3, 0.7})) CHECK(value == near(0, 1e-12));
  const std::vector<double> there = Activity({ethanol, heptane, water}, table, 300).ln_gamma({0.2, 0.5, 0.3});
  const std::vector<double> back = Activity({water, heptane, ethanol}, table, 300).ln_gamma({0.3, 0.5, 0.2});
  for (std::size_t i = 0; i < 3; ++i) CHECK(there[i] == Approx(back[2 - i]).epsilon(1e-12));
}

TEST_CASE("figures that are not published make the answer not known") {
  const GroupTable& table = shipped_catalogue().chemistry().unifac;
  CHECK(missing_for_activity({ethanol, heptane}, table).empty());
  CHECK(missing_for_activity({ethanol, {}}, table) == std::vector<ActivityGap>{{ActivityGap::What::molecule, 1}});
  CHECK_FALSE(activity_of({ethanol, {}}, table, 300));
  CHECK_FALSE(activity_of({}, table, 300));
  const Groups unheard = {{9999, 1}};
  CHECK(missing_for_activity({unheard}, table) == std::vector<ActivityGap>{{ActivityGap::What::subgroup, 9999}});
  // Water with siloxane oxygen: the original set prints no figures for main groups 7 and 43.
  const Groups siloxane = {{1, 8}, {84, 4}};
  REQUIRE(find_subgroup(table, 84));
  REQUIRE_FALSE(find_interaction(table, 7, find_subgroup(table, 84)->main_group));
  CHECK_FALSE(activity_of({water, siloxane}, table, 300));
}
