// A frontier as a staircase over the risk: the best effect that is to be had within each risk. Internal to core.
#pragma once

#include "gentlest/search/search.hpp"

#include <array>
#include <cstddef>
#include <functional>
#include <vector>

namespace gentlest {

/// True when `a` comes before `b` in the order of for_each_composition.
bool comes_before(const Composition& a, const Composition& b);

/// Those of the candidates that none of the others beats, by rising risk; of equal ones the first in visiting order.
/// Candidates that may not stay count as not there; since asking can take a millisecond, only those are asked about
/// that would be kept, walking up by risk.
using MayStay = std::function<bool(const Composition&)>;
std::vector<Candidate> sift_frontier(std::vector<Candidate> candidates, const MayStay& may_stay = {});

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

  // Steps by rising risk with a table of where to look first.
  class Steps {
   public:
    void add(const Step& step) { steps_.push_back(step); }
    void index();
    bool empty() const { return steps_.empty(); }
    const Step& operator[](std::size_t i) const { return steps_[i]; }
    std::size_t size() const { return steps_.size(); }
    std::size_t count_within(double risk) const;
    double effect_within(double risk) const;

   private:
    static constexpr std::size_t slot_count = 4096;
    std::vector<Step> steps_;
    std::vector<std::uint32_t> slots_;  // slots_[i]: number of steps with risk <= i / slot_count
  };

  Steps steps_;
  Steps coarse_;
};

}  // namespace gentlest
