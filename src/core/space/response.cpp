#include "gentlest/space/response.hpp"

#include <cassert>
#include <cmath>

namespace gentlest {

namespace {

// Chance of stopping at this stage; at RED 0 the logarithm runs to minus infinity and the chance to 1.
double stage_chance(const Response::Stage& stage, double red) {
  if (red <= 0) return 1;
  return 1 / (1 + std::exp(-(stage.intercept + stage.slope * std::log(red))));
}

}  // namespace

std::array<double, grade_count> grade_chances(const Response& response, double red) {
  assert(red >= 0);
  std::array<double, grade_count> chances{};
  double not_yet = 1;
  for (std::size_t stage = 0; stage < response.stages.size(); ++stage) {
    const double here = stage_chance(response.stages[stage], red);
    chances[stage] = not_yet * here;
    not_yet *= 1 - here;
  }
  chances.back() = not_yet;
  for (int grade = 1; grade < response.strongest; ++grade) {
    chances[static_cast<std::size_t>(grade)] += chances[static_cast<std::size_t>(grade - 1)];
    chances[static_cast<std::size_t>(grade - 1)] = 0;
  }
  return chances;
}

double chance_at_most(const Response& response, int grade, double red) {
  assert(red >= 0 && grade >= 1 && grade <= grade_count);
  if (grade >= grade_count) return 1;
  if (grade < response.strongest) return 0;
  double weaker = 1;
  for (std::size_t stage = 0; stage < static_cast<std::size_t>(grade); ++stage)
    weaker *= 1 - stage_chance(response.stages[stage], red);
  return 1 - weaker;
}

}  // namespace gentlest
