// What a mixture does to the person, and which bottles are the worst or not wanted at all, in short words.
#pragma once

#include "gentlest/answers/bench.hpp"

#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* person_heading = "For the person";

/// What the label's worst statement says: "makes drowsy or dizzy"; "none recorded", and that more may come where a part
/// has no record.
std::string worst_words(const PersonHazard& hazard);

/// "goes through the skin", "dries and cracks the skin", ...
std::string skin_words(const PersonHazard& hazard);

/// The vapour hazard ratio by that list, "vapour 45 times its limit"; or for which parts no limit is known.
std::string vapour_words(const PersonHazard& hazard, const std::string& authority);

/// All three as one cell: "makes drowsy or dizzy; vapour 45 times its limit; dries and cracks the skin".
std::string person_words(const PersonHazard& hazard, const std::string& authority);

/// The first two of person_sentences, short enough for a first screen: whether a bottle is one of the gravest, and
/// which to put away.
std::vector<std::string> put_away_words(const Bench& bench);

/// For the whole ladder: the gravest bottles or that none is one, what is not known, bottles to put away, the air of a
/// session. Each a sentence.
std::vector<std::string> person_sentences(const Bench& bench);

}  // namespace gentlest
