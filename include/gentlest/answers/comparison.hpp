// A plan's ladder beside the published test series, judged by the same numbers.
#pragma once

#include "gentlest/liquids/series.hpp"
#include "gentlest/plan/plan.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// One published series judged against the plan's layers.
struct ComparedSeries {
  Series series;
  JudgedSeries judged;                  ///< mixtures in the order of the series
  std::vector<std::string> liquids;     ///< labels, in order of first use
  std::vector<std::string> objections;  ///< what the job says against each liquid, e.g. "toluene: not on the shelf"
};

/// Every published series of the catalogue (series.hpp). A series is judged whole: the job's limits, shelf and ban on
/// mixtures that part leave none of its mixtures out, they are told in `objections`.
std::vector<ComparedSeries> compare_published(const Plan& plan, const Catalogue& catalogue);

/// The same figures for the plan's own ladder; no steps where there is no window.
SeriesQuality ladder_quality(const Plan& plan);

}  // namespace gentlest
