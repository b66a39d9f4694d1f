// Where the YAML parser gives up: the slip of the hand that most likely made it, in a person's words. The parser knows
// what it stumbled over, often lines later; a person wants to know what to change.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// A slip and its cure. Line and column count from 1.
struct YamlSlip {
  int line = 0;
  int column = 0;
  std::string message;
  std::string remedy;
};

/// The likeliest slip at or above the line where the parser gave up, nearest first: tabs and other blanks at the start,
/// a colon or the blank behind it missing, bullets that are no hyphen, quotes and brackets that are not closed or have
/// text behind them, texts that need quotes, lines that do not stand under each other. Nothing where none is seen.
std::optional<YamlSlip> find_slip(const std::vector<std::string>& lines, int stopped_at);

/// The text in plain quotes, as it may stand in a file: "Boats: low tide".
std::string in_quotes(std::string_view text);

}  // namespace gentlest
