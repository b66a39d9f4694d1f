// Where a judged mixture comes from. What it is called is worded from this alone (report/phrases/mixture_name.hpp).
#pragma once

namespace gentlest {

enum class OriginKind {
  asked,                   ///< typed by hand, or worked out of one that was
  rung,                    ///< of the ladder
  half_step,               ///< half way between two neighbouring rungs
  finer_step,              ///< between two rungs, on the ladder's bottles at 1 % of volume
  strongest_within_limit,  ///< without a window: the strongest of those within the risk limit
  least_risk_that_works,   ///< without a window: of those that reach the wanted effect
  first_test,              ///< without a ladder: a single liquid to try
  tested,                  ///< recorded in the log
  published                ///< a step of a published series
};

struct Origin {
  OriginKind kind = OriginKind::asked;
  int number = 0;  ///< of the rung, the rung below a finer step, the (first) test, the step of a series; from 1
  int step = 0;    ///< of a finer step, counted from 1 behind its rung
  int line = 1;    ///< of a rung or a finer step: the line it stands on, from 1
  bool operator==(const Origin&) const = default;
};

/// True of a mixture that the plan itself holds.
inline bool is_of_plan(const Origin& origin) {
  return origin.kind != OriginKind::asked && origin.kind != OriginKind::tested && origin.kind != OriginKind::published;
}

}  // namespace gentlest
