// Bottles with water in them that part from others of a shelf, and the grade that would not.
#pragma once

#include "gentlest/liquids/mixture.hpp"
#include "gentlest/vial/miscibility.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// A bottle with water in it that parts from another bottle over some of the range.
struct PartingPair {
  std::string bottle;                           ///< label, e.g. "ethanol 96 %"
  std::string other;                            ///< label of what it parts from
  int from_percent = 0;                         ///< shares of the bottle that part, on the grid
  int to_percent = 0;                           ///<
  PhasesBasis basis = PhasesBasis::none;        ///< weakest that one of these answers rests on
  std::optional<std::string> stays_one_liquid;  ///< label of the weakest grade that does there; empty: none does
  std::vector<std::string> sources;             ///< keys of sources.yaml
};

/// Every such pair among these liquids; shares in steps of `step_percent`.
std::vector<PartingPair> parting_pairs(const std::vector<Liquid>& shelf, int step_percent, Celsius room,
                                       const Catalogue& catalogue);

}  // namespace gentlest
