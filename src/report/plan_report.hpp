// The plan of one painting for people, spreadsheets and programs.
#pragma once

#include "gentlest/plan.hpp"
#include "report/form.hpp"
#include "report/judged.hpp"

#include <string>
#include <vector>

namespace gentlest {

std::string plan_text(const Plan& plan, const Style& style, const Edition& edition);
std::string plan_csv(const Plan& plan, const Edition& edition);
std::string plan_json(const Plan& plan, const Edition& edition);

/// Every mixture the plan shows: its rungs, or the nearest ones where there is no window.
std::vector<NamedMixture> mixtures_of(const Plan& plan);

/// The tables of a plan's text: recipes with effect and risk; where each mixture sits; RED bands.
std::string recipes_table(const std::vector<NamedMixture>& mixtures, double risk_limit, const Style& style);
std::string places_table(const std::vector<NamedMixture>& mixtures, const std::vector<PlannedLayer>& layers,
                         bool margin_claimed, const Style& style);
std::string bands_table(const std::vector<NamedMixture>& mixtures, const std::vector<PlannedLayer>& layers,
                        const Style& style);

}  // namespace gentlest
