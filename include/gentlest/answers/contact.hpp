// How one mixture is held against the painting and cleared again: the time that all tests share, which parts leave
// slowly, what clears it. The habits are common practice, no source; the drying is reckoned.
#pragma once

#include "gentlest/plan/plan.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Rolls of the swab between two looks at it and at the spot. Common practice, no source.
inline constexpr int rolls_between_looks = 5;

/// A part that dries slowly.
struct SlowLiquid {
  std::string label;
  std::optional<double> drying_time;  ///< in times that n-butyl acetate takes for as much (1 / evaporation_rate);
                                      ///< nothing where its vapour pressure is not known: told, never taken as fast
  bool stays = false;                 ///< so slow that it is expected to stay in the film for long
  bool operator==(const SlowLiquid&) const = default;
};

/// From this drying time on a liquid is slow, and stays in the film. The first is where safety data sheets put "slow"
/// (a rate below 0.8 of n-butyl acetate's; from memory), the second our choice: a rate below a tenth.
inline constexpr double slow_from = 1 / 0.8;
inline constexpr double stays_from = 10;

/// The parts of the mixture that are slow or of which that is not known, in its order.
std::vector<SlowLiquid> slow_liquids(const Mixture& mixture, const Catalogue& catalogue,
                                     Celsius temperature = room_temperature);

struct SwabContact {
  double most_seconds = 0;      ///< of one test: the time that the chances stand for
  std::string clear_with = {};  ///< label of the ladder's gentle stock; empty: a dry swab alone
  std::vector<SlowLiquid> slow = {};
};

/// Of a mixture of the plan. It is cleared with the gentle stock of the plan's first line, which must have been borne
/// there first; what is itself that stock, and where the ladder is no line, with a dry swab.
SwabContact contact_for(const Mixture& mixture, const Plan& plan, const Catalogue& catalogue);

}  // namespace gentlest
