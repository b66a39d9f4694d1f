// The page before the ladder: go, not yet or do not, with reasons and sources; on screen, for programs, to print.
#pragma once

#include "gentlest/examination/examination.hpp"
#include "report/draw/html.hpp"
#include "report/form/form.hpp"

#include <string>

namespace gentlest {

/// `title`: of the painting; empty where nobody named one. `full`: every question with its reason.
std::string examination_text(const Examination& examination, const std::string& title, const Catalogue& catalogue,
                             bool full, const Style& style, const Edition& edition);

std::string examination_json(const Examination& examination, const std::string& title, const Catalogue& catalogue,
                             const Edition& edition);

/// One row a question.
std::string examination_csv(const Examination& examination, const Catalogue& catalogue, const Edition& edition);

/// ExaminationVerdict and what it changes, as HTML for pages that speak of the tests themselves.
std::string examination_block(const Examination& examination);

/// To fill in by hand: every question with boxes, those answered ticked; one HTML file.
std::string examination_html(const Examination& examination, const std::string& title, const Catalogue& catalogue,
                             Paper paper, const Edition& edition);

}  // namespace gentlest
