// Whether the observations fit the other records and each other. Internal to core.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/catalogue/catalogue.hpp"

#include <vector>

namespace gentlest {

/// Adds one fault, with its place, for each: a material, liquid or source that the records do not have; a result
/// outside its own grades; a row that stands there twice, or says something else of the same test by the same source.
void check_observations(const CatalogueRecords& records, std::vector<Diagnostic>& faults);

}  // namespace gentlest
