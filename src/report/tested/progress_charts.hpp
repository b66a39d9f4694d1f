// The pictures of the tests: what they did in their order, and what they made of the ladder.
#pragma once

#include "gentlest/answers/progress.hpp"
#include "gentlest/plan/plan.hpp"
#include "report/draw/plot.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// One word per chart, in the order of the report. They need the readings.
const std::vector<std::string>& progress_chart_kinds();

/// The chart of that word. Precondition: the word is one of progress_chart_kinds().
Chart progress_chart_of(const std::string& kind, const Plan& plan, const Progress& progress);

/// The tests in order, each at the height of its mixture on its line; marks say where and what came of it.
Chart timeline_chart(const Plan& plan, const Progress& progress);

/// Effect and risk of each rung as planned and as believed now, with the tests made with it; closed rungs hatched.
Chart swabs_chart(const Plan& plan, const Progress& progress);

/// The lines that these pictures show: the first, those that were tested, that of the proposed test.
std::vector<std::size_t> lines_shown(const Plan& plan, const Progress& progress);

/// The step of the plan that a test was made with, the earliest line first; nothing of a blank or another mixture.
std::optional<std::size_t> step_of_test(const Conduct& conduct, const SwabTest& test);

/// Number of the test that closes a step for any layer.
std::optional<int> closing_test(const Conduct& conduct, std::size_t step);

}  // namespace gentlest
