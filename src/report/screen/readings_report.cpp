#include "report/screen/readings_report.hpp"

#include "gentlest/learning/reading_fields.hpp"

#include "report/form/sheet.hpp"

namespace gentlest {

namespace {

// Which fields the list shows, and as what; without a title only in CSV and JSON.
const std::vector<SheetColumn>& listed_fields() {
  static const std::vector<SheetColumn> columns = {
      {"test", "test", -1, false},        {"date", "date", -1, false},       {"who", "", -1, false},
      {"mixture", "mixture", -1, true},   {"passage", "passage", -1, true},  {"at_edge", "at edge", -1, false},
      {"rolls", "", -1, false},           {"seconds", "seconds", -1, false}, {"removal", "removal", -1, true},
      {"original", "original", -1, true}, {"confidence", "", -1, false},     {"remark", "", -1, true},
      {"correction", "", -1, true}};
  return columns;
}

}  // namespace

std::string readings_report(const std::vector<Reading>& readings, Form form, const Style& style,
                            const Edition& edition) {
  Sheet sheet{"readings", listed_fields(), {}};
  for (const Reading& one : readings) {
    std::vector<Cell> row;
    for (const SheetColumn& column : sheet.columns) row.push_back(field_value(one, column.key));
    sheet.rows.push_back(std::move(row));
  }
  return sheet_report(sheet, form, style, edition);
}

}  // namespace gentlest
