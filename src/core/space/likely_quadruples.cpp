#include "core/space/likely_quadruples.hpp"

#include <cmath>
#include <cstddef>
#include <numbers>

namespace gentlest {

namespace {

double normal_density(double z) {
  return std::exp(-z * z / 2) / std::sqrt(2 * std::numbers::pi);
}

// Mid-points of so many equally likely slices of a standard normal, by Newton's method from one to the next.
std::vector<double> normal_slices(long count) {
  std::vector<double> z(static_cast<std::size_t>(count));
  double at = 0;
  for (long i = count / 2; i < count; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(count);
    for (int step = 0; step < 4; ++step)
      at += (1 - share - 0.5 * std::erfc(at / std::numbers::sqrt2)) * -1 / normal_density(at);
    z[static_cast<std::size_t>(i)] = at;
    z[static_cast<std::size_t>(count - 1 - i)] = -at;
  }
  return z;
}

}  // namespace

std::vector<std::array<double, 4>> likely_quadruples(long count, long factor) {
  const std::vector<double> z = normal_slices(count);
  std::vector<std::array<double, 4>> quadruples(static_cast<std::size_t>(count));
  for (long i = 0; i < count; ++i) {
    long at = i;
    for (double& coordinate : quadruples[static_cast<std::size_t>(i)]) {
      coordinate = z[static_cast<std::size_t>(at)];
      at = at * factor % count;
    }
  }
  return quadruples;
}

}  // namespace gentlest
