// What every reader of typed text needs: names that fold alike, numbers written plainly.
#pragma once

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

inline std::string_view trimmed(std::string_view text) {
  const auto is_space = [](char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; };
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
  while (!text.empty() && is_space(text.back())) text.remove_suffix(1);
  return text;
}

/// What stands between the dividers, trimmed; nothing of what is empty.
inline std::vector<std::string> items_of(std::string_view text, std::string_view dividers) {
  std::vector<std::string> items;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(dividers), text.size());
    if (const std::string_view item = trimmed(text.substr(0, end)); !item.empty()) items.emplace_back(item);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return items;
}

/// Lower case (ASCII letters only) and trimmed: two names that fold alike are the same name.
inline std::string folded(std::string_view text) {
  std::string out(trimmed(text));
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

/// A word of the files as a person reads it: "solubility_trend" is "solubility trend".
inline std::string with_blanks(std::string_view word) {
  std::string out(word);
  std::replace(out.begin(), out.end(), '_', ' ');
  return out;
}

/// ASCII only, whatever the locale.
inline bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// What blanks part.
inline std::vector<std::string> words_in(std::string_view text) {
  std::istringstream in{std::string(text)};
  std::vector<std::string> words;
  for (std::string word; in >> word;) words.push_back(word);
  return words;
}

/// A plain decimal number with a point, or nothing: no hexadecimal, no "nan", no text after it.
inline std::optional<double> number_from(std::string_view text) {
  const bool plain = !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= '0' && c <= '9') || c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E';
  });
  if (!plain || text.find_first_of("0123456789") == std::string_view::npos) return std::nullopt;
  const std::string copy(text);
  char* end = nullptr;
  const double value = std::strtod(copy.c_str(), &end);
  if (end != copy.c_str() + copy.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

/// A number of digits and at most a point, as amounts and chances are typed: no sign, no exponent.
inline std::optional<double> amount_from(std::string_view text) {
  if (text.find_first_not_of("0123456789.") != std::string_view::npos) return std::nullopt;
  return number_from(text);
}

/// "a, b and c", with `last` as "and".
template <class Words>
std::string enumerated(const Words& words, std::string_view last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0 && i + 1 == words.size())
      text.append(" ").append(last).append(" ");
    else if (i > 0)
      text += ", ";
    text += words[i];
  }
  return text;
}

}  // namespace gentlest
