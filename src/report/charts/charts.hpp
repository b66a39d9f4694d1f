// The pictures of a plan. Each can be read in grey and names its axes with units.
#pragma once

#include "gentlest/answers/bench.hpp"
#include "gentlest/answers/mixing.hpp"
#include "report/draw/palette.hpp"
#include "report/draw/plot.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Triangle of fd, fp, fh with the shelf, the shadows of the layers' ranges and the ladder. A view only.
Chart triangle_chart(const Plan& plan, const Bench& bench);

/// Three views along the axes of Hansen space, dD drawn at twice the scale, so that the ranges are round.
Chart planes_chart(const Plan& plan, const Bench& bench);

/// Effect against risk: the frontier of the shelf and the ladder on it.
Chart risk_chart(const Plan& plan, const Bench& bench);

/// Chance of each layer along the ladder, with the middle 90 % of what it may be.
Chart chances_chart(const Plan& plan, const Bench& bench);

/// What drying does: the way through Hansen space, and the risk against the share that has gone.
Chart drift_chart(const Plan& plan, const Bench& bench);

/// The word of --kind for the next.
inline constexpr const char* mixing_kind = "mixing";

/// Every mixture of three bottles: lines of equal effect and of equal risk over their triangle, the rungs that lie on
/// it, what is beyond the risk limit, where mixtures part, and of the job's own series among `compared` what is mixed
/// of these three. Without a grid: why there is none.
Chart mixing_chart(const Plan& plan, const std::optional<MixingGrid>& grid,
                   const std::vector<ComparedSeries>& compared = {});

/// One word per chart, in the order of the sheet.
const std::vector<std::string>& chart_kinds();

/// The chart of that word. Precondition: the word is one of chart_kinds().
Chart chart_of(const std::string& kind, const Plan& plan, const Bench& bench);

/// Adds to caption and description which layers have no place in a picture, since they have no sphere.
void tell_not_drawn(Chart& chart, const Plan& plan);

/// How the i-th planned layer looks in every chart.
LayerLook look_of(const Plan& plan, std::size_t layer);

/// What a mixture is called in the pictures: a rung's number, without a ladder a letter; and what the letters mean.
std::string mark_of(const Plan& plan, const Bench& bench, std::size_t mixture);
std::string named_letters(const Plan& plan, const Bench& bench);

/// "rung 3", without a ladder "mixture A".
std::string name_in_picture(const Plan& plan, const Bench& bench, std::size_t mixture);

/// A chance on an axis.
inline double in_per_cent(double chance) {
  return 100 * chance;
}

/// "varnish (remove)": a layer as legends name it.
std::string layer_legend(const PlannedLayer& layer);

/// Names of the bottles on the ladder, or in the mixtures shown without one.
bool is_on_ladder(const Bench& bench, const std::string& label);

}  // namespace gentlest
