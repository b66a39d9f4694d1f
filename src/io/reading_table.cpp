#include "io/reading_table.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/noted/fields.hpp"
#include "io/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gentlest {

namespace {

// What the program adds to every row that it prints; it says nothing of a test. "harm" is ours only beside the others:
// in a person's own table it is a remark.
constexpr std::array<std::string_view, 3> edition_columns = {"law_seen_until", "program", "catalogue"};

struct Column {
  std::string heading;
  std::string key;  // empty: to the remark
  bool is_ignored = false;
};

bool is_blank(const std::vector<CsvCell>& row) {
  return std::all_of(row.begin(), row.end(), [](const CsvCell& cell) { return trimmed(cell.text).empty(); });
}

class TableReader {
 public:
  TableReader(std::string_view text, const std::string& file)
      : file_(file), cells_(parse_csv(text, file, separator_of(text))), faults_(std::move(cells_.faults)) {}

  ReadingTable run() {
    if (cells_.rows.empty())
      faults_.push_back({{file_, 1, 1}, "the table is empty", "its first line names the columns", {}});
    else
      read_header(cells_.rows.front());
    const bool is_readable = faults_.empty();
    for (std::size_t i = 1; is_readable && i < cells_.rows.size(); ++i)
      if (!is_blank(cells_.rows[i])) read_row(cells_.rows[i]);
    if (!faults_.empty()) throw InputError(Fault::file, std::move(faults_));
    return std::move(table_);
  }

 private:
  void complain(const CsvCell& cell, std::string message, std::string remedy) {
    faults_.push_back({{file_, cell.line, cell.column}, std::move(message), std::move(remedy), {}});
  }

  void read_header(const std::vector<CsvCell>& row) {
    is_ours_ = std::any_of(row.begin(), row.end(),
                           [](const CsvCell& cell) { return folded(trimmed(cell.text)) == edition_columns.front(); });
    for (const CsvCell& cell : row) columns_.push_back(column_of(cell));
    for (std::size_t i = 0; i < columns_.size(); ++i)
      if (columns_[i].key.empty() && !columns_[i].is_ignored) expect_no_slip(row[i], columns_[i]);
    const bool any_known =
        std::any_of(columns_.begin(), columns_.end(), [](const Column& c) { return !c.key.empty(); });
    if (!any_known && faults_.empty())
      complain(row.front(), "no column is named as a field of a reading",
               "the first line names the columns: mixture, removal, original, ...");
  }

  Column column_of(const CsvCell& cell) {
    Column column{std::string(trimmed(cell.text)), key_of_heading(cell.text), false};
    const std::string plain = folded(column.heading);
    column.is_ignored = plain.empty() ||
                        std::find(edition_columns.begin(), edition_columns.end(), plain) != edition_columns.end() ||
                        (is_ours_ && plain == "harm");
    if (column.key.empty() || column.is_ignored) return column;
    const bool is_twice =
        std::any_of(columns_.begin(), columns_.end(), [&](const Column& other) { return other.key == column.key; });
    if (is_twice)
      complain(cell, fmt::format("column \"{}\" stands there twice", column.key),
               column.heading == column.key ? "" : fmt::format("\"{}\" means it, too", column.heading));
    else if (column.heading != column.key)
      table_.taken.emplace_back(column.heading, column.key);
    return column;
  }

  // A slip in a heading must not put what was seen of the paint away into the remark.
  void expect_no_slip(const CsvCell& cell, const Column& column) {
    std::vector<std::string> free_keys;
    for (const ReadingField& field : reading_fields())
      if (std::none_of(columns_.begin(), columns_.end(), [&](const Column& other) { return other.key == field.key; }))
        free_keys.emplace_back(field.key);
    const std::string near = nearest_name(column.heading, free_keys);
    if (!near.empty())
      return complain(cell, fmt::format("no column \"{}\" is known", column.heading), "did you mean \"" + near + "\"?");
    table_.to_remark.push_back(column.heading);
  }

  void read_row(const std::vector<CsvCell>& row) {
    const std::size_t faults_before = faults_.size();
    if (row.size() > columns_.size())
      complain(row[columns_.size()], "there are more cells than columns",
               "put a cell that holds the sign between the cells in \"quotes\"");
    TypedReading typed;
    typed.where = {file_, row.front().line, 0};
    for (std::size_t k = 0; k < std::min(row.size(), columns_.size()); ++k) read_cell(row[k], columns_[k], typed);
    for (std::size_t k = 0; k < std::min(row.size(), columns_.size()); ++k) keep_as_remark(row[k], columns_[k], typed);
    // A correction is judged with all that it leaves as it was.
    if (faults_.size() == faults_before && typed.reading.correction.empty())
      for (const auto& check : {check_reading, denied_harms})
        for (Diagnostic& fault : check(typed.reading)) {
          fault.where = typed.where;
          faults_.push_back(std::move(fault));
        }
    table_.readings.push_back(std::move(typed));
  }

  void read_cell(const CsvCell& cell, const Column& column, TypedReading& typed) {
    if (column.is_ignored || column.key.empty() || trimmed(cell.text).empty()) return;
    if (folded(cell.text) == "not known" && column.key != "colour") return;  // as tables of the program say it
    typed.named.push_back(column.key);
    if (set_noted_field(typed.reading, column.key, cell.text)) return;
    complain(cell, fmt::format("\"{}\" is not understood under \"{}\"", cell.text, column.heading),
             fmt::format("expected is {}", find_field(column.key)->help));
  }

  void keep_as_remark(const CsvCell& cell, const Column& column, TypedReading& typed) {
    if (!column.key.empty() || trimmed(cell.text).empty()) return;
    if (column.heading.empty()) return complain(cell, "this column has no heading", "name it in the first line");
    if (column.is_ignored) return;
    std::string& remark = typed.reading.remark;
    remark += fmt::format("{}{}: {}", remark.empty() ? "" : "; ", column.heading, trimmed(cell.text));
    name_key(typed, "remark");
  }

  const std::string& file_;
  CsvTable cells_;
  std::vector<Diagnostic> faults_;
  bool is_ours_ = false;  // a list that this program printed
  std::vector<Column> columns_;
  ReadingTable table_;
};

}  // namespace

ReadingTable readings_from_table(std::string_view text, const std::string& file) {
  return TableReader(text, file).run();
}

}  // namespace gentlest
