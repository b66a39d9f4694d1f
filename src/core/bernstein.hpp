// Bounds of a tricubic table over a cell and its halves: the Bernstein coefficients of a polynomial enclose its values
// over the cell, and the distance falls with the square of the cell. Internal to core.
// Source: Lane and Riesenfeld 1981, BIT 21, 112 (from memory).
#pragma once

#include <array>
#include <cstddef>

namespace gentlest {

/// 4 x 4 x 4 coefficients over a cell, the third axis fastest. Float: callers leave room for bernstein_slack.
using Bernstein = std::array<float, 64>;

/// More than rounding to float can shift a coefficient of a table of chances, or a difference of two.
inline constexpr double bernstein_slack = 8e-6;

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
      for (std::size_t k = 0; k < 4; ++k) c[i * 16 + j * 4 + k] = static_cast<float>(first[i * slab + j * row + k]);
  for (std::size_t axis = 0; axis < 3; ++axis)
    bernstein_detail::for_each_line(axis, [&](std::size_t at, std::size_t s) {
      const float v0 = c[at], v1 = c[at + s], v2 = c[at + 2 * s], v3 = c[at + 3 * s];
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
    const float b0 = whole[at], b1 = whole[at + s], b2 = whole[at + 2 * s], b3 = whole[at + 3 * s];
    const float b01 = (b0 + b1) / 2, b12 = (b1 + b2) / 2, b23 = (b2 + b3) / 2;
    const float b012 = (b01 + b12) / 2, b123 = (b12 + b23) / 2;
    const float middle = (b012 + b123) / 2;
    half[0][at] = b0, half[0][at + s] = b01, half[0][at + 2 * s] = b012, half[0][at + 3 * s] = middle;
    half[1][at] = middle, half[1][at + s] = b123, half[1][at + 2 * s] = b23, half[1][at + 3 * s] = b3;
  });
  return half;
}

namespace bernstein_detail {

// Best of 64 numbers by eight lanes, which compilers turn into vector instructions without loosening float rules.
template <class Value, class Better>
float best_of(Value&& value, Better&& better) {
  std::array<float, 8> lane;
  for (std::size_t i = 0; i < 8; ++i) lane[i] = value(i);
  for (std::size_t block = 8; block < 64; block += 8)
    for (std::size_t i = 0; i < 8; ++i) {
      const float v = value(block + i);
      lane[i] = better(v, lane[i]) ? v : lane[i];
    }
  float best = lane[0];
  for (const float v : lane) best = better(v, best) ? v : best;
  return best;
}

}  // namespace bernstein_detail

inline float largest(const Bernstein& c) {
  return bernstein_detail::best_of([&](std::size_t i) { return c[i]; }, [](float a, float b) { return a > b; });
}

inline float smallest(const Bernstein& c) {
  return bernstein_detail::best_of([&](std::size_t i) { return c[i]; }, [](float a, float b) { return a < b; });
}

/// Largest coefficient of a - slope * b.
inline float largest_difference(const Bernstein& a, float slope, const Bernstein& b) {
  return bernstein_detail::best_of([&](std::size_t i) { return a[i] - slope * b[i]; },
                                   [](float x, float y) { return x > y; });
}

}  // namespace gentlest
