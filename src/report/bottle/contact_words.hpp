// How long, how often, when to look again and with what to clear, in words for a card.
#pragma once

#include "gentlest/answers/contact.hpp"

#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* contact_heading = "How each test is made";

/// "at most 20 s, look at swab and spot every 5 rolls".
std::string contact_words(const SwabContact& contact);

/// "clear with isooctane, where that alone did nothing, then a dry swab", or "clear with a dry swab".
std::string clearing_words(const SwabContact& contact);

/// When to look again: dry and next day; after a week too where a liquid may stay.
std::string look_again_words(const SwabContact& contact);

/// All of it in one line of a card: "20 s at most, look every 5 rolls; clear: isooctane, dry swab; again: dry, next
/// day".
std::string contact_in_short(const SwabContact& contact);

/// "white spirit dries slowly, about 5 times as long as n-butyl acetate"; each a sentence; empty where none is slow.
std::vector<std::string> slow_words(const SwabContact& contact);

/// "white spirit: slow", "benzyl alcohol: stays in the film"; for a table.
std::string slow_mark(const SwabContact& contact);

}  // namespace gentlest
