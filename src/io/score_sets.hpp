// Reads the published score sets: a folder with published.csv (one line a sphere) and one file a film former.
#pragma once

#include "gentlest/fitting/calibration.hpp"

#include <filesystem>
#include <vector>

namespace gentlest {

/// All sets that published.csv of this folder names, in its order. Files are comma-separated with "quoted" cells,
/// comment lines start with #, the first other line names the columns. Throws InputError (Fault::file) with every fault
/// found: file missing, column missing, cell that is no number, grade outside 1..6, set named twice.
std::vector<ScoreSet> read_score_sets(const std::filesystem::path& folder);

}  // namespace gentlest
