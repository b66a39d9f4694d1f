#include "gentlest/base/text.hpp"
#include "gentlest/liquids/notation.hpp"

#include <array>
#include <utility>

namespace gentlest {

namespace {

// As it may be typed, and as the log keeps it.
constexpr std::array<std::pair<std::string_view, std::string_view>, 8> blank_words = {
    {{"dry swab", "dry swab"},
     {"dry", "dry swab"},
     {"saliva", "saliva"},
     {"spit", "saliva"},
     {"water", "water"},
     {"deionised water", "deionised water"},
     {"deionized water", "deionized water"},
     {"blank", "blank"}}};
constexpr std::array<std::string_view, 2> own_prefixes = {"aqueous:", "solution:"};

// The name behind "aqueous:"; empty where it is none.
std::string_view own_name(std::string_view text) {
  const std::string_view plain = trimmed(text);
  for (const std::string_view prefix : own_prefixes)
    if (folded(plain.substr(0, prefix.size())) == prefix) return trimmed(plain.substr(prefix.size()));
  return {};
}

}  // namespace

std::optional<NoMixture> no_mixture_from(std::string_view text) {
  const std::string plain = folded(text);
  for (const auto& [word, kept] : blank_words)
    if (plain == word) return NoMixture::blank;
  return own_name(text).empty() ? std::nullopt : std::optional(NoMixture::aqueous);
}

std::string no_mixture_text(std::string_view text) {
  const std::string_view name = own_name(text);
  if (!name.empty()) return "aqueous: " + std::string(name);
  const std::string plain = folded(text);
  for (const auto& [word, kept] : blank_words)
    if (plain == word) return std::string(kept);
  return plain;
}

}  // namespace gentlest
