#include "report/paper/conduct_html.hpp"

#include "gentlest/answers/ahead.hpp"

#include "report/draw/html.hpp"
#include "report/rules/conduct_words.hpp"
#include "report/rules/passage_matrix.hpp"

#include <vector>

namespace gentlest {

namespace {

std::vector<std::string> as_items(const std::vector<std::string>& words) {
  std::vector<std::string> items;
  for (const std::string& one : words) items.push_back(user_text(one));
  return items;
}

std::string row_head(const MatrixRow& row, const Progress& progress) {
  const bool is_closed = row.step && is_struck_out(progress, *row.step);
  std::string text = (row.name.empty() ? "" : html_text(row.name) + ": ") + user_text(row.mixture);
  return is_closed ? "<s>" + text + "</s>" : text;
}

std::string cell_html(const MatrixCell& cell, const Conduct& conduct) {
  std::string text;
  for (const std::string& words : cell_words(cell, conduct))
    text += element("div", user_text(words), words.rfind(harm_mark, 0) == 0 ? "harmed" : "");
  return text;
}

}  // namespace

std::string harms_html(const Conduct& conduct) {
  std::string text;
  for (const std::string& harm : harm_words(conduct)) text += element("p", user_text(harm), "harm");
  return text;
}

std::string state_html(const Plan& plan, const Progress& progress) {
  std::string text = element(
      "p", "<b>" + user_text(next_words(progress)) + "</b>. Why: " + user_text(why_words(progress)) + ".", "lead");
  std::vector<std::string> items = as_items(closure_words(plan, progress.conduct));
  if (progress.next.working)
    for (const std::string& words : as_items(working_words(progress.conduct, *progress.next.working)))
      items.push_back(words);
  text += html_list(items);
  if (progress.next.kind != NextKind::no_window) return text;
  const std::vector<std::string> closing = as_items(what_closes_words(plan, progress));
  return closing.empty() ? text : text + element("h3", "What closes the window") + html_list(closing);
}

std::string matrix_html(const Plan& plan, const Progress& progress) {
  const PassageMatrix matrix = passage_matrix(plan, progress);
  if (progress.conduct.tests.empty() || matrix.columns.empty()) return {};
  std::vector<std::string> header = {"mixture"};
  for (const MatrixColumn& column : matrix.columns)
    header.push_back(user_text(column.title) + (column.note.empty() ? "" : ": " + user_text(column.note)));
  std::vector<std::vector<std::string>> rows;
  for (const MatrixRow& row : matrix.rows) {
    rows.push_back({row_head(row, progress)});
    for (const MatrixCell& cell : row.cells) rows.back().push_back(cell_html(cell, progress.conduct));
  }
  return element("h3", matrix_heading) + html_table(header, rows, "matrix") + element("p", matrix_key);
}

}  // namespace gentlest
