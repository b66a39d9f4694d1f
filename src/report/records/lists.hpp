// What the catalogue holds, as sheets: one row a record.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "report/form/sheet.hpp"

#include <functional>
#include <string>
#include <vector>

namespace gentlest {

Sheet solvents_sheet(const std::vector<const Solvent*>& solvents);
Sheet materials_sheet(const std::vector<const Material*>& materials);
/// For people: the name, the id whole, and whether a sphere is missing; one line each.
std::string materials_lines(const std::vector<const Material*>& materials, const Style& style);
Sheet sources_sheet(const Catalogue& catalogue);

/// Every name that a person may type, solvents before materials: what it means by id, or that the program asks back.
Sheet names_sheet(const Catalogue& catalogue);

/// Families of solvents and kinds of materials with the number of records in each.
Sheet families_sheet(const Catalogue& catalogue);

/// What a record may hold or lack, by the name that `list --having` knows it under.
template <class Record>
struct Holding {
  std::string name;
  std::function<bool(const Record&, const Catalogue&)> holds;
};
const std::vector<Holding<Solvent>>& solvent_holdings();
const std::vector<Holding<Material>>& material_holdings();

template <class Record>
std::vector<std::string> names_of(const std::vector<Holding<Record>>& holdings) {
  std::vector<std::string> names;
  for (const Holding<Record>& one : holdings) names.push_back(one.name);
  return names;
}

}  // namespace gentlest
