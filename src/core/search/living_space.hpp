// Which part of Hansen space can still hold a mixture that the frontier found so far does not beat. Internal to core.
#pragma once

#include "core/search/bernstein.hpp"
#include "core/search/staircase.hpp"

#include "gentlest/search/search.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace gentlest {

/// A point in units of the tables' lattice, counted from the first cell.
using CellPoint = std::array<double, 3>;

/// Every cell of the lattice in 4 x 4 x 4 subcells, a bit each: 0 means that every point in it is beaten.
class LivingSpace {
 public:
  /// Everything lives. Precondition: the task's tables share their lattice.
  explicit LivingSpace(const SearchTask& task);

  /// Kills what the staircase beats; `depth` 0 looks at whole cells, 1 at halves, 2 at quarters.
  void shrink(const Staircase& staircase, int depth, const RunTasks& run);

  CellPoint place(const Hansen& point) const;

  bool lives(const CellPoint& point) const;

  /// True when some subcell that the box touches lives.
  bool any_lives(const CellPoint& low, const CellPoint& high) const;

 private:
  struct Bounds {
    double most_effect;
    double least_risk;
  };
  std::size_t index(std::size_t d, std::size_t p, std::size_t h) const { return (d * cells_[1] + p) * cells_[2] + h; }
  void kill_out_of_reach();
  bool all_corners_live(std::size_t first, const Staircase& staircase) const;
  void bound_slab(std::size_t d);
  void shrink_slab(std::size_t d, const Staircase& staircase, int depth);
  std::uint64_t living_bits(std::size_t d, std::size_t p, std::size_t h, const Staircase& staircase, int depth) const;
  void count_living();
  bool any_cell_lives(const std::array<std::size_t, 3>& low, const std::array<std::size_t, 3>& high) const;

  const SearchTask& task_;
  std::array<std::size_t, 3> cells_{};
  std::vector<Bounds> bounds_;
  std::vector<std::uint64_t> bits_;
  std::vector<std::uint32_t> living_;  // cells that live below and left of (d, p, h), one more along each axis
  bool bounded_ = false;
};

}  // namespace gentlest
