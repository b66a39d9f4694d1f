// Tables that other studios have shared: format of docs/studio.md.
#include "io/studio_folder.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/liquids/notation.hpp"
#include "io/csv.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

class SharedReader {
 public:
  SharedReader(std::string_view text, const std::string& file, const Catalogue& catalogue,
               std::vector<Diagnostic>& faults)
      : file_(file), catalogue_(catalogue), faults_(faults), cells_(parse_csv(text, file, separator_of(text))) {}

  std::vector<SharedTest> run() {
    if (!cells_.faults.empty()) throw InputError(Fault::file, cells_.faults);
    if (cells_.rows.empty() || column_of("shared_format") == cells_.rows.front().size())
      throw InputError(Fault::file, {{{file_, 1, 0}, "this table was not written by `gentlest share`", "", {}}});
    for (const std::string_view need : {"painting", "mixture"})
      if (column_of(need) == cells_.rows.front().size())
        throw InputError(Fault::file, {{{file_, 1, 0}, fmt::format("there is no column \"{}\"", need), "", {}}});
    std::vector<SharedTest> tests;
    for (std::size_t i = 1; i < cells_.rows.size(); ++i) {
      const std::size_t before = faults_.size();
      SharedTest test = read_row(cells_.rows[i]);
      if (faults_.size() == before) tests.push_back(std::move(test));
    }
    return tests;
  }

 private:
  std::size_t column_of(std::string_view name) const {
    const std::vector<CsvCell>& header = cells_.rows.front();
    return static_cast<std::size_t>(
        std::find_if(header.begin(), header.end(), [&](const CsvCell& cell) { return trimmed(cell.text) == name; }) -
        header.begin());
  }

  std::string cell(const std::vector<CsvCell>& row, std::string_view name) const {
    const std::size_t at = column_of(name);
    if (at >= row.size() || folded(row[at].text) == "not known") return {};
    return std::string(trimmed(row[at].text));
  }

  void complain(const std::vector<CsvCell>& row, std::string message) {
    faults_.push_back({{file_, row.front().line, 0}, std::move(message) + "; the row is left out", "", {}});
  }

  std::string material(const std::vector<CsvCell>& row, std::string_view name) {
    const std::string id = cell(row, name);
    const Material* known = id.empty() ? nullptr : catalogue_.find_material(id);
    if (!id.empty() && !known) complain(row, fmt::format("no material \"{}\" is known", id));
    return known ? known->id : std::string();
  }

  SharedTest read_row(const std::vector<CsvCell>& row) {
    SharedTest test;
    const std::optional<double> format = number_from(cell(row, "shared_format"));
    const std::optional<double> painting = number_from(cell(row, "painting"));
    if (format != shared_format) complain(row, fmt::format("only format {} is read", shared_format));
    if (!painting || *painting < 1 || *painting > 1e6)
      complain(row, "the painting has no number");
    else
      test.painting = static_cast<int>(*painting);
    test.removed_material = material(row, "removed_material");
    test.original_material = material(row, "original_material");
    test.paint_age_years = number_from(cell(row, "paint_age_years"));
    test.mixture = cell(row, "mixture");
    for (const std::string_view key : shared_reading_keys) {
      const std::string text = cell(row, key);
      if (!text.empty() && !set_field(test.reading, key, text))
        complain(row, fmt::format("\"{}\" is not understood under \"{}\"", text, key));
    }
    check_mixture(row, test);
    return test;
  }

  void check_mixture(const std::vector<CsvCell>& row, const SharedTest& test) {
    Reading reading = test.reading;
    reading.mixture = test.mixture;
    reading.looked_after.clear();
    for (const Diagnostic& fault : check_reading(reading)) complain(row, fault.message);
    if (test.mixture.empty() || no_mixture_from(test.mixture)) return;
    try {
      parse_mixture(test.mixture, catalogue_);
    } catch (const InputError& error) {
      complain(row, error.faults().front().message);
    }
  }

  const std::string& file_;
  const Catalogue& catalogue_;
  std::vector<Diagnostic>& faults_;
  CsvTable cells_;
};

}  // namespace

std::vector<SharedTest> read_shared_table(std::string_view text, const std::string& file, const Catalogue& catalogue,
                                          std::vector<Diagnostic>& faults) {
  return SharedReader(text, file, catalogue, faults).run();
}

}  // namespace gentlest
