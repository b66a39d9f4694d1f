// The nine hazard pictograms of the GHS, drawn by us: a red diamond with a plain black symbol.
#pragma once

#include <string>
#include <vector>

namespace gentlest {

/// What the symbol shows, e.g. "flame" for GHS02; empty for a code that is none.
std::string pictogram_words(const std::string& code);

/// A hidden element with the symbols of these codes, to stand once on a page before they are used.
std::string pictogram_definitions(const std::vector<std::string>& codes);

/// One pictogram that was defined on the page.
std::string pictogram(const std::string& code);

/// All nine codes.
const std::vector<std::string>& pictogram_codes();

}  // namespace gentlest
