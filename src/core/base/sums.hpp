// Sums that preconditions speak of.
#pragma once

#include <cmath>
#include <numeric>

namespace gentlest {

/// True when numbers add up to `total`, to 1e-6 of it: what rounding leaves is no mistake.
template <class Numbers>
bool add_up_to(const Numbers& numbers, double total) {
  return std::abs(std::accumulate(numbers.begin(), numbers.end(), 0.0) - total) <= 1e-6 * total;
}

}  // namespace gentlest
