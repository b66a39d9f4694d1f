#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"

#include <algorithm>
#include <utility>

namespace gentlest {

namespace {

// Long lines are cut around the fault, so that the caret stays on the screen.
constexpr std::size_t widest_excerpt = 90;

bool is_continuation(char c) {
  return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u;
}

// Blanks under everything before the caret; tabs stay tabs and a character of several bytes counts once.
std::string indent_under(std::string_view before) {
  std::string indent;
  for (const char c : before)
    if (!is_continuation(c)) indent += c == '\t' ? '\t' : ' ';
  return indent;
}

std::string excerpt_with_caret(const std::string& line, int column) {
  std::string_view shown = line;
  std::size_t at = column > 0 ? static_cast<std::size_t>(column - 1) : 0;
  at = std::min(at, shown.size());
  std::size_t from = at > widest_excerpt - 20 ? at - (widest_excerpt - 20) : 0;
  while (from < shown.size() && is_continuation(shown[from])) ++from;
  std::size_t length = std::min(widest_excerpt, shown.size() - from);
  while (from + length < shown.size() && is_continuation(shown[from + length])) ++length;
  shown = shown.substr(from, length);
  std::string text = "    " + with_controls_shown(shown, "\t") + "\n";
  if (column > 0) text += "    " + indent_under(with_controls_shown(shown.substr(0, at - from), "\t")) + "^\n";
  return text;
}

std::string summary_of(const std::vector<Diagnostic>& faults) {
  return faults.empty() ? "faulty input" : faults.front().message;
}

}  // namespace

std::string render(const Diagnostic& fault) {
  std::string text;
  if (!fault.where.file.empty()) {
    text += with_controls_shown(fault.where.file) + ":";
    if (fault.where.line > 0) text += std::to_string(fault.where.line) + ":";
    if (fault.where.line > 0 && fault.where.column > 0) text += std::to_string(fault.where.column) + ":";
    text += " ";
  }
  text += "error: " + with_controls_shown(fault.message) + "\n";
  if (!fault.excerpt.empty()) text += excerpt_with_caret(fault.excerpt, fault.where.column);
  if (!fault.remedy.empty()) text += "    " + with_controls_shown(fault.remedy) + "\n";
  return text;
}

std::string render(const std::vector<Diagnostic>& faults, std::size_t most) {
  std::vector<Diagnostic> sorted = faults;
  std::stable_sort(sorted.begin(), sorted.end(),
                   [](const Diagnostic& a, const Diagnostic& b) { return a.where < b.where; });
  std::string text;
  for (std::size_t i = 0; i < sorted.size() && i < most; ++i) text += render(sorted[i]);
  if (sorted.size() > most) text += "... and " + std::to_string(sorted.size() - most) + " more\n";
  return text;
}

InputError::InputError(Fault kind, std::vector<Diagnostic> faults)
    : std::runtime_error(summary_of(faults)), kind_(kind), faults_(std::move(faults)) {}

InputError::InputError(Fault kind, std::string message, std::string remedy)
    : InputError(kind, std::vector<Diagnostic>{{{}, std::move(message), std::move(remedy), {}}}) {}

std::size_t edit_distance(const std::string& a, const std::string& b) {
  std::vector<std::vector<std::size_t>> cost(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) cost[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j) cost[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i)
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = cost[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0u : 1u);
      cost[i][j] = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
    }
  return cost[a.size()][b.size()];
}

std::string nearest_name(std::string_view typed, const std::vector<std::string>& known) {
  const std::string wanted = folded(typed);
  if (wanted.empty() || wanted.size() > 100) return {};
  std::string nearest;
  std::size_t least = wanted.size() / 3 + 1;
  for (const std::string& name : known) {
    const std::string candidate = folded(name);
    const std::size_t longer = std::max(candidate.size(), wanted.size());
    if (longer - std::min(candidate.size(), wanted.size()) >= least) continue;
    const std::size_t distance = edit_distance(wanted, candidate);
    if (distance >= least) continue;
    least = distance;
    nearest = name;
  }
  return nearest;
}

}  // namespace gentlest
