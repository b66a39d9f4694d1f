// A rectangular result: the same rows as a text table, as CSV, as JSON. Lists, ladders and checks are sheets.
#pragma once

#include "report/form/form.hpp"
#include "report/form/table.hpp"

#include <string>
#include <variant>
#include <vector>

namespace gentlest {

/// Nothing known, words, a number as recorded, or yes and no.
using Cell = std::variant<std::monostate, std::string, double, bool>;

struct SheetColumn {
  std::string key;    ///< carries the unit, e.g. "flash_point_C"; the name in CSV and JSON
  std::string title;  ///< for people; empty: not in the text table
  int places = -1;    ///< decimals in the text table; -1: as recorded
  bool may_shrink = false;
};

struct Sheet {
  std::string kind;  ///< what the rows are, e.g. "solvents"; names the list in JSON
  std::vector<SheetColumn> columns;
  std::vector<std::vector<Cell>> rows;  ///< each as long as `columns`
};

/// Table of the columns that have a title; "not known" where nothing is known.
std::string sheet_text(const Sheet& sheet, const Style& style);

/// Comma-separated, RFC 4180: lines end in CR LF, quotes where needed, header first. "not known" where nothing is
/// known, so that no spreadsheet takes it for 0. Words that a spreadsheet would run as a formula get an apostrophe in
/// front. The last two columns are the editions.
std::string sheet_csv(const Sheet& sheet, const Edition& edition);

/// {"format": 1, "program": ..., "catalogue": ..., "law_seen_until": ..., "<kind>": [{...}, ...]}; null where nothing
/// is known.
std::string sheet_json(const Sheet& sheet, const Edition& edition);

/// One of the three, without prose around it.
std::string sheet_report(const Sheet& sheet, Form form, const Style& style, const Edition& edition);

}  // namespace gentlest
