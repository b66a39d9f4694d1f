// Readings out of a table that was filled in with a spreadsheet.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/job/job.hpp"
#include "gentlest/learning/typed_reading.hpp"
#include "io/table_text.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gentlest {

/// What a table was taken for.
struct ReadingTable {
  std::vector<TypedReading> readings;
  std::vector<Location> refused_harms = {};  ///< rows that are refused and tell of harm
  std::vector<Diagnostic> refused;  ///< of rows that are not understood and are none of `readings`; at least one a row
  std::vector<std::pair<std::string, std::string>> taken;  ///< heading and key, where they are not the same
  std::vector<std::string> to_remark;  ///< headings that mean no field: "heading: cell" was added to the remark
  int lines_above = 0;                 ///< rows above the headings that name no column, e.g. a title
};

/// The header names the fields, by their keys or by headings in English, German or French (noted/fields.hpp), in any
/// case and order; it is the first row, or where that is a title the first of ten that names the mixture. Tabs, upright
/// strokes, semicolons or commas part the cells. Cells hold what set_noted_field takes, and of the grades the
/// signs that the job explains; a column "ratio" stands behind the mixture's names. A cell without text is not named.
/// Throws InputError (Fault::file) where the table as a whole cannot be read: nothing in it, no known heading, one that
/// stands there twice or is almost one that is known, a quote that is never closed. Every other fault refuses its row.
ReadingTable readings_from_table(const TableText& text, const std::string& file, const GradeSigns& grades = {});

/// The same of text that is known to be UTF-8.
ReadingTable readings_from_table(std::string_view text, const std::string& file, const GradeSigns& grades = {});

}  // namespace gentlest
