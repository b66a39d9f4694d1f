// Reads the published tables beside the tests: comma-separated, "quoted" cells, # comment lines, first line = header.
#pragma once

#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace gentlest::test {

using Row = std::map<std::string, std::string>;

inline std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"')
      quoted = !quoted;
    else if (c == ',' && !quoted)
      cells.emplace_back();
    else if (c != '\r')
      cells.back() += c;
  }
  return cells;
}

/// Rows of tests/published/tables/NAME. Throws when the file is missing or a row is longer than the header.
inline std::vector<Row> read_table(const std::string& name) {
  const std::string path = std::string(GENTLEST_SOURCE_DIR) + "/tests/published/tables/" + name;
  std::ifstream in(path);
  if (!in) throw std::runtime_error("cannot read " + path);
  std::vector<Row> rows;
  std::vector<std::string> header;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    const std::vector<std::string> cells = cells_of(line);
    if (header.empty()) {
      header = cells;
      continue;
    }
    if (cells.size() > header.size()) throw std::runtime_error(path + ": long row: " + line);
    Row row;
    for (std::size_t i = 0; i < header.size(); ++i) row[header[i]] = i < cells.size() ? cells[i] : "";
    rows.push_back(row);
  }
  return rows;
}

inline double number(const Row& row, const std::string& key) {
  return std::stod(row.at(key));
}

}  // namespace gentlest::test
