// What a hazard statement says, in short words of ours.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <optional>
#include <string>

namespace gentlest {

inline constexpr const char* no_signal_word = "no signal word";
inline constexpr const char* goes_through_skin = "goes through the skin";

/// Our own plain words for a GHS hazard or EUH statement code, e.g. "catches fire very easily" for H225; empty when the
/// code is not in the table of the catalogue. The official wording stands on the safety data sheet.
std::string statement_words(const std::string& code);

/// One code with our words, e.g. "H225 catches fire very easily".
std::string statement_text(const std::string& code);

/// "H225 catches fire very easily; H319 ...", the supplemental codes too; or that there is no record.
std::string statements_text(const std::optional<Hazards>& hazards);

/// "Danger", "Warning", "no signal word", or that there is no record.
std::string signal_text(const std::optional<Hazards>& hazards);

}  // namespace gentlest
