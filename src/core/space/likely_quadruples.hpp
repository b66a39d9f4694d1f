// Equally likely quadruples of standard normal figures: sums over an uncertain sphere without random numbers. Internal
// to core.
#pragma once

#include <array>
#include <vector>

namespace gentlest {

/// A lattice of Korobov whose every coordinate runs through all of `count` equally likely slices once. Precondition:
/// `count` is an odd prime, `factor` lies between 1 and it.
std::vector<std::array<double, 4>> likely_quadruples(long count, long factor);

}  // namespace gentlest
