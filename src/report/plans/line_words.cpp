#include "report/plans/line_words.hpp"

#include "report/form/format.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numeric>

namespace gentlest {

namespace {

std::string points(double share) {
  return fixed(100 * share, 1) + " points";
}

std::string given_up_words(const LadderLine& line) {
  std::string text = fmt::format("Against the best of the whole shelf it gives up {} of effect on average",
                                 points(line.effect_given_up));
  if (line.risk_given_up)
    text += fmt::format(" and {} of risk at the first rung that works", points(*line.risk_given_up));
  return text + ".";
}

std::string steps_words(const LadderLine& line) {
  std::string text = fmt::format("{} with {} ({}), {} % more of it from rung to rung", line.bottles.front(),
                                 stock_words(line), line.family, line.step_percent);
  const std::vector<int>& percent = line.active_percent;
  if (percent.size() > 1 && percent[1] - percent[0] < line.step_percent)
    text += fmt::format(" ({} % in the first step)", percent[1] - percent[0]);
  return text;
}

std::string first_words(const LadderLine& line) {
  if (line.reason == LineReason::third_bottle)
    return fmt::format(
        "It comes first because a stock of two liquids comes more than {} of effect nearer to the best of "
        "the whole shelf than any line of two bottles.",
        fixed(100 * worth_a_third_bottle, 0) + " points");
  return "It comes first because no other line of two bottles comes clearly nearer to the best of the whole shelf; of "
         "those as near, its bottles carry the fewest hazards.";
}

std::string no_line_words(const Plan& plan) {
  return fmt::format(
      "No line from a gentle bottle towards an active one reaches an effect of {} within the limits before "
      "it passes a layer, so this is a walk over the best of the whole shelf: it cannot be topped up.",
      per_cent(plan.job.limits.wanted_effect));
}

// Layers from which the walk moves away somewhere, so that it ends beyond them; each by its name.
std::vector<std::string> layers_passed(const Plan& plan) {
  constexpr double seen = 0.005;  // what two decimals of RED show
  const std::vector<JudgedMixture>& rungs = plan.lines.front().rungs;
  std::vector<std::string> names;
  for (std::size_t layer = 0; layer < plan.layers.size(); ++layer)
    for (std::size_t i = 1; i < rungs.size(); ++i) {
      if (!rungs[i].outlooks[layer] || rungs[i].outlooks[layer]->RED < rungs[i - 1].outlooks[layer]->RED + seen)
        continue;
      names.push_back("\"" + plan.layers[layer].name + "\"");
      break;
    }
  return names;
}

std::vector<std::string> no_line_sentences(const Plan& plan) {
  std::vector<std::string> sentences = {no_line_words(plan)};
  const std::vector<std::string> passed = layers_passed(plan);
  if (!passed.empty())
    sentences.push_back(
        fmt::format("Somewhere it moves away from {}: there a mixture acts little because it lies beyond the layer's "
                    "range, which is "
                    "not gentleness, and of that side the least is known. Begin more carefully than the risk suggests.",
                    joined(passed)));
  return sentences;
}

}  // namespace

std::string reason_word(LineReason reason) {
  switch (reason) {
    case LineReason::frontier:
      return "best of the shelf";
    case LineReason::gives_up_least:
      return "gives up least";
    case LineReason::other_family:
      return "other family";
    case LineReason::only_bottle_known:
      return "by effect alone";
    case LineReason::third_bottle:
      return "third bottle gains";
  }
  return {};
}

std::string stock_words(const LadderLine& line) {
  if (!line.active) return {};
  const std::vector<Part>& parts = line.active->parts();
  if (parts.size() == 1) return parts.front().liquid.label;
  std::vector<int> quarters;
  for (const Part& part : parts) quarters.push_back(static_cast<int>(std::lround(4 * part.fraction)));
  const int common = std::gcd(quarters.front(), quarters.back());
  std::vector<std::string> words;
  for (std::size_t i = 0; i < parts.size(); ++i)
    words.push_back(counted(static_cast<std::size_t>(quarters[i] / common), "part", "parts") + " " +
                    parts[i].liquid.label);
  return "a stock of " + joined(words, " + ");
}

std::vector<std::string> ladder_line_sentences(const Plan& plan) {
  if (plan.lines.empty() || plan.by_effect_alone) return {};
  const LadderLine& line = plan.lines.front();
  if (!line.active) {
    if (plan.job.limits.lines == 0) return {};
    return no_line_sentences(plan);
  }
  return {fmt::format("This ladder is a line: {}. {}", steps_words(line), first_words(line)), given_up_words(line)};
}

std::string line_sentence(const Plan& plan, std::size_t number) {
  const LadderLine& line = plan.lines[number - 1];
  return fmt::format("Line {}: {}. {}", number, steps_words(line), given_up_words(line));
}

std::string optimum_sentence(const Plan& plan) {
  if (plan.lines.empty() || !plan.lines.front().active) return {};
  return "The best of the whole shelf, with other bottles at every rung: --lines 0.";
}

}  // namespace gentlest
