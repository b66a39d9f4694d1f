// What the files of this room share. Internal to core.
#pragma once

#include <cstddef>
#include <string>

namespace gentlest {

/// Longer texts are held against no regular expression: that recurses letter by letter and would exhaust the stack.
inline constexpr std::size_t longest_shape = 1000;

/// Adds a word to "patchy, smeared" unless it stands there.
void add_word(std::string& words, const std::string& word);

}  // namespace gentlest
