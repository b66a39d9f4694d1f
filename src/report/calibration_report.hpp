// The calibration for spreadsheets and programs; its text form is written by cli/cmd_calibrate.
#pragma once

#include "gentlest/calibration.hpp"
#include "report/form.hpp"

#include <string>

namespace gentlest {

/// One row a score set: published sphere, refit, how well each sorts the liquids.
std::string calibration_csv(const Calibration& all, const Edition& edition);

/// The sets, the response curve, its test on what was left out, the spreads.
std::string calibration_json(const Calibration& all, const Edition& edition);

}  // namespace gentlest
