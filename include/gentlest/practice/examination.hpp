// What is looked at before the first swab, as solvents/examination.yaml holds it: questions, answers, what each does.
#pragma once

#include "gentlest/finishes/witness.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

enum class Flag;

/// What an answer does to the plan, mildest first.
enum class ExaminationEffect {
  first_test,   ///< something is tried before the ladder
  suspect,      ///< sets a flag of the paint, or of the places named
  no_edge,      ///< there is no place where harm matters less
  lower_limit,  ///< half the risk limit, once
  leave_off,    ///< no bottle of a family in any mixture; "water": none that holds water
  close,        ///< the places named are left out of the tests
  wait,         ///< something comes before any test on the picture
  stop          ///< no solvent test
};
std::string_view to_word(ExaminationEffect effect);
std::optional<ExaminationEffect> examination_effect_from_word(std::string_view word);

struct ExaminationStep {
  ExaminationEffect effect = ExaminationEffect::first_test;
  std::optional<Flag> flag = std::nullopt;  ///< exactly for `suspect`
  std::string family = {};                  ///< exactly for `leave_off`: of liquids, or "water"
};

struct ExaminationAnswer {
  std::string word;         ///< as a job writes it
  bool asks_where = false;  ///< of the painting
  std::vector<ExaminationStep> does;
  std::string says;  ///< what to do, a sentence or two; may be empty
};

/// The answer that is open to every question and that an unanswered one counts as.
inline constexpr const char* not_known_answer = "not known";

struct ExaminationQuestion {
  std::string id;  ///< key of the job's `examination`
  std::string topic;
  std::string question;
  std::string why;
  std::string source;  ///< of why it is asked; what an answer does is our choice
  std::string cite;    ///< page or section; may be empty
  Witness witness = Witness::practice;
  std::vector<ExaminationAnswer> answers;  ///< the last is `not_known_answer`
};

}  // namespace gentlest
