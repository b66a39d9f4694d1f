// What conduct_of is put together from. Internal to core.
#pragma once

#include "gentlest/conduct/conduct.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// All rungs of the plan's lines and half steps between neighbours, line by line.
std::vector<PlanStep> plan_steps(const Plan& plan);

/// How high a mixture stands on a line: 1 at its first rung, 2.5 half way from the second to the third. Of a line that
/// is topped up every mixture of its two stocks has a height, of another its rungs and half steps only. Nothing where
/// it is no mixture of the line.
std::optional<double> height_on(const Plan& plan, std::size_t line, const Mixture& mixture);

std::vector<SwabTest> swab_tests(const Plan& plan, const std::vector<PlanStep>& steps,
                                 const std::vector<Reading>& readings, const Catalogue& catalogue);

/// Which planned mixtures the harms close, and for which layers.
std::vector<Closure> closures_of(const Plan& plan, const Conduct& conduct);

/// The same mixture by its shares, or the same words where neither is one.
bool is_same_swab_mixture(const SwabTest& a, const SwabTest& b);

/// True of a mixture that is as strong on the layer as one that harmed.
bool is_as_strong(const Plan& plan, const Mixture& mixture, const Mixture& harmful, const std::string& layer);

std::optional<SeriesEnd> end_of(const Plan& plan, const Conduct& conduct);

std::vector<WorkingMixture> working_mixtures(const Plan& plan, const Conduct& conduct);

std::vector<OpenTest> open_tests(const Plan& plan, const Conduct& conduct);

/// RED to a planned layer with a sphere, as its mean and its observations have it.
std::optional<double> RED_to(const PlannedLayer& layer, const Hansen& point);

/// Something was seen of the original, and it was untouched.
bool left_untouched(const SwabTest& test);

}  // namespace gentlest
