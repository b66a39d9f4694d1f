#include "io/reading_table.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/noted/fields.hpp"
#include "io/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <climits>
#include <utility>

namespace gentlest {

namespace {

// What the program adds to every row that it prints; it says nothing of a test. "harm" is ours only beside the others:
// in a person's own table it is a remark.
constexpr std::array<std::string_view, 3> edition_columns = {"law_seen_until", "program", "catalogue"};

// Parts of a mixture whose liquids stand in a column of their own.
constexpr std::array<std::string_view, 8> ratio_headings = {
    "ratio", "ratios", "proportion", "proportions", "verhältnis", "mischungsverhältnis", "rapport", "parts"};

constexpr std::size_t most_rows_above = 10;

struct Column {
  std::string heading;
  std::string key;  // empty: to the remark
  bool is_ignored = false;
  bool is_ratio = false;
};

// Nothing, or the strokes that part a heading from its table.
bool is_blank(const std::vector<CsvCell>& row) {
  return std::all_of(row.begin(), row.end(), [](const CsvCell& cell) {
    return trimmed(cell.text).find_first_not_of("-:=") == std::string_view::npos;
  });
}

bool is_ratio_heading(std::string_view heading) {
  return std::find(ratio_headings.begin(), ratio_headings.end(), folded(heading)) != ratio_headings.end();
}

std::size_t known_headings(const std::vector<CsvCell>& row) {
  return static_cast<std::size_t>(std::count_if(row.begin(), row.end(), [](const CsvCell& cell) {
    return !key_of_heading(cell.text).empty() || is_ratio_heading(cell.text);
  }));
}

// The row of the headings: the first, unless it knows none and a later one names the mixture beside something else.
// Words such as "edge" or "dry" stand in rows as well, so a first row that knows any stays the header.
std::size_t header_of(const CsvTable& cells) {
  if (known_headings(cells.rows.front()) > 0) return 0;
  for (std::size_t i = 1; i < std::min(cells.rows.size(), most_rows_above); ++i) {
    const bool names_mixture = std::any_of(cells.rows[i].begin(), cells.rows[i].end(),
                                           [](const CsvCell& cell) { return key_of_heading(cell.text) == "mixture"; });
    if (names_mixture && known_headings(cells.rows[i]) > 1) return i;
  }
  return 0;
}

std::size_t known_headings(const CsvTable& cells) {
  return cells.rows.empty() ? 0 : known_headings(cells.rows[header_of(cells)]);
}

// A title above the headings may hold any sign, so what parts the cells is what makes most of the headings known.
CsvTable cells_of(std::string_view text, const std::string& file) {
  CsvTable best = parse_csv(text, file, separator_of(text));
  if (known_headings(best) > 1) return best;
  for (const char separator : separators) {
    CsvTable other = parse_csv(text, file, separator);
    if (known_headings(other) > std::max<std::size_t>(1, known_headings(best))) best = std::move(other);
  }
  return best;
}

class TableReader {
 public:
  TableReader(const TableText& text, const std::string& file, const GradeSigns& grades)
      : file_(file), grades_(grades), odd_lines_(text.odd_lines), cells_(cells_of(text.text, file)) {
    if (cells_.is_open) faults_ = cells_.faults;
  }

  ReadingTable run() {
    if (cells_.rows.empty())
      faults_.push_back({{file_, 1, 1}, "the table is empty", "its first line names the columns", {}});
    else
      read_header(cells_.rows[header_of(cells_)]);
    if (!faults_.empty()) throw InputError(Fault::file, std::move(faults_));
    const std::size_t header = header_of(cells_);
    table_.lines_above = static_cast<int>(header);
    for (std::size_t i = header + 1; i < cells_.rows.size(); ++i)
      if (!is_blank(cells_.rows[i])) take_row(i);
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
      if (columns_[i].key.empty() && !columns_[i].is_ignored && !columns_[i].is_ratio)
        expect_no_slip(row[i], columns_[i]);
    const bool any_known =
        std::any_of(columns_.begin(), columns_.end(), [](const Column& c) { return !c.key.empty(); });
    if (!any_known && faults_.empty())
      complain(row.front(), "no column is named as a field of a reading",
               "the first line names the columns: mixture, removal, original, ...");
  }

