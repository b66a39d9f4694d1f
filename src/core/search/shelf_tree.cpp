#include "core/search/shelf_tree.hpp"

#include <algorithm>
#include <cassert>
#include <numeric>

namespace gentlest {

namespace {

void measure(ShelfTree& tree, ShelfTree::Node& node) {
  node.low = node.high = tree.points[node.begin];
  for (std::size_t i = node.begin; i < node.end; ++i) {
    node.most_steps = std::max(node.most_steps, tree.most_steps[i]);
    for (std::size_t axis = 0; axis < 3; ++axis) {
      node.low[axis] = std::min(node.low[axis], tree.points[i][axis]);
      node.high[axis] = std::max(node.high[axis], tree.points[i][axis]);
    }
  }
  for (std::size_t axis = 0; axis < 3; ++axis) node.extent = std::max(node.extent, node.high[axis] - node.low[axis]);
}

}  // namespace

ShelfTree make_shelf_tree(const SearchTask& task, const LivingSpace& space) {
  assert(!task.shelf.empty());
  const std::size_t count = task.shelf.size();
  std::vector<CellPoint> places;
  for (const Liquid& liquid : task.shelf) places.push_back(space.place(liquid.hansen));
  const auto most_of = [&](std::uint16_t liquid) {
    return task.most_percent.empty() ? 100 / task.step_percent : task.most_percent[liquid] / task.step_percent;
  };
  ShelfTree tree;
  tree.order.resize(count);
  std::iota(tree.order.begin(), tree.order.end(), std::uint16_t{0});
  tree.points.resize(count);
  tree.most_steps.resize(count);
  tree.nodes.push_back({{}, {}, 0, 0, static_cast<std::uint32_t>(count), 0, 0});
  for (std::size_t at = 0; at < tree.nodes.size(); ++at) {
    ShelfTree::Node node = tree.nodes[at];
    for (std::size_t i = node.begin; i < node.end; ++i) {
      tree.points[i] = places[tree.order[i]];
      tree.most_steps[i] = most_of(tree.order[i]);
    }
    measure(tree, node);
    if (node.end - node.begin > 1) {
      std::size_t axis = 0;
      for (std::size_t i = 1; i < 3; ++i)
        if (node.high[i] - node.low[i] > node.high[axis] - node.low[axis]) axis = i;
      const std::uint32_t middle = (node.begin + node.end) / 2;
      std::sort(tree.order.begin() + node.begin, tree.order.begin() + node.end, [&](std::uint16_t a, std::uint16_t b) {
        return places[a][axis] != places[b][axis] ? places[a][axis] < places[b][axis] : a < b;
      });
      node.children = static_cast<std::uint32_t>(tree.nodes.size());
      tree.nodes.push_back({{}, {}, 0, node.begin, middle, 0, 0});
      tree.nodes.push_back({{}, {}, 0, middle, node.end, 0, 0});
    }
    tree.nodes[at] = node;
  }
  // Sorting a child moves its liquids; the arrays in tree order follow once all is settled.
  for (std::size_t i = 0; i < count; ++i) {
    tree.points[i] = places[tree.order[i]];
    tree.most_steps[i] = most_of(tree.order[i]);
  }
  return tree;
}

}  // namespace gentlest
