// What the tests taught, the next one, and a fitted sphere: for people, spreadsheets and programs.
#pragma once

#include "gentlest/own_fit.hpp"
#include "gentlest/progress.hpp"
#include "report/form.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// "try this mixture", "stop: found" and so on.
std::string step_words(NextStep step);

std::string progress_report(const Progress& progress, Form form, const Style& style, const Edition& edition);
std::string readings_report(const std::vector<Reading>& readings, Form form, const Style& style,
                            const Edition& edition);
std::string own_fit_report(const OwnFit& fit, Form form, const Style& style, const Edition& edition);

}  // namespace gentlest
