#include "report/phrases/observation_words.hpp"

#include "gentlest/base/text.hpp"
#include "report/form/format.hpp"
#include "report/phrases/fit_words.hpp"

#include <fmt/format.h>

namespace gentlest {

namespace {

const char* reason_in_words(NotJudged reason) {
  switch (reason) {
    case NotJudged::no_sphere:
      return "no sphere";
    case NotJudged::no_point:
      return "liquid without dD, dP, dH";
    case NotJudged::in_words:
      return "no liquid named";
  }
  return "";
}

}  // namespace

std::string liquid_in_words(const Observation& seen, const Catalogue& catalogue) {
  if (seen.parts.empty()) return seen.liquids_in_words;
  std::string text;
  for (const ObservedPart& part : seen.parts) {
    const Solvent* solvent = catalogue.find_solvent(part.solvent);
    if (!text.empty()) text += ", ";
    text += solvent ? solvent->name : part.solvent;
    if (seen.parts.size() > 1) text += " " + as_recorded(part.percent);
  }
  return text;
}

std::string result_in_words(const Observation& seen) {
  if (!seen.result) return seen.said;
  if (*seen.result == ObservedResult::removed) return "came off";
  if (*seen.result == ObservedResult::not_removed) return "did not come off";
  return grade_words(range_of(*seen.result).strongest);
}

std::string grades_in_words(const Observation& seen) {
  if (!seen.grades) return {};
  const auto& [strongest, weakest] = *seen.grades;
  return strongest == weakest ? fmt::format("grade {}", strongest) : fmt::format("grade {} to {}", strongest, weakest);
}

std::string contact_in_words(const Observation& seen) {
  if (seen.contact == Contact::not_told) return "contact not told";
  const std::string contact(to_word(seen.contact));
  return seen.duration.empty() ? contact : contact + ", " + seen.duration;
}

std::string generality_in_words(Generality generality) {
  return with_blanks(to_word(generality));
}

std::string agreement_in_words(const JudgedObservation& judged) {
  if (judged.not_judged) return std::string("not judged: ") + reason_in_words(*judged.not_judged);
  return agreement_word(judged);
}

std::string agreement_word(const JudgedObservation& judged) {
  if (!judged.agreement) return {};
  switch (*judged.agreement) {
    case Agreement::agrees:
      return "agrees";
    case Agreement::open:
      return "open";
    case Agreement::disagrees:
      return "disagrees";
  }
  return {};
}

std::string not_judged_word(const JudgedObservation& judged) {
  if (!judged.not_judged) return {};
  switch (*judged.not_judged) {
    case NotJudged::no_sphere:
      return "no_sphere";
    case NotJudged::no_point:
      return "no_point";
    case NotJudged::in_words:
      return "in_words";
  }
  return {};
}

std::string remark_text(const Observation& seen) {
  return seen.cite + (seen.cite.empty() || seen.note.empty() ? "" : "; ") + seen.note;
}

std::string observed_legend() {
  return "Grades go from 1, dissolves, to 6, nothing seen. Moves: the program's chance of grade 2 or stronger; "
         "affects: "
         "of grade 4 or stronger. An observation disagrees where it is clear-cut at one of these grades and the chance "
         "lies on the wrong side of one half; it outranks the chance for this very liquid, contact and state. Open: it "
         "leaves room for either.";
}

}  // namespace gentlest
