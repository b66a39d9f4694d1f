#include "report/examined/examination_words.hpp"

#include "gentlest/base/text.hpp"
#include "report/form/format.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

std::string step_words(const ExaminationStep& step) {
  switch (step.effect) {
    case ExaminationEffect::first_test:
      return "something is tried first";
    case ExaminationEffect::suspect:
      return fmt::format("taken for {}", with_blanks(to_word(*step.flag)));
    case ExaminationEffect::no_edge:
      return "no tests at an edge";
    case ExaminationEffect::lower_limit:
      return "half the risk limit";
    case ExaminationEffect::leave_off:
      return step.family == "water" ? std::string("no bottle that holds water")
                                    : fmt::format("no bottle of the family {}", step.family);
    case ExaminationEffect::close:
      return "the places are left out";
    case ExaminationEffect::wait:
      return "comes before any swab";
    case ExaminationEffect::stop:
      return "no solvent test";
  }
  return {};
}

// The words of an answer, or what it does where it has none.
std::string said_by(const WeighedAnswer& weighed) {
  return weighed.answer->says.empty() ? effect_words(*weighed.answer) : weighed.answer->says;
}

std::string line_of(const WeighedAnswer& weighed) {
  return fmt::format("{}: {}", topic_and_place(weighed), said_by(weighed));
}

std::size_t answered(const Examination& examination) {
  return static_cast<std::size_t>(std::count_if(examination.answers.begin(), examination.answers.end(), is_known));
}

}  // namespace

std::string verdict_word(ExaminationVerdict verdict) {
  switch (verdict) {
    case ExaminationVerdict::go:
      return "go";
    case ExaminationVerdict::not_yet:
      return "not yet";
    case ExaminationVerdict::do_not:
      return "do not";
  }
  return {};
}

std::string effect_words(const ExaminationAnswer& answer) {
  std::vector<std::string> words;
  for (const ExaminationStep& step : answer.does) words.push_back(step_words(step));
  return joined(words, "; ");
}

std::string topic_and_place(const WeighedAnswer& weighed) {
  const std::string topic = with_blanks(weighed.question->id);
  return weighed.where.empty() ? topic : fmt::format("{} ({})", topic, joined(weighed.where));
}

std::vector<std::string> first_lines(const Examination& examination) {
  std::vector<std::string> lines;
  for (const ExaminationEffect effect : {ExaminationEffect::stop, ExaminationEffect::wait})
    for (const WeighedAnswer* one : answers_that(examination, effect)) lines.push_back(line_of(*one));
  for (const WeighedAnswer& one : examination.answers)
    if (one.closes_nothing)
      lines.push_back(
          fmt::format("{}: not every such place is a passage of this job, so no test is kept off it; name "
                      "each under passages and here.",
                      topic_and_place(one)));
  return lines;
}

std::string verdict_sentence(const Examination& examination) {
  const std::size_t open = examination.answers.size() - answered(examination);
  std::string text = fmt::format("Examination: {}.", verdict_word(examination.verdict));
  for (const std::string& line : first_lines(examination)) text += " " + line;
  if (open > 0 && answered(examination) > 0)
    text += fmt::format(" Not known: {} of {}.", open, examination.answers.size());
  if (answered(examination) == 0) text += " Nothing is answered; gentlest examine asks.";
  return text;
}

std::vector<std::string> consequence_lines(const Examination& examination) {
  std::vector<std::string> lines;
  for (const WeighedAnswer& one : examination.answers) {
    const bool is_told = does(*one.answer, ExaminationEffect::stop) || does(*one.answer, ExaminationEffect::wait);
    // That something is tried first is what the words say already.
    ExaminationAnswer beside = *one.answer;
    if (!beside.says.empty())
      beside.does.erase(
          std::remove_if(beside.does.begin(), beside.does.end(),
                         [](const ExaminationStep& step) { return step.effect == ExaminationEffect::first_test; }),
          beside.does.end());
    const std::string effects = effect_words(beside);
    if (!is_known(one) || is_told || (one.answer->says.empty() && effects.empty())) continue;
    lines.push_back(effects.empty() || one.answer->says.empty() ? line_of(one)
                                                                : fmt::format("{} [{}]", line_of(one), effects));
  }
  return lines;
}

std::string reason_source(const ExaminationQuestion& question, const Catalogue& catalogue) {
  const Source* source = catalogue.find_source(question.source);
  const std::string cited = source ? source->citation : question.source;
  std::string words = question.cite.empty() ? cited : cited + ", " + question.cite;
  if (question.witness == Witness::memory && words != "from memory") words += " (from memory)";
  return words;
}

}  // namespace gentlest
