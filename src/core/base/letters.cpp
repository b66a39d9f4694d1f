#include "gentlest/base/letters.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace gentlest {

namespace {

constexpr char32_t replacement = U'\uFFFD';

// Length of the letter that starts here, or 0 where none does.
std::size_t letter_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned>(static_cast<unsigned char>(text[i])) : 0u;
  };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned first = byte(at);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(at + 1) ? 2 : 0;
  const unsigned second = byte(at + 1);
  if (first >= 0xE0 && first <= 0xEF) {
    const bool overlong = first == 0xE0 && second < 0xA0;
    const bool surrogate = first == 0xED && second >= 0xA0;
    return follows(at + 1) && follows(at + 2) && !overlong && !surrogate ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const bool outside = (first == 0xF0 && second < 0x90) || (first == 0xF4 && second >= 0x90);
    return follows(at + 1) && follows(at + 2) && follows(at + 3) && !outside ? 4 : 0;
  }
  return 0;
}

}  // namespace

Letter letter_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<char32_t>(static_cast<unsigned char>(text[i])); };
  const std::size_t length = letter_length(text, at);
  if (length == 0) return {text.substr(at, 1), replacement};
  if (length == 1) return {text.substr(at, 1), byte(at)};
  char32_t code = byte(at) & (0xFFu >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) code = (code << 6) | (byte(at + i) & 0x3Fu);
  return {text.substr(at, length), code};
}

bool is_stray(const Letter& letter) {
  return letter.code == replacement && letter.bytes.size() == 1;
}

std::optional<std::size_t> first_stray_byte(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    if (is_stray(letter)) return at;
    at += letter.bytes.size();
  }
  return std::nullopt;
}

std::string with_strays_replaced(std::string_view text) {
  std::string clean;
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    clean += is_stray(letter) ? std::string_view("\xEF\xBF\xBD") : letter.bytes;
    at += letter.bytes.size();
  }
  return clean;
}

bool is_control(char32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0) || code == 0x2028 || code == 0x2029 ||
         (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

std::string with_controls_shown(std::string_view text, std::string_view kept) {
  std::string shown;
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    at += letter.bytes.size();
    if (is_stray(letter))
      shown += fmt::format("\\x{:02x}", static_cast<unsigned>(static_cast<unsigned char>(letter.bytes.front())));
    else if (!is_control(letter.code) || (letter.bytes.size() == 1 && kept.find(letter.bytes) != kept.npos))
      shown += letter.bytes;
    else if (letter.code == '\n')
      shown += "\\n";
    else if (letter.code < 0x100)
      shown += fmt::format("\\x{:02x}", static_cast<unsigned>(letter.code));
    else
      shown += fmt::format("\\u{:04x}", static_cast<unsigned>(letter.code));
  }
  return shown;
}

std::string base64(const std::string& bytes) {
  constexpr const char* signs = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    unsigned block = 0;
    const std::size_t here = std::min<std::size_t>(3, bytes.size() - i);
    for (std::size_t k = 0; k < 3; ++k)
      block = (block << 8) | (k < here ? static_cast<unsigned>(static_cast<unsigned char>(bytes[i + k])) : 0u);
    for (std::size_t k = 0; k < 4; ++k) text += k <= here ? signs[(block >> (18 - 6 * k)) & 63u] : '=';
  }
  return text;
}

bool is_base64(std::string_view text) {
  if (text.size() % 4 != 0) return false;
  for (int filler = 0; filler < 2 && !text.empty() && text.back() == '='; ++filler) text.remove_suffix(1);
  return std::all_of(text.begin(), text.end(), [](unsigned char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '+' || c == '/';
  });
}

}  // namespace gentlest
