// Where the tests stand, by the rules of conduct, as it is printed on sheet, labels and report.
#pragma once

#include "gentlest/answers/progress.hpp"

#include <string>

namespace gentlest {

/// The very first lines of a page: every harm. Empty where there is none.
std::string harms_html(const Conduct& conduct);

/// The next test or the stop and why; what is closed; what works and where it was not tried; without a window what
/// closes it. Without a heading.
std::string state_html(const Plan& plan, const Progress& progress);

/// The matrix of mixtures against places, under a heading of its own; empty before the first test.
std::string matrix_html(const Plan& plan, const Progress& progress);

/// For the page's style.
inline constexpr const char* conduct_css =
    R"(.harm { border: .8mm solid #000; padding: 1.5mm 2.5mm; margin: 0 0 2mm; font-weight: bold; }
.matrix { font-size: 8pt; line-height: 1.3; table-layout: fixed; } .matrix .c0 { width: 24%; } .matrix thead th { overflow-wrap: anywhere; } .harmed { font-weight: bold; }
)";

}  // namespace gentlest
