// Enumerators and the words that files use for them, as a table of pairs. Internal to core.
#pragma once

#include <optional>
#include <string_view>

namespace gentlest {

template <class Words, class Enum>
std::string_view word_of(const Words& words, Enum value) {
  for (const auto& [known, word] : words)
    if (known == value) return word;
  return {};
}

template <class Enum, class Words>
std::optional<Enum> value_of(const Words& words, std::string_view text) {
  for (const auto& [value, word] : words)
    if (word == text) return value;
  return std::nullopt;
}

}  // namespace gentlest
