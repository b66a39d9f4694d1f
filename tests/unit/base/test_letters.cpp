#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

// What is well-formed UTF-8: The Unicode Standard, version 15.0, chapter 3, table 3-7 "Well-Formed UTF-8 Byte
// Sequences"; the first and last sequence of each of its rows, and what lies just outside.
TEST_CASE("letters are those of the table of the Unicode standard") {
  for (const char* whole :
       {"\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xE0\xBF\xBF", "\xE1\x80\x80", "\xEC\xBF\xBF", "\xED\x80\x80",
        "\xED\x9F\xBF", "\xEE\x80\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF0\xBF\xBF\xBF", "\xF1\x80\x80\x80",
        "\xF3\xBF\xBF\xBF", "\xF4\x80\x80\x80", "\xF4\x8F\xBF\xBF"}) {
    INFO(with_controls_shown(whole));
    CHECK_FALSE(first_stray_byte(whole).has_value());
    CHECK(letter_at(whole, 0).bytes == whole);
  }
  for (const char* broken : {"\x80", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2\x7F", "\xE0\x9F\xBF", "\xED\xA0\x80",
                             "\xE1\x80", "\xF0\x8F\xBF\xBF", "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF"}) {
    INFO(with_controls_shown(broken));
    CHECK(first_stray_byte(std::string("ab") + broken) == std::optional<std::size_t>(2));
  }
  CHECK(letter_at("\xE2\x82\xAC", 0).code == U'\u20AC');
  CHECK(letter_at("\xF0\x9F\x8E\xA8", 0).code == U'\U0001F3A8');
}

TEST_CASE("controls are written out, those that are kept stay") {
  CHECK(with_controls_shown("a\033[31m\x07 \x7F") == "a\\x1b[31m\\x07 \\x7f");
  CHECK(with_controls_shown("\xC2\x9B\xE2\x80\xAE\xE9") == "\\x9b\\u202e\\xe9");
  CHECK(with_controls_shown("a\tb\nc") == "a\\x09b\\nc");
  CHECK(with_controls_shown("a\tb\nc", "\t\n") == "a\tb\nc");
  CHECK(with_controls_shown("B\xC3\xB6rse \xE2\x82\xAC") == "B\xC3\xB6rse \xE2\x82\xAC");
  CHECK(with_strays_replaced("caf\xE9!") == "caf\xEF\xBF\xBD!");
}

TEST_CASE("a fault shows a line's controls and keeps its caret under the place") {
  const std::string text = render(Diagnostic{{"a\033b", 2, 5}, "no \033]0;x\x07", "", "ab\033\tcd"});
  CHECK(text ==
        "a\\x1bb:2:5: error: no \\x1b]0;x\\x07\n"
        "    ab\\x1b\tcd\n"
        "          \t^\n");
}
