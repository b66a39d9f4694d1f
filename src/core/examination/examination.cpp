#include "gentlest/examination/examination.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <set>
#include <utility>

namespace gentlest {

namespace {

const ExaminationAnswer* find_answer(const ExaminationQuestion& question, const std::string& word) {
  const auto found = std::find_if(question.answers.begin(), question.answers.end(),
                                  [&](const ExaminationAnswer& one) { return folded(one.word) == folded(word); });
  return found == question.answers.end() ? nullptr : &*found;
}

ExaminationVerdict verdict_of(const WeighedAnswer& weighed) {
  if (does(*weighed.answer, ExaminationEffect::stop)) return ExaminationVerdict::do_not;
  const bool waits = does(*weighed.answer, ExaminationEffect::wait) || weighed.closes_nothing;
  return waits ? ExaminationVerdict::not_yet : ExaminationVerdict::go;
}

std::string words_of(const ExaminationQuestion& question) {
  std::string words;
  for (const ExaminationAnswer& answer : question.answers) words += (words.empty() ? "" : ", ") + answer.word;
  return words;
}

template <class Passages>
auto* named_passage(Passages& passages, const std::string& name) {
  for (auto& passage : passages)
    if (folded(passage.name) == folded(name)) return &passage;
  return static_cast<decltype(&passages.front())>(nullptr);
}

void add_flag(std::vector<Flag>& flags, Flag flag) {
  if (std::find(flags.begin(), flags.end(), flag) == flags.end()) flags.push_back(flag);
}

// Of the passages named; of all paint where a place is none or is not told, for it may be anywhere.
void suspect(Job& job, Flag flag, const std::vector<std::string>& where) {
  bool is_everywhere = where.empty();
  for (const std::string& name : where)
    if (Passage* passage = named_passage(job.passages, name))
      add_flag(passage->suspected, flag);
    else
      is_everywhere = true;
  if (!is_everywhere) return;
  for (Layer& layer : job.layers)
    if (layer.role == Role::keep) add_flag(layer.suspected, flag);
}

void take_in(Job& job, const WeighedAnswer& weighed, bool& lowers) {
  for (const ExaminationStep& step : weighed.answer->does) switch (step.effect) {
      case ExaminationEffect::suspect:
        suspect(job, *step.flag, weighed.where);
        break;
      case ExaminationEffect::no_edge:
        job.limits.edge_tests = 0;
        break;
      case ExaminationEffect::lower_limit:
        lowers = true;
        break;
      case ExaminationEffect::leave_off:
        if (std::find(job.left_off.begin(), job.left_off.end(), step.family) == job.left_off.end())
          job.left_off.push_back(step.family);
        break;
      case ExaminationEffect::close:
        for (const std::string& name : weighed.where)
          if (Passage* passage = named_passage(job.passages, name)) passage->is_left_out = true;
        break;
      case ExaminationEffect::first_test:
      case ExaminationEffect::wait:
      case ExaminationEffect::stop:
        break;
    }
}

}  // namespace

bool does(const ExaminationAnswer& answer, ExaminationEffect effect) {
  return std::any_of(answer.does.begin(), answer.does.end(),
                     [&](const ExaminationStep& step) { return step.effect == effect; });
}

bool is_known(const WeighedAnswer& weighed) {
  return weighed.answer->word != not_known_answer;
}

Examination weigh_examination(const Job& job, const Catalogue& catalogue) {
  Examination examination;
  for (const ExaminationQuestion& question : catalogue.examination()) {
    WeighedAnswer weighed{&question, &question.answers.back(), {}, {}, false};
    for (const Finding& finding : job.examination)
      if (finding.question == question.id) {
        weighed.answer = find_answer(question, finding.answer);
        weighed.where = finding.where;
        weighed.note = finding.note;
      }
    assert(weighed.answer);
    weighed.closes_nothing =
        does(*weighed.answer, ExaminationEffect::close) &&
        (weighed.where.empty() || std::any_of(weighed.where.begin(), weighed.where.end(), [&](const std::string& name) {
           return !named_passage(job.passages, name);
         }));
    examination.verdict = std::max(examination.verdict, verdict_of(weighed));
    examination.answers.push_back(std::move(weighed));
  }
  return examination;
}

std::vector<const WeighedAnswer*> answers_that(const Examination& examination, ExaminationEffect effect) {
  std::vector<const WeighedAnswer*> found;
  for (const WeighedAnswer& one : examination.answers)
    if (does(*one.answer, effect)) found.push_back(&one);
  return found;
}

void take_in_findings(Job& job, const Catalogue& catalogue) {
  bool lowers = false;
  for (const WeighedAnswer& one : weigh_examination(job, catalogue).answers) take_in(job, one, lowers);
  if (lowers) job.limits.risk_limit /= 2;
}

std::vector<Diagnostic> findings_faults(const Job& job, const Catalogue& catalogue) {
  std::vector<Diagnostic> faults;
  std::vector<std::string> ids;
  for (const ExaminationQuestion& question : catalogue.examination()) ids.push_back(question.id);
  std::set<std::string> answered;
  for (const Finding& finding : job.examination) {
    const auto complain = [&](std::string message, std::string remedy) {
      faults.push_back({finding.place, std::move(message), std::move(remedy), {}});
    };
    const ExaminationQuestion* question = catalogue.find_question(finding.question);
    if (!question) {
      const std::string near = nearest_name(finding.question, ids);
      complain(fmt::format("the examination has no question \"{}\"", finding.question),
               near.empty() ? "`gentlest examine` shows them all" : fmt::format("did you mean \"{}\"?", near));
    } else if (!find_answer(*question, finding.answer)) {
      complain(fmt::format("\"{}\" is no answer to {}", finding.answer, finding.question),
               "write one of: " + words_of(*question));
    } else if (!answered.insert(finding.question).second) {
      complain(fmt::format("{} is answered twice", finding.question), "keep one answer");
    }
  }
  return faults;
}

}  // namespace gentlest
