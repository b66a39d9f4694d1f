// A reader of comma-separated text by RFC 4180, written apart from the writer it checks.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

namespace gentlest::test {

/// Rows of cells. Throws when a quote stands where none may, when a line does not end in CR LF, or a quote stays open.
inline std::vector<std::vector<std::string>> csv_rows(const std::string& text) {
  std::vector<std::vector<std::string>> rows;
  std::vector<std::string> row(1);
  bool open = false;
  bool closed = false;  // the cell was quoted and is complete
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (open) {
      if (c != '"')
        row.back() += c;
      else if (i + 1 < text.size() && text[i + 1] == '"')
        row.back() += text[++i];
      else {
        open = false;
        closed = true;
      }
    } else if (c == '"') {
      if (!row.back().empty() || closed) throw std::runtime_error("a quote inside a bare cell");
      open = true;
    } else if (c == ',') {
      row.emplace_back();
      closed = false;
    } else if (c == '\r') {
      if (i + 1 >= text.size() || text[i + 1] != '\n') throw std::runtime_error("a lone carriage return");
    } else if (c == '\n') {
      if (i == 0 || text[i - 1] != '\r') throw std::runtime_error("a lone line feed");
      rows.push_back(row);
      row.assign(1, "");
      closed = false;
    } else if (closed) {
      throw std::runtime_error("text behind a closing quote");
    } else {
      row.back() += c;
    }
  }
  if (open || row.size() > 1 || !row.front().empty()) throw std::runtime_error("the last line is not ended");
  return rows;
}

}  // namespace gentlest::test
