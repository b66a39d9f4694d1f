// The shelf as a tree of clusters of liquids that lie near each other. Internal to core.
#pragma once

#include "core/search/living_space.hpp"

#include <cstdint>
#include <vector>

namespace gentlest {

struct ShelfTree {
  struct Node {
    CellPoint low{};
    CellPoint high{};
    double extent = 0;        ///< longest side
    std::uint32_t begin = 0;  ///< the liquids order[begin] .. order[end - 1]
    std::uint32_t end = 0;
    std::uint32_t children = 0;  ///< the two halves are nodes[children] and the next one; 0: a single liquid
    int most_steps = 0;          ///< largest share that some liquid of the cluster may have
  };
  std::vector<Node> nodes;           ///< nodes[0] holds the whole shelf
  std::vector<std::uint16_t> order;  ///< positions on the shelf
  std::vector<CellPoint> points;     ///< of the liquids, in tree order
  std::vector<int> most_steps;       ///< likewise
};

/// Precondition: the shelf is not empty.
ShelfTree make_shelf_tree(const SearchTask& task, const LivingSpace& space);

}  // namespace gentlest
