// What becomes of a mixture, in words and for programs.
#pragma once

#include "gentlest/plan/plan.hpp"
#include "report/form/json.hpp"
#include "report/form/sheet.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// A few words for the row of a ladder: "one liquid; leaves isooctane last", "may cloud", "RISK UP TO 31 % WHILE
/// DRYING". Nothing is left unsaid: what is not known is named.
std::string fate_mark(const JudgedMixture& judged, double risk_limit);

/// For the first screen: only what a hand must know, each in a few words; empty of one liquid whose risk does not rise.
std::vector<std::string> short_fate_marks(const JudgedMixture& judged, double risk_limit);

/// Sentences on one liquid or two and on drying.
std::vector<std::string> fate_sentences(const JudgedMixture& judged, double risk_limit);

Json fate_json(const JudgedMixture& judged, double risk_limit);

/// Keys of the columns that a table of judged mixtures gets, and one mixture's cells.
std::vector<std::string> fate_keys();
std::vector<Cell> fate_cells(const JudgedMixture& judged);

}  // namespace gentlest
