// What an examination means, in words: for its own page and for whoever tells it in passing.
#pragma once

#include "gentlest/examination/examination.hpp"
#include "gentlest/plan/plan.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// "go", "not yet", "do not".
std::string verdict_word(ExaminationVerdict verdict);

/// One sentence or two: the verdict and what it rests on.
std::string verdict_sentence(const Examination& examination);

/// What comes before any test on the picture, or forbids it; a line each.
std::vector<std::string> first_lines(const Examination& examination);

/// What the findings change in the plan: left out, left off, lowered, tried first; a line each.
std::vector<std::string> consequence_lines(const Examination& examination);

/// What one answer does, short: "leaves the places out"; empty where it only says something.
std::string effect_words(const ExaminationAnswer& answer);

/// Of why a question is asked: citation with its place, or "common practice, no source".
std::string reason_source(const ExaminationQuestion& question, const Catalogue& catalogue);

/// "flaking (lower left corner)".
std::string topic_and_place(const WeighedAnswer& weighed);

}  // namespace gentlest
