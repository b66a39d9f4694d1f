#include "report/letters.hpp"

#include <cstddef>

namespace gentlest {

Letter letter_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<char32_t>(static_cast<unsigned char>(text[i])); };
  const Letter stray{text.substr(at, 1), U'\uFFFD'};
  const char32_t first = byte(at);
  if (first < 0x80) return {text.substr(at, 1), first};
  if (first < 0xC0 || first >= 0xF8) return stray;
  const std::size_t length = first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
  if (at + length > text.size()) return stray;
  char32_t code = first & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0u) != 0x80u) return stray;
    code = (code << 6) | (byte(at + i) & 0x3Fu);
  }
  return {text.substr(at, length), code};
}

}  // namespace gentlest
