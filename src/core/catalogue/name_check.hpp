// Makes the index of all names and finds what does not fit together. Internal to core.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <vector>

namespace gentlest {

/// Every id, name and other name of the records, and the ambiguous names. Complains, one fault each, where two claim
/// the same name, where a choice is no record or fewer than two are given.
NameIndex index_names(const std::vector<Solvent>& records, const std::vector<AmbiguousName>& ambiguous,
                      std::vector<Diagnostic>& faults);
NameIndex index_names(const std::vector<Material>& records, const std::vector<AmbiguousName>& ambiguous,
                      std::vector<Diagnostic>& faults);

}  // namespace gentlest
