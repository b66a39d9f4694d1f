#include "io/csv.hpp"

#include "gentlest/base/text.hpp"

#include <algorithm>

namespace gentlest {

namespace {

class CsvReader {
 public:
  CsvReader(std::string_view text, const std::string& file, char separator)
      : text_(text), file_(file), separator_(separator) {
    if (text_.substr(0, 3) == "\xEF\xBB\xBF") text_.remove_prefix(3);
  }

  CsvTable run() {
    while (at_ < text_.size()) {
      std::vector<CsvCell> row = read_row();
      if (row.size() > 1 || !row.front().text.empty()) table_.rows.push_back(std::move(row));
    }
    return std::move(table_);
  }

 private:
  void complain(int line, int column, const char* message, const char* remedy) {
    table_.faults.push_back({{file_, line, column}, message, remedy, {}});
  }

  bool at_line_end() const { return at_ >= text_.size() || text_[at_] == '\n' || text_.substr(at_, 2) == "\r\n"; }

  char take() {
    const char c = text_[at_++];
    column_ = c == '\n' ? 1 : column_ + 1;
    line_ += c == '\n' ? 1 : 0;
    return c;
  }

  std::vector<CsvCell> read_row() {
    std::vector<CsvCell> row = {read_cell()};
    while (at_ < text_.size() && text_[at_] == separator_) {
      take();
      row.push_back(read_cell());
    }
    if (text_.substr(at_, 2) == "\r\n") take();
    if (at_ < text_.size()) take();
    return row;
  }

  CsvCell read_cell() {
    CsvCell cell{"", line_, column_};
    if (at_ < text_.size() && text_[at_] == '"') {
      read_quoted(cell);
      if (!at_line_end() && text_[at_] != separator_)
        complain(line_, column_, "there is text after the closing quote", "double a quote inside a cell: \"\"");
    }
    while (!at_line_end() && text_[at_] != separator_) cell.text += take();
    if (separator_ == '|') cell.text = std::string(trimmed(cell.text));  // such tables are drawn with blanks
    return cell;
  }

  void read_quoted(CsvCell& cell) {
    take();
    while (at_ < text_.size()) {
      const char c = take();
      if (c != '"') {
        cell.text += c;
      } else if (at_ < text_.size() && text_[at_] == '"') {
        cell.text += take();
      } else {
        return;
      }
    }
    complain(cell.line, cell.column, "this quote is never closed", "close the cell with \"");
    table_.is_open = true;
  }

  std::string_view text_;
  const std::string& file_;
  char separator_;
  std::size_t at_ = 0;
  int line_ = 1;
  int column_ = 1;
  CsvTable table_;
};

}  // namespace

char separator_of(std::string_view text) {
  bool in_quotes = false;
  std::size_t best = separators.size() - 1;
  for (const char c : text) {
    if (c == '"') in_quotes = !in_quotes;
    if (in_quotes) continue;
    if (c == '\n') break;
    best = std::min(best, separators.find(c));
  }
  return separators[best];
}

CsvTable parse_csv(std::string_view text, const std::string& file, char separator) {
  return CsvReader(text, file, separator).run();
}

}  // namespace gentlest
