// The bottles of a job, every one of them: what a name on the command line or in a log means is read over all,
// so that no limit of the job turns one swab into two liquids; what is planned takes those not left off.
#pragma once

#include "gentlest/job/job.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Why a solvent may not stand on a ladder.
enum class LeftOffWhy {
  no_hansen,         ///< no Hansen parameters; Solvent::no_hansen says why
  water,             ///< acts by other ways than solubility
  family,            ///< the job avoids its family
  solvent,           ///< the job avoids it by name
  not_demanded,      ///< the job demands exactly some others
  no_hazard_record,  ///< and the job does not allow unknown hazards
  statement,         ///< it carries a hazard statement that the job avoids
  examination,       ///< what the examination showed leaves off its family, or all that holds water
  acts_on_layer  ///< it was seen to act, alone, on a layer to keep that has no sphere, and the job does not allow it
};
struct LeftOff {
  LeftOffWhy why = LeftOffWhy::solvent;
  std::string statement = {};         ///< for `statement`: the whole code that it carries
  std::string layer = {};             ///< for `acts_on_layer`: the name of the layer
  const Observation* seen = nullptr;  ///< for `acts_on_layer`: of the catalogue
  bool operator==(const LeftOff&) const = default;
};

/// One bottle of the job.
struct JobBottle {
  const Solvent* solvent = nullptr;
  std::optional<Liquid> liquid;     ///< empty where the solvent has no Hansen parameters
  std::optional<LeftOff> left_off;  ///< empty when it may stand on a ladder
  int at_most_percent = 100;        ///< of any mixture
};

/// All bottles of the job, in its order. Precondition: check_job finds no fault.
using Shelf = std::vector<JobBottle>;
Shelf shelf_of(const Job& job, const Catalogue& catalogue);

/// Every liquid on the shelf, left off or not: what names are read over.
std::vector<Liquid> all_liquids(const Shelf& shelf);

/// The liquids that a plan may use, sorted by label.
std::vector<Liquid> usable_liquids(const Shelf& shelf);

/// The bottles that may not be used, in the job's order; each has its `left_off`.
std::vector<JobBottle> bottles_left_off(const Shelf& shelf);

/// Why the job's limits keep a solvent off the ladder; empty when it may be used.
std::optional<LeftOff> reason_to_leave_off(const Solvent& solvent, const Limits& limits, const Catalogue& catalogue);

/// By its family, or for any water that it holds.
bool is_left_off_by_examination(const Liquid& liquid, const Job& job);

/// The same, and whether it was seen to act on one of the job's layers to keep.
std::optional<LeftOff> reason_to_leave_off(const Liquid& liquid, const Job& job, const Catalogue& catalogue);

}  // namespace gentlest
