#include "report/rules/passage_matrix.hpp"

#include "report/form/format.hpp"
#include "report/rules/conduct_words.hpp"

#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

class Matrix {
 public:
  Matrix(const Plan& plan, const Progress& progress) : plan_(plan), progress_(progress), conduct_(progress.conduct) {}

  PassageMatrix run() {
    add_columns();
    add_rungs();
    for (const SwabTest& test : conduct_.tests)
      if (!row_of(test)) add_row({{}, test.words, std::nullopt, {}}, test.mixture);
    for (const SwabTest& test : conduct_.tests) enter(test);
    for (std::size_t i = 0; i < matrix_.rows.size(); ++i) mark(i);
    return std::move(matrix_);
  }

 private:
  void add_columns() {
    const bool any_at_edge = std::any_of(conduct_.tests.begin(), conduct_.tests.end(),
                                         [](const SwabTest& test) { return test.place == Place::edge; });
    if (any_at_edge || plan_.job.limits.edge_tests > 0) {
      std::string note;
      if (conduct_.edge_refuted_by)
        note = fmt::format("opens nothing: test {} refuted it", conduct_.tests[*conduct_.edge_refuted_by].number);
      matrix_.columns.push_back({place_words(Place::edge, {}), note, Place::edge, {}, {}, std::nullopt});
    }
    for (const PassageState& passage : conduct_.passages) {
      std::string note;
      if (passage.closed_by)
        note = fmt::format("closed by test {}: keep a border", conduct_.tests[*passage.closed_by].number);
      else if (passage.is_left_out)
        note = "left out: keep a border";
      matrix_.columns.push_back({passage.name.empty() ? place_words(Place::picture, {}) : passage.name, note,
                                 Place::picture, passage.name, passage.layer, passage.closed_by});
    }
    const bool any_elsewhere = std::any_of(conduct_.tests.begin(), conduct_.tests.end(),
                                           [&](const SwabTest& test) { return !listed_column_of(test); });
    if (any_elsewhere)
      matrix_.columns.push_back(
          {"elsewhere on the picture", "no passage that the job lists", Place::picture, {}, {}, std::nullopt, true});
  }

  std::optional<std::size_t> listed_column_of(const SwabTest& test) const {
    const std::size_t listed = matrix_.columns.size() - (has_elsewhere() ? 1 : 0);
    for (std::size_t i = 0; i < listed; ++i) {
      const MatrixColumn& column = matrix_.columns[i];
      if (column.place == test.place && (test.place == Place::edge || column.passage == test.passage)) return i;
    }
    return std::nullopt;
  }

  bool has_elsewhere() const { return !matrix_.columns.empty() && matrix_.columns.back().is_elsewhere; }

  std::size_t column_of(const SwabTest& test) const {
    return listed_column_of(test).value_or(matrix_.columns.size() - 1);
  }

  std::size_t line_shown() const {
    const NextAnswer& next = progress_.next;
    if (next.test && next.test->step) return conduct_.steps[*next.test->step].line;
    if (next.working && next.working->step) return conduct_.steps[*next.working->step].line;
    return 0;
  }

  bool is_shown(std::size_t step) const {
    const PlanStep& one = conduct_.steps[step];
    if (one.line != line_shown()) return false;
    if (one.origin.kind == OriginKind::rung) return true;
    if (progress_.next.test && progress_.next.test->step == step) return true;
    return std::any_of(conduct_.tests.begin(), conduct_.tests.end(), [&](const SwabTest& test) {
      return test.mixture && is_same_mixture(*test.mixture, one.mixture);
    });
  }

  void add_rungs() {
    for (std::size_t i = 0; i < conduct_.steps.size(); ++i)
      if (is_shown(i)) {
        const Mixture& mixture = conduct_.steps[i].mixture;
        add_row({{}, to_text(mixture), i, {}}, mixture);
      }
  }

  void add_row(MatrixRow row, std::optional<Mixture> mixture) {
    if (mixture && !row.step) row.step = step_of(conduct_, *mixture);
    if (row.step) row.name = step_name(conduct_, row.step);
    row.cells.resize(matrix_.columns.size());
    matrix_.rows.push_back(std::move(row));
    mixtures_.push_back(std::move(mixture));
  }

  std::optional<std::size_t> row_of(const SwabTest& test) const {
    for (std::size_t i = 0; i < matrix_.rows.size(); ++i)
      if (test.mixture && mixtures_[i] ? is_same_mixture(*mixtures_[i], *test.mixture)
                                       : !test.mixture && !mixtures_[i] && matrix_.rows[i].mixture == test.words)
        return i;
    return std::nullopt;
  }

  void enter(const SwabTest& test) {
    MatrixCell& cell = matrix_.rows[*row_of(test)].cells[column_of(test)];
    cell.tests.push_back(static_cast<std::size_t>(&test - conduct_.tests.data()));
    const bool is_listed = test.place == Place::picture && listed_column_of(test);
    const bool names_a_passage = !is_listed && !test.passage.empty();
    const bool is_as_planned = !test.made || to_text(*test.made) == to_text(*test.mixture);
    cell.read.push_back(fmt::format("{}test {}: {}{}{}", test.harmed ? std::string(harm_mark) + ", " : "", test.number,
                                    as_read_words(test), names_a_passage ? " (" + test.passage + ")" : "",
                                    is_as_planned ? "" : ", made as " + to_text(*test.made)));
  }

  // What is closed, and where the mixture that works is still to be tried.
  void mark(std::size_t at) {
    MatrixRow& row = matrix_.rows[at];
    if (!mixtures_[at]) return;
    const bool works = progress_.next.working && is_same_mixture(progress_.next.working->mixture, *mixtures_[at]);
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const MatrixColumn& column = matrix_.columns[i];
      MatrixCell& cell = row.cells[i];
      const Closure* closure = row.step ? closure_of(conduct_, *row.step, column.layer) : nullptr;
      if (closure)
        cell.closed_by = closure->by;
      else if (column.closed_by)
        cell.closed_by = column.closed_by;
      else if (!row.step)
        cell.closed_by = closed_by(plan_, conduct_, *mixtures_[at]);
      const auto& untested = progress_.next.working ? progress_.next.working->untested : no_names_;
      cell.is_wanted = works && column.place == Place::picture && !cell.closed_by && cell.read.empty() &&
                       std::find(untested.begin(), untested.end(), column.passage) != untested.end();
    }
  }

  const Plan& plan_;
  const Progress& progress_;
  const Conduct& conduct_;
  const std::vector<std::string> no_names_;
  PassageMatrix matrix_;
  std::vector<std::optional<Mixture>> mixtures_;  // of the rows; nothing of a blank or of what cannot be read
};

}  // namespace

PassageMatrix passage_matrix(const Plan& plan, const Progress& progress) {
  return Matrix(plan, progress).run();
}

std::vector<std::string> cell_words(const MatrixCell& cell, const Conduct& conduct) {
  std::vector<std::string> words = cell.read;
  const bool is_own =
      cell.closed_by && std::find(cell.tests.begin(), cell.tests.end(), *cell.closed_by) != cell.tests.end();
  if (cell.closed_by)
    words.push_back(is_own ? "closed" : fmt::format("closed (test {})", conduct.tests[*cell.closed_by].number));
  if (cell.is_wanted) words.emplace_back("not yet tested");
  if (words.empty()) words.emplace_back("\u00b7");
  return words;
}

}  // namespace gentlest
