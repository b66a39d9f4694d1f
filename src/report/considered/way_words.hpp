// Other ways in words. What a record says is printed as it stands there; here is what the answer says around it.
#pragma once

#include "gentlest/ways/ways.hpp"

#include <string>
#include <utility>
#include <vector>

namespace gentlest {

inline constexpr const char* no_promise =
    "This program models none of these ways and promises nothing of them. It says what people consider, in our words, "
    "and who says so. Test first, where harm matters least; the licensed conservator decides.";

/// "Solvent gels".
std::string kind_title(WayKind kind);

/// What holds here, a phrase for behind "here: ", and with the names: "a layer to keep bears no water (azurite)".
std::string occasion_words(const OccasionHere& here);

/// The short word for what brings a way up or speaks against it.
std::string occasion_word(Occasion occasion);

/// "not known" where the record says nothing.
std::string or_not_known(const std::string& text);

/// Titles and texts of one way, in the order in which they are shown, without its name and its sources.
std::vector<std::pair<std::string, std::string>> fields_of(const OtherWay& way);

/// "seen", "from memory", "common practice, no source", with our confidence and doubt: "seen, our confidence medium".
std::string standing_words(const OtherWay& way);

/// Citations of the way's sources. What the trade does and what we recall has none.
std::vector<std::string> citations_of(const OtherWay& way, const std::vector<Source>& sources);

}  // namespace gentlest
