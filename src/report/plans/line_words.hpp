// The lines of a plan in words: why each is offered, what it gives up, how its active stock is mixed.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* other_lines_heading = "Other lines, of other families";

/// "gives_up_least" and the like, for programs.
std::string reason_word(LineReason reason);

/// The active stock: "acetone", or "3 parts ethanol + 1 part acetone".
std::string stock_words(const LadderLine& line);

/// Why the ladder is this one and what it gives up; empty of a walk that was asked for, and by effect alone.
std::vector<std::string> ladder_line_sentences(const Plan& plan);

/// "Line 2: isooctane with isopropanol (alcohol), 10 % more of it from rung to rung. Against the best ..."; `number`
/// from 1.
std::string line_sentence(const Plan& plan, std::size_t number);

/// How to see the best of the whole shelf; empty where that is what is shown.
std::string optimum_sentence(const Plan& plan);

}  // namespace gentlest
