#include "io/score_sets.hpp"

#include "io/csv.hpp"
#include "io/files.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/base/typed_number.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <sstream>
#include <utility>

namespace gentlest {

namespace {

namespace fs = std::filesystem;

struct Line {
  std::vector<CsvCell> cells;
  std::string text;
  int number = 0;
};

struct Table {
  std::string file;
  std::vector<std::string> header;
  int header_line = 0;
  std::vector<Line> lines;
};

using Faults = std::vector<Diagnostic>;

// Each line is a row by itself, so that remarks may hold what they like.
std::vector<CsvCell> cells_of(const std::string& text, const std::string& file) {
  CsvTable table = parse_csv(text, file);
  return table.rows.empty() ? std::vector<CsvCell>() : std::move(table.rows.front());
}

void complain(Faults& faults, const Table& table, const Line& line, int column, std::string message,
              std::string remedy) {
  faults.push_back({{table.file, line.number, column}, std::move(message), std::move(remedy), line.text});
}

Table read_table(const fs::path& path, Faults& faults) {
  Table table;
  table.file = path.string();
  std::istringstream in;
  try {
    in.str(read_text_file(table.file));
  } catch (const InputError& error) {
    for (Diagnostic fault : error.faults()) {
      if (fault.where.line == 0) fault.remedy = "it belongs to the folder of score sets";
      faults.push_back(std::move(fault));
    }
    return table;
  }
  int number = 0;
  const std::size_t before = faults.size();
  for (std::string text; std::getline(in, text);) {
    ++number;
    if (!text.empty() && text.back() == '\r') text.pop_back();
    if (text.empty() || text.front() == '#') continue;
    Line line{cells_of(text, table.file), text, number};
    if (table.header.empty()) {
      for (const CsvCell& cell : line.cells) table.header.push_back(cell.text);
      table.header_line = number;
    } else if (line.cells.size() != table.header.size()) {
      complain(faults, table, line, 1,
               fmt::format("this line has {} cells, the heading has {}", line.cells.size(), table.header.size()),
               "put a cell with a comma in it in \"quotes\"");
    } else {
      table.lines.push_back(std::move(line));
    }
  }
  if (table.lines.empty() && faults.size() == before)
    faults.push_back({{table.file, std::max(table.header_line, 1), 1},
                      "this file holds no line of figures",
                      "its first line names the columns, each further line is a liquid or a sphere",
                      ""});
  return table;
}

// Position of a column, or complains once a file.
std::size_t column_of(const Table& table, const std::string& name, Faults& faults) {
  const auto found = std::find(table.header.begin(), table.header.end(), name);
  if (found == table.header.end() && !table.header.empty())
    faults.push_back({{table.file, table.header_line, 1},
                      fmt::format("there is no column \"{}\"", name),
                      "name it in the first line that is no remark",
                      ""});
  return static_cast<std::size_t>(found - table.header.begin());
}

const std::string& text_at(const Line& line, std::size_t column) {
  static const std::string none;
  return column < line.cells.size() ? line.cells[column].text : none;
}

double number_at(const Table& table, const Line& line, std::size_t column, Faults& faults) {
  if (column >= line.cells.size()) return 0;
  const CsvCell& cell = line.cells[column];
  if (const std::optional<double> value = number_from(cell.text)) return *value;
  complain(faults, table, line, cell.column, fmt::format("\"{}\" is not a number", cell.text),
           cure_of_text(cell.text, {}));
  return 0;
}

int grade_at(const Table& table, const Line& line, std::size_t column, Faults& faults) {
  if (column >= line.cells.size()) return 0;
  const CsvCell& cell = line.cells[column];
  if (cell.text.size() == 1 && cell.text[0] >= '1' && cell.text[0] <= '6') return cell.text[0] - '0';
  complain(faults, table, line, cell.column, fmt::format("\"{}\" is not a grade", cell.text),
           "grades run from 1, dissolves, to 6, nothing seen");
  return 0;
}

std::vector<Score> read_scores(const fs::path& path, Faults& faults) {
  const Table table = read_table(path, faults);
  const std::size_t solvent = column_of(table, "solvent", faults);
  const std::size_t dD = column_of(table, "dD", faults);
  const std::size_t dP = column_of(table, "dP", faults);
  const std::size_t dH = column_of(table, "dH", faults);
  const std::size_t grade = column_of(table, "grade", faults);
  std::vector<Score> scores;
  for (const Line& line : table.lines)
    scores.push_back(
        {text_at(line, solvent),
         {number_at(table, line, dD, faults), number_at(table, line, dP, faults), number_at(table, line, dH, faults)},
         grade_at(table, line, grade, faults)});
  return scores;
}

struct Columns {
  std::size_t set = 0, code = 0, material = 0, family = 0, use = 0, dD = 0, dP = 0, dH = 0, R0 = 0, note = 0;
};

Columns columns_of(const Table& table, Faults& faults) {
  const auto at = [&](const char* name) { return column_of(table, name, faults); };
  return {at("set"), at("code"), at("material"), at("family"), at("use"),
          at("dD"),  at("dP"),   at("dH"),       at("R0"),     at("note")};
}

std::optional<Sphere> sphere_at(const Table& table, const Line& line, const Columns& at, Faults& faults) {
  if (text_at(line, at.R0).empty()) return std::nullopt;
  const auto number = [&](std::size_t column) { return number_at(table, line, column, faults); };
  Sphere sphere{{number(at.dD), number(at.dP), number(at.dH)}, number(at.R0)};
  if (!(sphere.R0 > 0))
    complain(faults, table, line, at.R0 < line.cells.size() ? line.cells[at.R0].column : 1,
             "the radius must be above 0", "");
  return sphere;
}

// Every fold of the cross-validation fits a sphere to the others, which takes a liquid that dissolves and one that does
// not.
void check_grades(const ScoreSet& set, const std::string& file, Faults& faults) {
  std::set<std::size_t> folds_of_good;
  bool any_bad = false;
  for (std::size_t i = 0; i < set.scores.size(); ++i) {
    if (set.scores[i].grade == 1) folds_of_good.insert(i % fold_count);
    any_bad = any_bad || set.scores[i].grade > 1;
  }
  const auto refuse = [&](std::string message, std::string remedy) {
    faults.push_back({{file, 0, 0}, std::move(message), std::move(remedy), ""});
  };
  if (folds_of_good.empty())
    refuse("no liquid of this set has grade 1, dissolves, so there is no sphere to fit",
           "leave the set out: \"no\" in the column \"use\" of published.csv");
  else if (folds_of_good.size() == 1)
    refuse(
        "too few liquids of this set have grade 1, dissolves: without them nothing could be fitted to the others",
        fmt::format("at least two that do not stand {} lines apart, or \"no\" in the column \"use\" of published.csv",
                    fold_count));
  else if (!any_bad)
    refuse("every liquid of this set has grade 1, dissolves, so nothing bounds the sphere",
           "add liquids that do not dissolve it, or \"no\" in the column \"use\" of published.csv");
}

}  // namespace

std::vector<ScoreSet> read_score_sets(const fs::path& folder) {
  Faults faults;
  const Table table = read_table(folder / "published.csv", faults);
  const Columns at = columns_of(table, faults);
  std::vector<ScoreSet> sets;
  std::set<std::string> stems;
  bool any_used = false;
  for (const Line& line : table.lines) {
    const std::string& use = text_at(line, at.use);
    if (use == "second") continue;
    if (use != "yes" && use != "no")
      complain(faults, table, line, 1, fmt::format("\"{}\" is not a use", use), "write yes, second or no");
    ScoreSet set;
    set.stem = text_at(line, at.set);
    if (!stems.insert(set.stem).second)
      complain(faults, table, line, 1, fmt::format("set \"{}\" is named twice", set.stem),
               "mark another published sphere of the same set as second");
    set.code = text_at(line, at.code);
    set.material = text_at(line, at.material);
    set.family = text_at(line, at.family);
    set.published = sphere_at(table, line, at, faults);
    if (use == "no") set.left_out = text_at(line, at.note).empty() ? "left out" : text_at(line, at.note);
    const std::string file = (folder / (set.stem + ".csv")).string();
    const std::size_t before = faults.size();
    set.scores = read_scores(file, faults);
    const bool is_used = set.left_out.empty() && set.published;
    if (is_used && faults.size() == before) check_grades(set, file, faults);
    any_used = any_used || is_used;
    sets.push_back(std::move(set));
  }
  if (!any_used && faults.empty())
    faults.push_back({{table.file, table.header_line, 1},
                      "no set takes part in the calibration",
                      "at least one line needs \"yes\" in the column \"use\" and a sphere",
                      ""});
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  return sets;
}

}  // namespace gentlest
