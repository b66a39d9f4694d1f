// The command `gentlest calibrate`: the figures behind solvents/response.yaml and solvents/materials/spreads.yaml.
#pragma once

#include "gentlest/calibration.hpp"

#include <filesystem>
#include <ostream>

namespace gentlest {

/// Writes the figures as a text report of at most 100 columns, the blocks for the two files last.
void write_calibration(const Calibration& calibration, std::ostream& out);

/// Reads the score sets of this folder, calibrates, writes the report. Throws what read_score_sets throws.
void run_calibration(const std::filesystem::path& folder, std::ostream& out);

}  // namespace gentlest
