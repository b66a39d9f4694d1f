#include "report/form/table.hpp"

#include "gentlest/base/letters.hpp"

#include <algorithm>
#include <numeric>

namespace gentlest {

namespace {

constexpr std::size_t table_indent = 2;
constexpr std::size_t gap = 2;
constexpr std::size_t broken_word = 12;  // a word is broken only into pieces as long as this
constexpr std::size_t short_title = 10;  // titles up to this width are kept on one line where there is room

std::size_t columns_of(char32_t code) {
  const auto within = [code](char32_t low, char32_t high) { return code >= low && code <= high; };
  if (within(0x0300, 0x036F) || within(0x200B, 0x200F) || within(0x20D0, 0x20FF) || within(0xFE00, 0xFE0F)) return 0;
  if (within(0x1100, 0x115F) || within(0x2E80, 0xA4CF) || within(0xAC00, 0xD7A3) || within(0xF900, 0xFAFF) ||
      within(0xFE30, 0xFE6F) || within(0xFF00, 0xFF60) || within(0xFFE0, 0xFFE6) || within(0x1F300, 0x1FAFF) ||
      within(0x20000, 0x3FFFD))
    return 2;
  return 1;
}

// The longest beginning of `word` that fits, at least one letter; up to an underscore or hyphen where there is one.
std::string_view head_that_fits(std::string_view word, std::size_t width) {
  std::size_t used = 0;
  std::size_t at = 0;
  while (at < word.size()) {
    const Letter letter = letter_at(word, at);
    if (at > 0 && used + columns_of(letter.code) > width) break;
    used += columns_of(letter.code);
    at += letter.bytes.size();
  }
  const std::size_t joint = at < word.size() ? word.substr(0, at).find_last_of("_-") : std::string_view::npos;
  return word.substr(0, joint == std::string_view::npos || joint == 0 ? at : joint + 1);
}

std::vector<std::string> words_of(const std::string& text) {
  std::vector<std::string> words;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t from = text.find_first_not_of(' ', at);
    if (from == std::string::npos) break;
    const std::size_t to = std::min(text.find(' ', from), text.size());
    words.push_back(text.substr(from, to - from));
    at = to;
  }
  return words;
}

std::string padded(const std::string& text, std::size_t width, Align align) {
  const std::size_t used = display_width(text);
  const std::string space(width > used ? width - used : 0, ' ');
  return align == Align::left ? text + space : space + text;
}

std::size_t longest_word(const std::string& text) {
  std::size_t longest = 0;
  for (const std::string& word : words_of(text)) longest = std::max(longest, display_width(word));
  return longest;
}

std::size_t total_width(const std::vector<std::size_t>& widths) {
  return table_indent + std::accumulate(widths.begin(), widths.end(), gap * (widths.size() - 1));
}

// Takes a column from the widest of the columns that are wider than their least width; false when none is.
bool narrow_one(std::vector<std::size_t>& widths, const std::vector<std::size_t>& least) {
  std::size_t widest = widths.size();
  for (std::size_t i = 0; i < widths.size(); ++i)
    if (widths[i] > least[i] && (widest == widths.size() || widths[i] > widths[widest])) widest = i;
  if (widest == widths.size()) return false;
  --widths[widest];
  return true;
}

std::vector<std::size_t> widths_of_longest_words(const Table& table) {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    widths.push_back(longest_word(table.columns[i].title));
    for (const auto& row : table.rows) widths[i] = std::max(widths[i], longest_word(row[i]));
  }
  return widths;
}

// Narrower than this no column is made: numbers stay whole, long words are broken.
std::vector<std::size_t> least_widths(const Table& table) {
  std::vector<std::size_t> widths = widths_of_longest_words(table);
  for (std::size_t& width : widths) width = std::clamp<std::size_t>(width, 1, broken_word);
  return widths;
}

// First the columns that may shrink give way down to their longest word, then all do, at last words are broken.
void narrow_to_page(std::vector<std::size_t>& widths, const Table& table, std::size_t page) {
  std::vector<std::size_t> first = widths;
  const std::vector<std::size_t> second = widths_of_longest_words(table);
  for (std::size_t i = 0; i < widths.size(); ++i)
    if (table.columns[i].may_shrink) first[i] = second[i];
  for (const auto& least : {first, second, least_widths(table)})
    while (total_width(widths) > page && narrow_one(widths, least)) continue;
}

// Room that is left goes to the titles that take the most lines.
void widen_for_titles(std::vector<std::size_t>& widths, const Table& table, std::size_t page) {
  while (total_width(widths) < page) {
    std::size_t tallest = 0;
    std::size_t most_lines = 1;
    for (std::size_t i = 0; i < widths.size(); ++i) {
      const std::size_t lines = wrap(table.columns[i].title, widths[i]).size();
      if (lines > most_lines) {
        tallest = i;
        most_lines = lines;
      }
    }
    if (most_lines == 1) return;
    ++widths[tallest];
  }
}

