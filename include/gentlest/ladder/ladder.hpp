// The walk up the frontier: which bottles, which rungs.
#pragma once

#include "gentlest/ladder/line.hpp"
#include "gentlest/search/search.hpp"

#include <vector>

namespace gentlest {

struct LadderGoal {
  int bottles = 3;
  int rungs = 7;
  double risk_limit = 0.25;
  double wanted_effect = 0.5;
  int lines = 0;                  ///< at most so many lines; 0: the walk over the frontier, whatever lines there are
  bool prefer_healthier = false;  ///< see design_lines
};

/// A ladder: its lines, or a walk over the frontier and what was given up for having few bottles.
struct Ladder {
  std::vector<StockLine> lines;        ///< where one works, the ladder and its fellows; else those beside the walk
  std::vector<std::uint16_t> bottles;  ///< of the walk, positions on the shelf, rising; of a ladder by effect alone
                                       ///< along its line. Empty where a line works
  std::vector<Candidate> rungs;        ///< of the walk, by rising effect and rising risk, none above the risk limit
  std::vector<Candidate> frontier;     ///< the full frontier of the shelf, beyond the risk limit too
  double effect_given_up = 0;  ///< mean over the risks up to the limit of (best effect of the shelf - of these bottles)
  bool window = false;         ///< the last rung reaches the wanted effect
};

/// How many rungs the ladder has, and the verdict on its last. Precondition of the latter: there is one.
std::size_t rungs_of(const Ladder& ladder);
const Verdict& last_verdict(const Ladder& ladder);

/// Lines as the goal asks for them. Where it asks for none, or none works, the walk: best bottles, then rungs spread
/// evenly in effect over the frontier of those bottles, from its gentlest mixture to the strongest one within the risk
/// limit, neighbours near each other in Hansen space. Empty rungs when no mixture at all stays within the limit.
/// Without a window there are no lines.
Ladder design_ladder(const SearchTask& task, const LadderGoal& goal, const SearchProgress& progress = {});

/// Where the task keeps nothing, no risk can be weighed and nothing beats the strongest mixture, so there is no
/// frontier to walk. Then: the line between two bottles, from all of the one towards the other, that begins gently and
/// rises evenly in effect; from its first mixture to the first that reaches the wanted effect and no further. `doubts`:
/// for each liquid of the shelf, how little is known of what it spares; lines of less doubt come first. Without
/// `window` the rungs are empty. Frontier and `effect_given_up` stay so.
Ladder design_ladder_by_effect(const SearchTask& task, const LadderGoal& goal, const std::vector<int>& doubts);

/// One step of a finer walk, off the ladder's own grid.
struct FineStep {
  Mixture mixture;
  Hansen point;
  Verdict verdict;
};

/// At most `count` steps between two rungs on the ladder's bottles, at 1 % of volume: mixtures that no other of these
/// bottles beats, strictly between the rungs in effect and with no more risk than the stronger one, spread evenly. For
/// the stretch between the last "no effect" and the first "works". Empty where the bottles offer nothing in between.
/// The task's `allowed` is asked about compositions in steps of 1 %. Where the task keeps nothing, all steps between
/// the rungs on the line are walked.
std::vector<FineStep> finer_steps(const SearchTask& task, const Ladder& ladder, const Candidate& weaker,
                                  const Candidate& stronger, int count);

/// How well a series of mixtures, in the order of use, climbs; the same figures for a ladder and for a published
/// series.
struct SeriesQuality {
  int steps = 0;                 ///< mixtures in the series
  int falls = 0;                 ///< times the effect falls from one mixture to the next
  int beyond_limit = 0;          ///< mixtures above the risk limit
  double largest_rise = 0;       ///< of the effect from one mixture to the next
  double unevenness = 0;         ///< standard deviation of these rises
  double longest_Ra = 0;         ///< largest distance between neighbours, MPa^0.5
  double strongest_effect = 0;   ///< largest effect within the risk limit; 0 where no mixture stays within it
  double risk_at_strongest = 0;  ///< risk of that mixture
  int first_that_works = -1;     ///< first mixture within the limit that reaches the wanted effect; -1: none
  bool operator==(const SeriesQuality&) const = default;
};

/// Precondition: as many points as verdicts.
SeriesQuality quality_of(const std::vector<Hansen>& points, const std::vector<Verdict>& verdicts,
                         const LadderGoal& goal);

}  // namespace gentlest
