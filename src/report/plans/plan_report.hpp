// The plan of one painting for people, spreadsheets and programs.
#pragma once

#include "gentlest/answers/bench.hpp"
#include "gentlest/plan/plan.hpp"
#include "report/form/form.hpp"
#include "report/phrases/judged.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// "Solvent tests for: Pears and a blue jug".
std::string plan_title(const Plan& plan);

/// The bench must be that of the plan. The short text fits one screen, in the words of the trade; the other has all.
std::string plan_short_text(const Plan& plan, const Bench& bench, const Style& style, const Edition& edition);
std::string plan_text(const Plan& plan, const Bench& bench, const Style& style, const Edition& edition);
std::string plan_csv(const Plan& plan, const Edition& edition);
std::string plan_json(const Plan& plan, const Bench& bench, const Edition& edition);

/// The tables of a plan's text: recipes with effect and risk; where each mixture sits; RED bands.
std::string recipes_table(const std::vector<const JudgedMixture*>& mixtures, const Limits& limits, const Style& style);
std::string places_table(const std::vector<const JudgedMixture*>& mixtures, const std::vector<PlannedLayer>& layers,
                         bool margin_claimed, const Style& style);
std::string bands_table(const std::vector<const JudgedMixture*>& mixtures, const std::vector<PlannedLayer>& layers,
                        const Style& style);

/// What the ladder's line is and gives up; the other lines as short tables, and how to see the best of the shelf.
std::string ladder_line_text(const Plan& plan, const Style& style);
std::string other_lines_text(const Plan& plan, const Style& style);
Json lines_json(const Plan& plan);

/// What to measure: mL of each bottle for every mixture and in all; what rounding does to a mixture.
std::string measures_text(const Plan& plan, const Bench& bench, const Style& style);
Json measures_json(const Plan& plan, const Bench& bench);

/// Without a window nothing beyond the limit is measured; a rung that rounding pushes beyond it stays, and says so.
bool is_measured(const BenchMixture& mixture, const Plan& plan);

/// Cells of a table: mL of that bottle, and to top up; "-" where there is none.
std::string volume_of(const BenchMixture& mixture, const std::string& label);
std::string top_up_text(const BenchMixture& mixture);

/// For the person: what each mixture's label says at worst, breath, skin, bottles to put away; then how each test is
/// held, cleared and looked at again. Empty where nothing is measured.
std::string person_text(const Bench& bench, const Style& style);
Json person_json(const Bench& bench);

/// How each test is made, each sentence once behind the mixtures that it is for.
std::vector<std::string> contact_sentences(const Bench& bench);

/// The limits beyond risk that the search kept to, in one sentence; empty when there are none.
std::string search_limits_words(const Job& job);

}  // namespace gentlest
