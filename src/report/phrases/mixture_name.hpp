// What a mixture is called, worded from where it comes from; on screen, on paper, in the pictures and for programs.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <string>

namespace gentlest {

/// What a place in the plan is called: "rung 3", "line 2, rung 3.5"; in a column of mixtures without the word.
std::string origin_name(const Origin& origin);
std::string origin_short_name(const Origin& origin);

/// In a column of mixtures: "3" of a rung or of a step of a series, "3.1" of a finer step, words of the others; of a
/// tested one the recipe.
std::string short_name(const JudgedMixture& judged);

/// In a sentence or as a heading: "rung 3"; others as short_name.
std::string mixture_name(const JudgedMixture& judged);

/// The same of what the plan holds; empty for all else.
std::string name_in_plan(const JudgedMixture& judged);

}  // namespace gentlest
