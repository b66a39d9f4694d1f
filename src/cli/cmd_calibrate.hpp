// The command `gentlest calibrate`: the figures behind solvents/response.yaml and solvents/materials/spreads.yaml.
#pragma once

#include "gentlest/calibration.hpp"

#include <ostream>

namespace gentlest {

/// Writes the figures as a text report of at most 100 columns, the blocks for the two files last.
void write_calibration(const Calibration& calibration, std::ostream& out);

}  // namespace gentlest
