// Layer 6. The walk up the frontier: which bottles, which rungs.
#pragma once

#include "gentlest/search.hpp"

#include <vector>

namespace gentlest {

struct LadderGoal {
  int bottles = 3;
  int rungs = 7;
  double risk_limit = 0.25;
  double wanted_effect = 0.5;
};

/// A ladder and what was given up for having few bottles.
struct Ladder {
  std::vector<std::uint16_t> bottles;  ///< positions on the shelf, rising
  std::vector<Candidate> rungs;        ///< by rising effect and rising risk, none above the risk limit
  std::vector<Candidate> frontier;     ///< the full frontier of the shelf, beyond the risk limit too
  double effect_given_up = 0;  ///< mean over the risks up to the limit of (best effect of the shelf - of these bottles)
  bool window = false;         ///< the last rung reaches the wanted effect
};

/// Best bottles, then rungs spread evenly in effect over the frontier of those bottles, from its gentlest mixture to
/// the strongest one within the risk limit, neighbours near each other in Hansen space. Empty rungs when no mixture at
/// all stays within the limit.
Ladder design_ladder(const SearchTask& task, const LadderGoal& goal, const SearchProgress& progress = {});

}  // namespace gentlest
