// Bounds of a tricubic table over a cell and its halves: the Bernstein coefficients of a polynomial enclose its values
// over the cell, and the distance falls with the square of the cell. Internal to core.
// Source: Lane and Riesenfeld 1981, BIT 21, 112 (from memory).
#pragma once

#include <array>
#include <cstddef>

namespace gentlest {

/// 4 x 4 x 4 coefficients over a cell, the third axis fastest.
using Bernstein = std::array<double, 64>;

/// More than the rounding of a verdict (1e-9) and of coefficients together. Double, not float: where an effect nears 1
/// the frontier climbs by millionths, and a coarser slack would let all of that space live.
inline constexpr double bernstein_slack = 4e-9;

namespace bernstein_detail {

inline constexpr std::array<std::size_t, 3> stride = {16, 4, 1};

/// Applies `change` to all 16 lines of four along an axis.
template <class Change>
void for_each_line(std::size_t axis, Change&& change) {
  const std::size_t a = stride[(axis + 1) % 3];
  const std::size_t b = stride[(axis + 2) % 3];
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < 4; ++j) change(i * a + j * b, stride[axis]);
}

}  // namespace bernstein_detail

/// Coefficients over the cell whose 4 x 4 x 4 surrounding nodes start at `first`, from the cubic through four nodes:
/// its values at the two inner nodes, and its slopes there.
inline Bernstein bernstein_of_cell(const double* first, std::size_t slab, std::size_t row) {
  Bernstein c;
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < 4; ++j)
      for (std::size_t k = 0; k < 4; ++k) c[i * 16 + j * 4 + k] = first[i * slab + j * row + k];
  for (std::size_t axis = 0; axis < 3; ++axis)
    bernstein_detail::for_each_line(axis, [&](std::size_t at, std::size_t s) {
      const double v0 = c[at], v1 = c[at + s], v2 = c[at + 2 * s], v3 = c[at + 3 * s];
      c[at] = v1;
      c[at + s] = v1 + (v2 - v0 / 3 - v1 / 2 - v3 / 6) / 3;
      c[at + 2 * s] = v2 - (v0 / 6 - v1 + v2 / 2 + v3 / 3) / 3;
      c[at + 3 * s] = v2;
    });
  return c;
}

/// Coefficients over the lower and the upper half of the cell along an axis (de Casteljau).
inline std::array<Bernstein, 2> halves(const Bernstein& whole, std::size_t axis) {
  std::array<Bernstein, 2> half;
  bernstein_detail::for_each_line(axis, [&](std::size_t at, std::size_t s) {
    const double b0 = whole[at], b1 = whole[at + s], b2 = whole[at + 2 * s], b3 = whole[at + 3 * s];
    const double b01 = (b0 + b1) / 2, b12 = (b1 + b2) / 2, b23 = (b2 + b3) / 2;
    const double b012 = (b01 + b12) / 2, b123 = (b12 + b23) / 2;
    const double middle = (b012 + b123) / 2;
    half[0][at] = b0, half[0][at + s] = b01, half[0][at + 2 * s] = b012, half[0][at + 3 * s] = middle;
    half[1][at] = middle, half[1][at + s] = b123, half[1][at + 2 * s] = b23, half[1][at + 3 * s] = b3;
  });
  return half;
}

namespace bernstein_detail {

// Best of 64 numbers by eight lanes, which compilers turn into vector instructions without loosening the rules of
// floating point.
template <class Value, class Better>
double best_of(Value&& value, Better&& better) {
  std::array<double, 8> lane;
  for (std::size_t i = 0; i < 8; ++i) lane[i] = value(i);
  for (std::size_t block = 8; block < 64; block += 8)
    for (std::size_t i = 0; i < 8; ++i) {
      const double v = value(block + i);
      lane[i] = better(v, lane[i]) ? v : lane[i];
    }
  double best = lane[0];
  for (const double v : lane) best = better(v, best) ? v : best;
  return best;
}

}  // namespace bernstein_detail

inline double largest(const Bernstein& c) {
  return bernstein_detail::best_of([&](std::size_t i) { return c[i]; }, [](double a, double b) { return a > b; });
}

inline double smallest(const Bernstein& c) {
  return bernstein_detail::best_of([&](std::size_t i) { return c[i]; }, [](double a, double b) { return a < b; });
}

/// Largest coefficient of a - slope * b.
inline double largest_difference(const Bernstein& a, double slope, const Bernstein& b) {
  return bernstein_detail::best_of([&](std::size_t i) { return a[i] - slope * b[i]; },
                                   [](double x, double y) { return x > y; });
}

}  // namespace gentlest
