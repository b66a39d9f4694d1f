#include "io/own_tests.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/base/typed_number.hpp"

#include "io/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

namespace gentlest {

namespace {

class TestTable {
 public:
  TestTable(std::string_view text, const std::string& file, const Catalogue& catalogue)
      : file_(file), catalogue_(catalogue), table_(parse_csv(text, file)), faults_(std::move(table_.faults)) {}

  std::vector<Score> run() {
    read_header();
    std::vector<Score> scores;
    const bool is_readable = faults_.empty();
    for (std::size_t i = 1; is_readable && i < table_.rows.size(); ++i) scores.push_back(read_row(table_.rows[i]));
    if (!faults_.empty()) throw InputError(Fault::file, std::move(faults_));
    return scores;
  }

 private:
  void complain(const CsvCell& cell, std::string message, std::string remedy) {
    faults_.push_back({{file_, cell.line, cell.column}, std::move(message), std::move(remedy), {}});
  }

  void read_header() {
    if (table_.rows.empty()) return complain({"", 1, 1}, "the table is empty", "its first line names the columns");
    const std::vector<std::string> known = {"solvent", "grade", "dissolves", "dD", "dP", "dH", "remark"};
    for (std::size_t i = 0; i < table_.rows.front().size(); ++i) {
      const CsvCell& cell = table_.rows.front()[i];
      if (std::find(known.begin(), known.end(), cell.text) == known.end())
        complain(cell, fmt::format("no column \"{}\" is known", cell.text),
                 "columns are solvent, grade or dissolves, dD, dP, dH, remark");
      column_[cell.text] = i;
    }
    if (column_.count("solvent") == 0) complain(table_.rows.front().front(), "there is no column \"solvent\"", "");
    if (column_.count("grade") + column_.count("dissolves") != 1)
      complain(table_.rows.front().front(), "there must be one column \"grade\" or \"dissolves\"", "");
  }

  const CsvCell* cell_at(const std::vector<CsvCell>& row, const std::string& name) const {
    const auto found = column_.find(name);
    if (found == column_.end() || found->second >= row.size() || row[found->second].text.empty()) return nullptr;
    return &row[found->second];
  }

  std::optional<double> number_at(const std::vector<CsvCell>& row, const std::string& name) {
    const CsvCell* cell = cell_at(row, name);
    if (!cell) return std::nullopt;
    const std::size_t first = cell->text.find_first_not_of(" \t");  // "acetone, 15.5" has a space in front
    const std::optional<double> value =
        number_from(std::string_view(cell->text).substr(std::min(first, cell->text.size())));
    if (value && std::abs(*value) <= 60) return value;
    complain(*cell, fmt::format("\"{}\" is no Hansen parameter", cell->text),
             value ? "write it in MPa^0.5, from -60 to 60" : cure_of_text(cell->text, {"MPa^0.5", -60, 60}));
    return std::nullopt;
  }

  int grade_at(const std::vector<CsvCell>& row) {
    if (const CsvCell* cell = cell_at(row, "grade")) {
      if (cell->text.size() == 1 && cell->text[0] >= '1' && cell->text[0] <= '6') return cell->text[0] - '0';
      complain(*cell, fmt::format("\"{}\" is not a grade", cell->text), "grades run from 1, dissolves, to 6");
    } else if (const CsvCell* yes_or_no = cell_at(row, "dissolves")) {
      if (yes_or_no->text == "yes") return 1;
      if (yes_or_no->text == "no") return grade_count;
      const std::string near = nearest_name(yes_or_no->text, {"yes", "no"});
      complain(*yes_or_no, fmt::format("\"{}\" is neither yes nor no", yes_or_no->text),
               near.empty() ? "write yes or no" : fmt::format("write {}", near));
    } else {
      complain(row.front(), "this liquid has no result", "leave the line out where it was not tested");
    }
    return grade_count;
  }

  Score read_row(const std::vector<CsvCell>& row) {
    Score score;
    score.grade = grade_at(row);
    const CsvCell* name = cell_at(row, "solvent");
    if (name) score.solvent = name->text;
    const Solvent* solvent = name ? catalogue_.find_solvent(name->text) : nullptr;
    const std::optional<double> dD = number_at(row, "dD");
    const std::optional<double> dP = number_at(row, "dP");
    const std::optional<double> dH = number_at(row, "dH");
    if (dD && dP && dH)
      score.hansen = {*dD, *dP, *dH};
    else if (solvent && solvent->hansen)
      score.hansen = solvent->hansen->chosen.value;
    else if (name)
      complain_of_name(*name, solvent);
    else
      complain(row.front(), "this line names no solvent", "");
    return score;
  }

  void complain_of_name(const CsvCell& name, const Solvent* solvent) {
    const std::string give = "give dD, dP and dH";
    const std::string unknown = fmt::format("no Hansen parameters are known of \"{}\"", name.text);
    if (solvent) return complain(name, unknown, give);
    const NameFault fault = solvent_fault(name.text, catalogue_, unknown, "");
    complain(name, fault.message, fault.remedy.empty() ? give : fault.remedy + " Or " + give);
  }

  const std::string& file_;
  const Catalogue& catalogue_;
  CsvTable table_;
  std::vector<Diagnostic> faults_;
  std::map<std::string, std::size_t> column_;
};

}  // namespace

std::vector<Score> read_own_tests(std::string_view text, const std::string& file, const Catalogue& catalogue) {
  return TestTable(text, file, catalogue).run();
}

}  // namespace gentlest
