// Which few bottles of the shelf give up least. Internal to core.
#pragma once

#include "gentlest/search/search.hpp"

#include <array>
#include <cstdint>
#include <limits>
#include <vector>

namespace gentlest {

inline constexpr std::size_t risk_levels = 24;

/// Best effect within each of the levels of risk, evenly spaced up to the risk limit.
using Profile = std::array<double, risk_levels>;

struct BottleChoice {
  std::vector<std::uint16_t> bottles;                    ///< rising
  double gap = std::numeric_limits<double>::infinity();  ///< mean over the levels of what the bottles give up
};

/// What a walk gives up: the mean over the levels of (best effect of the frontier - of the walk), 0..1.
double effect_given_up(const std::vector<Candidate>& frontier, const std::vector<Verdict>& walk, double risk_limit);

/// The `size` bottles with the smallest gap; of equal ones (to 1e-12) the first. Exact while there are at most
/// most_bottle_sets choices: sets are ruled out by bounds, the rest is judged mixture by mixture. Beyond, bottles are
/// added to the best smaller set and exchanged while that helps, which need not find the best.
/// No bottles and an infinite gap where no set gives up `enough` or less, or none stays within the limit.
/// Precondition: some mixture of the shelf stays within the limit; `frontier` is that of the task.
BottleChoice best_bottles(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                          std::size_t size, double enough = std::numeric_limits<double>::infinity());

/// Just these bottles, with what they give up.
BottleChoice these_bottles(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                           const std::vector<std::uint16_t>& bottles);

inline constexpr std::uint64_t most_bottle_sets = 30'000'000;

/// The two ways that best_bottles takes for large and for small tasks: by bounds, and by judging every set.
BottleChoice best_bottles_by_bounds(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                                    std::size_t size, double enough = std::numeric_limits<double>::infinity());
BottleChoice best_bottles_by_visiting(const SearchTask& task, const std::vector<Candidate>& frontier, double risk_limit,
                                      std::size_t size);

}  // namespace gentlest
