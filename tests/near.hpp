// Equal within an absolute tolerance, and nothing more. Catch2's Approx with a margin keeps its relative tolerance of
// 1.2e-5 beside it, so a check against a large number is laxer than it reads.
#pragma once

#include <cmath>
#include <ostream>

namespace gentlest::test {

struct Near {
  double value = 0;
  double tolerance = 0;
};

inline Near near(double value, double tolerance) {
  return {value, tolerance};
}

/// False for a number that is none.
inline bool operator==(double seen, const Near& wanted) {
  return std::abs(seen - wanted.value) <= wanted.tolerance;
}

inline std::ostream& operator<<(std::ostream& out, const Near& wanted) {
  return out << wanted.value << " +- " << wanted.tolerance;
}

}  // namespace gentlest::test
