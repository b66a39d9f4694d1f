// What the grid of shares gives away: the best mixture of the same bottles in any proportion.
#pragma once

#include "gentlest/search/search.hpp"

#include <vector>

namespace gentlest {

/// A mixture of given liquids in any proportion.
struct Blend {
  std::vector<double> fractions;  ///< in the order of the liquids, not negative, add up to 1
  Hansen point;
  double Ra = 0;  ///< of the point to what was aimed at, MPa^0.5
};

/// The blend of these liquids whose Hansen point lies nearest to `aim` in Ra: the exact projection on the segment,
/// triangle or tetrahedron that they span, or on the hull of any number of liquids. At most four fractions are above 0.
/// Error of Ra below 1e-9. Source of the iteration: Gilbert, Johnson and Keerthi 1988, IEEE J. Robotics Automation 4,
/// 193 (from memory). Precondition: at least one liquid.
Blend nearest_blend(const std::vector<Hansen>& liquids, const Hansen& aim);

/// What a mixture of the grid gives away against mixtures of the same bottles in any proportion.
struct Certificate {
  std::vector<double> fractions;  ///< of the bottles, in their order: least risk at no less effect
  Verdict verdict;                ///< of that mixture
  double risk_given_up = 0;       ///< risk of the grid's mixture minus that; not negative
  Blend nearest_to_aim;           ///< the blend of the bottles nearest to `aim`: none comes nearer
};

/// Least risk at no less than the candidate's effect, found by refining the shares, from the candidate and from the
/// most promising mixtures of the grid, until steps fall below 1e-6. Not a proof, unlike `nearest_to_aim`; not worse
/// than a 0.25 % grid of the same bottles by more than 2e-5 in tests. Keeps to the task's largest shares; `allowed` is
/// not asked. `aim` is the centre of the layer to remove. Precondition: the candidate's liquids are among the bottles,
/// 1 to 4 of them.
Certificate certify(const SearchTask& task, const Candidate& candidate, const std::vector<std::uint16_t>& bottles,
                    const Hansen& aim);

}  // namespace gentlest
