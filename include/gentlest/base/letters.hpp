// Letters of UTF-8 text, one after the other, and what of them must not reach a terminal as it is.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace gentlest {

struct Letter {
  std::string_view bytes;
  char32_t code = 0;
};

/// The letter that begins at a byte of the text; a byte that begins none counts as a letter of its own, U+FFFD. Longer
/// forms than needed, surrogates and codes above U+10FFFF are none.
Letter letter_at(std::string_view text, std::size_t at);

/// True of a byte that begins no letter.
bool is_stray(const Letter& letter);

/// Where the text stops being UTF-8; nothing where all of it is.
std::optional<std::size_t> first_stray_byte(std::string_view text);

/// The text as UTF-8: U+FFFD for every byte that is none.
std::string with_strays_replaced(std::string_view text);

/// Controls of C0 and C1, DEL, and the marks that turn the direction of writing or break lines.
bool is_control(char32_t code);

/// The text with its control characters and stray bytes written out, "\x1b", "\u202e", so that no text of a file steers
/// the terminal. Those in `kept` stay.
std::string with_controls_shown(std::string_view text, std::string_view kept = {});

/// Bytes as letters that any file of text can hold (RFC 4648, section 4), and whether a text is such letters.
std::string base64(const std::string& bytes);
bool is_base64(std::string_view text);

}  // namespace gentlest
