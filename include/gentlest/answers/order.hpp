// What is known of a ladder better than the level of its chances: the order of its rungs, which of them acts first, and
// beside which well-known liquid they are gentle. Pure; words are made in the report.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <optional>
#include <string>

namespace gentlest {

/// From this share of all that the ranges may be on, an order counts as certain. Our choice.
inline constexpr double certain_from = 0.95;

struct LadderOrder {
  bool effect_rises = false;  ///< certainly, from every rung to the next
  bool risk_rises = false;    ///< the same on every layer to keep that has a sphere; false where none has
};
/// Of the rungs of the first line. Nothing where there are fewer than two, or the layer to remove has no sphere.
std::optional<LadderOrder> order_of(const Plan& plan);

/// The rungs, counted from 1, among which the first that moves the layer lies in the middle 80 % of cases: all rungs
/// meet the same layer, so where the order is certain the chance that one up to the k-th acts is the effect of the
/// k-th.
struct FirstToAct {
  int from = 0;               ///< 0: most likely none acts
  int to = 0;                 ///< the last rung where `perhaps_none`
  bool perhaps_none = false;  ///< a tenth or more is left for no rung acting
};
/// Nothing where the effect does not certainly rise.
std::optional<FirstToAct> first_to_act(const Plan& plan);

/// A liquid of the shelf by itself, and how far up the ladder the rungs certainly spare every layer to keep more than
/// it does.
struct GentlerThan {
  std::string label;
  int up_to = 0;  ///< rungs 1 to this one
};
/// Of the liquids of the shelf that are no hydrocarbon and not on the ladder the one that the most rungs are gentler
/// than, of equal ones the first by label. Nothing where no layer to keep has a sphere, or none is certainly harsher.
std::optional<GentlerThan> gentler_than(const Plan& plan);

}  // namespace gentlest
