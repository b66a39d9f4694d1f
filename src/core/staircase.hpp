// A frontier as a staircase over the risk: the best effect that is to be had within each risk. Internal to core.
#pragma once

#include "gentlest/search.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace gentlest {

/// True when `a` comes before `b` in the order of for_each_composition.
bool comes_before(const Composition& a, const Composition& b);

/// Those of the candidates that none of the others beats, by rising risk; of equal ones the first in visiting order.
std::vector<Candidate> sift_frontier(std::vector<Candidate> candidates);

class Staircase {
 public:
  /// `frontier` as sift_frontier returns it.
  explicit Staircase(const std::vector<Candidate>& frontier);

  /// Best effect within this risk; -1 below the first step.
  double effect_within(double risk) const;

  /// True when a member beats the verdict. False for an equal one.
  bool beats(const Verdict& verdict) const;

  /// At most the smallest value of effect_within(risk) - slope * risk between two risks: a lower bound that needs few
  /// steps, taken over a thinned-out staircase.
  double lowest_above_line(double from, double to, double slope) const;

  /// effect_within on the thinned-out staircase: never more than effect_within.
  double coarse_effect_within(double risk) const;

 private:
  struct Step {
    double risk;
    double effect;
  };
  static constexpr std::size_t slot_count = 4096;

  std::size_t steps_within(double risk) const;

  std::vector<Step> steps_;
  std::vector<std::uint32_t> slots_;  // slots_[i]: number of steps with risk <= i / slot_count
  std::vector<Step> coarse_;
};

}  // namespace gentlest
