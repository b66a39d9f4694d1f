// Text that keeps within the page: width of UTF-8 on a terminal, line breaks, headings, lists, tables.
#pragma once

#include "report/form/form.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Columns a text takes on a terminal: combining marks take none, East Asian wide letters and pictures take two.
std::size_t display_width(std::string_view text);

/// The text on one line, with spaces for line breaks and tabs; other control characters are written out as \x1b: a
/// job's title must not steer the terminal.
std::string without_controls(std::string_view text);

/// Lines of at most `width` columns, broken at spaces, inside a word only where the word alone is wider. At least one
/// line, which may be empty.
std::vector<std::string> wrap(std::string_view text, std::size_t width);

/// A blank line, then the heading.
std::string heading(std::string_view text, const Style& style);

/// Wrapped to the page, every line after `indent` spaces.
std::string paragraph(std::string_view text, const Style& style, std::size_t indent = 2);

/// Wrapped, with a dash in front of the first line.
std::string bullet(std::string_view text, const Style& style);

enum class Align { left, right };

struct Column {
  std::string title;
  Align align = Align::left;
  bool may_shrink = false;  ///< its cells may be broken over lines; other columns are narrowed last
};

struct Table {
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;  ///< each as long as `columns`
};

/// The table, indented by two, no wider than the page; titles may take several lines. Columns that may shrink give way
/// first; what is too wide for the page even so is printed in pieces, each with the first column. Empty text when there
/// are no rows.
std::string to_text(const Table& table, const Style& style);

}  // namespace gentlest
