#include "report/form/sheet.hpp"

#include "report/form/format.hpp"
#include "report/form/json.hpp"

#include "gentlest/base/letters.hpp"

#include <type_traits>

namespace gentlest {

namespace {

bool is_number(const Cell& cell) {
  return std::holds_alternative<double>(cell);
}

std::string cell_text(const Cell& cell, int places) {
  if (const auto* words = std::get_if<std::string>(&cell)) return *words;
  if (const auto* number = std::get_if<double>(&cell))
    return places < 0 ? as_recorded(*number) : fixed(*number, places);
  if (const auto* flag = std::get_if<bool>(&cell)) return *flag ? "yes" : "no";
  return not_known;
}

// A spreadsheet takes words that begin like this for a formula and runs them.
bool looks_like_formula(const std::string& words) {
  return !words.empty() && std::string("=+-@\t\r").find(words.front()) != std::string::npos;
}

// A cell may hold line breaks and tabs; other control characters would steer a terminal that shows the table.
std::string quoted(std::string words) {
  words = with_controls_shown(words, "\n\r\t");
  if (looks_like_formula(words)) words.insert(0, "'");
  if (words.find_first_of(",\"\r\n") == std::string::npos) return words;
  std::string text = "\"";
  for (const char c : words) text += c == '"' ? std::string("\"\"") : std::string(1, c);
  return text + "\"";
}

std::string csv_cell(const Cell& cell) {
  if (const auto* number = std::get_if<double>(&cell)) return as_data(*number);
  return quoted(cell_text(cell, -1));
}

Json json_cell(const Cell& cell) {
  return std::visit(
      [](const auto& value) -> Json {
        using Kind = std::decay_t<decltype(value)>;
        if constexpr (std::is_same_v<Kind, std::monostate>)
          return nullptr;
        else if constexpr (std::is_same_v<Kind, double>)
          return data_value(value);
        else
          return value;
      },
      cell);
}

}  // namespace

std::string sheet_text(const Sheet& sheet, const Style& style) {
  Table table;
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
    const SheetColumn& column = sheet.columns[i];
    if (column.title.empty()) continue;
    bool numbers = false;
    for (const auto& row : sheet.rows) numbers = numbers || is_number(row[i]);
    table.columns.push_back({column.title, numbers ? Align::right : Align::left, column.may_shrink});
  }
  for (const auto& row : sheet.rows) {
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < row.size(); ++i)
      if (!sheet.columns[i].title.empty())
        cells.push_back(without_controls(cell_text(row[i], sheet.columns[i].places)));
    table.rows.push_back(std::move(cells));
  }
  return to_text(table, style);
}

std::string sheet_csv(const Sheet& sheet, const Edition& edition) {
  std::string text;
  for (const SheetColumn& column : sheet.columns) text += quoted(column.key) + ",";
  text += "law_seen_until,program,catalogue\r\n";
  const std::string editions =
      quoted(edition.law.seen_until) + "," + quoted(edition.program) + "," + quoted(edition.catalogue) + "\r\n";
  for (const auto& row : sheet.rows) {
    for (const Cell& cell : row) text += csv_cell(cell) + ",";
    text += editions;
  }
  return text;
}

std::string sheet_json(const Sheet& sheet, const Edition& edition) {
  Json document = json_document(sheet.kind, edition);
  Json rows = Json::array();
  for (const auto& row : sheet.rows) {
    Json object = Json::object();
    for (std::size_t i = 0; i < row.size(); ++i) object[sheet.columns[i].key] = json_cell(row[i]);
    rows.push_back(std::move(object));
  }
  document[sheet.kind] = std::move(rows);
  return json_dump(document);
}

std::string sheet_report(const Sheet& sheet, Form form, const Style& style, const Edition& edition) {
  switch (form) {
    case Form::csv:
      return sheet_csv(sheet, edition);
    case Form::json:
      return sheet_json(sheet, edition);
    case Form::text:
      break;
  }
  return sheet_text(sheet, style);
}

}  // namespace gentlest
