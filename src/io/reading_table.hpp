// Readings out of a table that was filled in with a spreadsheet.
#pragma once

#include "gentlest/learning/typed_reading.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gentlest {

/// What a table was taken for.
struct ReadingTable {
  std::vector<TypedReading> readings;
  std::vector<std::pair<std::string, std::string>> taken;  ///< heading and key, where they are not the same
  std::vector<std::string> to_remark;  ///< headings that mean no field: "heading: cell" was added to the remark
};

/// The header names the fields, by their keys or by headings in English, German or French (noted/fields.hpp), in any
/// case and order; commas, semicolons or tabs part the cells, and cells may hold what set_noted_field takes. A cell
/// without text is not named. Throws InputError (Fault::file) with every fault found; a heading that is almost one that
/// is known is a fault, too.
ReadingTable readings_from_table(std::string_view text, const std::string& file);

}  // namespace gentlest
