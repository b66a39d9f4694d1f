// The words of `specific_limits` in a hazard record, as figures.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

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

/// What would have no effect: a limit for a statement whose rule knows none, a band for a danger that the statements do
/// not name nor a stronger of its kind, an estimate or a factor without its statement. An open limit ("H335: C >= 1 %")
/// needs no statement: it is a classification by itself.
std::vector<std::string> limits_without_use(const Hazards& hazards);

}  // namespace gentlest
