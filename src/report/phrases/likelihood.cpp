#include "report/phrases/likelihood.hpp"

#include <array>
#include <cstddef>
#include <string_view>

namespace gentlest {

namespace {

struct Step {
  double below;
  std::string_view word;
};
constexpr std::array<Step, 4> steps = {{{0.15, "hardly"}, {0.5, "perhaps"}, {0.85, "likely"}, {2, "nearly sure"}}};

std::size_t step_of_chance(double chance) {
  std::size_t step = 0;
  while (step + 1 < steps.size() && chance >= steps[step].below) ++step;
  return step;
}

}  // namespace

std::string likelihood_word(double chance) {
  return std::string(steps[step_of_chance(chance)].word);
}

std::string likelihood_bar(double chance) {
  const std::size_t filled = step_of_chance(chance) + 1;
  return std::string(filled, '#') + std::string(steps.size() - filled, '.');
}

}  // namespace gentlest
