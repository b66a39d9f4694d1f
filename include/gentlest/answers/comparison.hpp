// A plan's ladder beside the published test series, judged by the same numbers.
#pragma once

#include "gentlest/liquids/series.hpp"
#include "gentlest/plan/plan.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// What the job says against a liquid of a published series.
struct Objection {
  Liquid liquid;                               ///< as the series takes it
  std::optional<LeftOff> left_off = {};        ///< the job's limits leave it off
  std::optional<std::string> other_held = {};  ///< else the label of another strength of it on the shelf; empty: it
                                               ///< does not stand there at all
};

/// One published series judged against the plan's layers.
struct ComparedSeries {
  Series series;
  JudgedSeries judged;                ///< mixtures in the order of the series
  std::vector<std::string> liquids;   ///< labels, in order of first use
  std::vector<Objection> objections;  ///< in the same order; none of a liquid that stands on the shelf so
};

/// Every published series of the catalogue (series.hpp), then the job's own. A series is judged whole: the job's
/// limits, shelf and ban on mixtures that part leave none of its mixtures out, they are told in `objections`.
std::vector<ComparedSeries> compare_published(const Plan& plan, const Catalogue& catalogue);

/// The job's own alone: what costs time is the published ones.
std::vector<ComparedSeries> compare_own(const Plan& plan, const Catalogue& catalogue);

}  // namespace gentlest
