#include "report/screen/readings_report.hpp"

#include "gentlest/learning/reading_fields.hpp"

#include "report/form/sheet.hpp"

namespace gentlest {

namespace {

// As what a field is shown; without a title only in CSV and JSON, which hold them all.
std::string title_of(std::string_view key) {
  for (const std::string_view shown : {"test", "date", "mixture", "passage", "seconds", "removal", "original"})
    if (shown == key) return std::string(key);
  return key == "at_edge" ? "at edge" : "";
}

constexpr const char* harm_key = "harm";  // no field: what the rules count the reading as

std::vector<SheetColumn> listed_fields() {
  std::vector<SheetColumn> columns;
  for (const ReadingField& field : reading_fields()) {
    if (field.key == "withdrawn") continue;  // a test that is listed counts
    const bool is_words = field.kind == FieldKind::text && field.key != "date" && field.key != "who";
    columns.push_back({std::string(field.key), title_of(field.key), -1, is_words});
  }
  columns.push_back({harm_key, "harm", -1, false});
  return columns;
}

}  // namespace

std::string readings_report(const std::vector<Reading>& readings, Form form, const Style& style,
                            const Edition& edition) {
  Sheet sheet{"readings", listed_fields(), {}};
  for (const Reading& one : readings) {
    std::vector<Cell> row;
    for (const SheetColumn& column : sheet.columns)
      row.push_back(column.key == harm_key ? Cell(is_harm(one)) : field_value(one, column.key));
    sheet.rows.push_back(std::move(row));
  }
  return sheet_report(sheet, form, style, edition);
}

}  // namespace gentlest
