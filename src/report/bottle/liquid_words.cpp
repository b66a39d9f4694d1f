#include "report/bottle/liquid_words.hpp"

#include <fmt/format.h>

namespace gentlest {

std::string recipe_words(const Recipe& recipe) {
  const bool in_drops = is_in_drops(recipe.measuring);
  std::string text;
  for (const RecipeLine& line : recipe.lines) {
    if (!text.empty()) text += " + ";
    text += in_drops ? fmt::format("{} {} drop{}", line.liquid.label, line.steps, line.steps == 1 ? "" : "s")
                     : fmt::format("{} {:.6g} mL", line.liquid.label, line.volume.value);
  }
  return text;
}

std::string series_name(SeriesKind kind) {
  switch (kind) {
    case SeriesKind::feller:
      return "cyclohexane, toluene, acetone in 13 mixtures";
    case SeriesKind::hydrocarbon_ketone:
      return "ligroin to acetone in 10 % steps";
    case SeriesKind::hydrocarbon_alcohol:
      return "ligroin to ethanol in 10 % steps";
    case SeriesKind::own:
      return "own series";
  }
  return {};
}

std::string series_name(const Series& series) {
  return series.kind == SeriesKind::own ? series.name : series_name(series.kind);
}

std::string series_source(SeriesKind kind) {
  if (kind == SeriesKind::own) return "of this job";
  return kind == SeriesKind::feller ? "Feller 1976, from memory" : "as taught by Cremonesi, from memory";
}

}  // namespace gentlest
