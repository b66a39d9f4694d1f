// What the catalogue holds, as sheets: one row a record.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "report/form/sheet.hpp"

#include <vector>

namespace gentlest {

Sheet solvents_sheet(const std::vector<const Solvent*>& solvents);
Sheet materials_sheet(const std::vector<const Material*>& materials);
Sheet sources_sheet(const Catalogue& catalogue);

/// Families of solvents and kinds of materials with the number of records in each.
Sheet families_sheet(const Catalogue& catalogue);

}  // namespace gentlest
