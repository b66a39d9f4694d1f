// What is left of each mixture while it dries, as stacked shares.
#pragma once

#include "gentlest/answers/bench.hpp"
#include "report/draw/svg.hpp"

namespace gentlest {

/// One small picture for each mixture whose drift is known, from `top` down, with a legend of the bottles; returns the
/// height taken. Each bottle has one pattern and one grey in all of them; the one that is left last lies lowest.
double draw_drying_shares(Drawing& drawing, double top, const Plan& plan, const Bench& bench);

}  // namespace gentlest
