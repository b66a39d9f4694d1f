// Random numbers that are the same with every compiler and library. Internal to core; the seed is always an input.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>

namespace gentlest {

/// Counter-based generator: a Weyl sequence through a 64-bit finaliser. Passes for simulation, not for secrets.
/// Source: Steele, Lea and Flood 2014, OOPSLA ("SplitMix"); constants from memory.
class RandomNumbers {
 public:
  explicit RandomNumbers(std::uint64_t seed) : state_(seed) {}

  std::uint64_t bits() {
    state_ += 0x9E3779B97F4A7C15u;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
  }

  /// Evenly in (0, 1); never 0 or 1.
  double uniform() { return (static_cast<double>(bits() >> 12) + 0.5) * 0x1p-52; }

  /// Standard normal, by Box and Muller 1958; the second of each pair is kept for the next call.
  double normal() {
    if (has_spare_) {
      has_spare_ = false;
      return spare_;
    }
    const double length = std::sqrt(-2 * std::log(uniform()));
    const double angle = 2 * std::numbers::pi * uniform();
    spare_ = length * std::sin(angle);
    has_spare_ = true;
    return length * std::cos(angle);
  }

 private:
  std::uint64_t state_;
  double spare_ = 0;
  bool has_spare_ = false;
};

}  // namespace gentlest
