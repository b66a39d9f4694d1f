#include "io/table_text.hpp"

#include "gentlest/base/letters.hpp"
#include "io/files.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace gentlest {

namespace {

// Windows-1252 from 0x80 to 0x9F; 0 where it has no letter. Source: the table of the Unicode Consortium, CP1252.TXT.
constexpr std::array<char32_t, 32> high_controls = {0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                                    0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                                    0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                    0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

void add_letter(std::string& text, char32_t code) {
  const auto byte = [&](char32_t value) { text += static_cast<char>(static_cast<unsigned char>(value)); };
  if (code < 0x80) return byte(code);
  if (code < 0x800) {
    byte(0xC0u | (code >> 6));
  } else if (code < 0x10000) {
    byte(0xE0u | (code >> 12));
    byte(0x80u | ((code >> 6) & 0x3Fu));
  } else {
    byte(0xF0u | (code >> 18));
    byte(0x80u | ((code >> 12) & 0x3Fu));
    byte(0x80u | ((code >> 6) & 0x3Fu));
  }
  byte(0x80u | (code & 0x3Fu));
}

// What spreadsheets call "Unicode text". Half a pair of surrogates or half a letter at the end becomes a NUL, which no
// text holds. Source: RFC 2781.
std::string from_utf16(std::string_view bytes) {
  const bool low_first = bytes[0] == '\xFF';
  const auto unit_at = [&](std::size_t i) -> char32_t {
    if (i + 1 >= bytes.size()) return 0;
    const auto first = static_cast<unsigned char>(bytes[i]);
    const auto second = static_cast<unsigned char>(bytes[i + 1]);
    return low_first ? first | char32_t{second} << 8 : char32_t{first} << 8 | second;
  };
  std::string text;
  for (std::size_t i = 2; i < bytes.size(); i += 2) {
    const char32_t unit = unit_at(i);
    const bool leads = unit >= 0xD800 && unit < 0xDC00;
    const char32_t next = leads ? unit_at(i + 2) : 0;
    if (next >= 0xDC00 && next < 0xE000) {
      add_letter(text, 0x10000 + ((unit - 0xD800) << 10) + (next - 0xDC00));
      i += 2;
    } else {
      add_letter(text, unit >= 0xD800 && unit < 0xE000 ? 0 : unit);
    }
  }
  return text;
}

std::optional<std::string> from_windows_1252(std::string_view line) {
  std::string text;
  for (const char c : line) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80) {
      text += c;
      continue;
    }
    const char32_t code = byte < 0xA0 ? high_controls[byte - 0x80u] : static_cast<char32_t>(byte);
    if (code == 0) return std::nullopt;
    add_letter(text, code);
  }
  return text;
}

// No text holds such bytes; they come from a cut file or a wrong format.
bool holds_nul(std::string_view line) {
  return line.find('\0') != std::string_view::npos;
}

}  // namespace

TableText table_text(std::string bytes, const std::string& name) {
  if (begins_as_utf16(bytes)) bytes = from_utf16(bytes);
  expect_kind_of_text(name, bytes);
  if (bytes.compare(0, 3, "\xEF\xBB\xBF") == 0) bytes.erase(0, 3);
  if (bytes.find('\n') == std::string::npos) std::replace(bytes.begin(), bytes.end(), '\r', '\n');
  TableText table;
  int number = 0;
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', at), bytes.size());
    const std::string_view line = std::string_view(bytes).substr(at, std::min(end + 1, bytes.size()) - at);
    at = end + 1;
    ++number;
    if (!holds_nul(line) && !first_stray_byte(line)) {
      table.text += line;
      continue;
    }
    if (const auto letters = holds_nul(line) ? std::nullopt : from_windows_1252(line)) {
      table.text += *letters;
      ++table.converted_lines;
      continue;
    }
    std::string plain = with_strays_replaced(line);
    for (std::size_t nul = plain.find('\0'); nul != std::string::npos; nul = plain.find('\0'))
      plain.replace(nul, 1, "\xEF\xBF\xBD");
    table.text += plain;
    table.odd_lines.push_back(number);
  }
  return table;
}

TableText read_table_file(const std::string& path) {
  return table_text(read_bytes(path, most_bytes_of_a_file), path);
}

}  // namespace gentlest
