// Whether solvents/afterwards.yaml fits the other records and itself. Internal to core.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/catalogue/catalogue.hpp"

#include <vector>

namespace gentlest {

/// Adds one fault, with its place, for each: a material, liquid or source that the records do not have; a source that
/// its standing contradicts; a material of which two finishes are made.
void check_finishes(const CatalogueRecords& records, std::vector<Diagnostic>& faults);

}  // namespace gentlest
