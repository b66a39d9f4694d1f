// The calibration for people, for spreadsheets and for programs.
#pragma once

#include "gentlest/fitting/calibration.hpp"
#include "report/form/form.hpp"

#include <string>

namespace gentlest {

/// At most 100 columns wide; the blocks for the two files that the figures go into come last.
std::string calibration_text(const Calibration& all);

/// One row a score set: published sphere, refit, how well each sorts the liquids.
std::string calibration_csv(const Calibration& all, const Edition& edition);

/// The sets, the response curve, its test on what was left out, the spreads.
std::string calibration_json(const Calibration& all, const Edition& edition);

}  // namespace gentlest
