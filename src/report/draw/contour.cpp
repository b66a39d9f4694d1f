#include "report/draw/contour.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

namespace gentlest {

namespace {

using Node = std::pair<int, int>;
using Edge = std::pair<Node, Node>;

Edge edge_of(Node a, Node b) {
  return a < b ? Edge{a, b} : Edge{b, a};
}

// A node on the level itself counts as above it, so that no line ends in a node.
class Cells {
 public:
  Cells(int steps, const std::function<double(int, int)>& value, double level)
      : steps_(steps), value_(value), level_(level) {
    for (int j = 0; j < steps; ++j)
      for (int i = 0; i + j < steps; ++i) {
        cut({i, j}, {i + 1, j}, {i, j + 1});
        if (i + j + 2 <= steps) cut({i + 1, j}, {i + 1, j + 1}, {i, j + 1});
      }
  }

  std::vector<std::vector<Xy>> chains() {
    std::vector<std::vector<Xy>> all;
    for (const bool from_an_end : {true, false})  // then what is left closes upon itself
      for (const auto& [edge, others] : crossed_)
        if (!others.empty() && (!from_an_end || others.size() == 1)) all.push_back(chain_from(edge));
    return all;
  }

 private:
  bool is_above(Node node) const { return value_(node.first, node.second) >= level_; }

  void cut(Node a, Node b, Node c) {
    std::vector<Edge> edges;
    for (const auto& [from, to] : std::array<Edge, 3>{{{a, b}, {b, c}, {c, a}}})
      if (is_above(from) != is_above(to)) edges.push_back(edge_of(from, to));
    if (edges.size() != 2) return;
    crossed_[edges[0]].push_back(edges[1]);
    crossed_[edges[1]].push_back(edges[0]);
  }

  Xy point_on(const Edge& edge) const {
    const auto& [a, b] = edge;
    const double at_a = value_(a.first, a.second);
    const double t = (level_ - at_a) / (value_(b.first, b.second) - at_a);
    return {100 * (a.first + t * (b.first - a.first)) / steps_, 100 * (a.second + t * (b.second - a.second)) / steps_};
  }

  std::vector<Xy> chain_from(Edge edge) {
    std::vector<Xy> line = {point_on(edge)};
    while (!crossed_[edge].empty()) {
      const Edge next = crossed_[edge].front();
      crossed_[edge].erase(crossed_[edge].begin());
      std::vector<Edge>& back = crossed_[next];
      back.erase(std::find(back.begin(), back.end(), edge));
      line.push_back(point_on(next));
      edge = next;
    }
    return line;
  }

  int steps_;
  const std::function<double(int, int)>& value_;
  double level_;
  std::map<Edge, std::vector<Edge>> crossed_;  // with the edges that a piece of line leads to
};

}  // namespace

std::vector<std::vector<Xy>> level_lines(int steps, const std::function<double(int, int)>& value, double level) {
  return Cells(steps, value, level).chains();
}

std::vector<RowStretch> rows_above(int steps, const std::function<double(int, int)>& value, double level) {
  std::vector<RowStretch> stretches;
  for (int j = 0; j < steps; ++j) {
    const double second = 100.0 * j / steps;
    std::optional<double> begun;
    for (int i = 0; i + j <= steps; ++i) {
      const double here = value(i, j);
      const bool is_above = here > level;
      if (is_above == begun.has_value()) continue;
      const double before = i > 0 ? value(i - 1, j) : here;
      const double t = i > 0 ? i - 1 + (level - before) / (here - before) : 0;
      if (is_above)
        begun = 100 * t / steps;
      else
        stretches.push_back({{*std::exchange(begun, std::nullopt), second}, {100 * t / steps, second}});
    }
    if (begun) stretches.push_back({{*begun, second}, {100.0 * (steps - j) / steps, second}});
  }
  return stretches;
}

}  // namespace gentlest
