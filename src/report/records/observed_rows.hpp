// The observations of a card, as a table, as rows of a sheet and as JSON. Internal to report/records.
#pragma once

#include "report/form/json.hpp"
#include "report/form/sheet.hpp"
#include "report/records/card.hpp"

#include <string>
#include <vector>

namespace gentlest {

std::vector<ObservedRow> observed_rows(const std::vector<const Observation*>& observations, const Catalogue& catalogue);

/// Heading, table and legend; says so when there is nothing. `source_mark` makes "[3]" of a key.
std::string observed_text(const Card& card, const Style& style,
                          std::string (*source_mark)(const Card&, const std::string&));

/// The columns that only observations fill, and one row's cells for them, in the same order.
const std::vector<const char*>& observed_columns();
std::vector<Cell> observed_cells(const ObservedRow& row);

Json observed_json(const ObservedRow& row);

}  // namespace gentlest