// The columns of each piece that fits the page: the first column, then as many of the others as there is room for.
std::vector<std::vector<std::size_t>> pieces_that_fit(const Table& table, std::size_t page) {
  const std::vector<std::size_t> least = least_widths(table);
  std::vector<std::vector<std::size_t>> pieces = {{0}};
  std::size_t used = table_indent + least[0];
  for (std::size_t i = 1; i < least.size(); ++i) {
    if (used + gap + least[i] > page && pieces.back().size() > 1) {
      pieces.push_back({0});
      used = table_indent + least[0];
    }
    pieces.back().push_back(i);
    used += gap + least[i];
  }
  return pieces;
}

Table piece_of(const Table& table, const std::vector<std::size_t>& columns) {
  Table piece;
  for (const std::size_t column : columns) piece.columns.push_back(table.columns[column]);
  for (const auto& row : table.rows) {
    piece.rows.emplace_back();
    for (const std::size_t column : columns) piece.rows.back().push_back(row[column]);
  }
  return piece;
}

std::vector<std::size_t> column_widths(const Table& table, std::size_t page) {
  std::vector<std::size_t> widths;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const std::string& title = table.columns[i].title;
    std::size_t width = std::max(longest_word(title), std::min<std::size_t>(display_width(title), short_title));
    for (const auto& row : table.rows) width = std::max(width, display_width(row[i]));
    widths.push_back(std::max<std::size_t>(width, 1));
  }
  narrow_to_page(widths, table, page);
  widen_for_titles(widths, table, page);
  return widths;
}

std::string lines_of_row(const std::vector<std::string>& cells, const Table& table,
                         const std::vector<std::size_t>& widths, const Style& style) {
  std::vector<std::vector<std::string>> wrapped;
  std::size_t height = 0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    wrapped.push_back(wrap(cells[i], widths[i]));
    height = std::max(height, wrapped.back().size());
  }
  std::string text;
  for (std::size_t line = 0; line < height; ++line) {
    std::string row(table_indent, ' ');
    for (std::size_t i = 0; i < cells.size(); ++i)
      row += padded(line < wrapped[i].size() ? wrapped[i][line] : "", widths[i], table.columns[i].align) +
             std::string(i + 1 < cells.size() ? gap : 0, ' ');
    row.erase(row.find_last_not_of(' ') + 1);
    text += (style.bold ? "\033[1m" + row + "\033[0m" : row) + "\n";
  }
  return text;
}

std::string text_of_piece(const Table& table, const Style& style) {
  const std::vector<std::size_t> widths = column_widths(table, style.width);
  const Style plain{false, style.width};
  std::vector<std::string> titles;
  std::vector<std::string> rules;
  for (std::size_t i = 0; i < widths.size(); ++i) {
    titles.push_back(table.columns[i].title);
    rules.emplace_back(widths[i], '-');
  }
  std::string text = lines_of_row(titles, table, widths, style) + lines_of_row(rules, table, widths, plain);
  for (const auto& row : table.rows) text += lines_of_row(row, table, widths, plain);
  return text;
}

std::string indented(const std::vector<std::string>& lines, const std::string& first, const std::string& rest) {
  std::string text;
  for (std::size_t i = 0; i < lines.size(); ++i) text += (i == 0 ? first : rest) + lines[i] + "\n";
  return text;
}

}  // namespace

std::size_t display_width(std::string_view text) {
  std::size_t width = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    width += columns_of(letter.code);
    at += letter.bytes.size();
  }
  return width;
}

std::string without_controls(std::string_view text) {
  std::string clean = with_controls_shown(text, "\n\r\t");
  std::replace_if(
      clean.begin(), clean.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
  return clean;
}

std::vector<std::string> wrap(std::string_view text, std::size_t width) {
  std::vector<std::string> lines(1);
  for (const std::string& word : words_of(without_controls(text))) {
    std::string_view rest = word;
    if (!lines.back().empty()) {
      if (display_width(lines.back()) + 1 + display_width(rest) <= width) {
        lines.back() += " " + word;
        continue;
      }
      lines.emplace_back();
    }
    while (display_width(rest) > width) {
      const std::string_view head = head_that_fits(rest, width);
      if (head.size() == rest.size()) break;
      lines.back() = std::string(head);
      lines.emplace_back();
      rest.remove_prefix(head.size());
    }
    lines.back() = std::string(rest);
  }
  return lines;
}

std::string heading(std::string_view text, const Style& style) {
  std::string out = "\n";
  for (const std::string& line : wrap(text, style.width))
    out += style.bold ? "\033[1m" + line + "\033[0m\n" : line + "\n";
  return out;
}

std::string paragraph(std::string_view text, const Style& style, std::size_t indent) {
  const std::string space(indent, ' ');
  return indented(wrap(text, style.width - indent), space, space);
}

std::string bullet(std::string_view text, const Style& style) {
  return indented(wrap(text, style.width - 4), "  - ", "    ");
}

std::string to_text(const Table& table, const Style& style) {
  if (table.rows.empty()) return {};
  std::string text;
  for (const auto& columns : pieces_that_fit(table, style.width))
    text += (text.empty() ? "" : "\n") + text_of_piece(piece_of(table, columns), style);
  return text;
}

}  // namespace gentlest
