// A step of the plan as people name it: "rung 3", "rung 3.5", "line 2 rung 4".
#pragma once

#include "gentlest/plan/plan.hpp"

#include <optional>
#include <string_view>

namespace gentlest {

/// Which step was named. A rung without a line is one of the first, as the ladder prints it.
struct TypedStep {
  int line = 1;
  double height = 1;  ///< 2.5: half way from rung 2 to rung 3
  bool operator==(const TypedStep&) const = default;
};

/// "rung 3", "rung 3,5", "3", "line 2, rung 4", "rung 4 of line 2". Nothing where it is no step's name.
std::optional<TypedStep> typed_step(std::string_view text);

/// What the plan puts there. Throws InputError (Fault::usage) where it has no such step, with those that it has.
Mixture mixture_of_step(const Plan& plan, const TypedStep& step);

}  // namespace gentlest
