// Reads one's own solubility tests of a resin from a table.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "gentlest/fitting/calibration.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Columns: `solvent` (any of its names in the catalogue), and `grade` (1 dissolves .. 6 nothing seen) or `dissolves`
/// (yes or no). A liquid that is not in the catalogue needs `dD`, `dP`, `dH`; given figures win over those of the
/// catalogue. Throws InputError (Fault::file) with every fault and its place.
std::vector<Score> read_own_tests(std::string_view text, const std::string& file, const Catalogue& catalogue);

}  // namespace gentlest
