// What the files of this room share. Internal to core.
#pragma once

#include <string>

namespace gentlest {

/// Adds a word to "patchy, smeared" unless it stands there.
void add_word(std::string& words, const std::string& word);

}  // namespace gentlest
