// The words of `specific_limits` in a hazard record, as figures.
#pragma once

#include "gentlest/catalogue.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// Reads items that a semicolon divides, in the words of CLP Annex VI:
///   "STOT SE 3; H335: C >= 25 %", "H315: 10 % <= C < 25 %"   a limit, with or without the class before it
///   "Oral: ATE = 1200 mg/kg bw", "inhalation: ATE = 3 mg/L (vapours)"   also Dermal, (dusts or mists)
///   "M=10", "M(acute)=1", "M(chronic)=10"
///   "note P: ..."   a remark, up to the next semicolon
/// Every item that is none of these, or that cannot be right, adds one sentence to `faults`: no limit is passed over.
OwnLimits own_limits_from(const std::string& text, std::vector<std::string>& faults);

/// What the limits say that the record does not: a limit or an estimate for a danger that its statements do not name.
/// A milder statement of the same kind may have one (H315 where the record carries H314).
std::vector<std::string> limits_without_statement(const Hazards& hazards);

}  // namespace gentlest
