// What is known of the dangers of a mixture's liquids.
// Gathers the records of the parts. It does not classify the mixture: dilution, flash point depression and interactions
// are not in here, and a part without a record makes the answer incomplete, never harmless.
#pragma once

#include "gentlest/liquids/mixture.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

struct HazardSummary {
  std::string signal_word;                    ///< strongest word of any part; empty when no part has one
  std::vector<std::string> statements;        ///< codes of all parts, sorted, each once
  std::vector<std::string> pictograms;        ///< GHS01 ... GHS09, sorted, each once
  std::optional<Celsius> lowest_flash_point;  ///< of the parts with a record; the mixture's own may be lower
  std::string lowest_flash_point_of;          ///< label of that part
  std::optional<double> lowest_limit_ppm;     ///< lowest long-term exposure limit of any part and authority
  std::string lowest_limit_of;                ///< label of that part
  std::string lowest_limit_by;                ///< its authority, e.g. "EU indicative"
  std::vector<std::string> without_record;    ///< labels of parts whose classification is not in the catalogue
  std::vector<std::string> without_flash_point;
  std::vector<std::string> without_limit;
  bool operator==(const HazardSummary&) const = default;
};

HazardSummary hazards_of_parts(const Mixture& mixture);

}  // namespace gentlest