  Column column_of(const CsvCell& cell) {
    Column column{std::string(trimmed(cell.text)), key_of_heading(cell.text)};
    const std::string plain = folded(column.heading);
    column.is_ignored = plain.empty() ||
                        std::find(edition_columns.begin(), edition_columns.end(), plain) != edition_columns.end() ||
                        (is_ours_ && plain == "harm");
    column.is_ratio = column.key.empty() && is_ratio_heading(column.heading);
    if (column.is_ratio) table_.taken.emplace_back(column.heading, "mixture");
    if (column.key.empty() || column.is_ignored) return column;
    const bool is_twice =
        std::any_of(columns_.begin(), columns_.end(), [&](const Column& other) { return other.key == column.key; });
    if (is_twice && column.key == "remark")
      column.key.clear();
    else if (is_twice)
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

  // A row that is not understood is told, and the others come in.
  void take_row(std::size_t index) {
    const int first = cells_.rows[index].front().line;
    const int behind = index + 1 < cells_.rows.size() ? cells_.rows[index + 1].front().line : INT_MAX;
    const auto is_of_row = [&](int line) { return line >= first && line < behind; };
    for (const Diagnostic& fault : cells_.faults)
      if (is_of_row(fault.where.line)) faults_.push_back(fault);
    for (const int line : odd_lines_)
      if (is_of_row(line))
        faults_.push_back({{file_, line, 0}, "the line is neither UTF-8 nor Windows-1252 text", "retype it", {}});
    read_row(cells_.rows[index]);
    for (Diagnostic& fault : faults_) table_.refused.push_back(std::move(fault));
    faults_.clear();
  }

  void read_row(const std::vector<CsvCell>& row) {
    if (row.size() > columns_.size() &&
        !is_blank({row.begin() + static_cast<std::ptrdiff_t>(columns_.size()), row.end()}))
      complain(row[columns_.size()], "there are more cells than columns",
               "put a cell that holds the sign between the cells in \"quotes\"");
    TypedReading typed;
    typed.where = {file_, row.front().line, 0};
    for (std::size_t k = 0; k < std::min(row.size(), columns_.size()); ++k) read_cell(row[k], columns_[k], typed);
    for (std::size_t k = 0; k < std::min(row.size(), columns_.size()); ++k) keep_as_remark(row[k], columns_[k], typed);
    add_ratio(row, typed);
    // A correction is judged with all that it leaves as it was.
    if (faults_.empty() && typed.reading.correction.empty())
      for (const auto& check : {check_reading, denied_harms})
        for (Diagnostic& fault : check(typed.reading)) {
          fault.where = typed.where;
          faults_.push_back(std::move(fault));
        }
    if (!faults_.empty() && is_harm(typed.reading)) table_.refused_harms.push_back(typed.where);
    if (faults_.empty()) table_.readings.push_back(std::move(typed));
  }

  // "acetone : white spirit" and "1:4" of two columns.
  void add_ratio(const std::vector<CsvCell>& row, TypedReading& typed) const {
    for (std::size_t k = 0; k < std::min(row.size(), columns_.size()); ++k)
      if (columns_[k].is_ratio && !typed.reading.mixture.empty() && !trimmed(row[k].text).empty())
        typed.reading.mixture += " " + std::string(trimmed(row[k].text));
  }

  // The word behind a sign of the job's own, else what stands there.
  const std::string& meant_by(const std::string& text, const std::string& key) const {
    const auto& signs = key == "removal" ? grades_.removal : grades_.original;
    if (key != "removal" && key != "original") return text;
    const auto found = signs.find(folded(text));
    return found == signs.end() ? text : found->second;
  }

  void read_cell(const CsvCell& cell, const Column& column, TypedReading& typed) {
    if (column.is_ignored || column.key.empty() || trimmed(cell.text).empty()) return;
    if (folded(cell.text) == "not known" && column.key != "colour") return;  // as tables of the program say it
    typed.named.push_back(column.key);
    if (set_noted_field(typed.reading, column.key, meant_by(cell.text, column.key))) return;
    const bool is_grade = column.key == "removal" || column.key == "original";
    complain(cell, fmt::format("\"{}\" is not understood under \"{}\"", cell.text, column.heading),
             fmt::format("expected is {}{}", find_field(column.key)->help,
                         is_grade ? "; signs of your own are explained under grades: in the job" : ""));
  }

  void keep_as_remark(const CsvCell& cell, const Column& column, TypedReading& typed) {
    if (!column.key.empty() || column.is_ratio || trimmed(cell.text).empty()) return;
    if (column.heading.empty()) return complain(cell, "this column has no heading", "name it in the first line");
    if (column.is_ignored) return;
    std::string& remark = typed.reading.remark;
    remark += fmt::format("{}{}: {}", remark.empty() ? "" : "; ", column.heading, trimmed(cell.text));
    name_key(typed, "remark");
  }

  const std::string& file_;
  const GradeSigns& grades_;
  const std::vector<int>& odd_lines_;
  CsvTable cells_;
  std::vector<Diagnostic> faults_;
  bool is_ours_ = false;  // a list that this program printed
  std::vector<Column> columns_;
  ReadingTable table_;
};

}  // namespace

ReadingTable readings_from_table(const TableText& text, const std::string& file, const GradeSigns& grades) {
  return TableReader(text, file, grades).run();
}

ReadingTable readings_from_table(std::string_view text, const std::string& file, const GradeSigns& grades) {
  return readings_from_table(TableText{std::string(text), {}, 0}, file, grades);
}

}  // namespace gentlest
