// Comma-separated text as RFC 4180 has it: "quoted" cells may hold commas, line breaks and doubled quotes. Tabs,
// upright strokes and semicolons part the cells where the first line says so, as spreadsheets of many countries save
// them.
#pragma once

#include "gentlest/base/diagnostic.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

struct CsvCell {
  std::string text;
  int line = 0;    ///< where the cell starts, from 1
  int column = 0;  ///< in bytes, from 1
};

struct CsvTable {
  std::vector<std::vector<CsvCell>> rows;  ///< the header too; empty lines are left out
  std::vector<Diagnostic> faults;          ///< a quote that is never closed, text after a closing quote
  bool is_open = false;                    ///< one of the faults is a quote that is never closed
};

/// What may part the cells.
inline constexpr std::string_view separators = "\t|;,";

/// What parts the cells of the first line: a tab, an upright stroke or a semicolon where one stands outside quotes,
/// else a comma.
char separator_of(std::string_view text);

/// Line breaks may be CR LF (as the standard says) or LF; a byte order mark is skipped. `file` is for messages.
CsvTable parse_csv(std::string_view text, const std::string& file, char separator = ',');

}  // namespace gentlest
