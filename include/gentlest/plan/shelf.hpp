// The bottles of a job, every one of them: what a name on the command line or in a log means is read over all,
// so that no limit of the job turns one swab into two liquids; what is planned takes those not left off.
#pragma once

#include "gentlest/liquids/mixture.hpp"
#include "gentlest/plan/job.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One bottle of the job.
struct JobBottle {
  const Solvent* solvent = nullptr;
  std::optional<Liquid> liquid;  ///< empty where the solvent has no Hansen parameters
  std::string left_off;          ///< why it may not stand on a ladder; empty when it may
  int at_most_percent = 100;     ///< of any mixture
};

/// All bottles of the job, in its order. Precondition: check_job finds no fault.
using Shelf = std::vector<JobBottle>;
Shelf shelf_of(const Job& job, const Catalogue& catalogue);

/// Every liquid on the shelf, left off or not: what names are read over.
std::vector<Liquid> all_liquids(const Shelf& shelf);

/// The liquids that a plan may use, sorted by label.
std::vector<Liquid> usable_liquids(const Shelf& shelf);

/// "ethanol 96 %: is to be avoided", one for each bottle that may not be used.
std::vector<std::string> left_off_words(const Shelf& shelf);

/// Why the job's limits keep a solvent off the ladder; empty when it may be used.
std::string reason_to_leave_off(const Solvent& solvent, const Limits& limits, const Catalogue& catalogue);

}  // namespace gentlest
