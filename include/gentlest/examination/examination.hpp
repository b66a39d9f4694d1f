// What the examination of a painting means for the tests: whether to test at all, and what is lowered, left out or
// tried first. The questions and what each answer does stand in solvents/examination.yaml; here they are applied. What
// is not known counts on the careful side: an unanswered question is answered "not known".
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/job/job.hpp"

#include <string>
#include <vector>

namespace gentlest {

enum class ExaminationVerdict {
  go,       ///< nothing known speaks against a first swab
  not_yet,  ///< something comes before it
  do_not    ///< no solvent test
};

/// One question of the catalogue with the job's answer.
struct WeighedAnswer {
  const ExaminationQuestion* question = nullptr;  ///< of the catalogue
  const ExaminationAnswer* answer = nullptr;      ///< the same; `not_known_answer` where the job has none
  std::vector<std::string> where;
  std::string note;
  bool closes_nothing = false;  ///< it closes, but not every place is a passage of the job: nothing leaves it out
};

struct Examination {
  ExaminationVerdict verdict = ExaminationVerdict::go;
  std::vector<WeighedAnswer> answers;  ///< one a question, in the catalogue's order
};

bool does(const ExaminationAnswer& answer, ExaminationEffect effect);

/// True of an answer that the job gives and that is not "not known".
bool is_known(const WeighedAnswer& weighed);

/// Precondition: findings_faults finds nothing.
Examination weigh_examination(const Job& job, const Catalogue& catalogue);

/// Answers that do this, in their order.
std::vector<const WeighedAnswer*> answers_that(const Examination& examination, ExaminationEffect effect);

/// Carries the findings into the rest of the job: passages left out, flags, families left off, no edge tests, half the
/// risk limit where an answer lowers it. Once for a job: the risk limit would be halved again. Precondition as above.
void take_in_findings(Job& job, const Catalogue& catalogue);

/// Unknown questions and answers, and questions answered twice; each fault at its place.
std::vector<Diagnostic> findings_faults(const Job& job, const Catalogue& catalogue);

}  // namespace gentlest
