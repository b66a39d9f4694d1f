#include "gentlest/conduct/typed_step.hpp"

#include "core/conduct/parts.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace gentlest {

namespace {

// Lower case words without commas between them; "3,5" is 3.5.
std::vector<std::string> plain_words(std::string_view text) {
  std::string plain = folded(text);
  for (std::size_t i = 0; i < plain.size(); ++i)
    if (plain[i] == ',') {
      const bool is_decimal = i > 0 && i + 1 < plain.size() && is_digit(plain[i - 1]) && is_digit(plain[i + 1]);
      plain[i] = is_decimal ? '.' : ' ';
    }
  std::vector<std::string> words;
  for (const std::string& word : words_in(plain))
    if (word != "of" && word != "on" && word != "no." && word != "no") words.push_back(word);
  return words;
}

std::string where_words(const Plan& plan, int line) {
  return line > 1 || plan.lines.size() > 1 ? fmt::format("line {}", line) : "the ladder";
}

}  // namespace

std::optional<TypedStep> typed_step(std::string_view text) {
  const std::vector<std::string> words = plain_words(text);
  std::optional<double> line, height;
  if (words.size() == 1) {
    height = amount_from(words.front());
  } else {
    if (words.size() % 2 != 0) return std::nullopt;
    for (std::size_t i = 0; i + 1 < words.size(); i += 2) {
      std::optional<double>* target = words[i] == "rung" ? &height : words[i] == "line" ? &line : nullptr;
      const std::optional<double> value = amount_from(words[i + 1]);
      if (!target || *target || !value) return std::nullopt;
      *target = value;
    }
  }
  if (!height || *height > 1000 || (line && (*line != std::floor(*line) || *line < 1 || *line > 1000)))
    return std::nullopt;
  return TypedStep{static_cast<int>(line.value_or(1)), *height};
}

Mixture mixture_of_step(const Plan& plan, const TypedStep& step) {
  constexpr double hair = 1e-9;
  const auto refuse = [](std::string message, std::string remedy) -> InputError {
    return InputError(Fault::usage, std::move(message), std::move(remedy));
  };
  if (plan.lines.empty()) throw refuse("the job has no ladder, so no rung has a mixture", "write the mixture itself");
  if (static_cast<std::size_t>(step.line) > plan.lines.size())
    throw refuse(fmt::format("the plan has no line {}", step.line),
                 fmt::format("it has {} {}", plan.lines.size(), plan.lines.size() == 1 ? "line" : "lines"));
  for (const PlanStep& one : plan_steps(plan))
    if (one.line + 1 == static_cast<std::size_t>(step.line) && std::abs(one.height - step.height) < hair)
      return one.mixture;
  const std::size_t rungs = plan.lines[static_cast<std::size_t>(step.line) - 1].rungs.size();
  const bool is_half = std::abs(step.height - std::floor(step.height) - 0.5) < hair && step.height > 1 &&
                       step.height < static_cast<double>(rungs);
  throw refuse(fmt::format("{} has no rung {}", where_words(plan, step.line), step.height),
               is_half ? "the job's measure is too coarse for this half step; write the mixture itself"
                       : fmt::format("its rungs are 1 to {}, and half steps between them such as 1.5", rungs));
}

}  // namespace gentlest
