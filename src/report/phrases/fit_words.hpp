// What `fit` and `calibrate` say of spheres and grades.
#pragma once

#include "gentlest/fitting/calibration.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// What a grade of the published score sets means: 1 "dissolves" ... 6 "nothing seen".
const char* grade_words(int grade);

/// Why centre and radius are not pinned down, in the order in which it was found.
std::vector<std::string> doubt_words(const std::vector<FitDoubt>& doubts);

/// "held, up to 13 misplaced": the spheres that share a default spread.
std::string group_words(SpreadGroup group);

}  // namespace gentlest
