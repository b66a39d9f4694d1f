// Letters of UTF-8 text, one after the other.
#pragma once

#include <string_view>

namespace gentlest {

struct Letter {
  std::string_view bytes;
  char32_t code = 0;
};

/// The letter that begins at a byte of the text; a byte that begins none counts as a letter of its own, U+FFFD.
Letter letter_at(std::string_view text, std::size_t at);

}  // namespace gentlest
