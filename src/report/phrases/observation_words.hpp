// What was seen of a liquid on a material, in words, and how it compares with the chance beside it.
#pragma once

#include "gentlest/answers/observed.hpp"

#include <string>

namespace gentlest {

inline constexpr const char* observed_heading = "What was seen, beside the chance that the program gives";

/// "isooctane 50, ethanol 50" by the solvents' names, or what the source says instead.
std::string liquid_in_words(const Observation& seen, const Catalogue& catalogue);

/// "dissolves", "came off"; what is told in words where there is no result.
std::string result_in_words(const Observation& seen);

/// "grade 1 to 2"; empty where nothing is graded.
std::string grades_in_words(const Observation& seen);

/// "swab, seconds"; "contact not told".
std::string contact_in_words(const Observation& seen);

/// "held generally", "several samples", "one sample".
std::string generality_in_words(Generality generality);

/// "agrees", "open", "disagrees", or "not judged: no sphere" where there is no chance.
std::string agreement_in_words(const JudgedObservation& judged);

/// One word for machines; empty where there is none.
std::string agreement_word(const JudgedObservation& judged);
std::string not_judged_word(const JudgedObservation& judged);

/// Where the source says so, then our note; either may be missing.
std::string remark_text(const Observation& seen);

/// What the columns of chances mean and when an observation disagrees.
std::string observed_legend();

}  // namespace gentlest
