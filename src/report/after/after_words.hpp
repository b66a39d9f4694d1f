// What may go on afterwards, in words: each thing once, for text, CSV, JSON and the page.
#pragma once

#include "gentlest/afterwards/afterwards.hpp"
#include "gentlest/catalogue/catalogue.hpp"

#include <string>
#include <utility>
#include <vector>

namespace gentlest {

/// "yes", "test first", "not known", "no".
std::string answer_word(CellVerdict verdict);
/// "known", "estimated", "estimated from the binder alone", "sources disagree", "not known".
std::string basis_word(CellBasis basis);
/// The same two as one word each, for machines.
std::string verdict_key(CellVerdict verdict);
std::string basis_key(CellBasis basis);
std::string why_key(CellWhy why);

/// "yes, known", "test first, estimated, 31 %".
std::string cell_words(const Judgement& judged);
/// Why, as one sentence without its end: "may not dissolve after strong light".
std::string why_words(CellWhy why);
/// "isooctane 70, acetone 30"; of a liquid alone its name; what stands there where there is none.
std::string in_words(const ActInMixture& act);
/// "oil paint", or what is left of it.
std::string coat_words(const Coat& coat);
/// Name, material, light and years: "varnish: dammar, aged; daylight, 40 years; to go".
std::string coat_line(const Coat& coat);
/// What its light makes of a proposed coat, with who says so.
std::string ageing_words(const Coat& coat);
/// "put on in isooctane, on oil paint".
std::string act_words(const JudgedStack& stack, const StackCell& cell);
/// What a stack that holds rests on at its weakest: "known", "practice", "estimated".
std::string support_key(const JudgedStack& stack);
/// The weakest link of a stack: "taken off old in acetone: oil paint: no, known".
std::string link_words(const JudgedStack& stack);
/// "oil paint / hydrocarbon resin / watercolour": the proposed coats from below up.
std::string stack_words(const JudgedStack& stack);
/// Who says so: sources with their standing and what they say there; empty where nobody does.
std::vector<std::string> voices_words(const Judgement& judged, const Catalogue& catalogue);
std::string rule_words(FinishRule rule);
/// The same with who says so.
std::string rule_line(const GeneralFact& fact, const Catalogue& catalogue);
/// Layers that stay and may be of other materials too, as the job says: judged as their own alone; a line each.
std::vector<std::string> unsure_lines(const Job& job, const Catalogue& catalogue);
/// The word of a light: "daylight"; what is said where none is told.
std::string light_words(Light light);

extern const char* const after_safety_words;
extern const char* const after_legend_words;
extern const char* const after_not_told_words;

}  // namespace gentlest
