// What a plan without a window says of itself, in the same sentences on screen, on paper and for programs.
#pragma once

#include "gentlest/answers/bench.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// "No window." or "No ladder.", before the sentences below.
const char* no_rungs_heading(const Plan& plan);

/// That there is no ladder, what closes the window or why none can be worked out, and what is left; one sentence or two
/// each. Precondition: the plan has no rungs.
std::vector<std::string> no_window_sentences(const Plan& plan);

/// For programs: "window", "no window", "no ladder".
std::string outcome_word(Outcome outcome);

/// One word for programs: "layer", "shelf", "observations", "other limits".
std::string closed_by_word(WindowClosedBy closed_by);

/// That a mixture is beyond the risk limit, and so on no ladder; empty when it is not.
std::string beyond_limit_words(const JudgedMixture& judged, const Limits& limits);

/// Which mixtures of the bench get no card and no label, and why; empty when all do.
std::vector<std::string> left_out_words(const Plan& plan, const Bench& bench);

}  // namespace gentlest
