// Tables on a lattice: laid out, sampled and smoothed by a Gaussian one coordinate after the other, and read between
// the nodes. Internal to core.
#pragma once

#include "gentlest/space/chance.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

namespace gentlest {

/// Over a box of any three coordinates, with the padding that reading between the nodes needs.
FieldLattice lattice_between(const std::array<double, 3>& low, const std::array<double, 3>& high,
                             const std::array<double, 3>& step);

/// The 4 x 4 x 4 nodes around a point of the lattice's own coordinates.
FieldPlace place_at(const FieldLattice& lattice, const std::array<double, 3>& at);

/// Tricubic interpolation. `values`: [first][second][third], the third fastest.
double value_at(const FieldLattice& lattice, const std::vector<double>& values, const FieldPlace& place);

/// Weights of the centre's Gaussian on the lattice. A spread too narrow for the lattice keeps its variance on three
/// nodes.
std::vector<double> lattice_kernel(double sd, double step);

/// One axis of the way from the source lattice to the table.
struct Smoothing {
  std::vector<double> kernel;
  std::size_t nodes = 0;   ///< of the table
  std::size_t source = 0;  ///< nodes + kernel reach on both sides
};
Smoothing smoothing_along(const FieldLattice& lattice, std::size_t axis, double sd);

/// out[i] = sum over k of kernel[k] in[i + k], where every element is a row of `width` numbers.
void smooth_rows(const double* in, double* out, std::size_t width, const Smoothing& axis);
/// The same for single numbers.
void smooth_line(const double* in, double* out, const Smoothing& axis);

/// The table of a source averaged along each axis; source(a, b, c, row) fills a row of it, from c in steps of the third
/// axis. `first`: where the source lattice begins. Smoothed at once
/// along the third axis and, slab by slab, along the second: the full source never stands in memory.
template <class Source>
std::vector<double> smoothed(const FieldLattice& lattice, const std::array<Smoothing, 3>& axes,
                             const std::array<double, 3>& first, const Source& source) {
  const std::size_t width = axes[2].nodes;
  std::vector<double> slabs(axes[0].source * axes[1].nodes * width);
  std::vector<double> row(axes[2].source);
  std::vector<double> slab(axes[1].source * width);
  for (std::size_t i = 0; i < axes[0].source; ++i) {
    const double a = first[0] + static_cast<double>(i) * lattice.step[0];
    std::fill(slab.begin(), slab.end(), 0.0);
    for (std::size_t j = 0; j < axes[1].source; ++j) {
      const double b = first[1] + static_cast<double>(j) * lattice.step[1];
      source(a, b, first[2], row);
      smooth_line(row.data(), &slab[j * width], axes[2]);
    }
    smooth_rows(slab.data(), &slabs[i * axes[1].nodes * width], width, axes[1]);
  }
  std::vector<double> values(axes[0].nodes * axes[1].nodes * width);
  smooth_rows(slabs.data(), values.data(), axes[1].nodes * width, axes[0]);
  return values;
}

}  // namespace gentlest
