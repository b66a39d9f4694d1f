// What a mixture does to the person, and which bottles are the worst or not wanted at all, in short words.
#pragma once

#include "gentlest/answers/bench.hpp"

#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* person_heading = "For the person";

/// What the label's worst statement says: "makes drowsy or dizzy"; "no statement for the person", and that more may
/// come where a part has no record.
std::string worst_words(const PersonHazard& hazard);

/// "goes through the skin", "dries the skin", ...
std::string skin_words(const PersonHazard& hazard);

/// The vapour hazard ratio by that list, "vapour 45 times its limit"; or for which parts no limit is known.
std::string vapour_words(const PersonHazard& hazard, const std::string& authority);

/// For the whole ladder: the gravest bottles or that none is one, what is not known, bottles to put away, the air of a
/// session. Each a sentence.
std::vector<std::string> person_sentences(const Bench& bench);

}  // namespace gentlest
