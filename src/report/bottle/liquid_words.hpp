// Recipes and published series in words.
#pragma once

#include "gentlest/liquids/recipe.hpp"
#include "gentlest/liquids/series.hpp"

#include <string>

namespace gentlest {

/// "isooctane 8.5 mL + ethanol 96 % 1.5 mL", or in drops where the step is one drop.
std::string recipe_words(const Recipe& recipe);

/// "ligroin to acetone in 10 % steps".
std::string series_name(SeriesKind kind);
std::string series_name(const Series& series);

/// Who published it, with its standing: "Feller 1976, from memory".
std::string series_source(SeriesKind kind);

}  // namespace gentlest
