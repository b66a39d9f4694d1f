#include "cli/asking.hpp"

#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <istream>
#include <optional>
#include <ostream>

namespace gentlest {

namespace {

// Nothing at the end of the input.
std::optional<std::string> read_line(Session& session) {
  if (session.surroundings.interrupted && session.surroundings.interrupted()) throw Interrupted{};
  std::string line;
  if (!std::getline(session.in, line)) return std::nullopt;
  return std::string(trimmed(line));
}

const ExaminationAnswer* answer_meant(const ExaminationQuestion& question, const std::string& typed) {
  std::size_t number = 0;
  const auto [end, error] = std::from_chars(typed.data(), typed.data() + typed.size(), number);
  if (error == std::errc() && end == typed.data() + typed.size())
    return number >= 1 && number <= question.answers.size() ? &question.answers[number - 1] : nullptr;
  for (const ExaminationAnswer& answer : question.answers)
    if (folded(answer.word) == folded(typed)) return &answer;
  return nullptr;
}

void put(const ExaminationQuestion& question, Session& session) {
  session.err << "\n" << question.question << "\n  ";
  for (std::size_t i = 0; i < question.answers.size(); ++i)
    session.err << (i > 0 ? "   " : "") << i + 1 << " " << question.answers[i].word;
  session.err << "\n> " << std::flush;
}

enum class Asked { answered, open, no_more };

Asked ask(const ExaminationQuestion& question, Session& session, Finding& finding) {
  for (;;) {
    put(question, session);
    const std::optional<std::string> line = read_line(session);
    if (!line || folded(*line) == "end") return Asked::no_more;
    if (line->empty()) return Asked::open;
    if (*line == "?") {
      session.err << "  " << question.why << "\n";
      continue;
    }
    const ExaminationAnswer* answer = answer_meant(question, *line);
    if (!answer) {
      session.err << "  write one of the numbers or words, nothing to leave it open, ? for why, end to stop asking\n";
      continue;
    }
    finding.question = question.id;
    finding.answer = answer->word;
    if (answer->asks_where) {
      session.err << "  where? passages or places, with commas between\n> " << std::flush;
      finding.where = items_of(read_line(session).value_or(""), ",");
    }
    if (!answer->says.empty()) session.err << "  " << answer->says << "\n";
    return Asked::answered;
  }
}

std::string quoted(const std::string& text) {
  std::string made = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') made += '\\';
    if (static_cast<unsigned char>(c) >= 0x20) made += c;
  }
  return made + "\"";
}

std::string line_of(const Finding& finding) {
  if (finding.where.empty()) return fmt::format("  {}: {}\n", finding.question, quoted(finding.answer));
  std::string where;
  for (const std::string& place : finding.where) where += (where.empty() ? "" : ", ") + quoted(place);
  return fmt::format("  {}: {{answer: {}, where: [{}]}}\n", finding.question, quoted(finding.answer), where);
}

}  // namespace

std::vector<Finding> asked_findings(const Catalogue& catalogue, Session& session) {
  std::vector<Finding> findings;
  session.err << "What did the examination show? A number or the words; nothing leaves it open; ? says why; end "
                 "stops.\n";
  for (const ExaminationQuestion& question : catalogue.examination()) {
    Finding finding;
    const Asked asked = ask(question, session, finding);
    if (asked == Asked::no_more) break;
    if (asked == Asked::answered) findings.push_back(std::move(finding));
  }
  session.err << "\n";
  return findings;
}

std::string with_examination(const std::string& job_text, const std::vector<Finding>& findings) {
  std::string block = findings.empty() ? "examination: {}\n" : "examination:\n";
  for (const Finding& finding : findings) block += line_of(finding);
  const std::string key = "\nexamination:";
  const std::size_t at = job_text.find(key);
  if (at == std::string::npos) return job_text + "\n" + block;
  // The old block goes on until a line that begins at the margin.
  std::size_t end = job_text.find('\n', at + 1);
  while (end != std::string::npos && end + 1 < job_text.size() &&
         (job_text[end + 1] == ' ' || job_text[end + 1] == '#'))
    end = job_text.find('\n', end + 1);
  const std::string after = end == std::string::npos ? std::string() : job_text.substr(end + 1);
  return job_text.substr(0, at + 1) + block + after;
}

}  // namespace gentlest
