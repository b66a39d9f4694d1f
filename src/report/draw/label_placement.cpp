#include "report/draw/label_placement.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest {

namespace {

using Places = std::vector<std::optional<PlacedLabel>>;

// Distance from the mark beyond which the eye needs a line.
constexpr double read_without_line = 9;

constexpr std::array<double, 8> extra_distances = {0, 4, 9, 18, 30, 45, 62, 80};

// Directions in order of preference: right, left, above, below, then between.
constexpr std::array<double, 12> directions_degrees = {0, 180, -90, 90, -45, 45, -135, 135, -20, 20, -160, 160};

// The box whose nearest edge or corner lies so far from the point in that direction.
Box box_at(const LabelWish& wish, double degrees, double distance) {
  const double angle = degrees * std::acos(-1.0) / 180;
  const double across = std::cos(angle);
  const double down = std::sin(angle);
  const double x = wish.point.x + across * (distance + wish.width / 2);
  const double y = wish.point.y + down * (distance + wish.height / 2);
  return {x - wish.width / 2, y - wish.height / 2, x + wish.width / 2, y + wish.height / 2};
}

Xy nearest_in(const Box& box, Xy point) {
  return {std::clamp(point.x, box.left, box.right), std::clamp(point.y, box.top, box.bottom)};
}

std::vector<PlacedLabel> candidates_of(const LabelWish& wish, const std::vector<Box>& obstacles, const Box& bounds) {
  std::vector<PlacedLabel> candidates;
  for (const double extra : extra_distances) {
    for (const double degrees : directions_degrees) {
      const Box box = box_at(wish, degrees, wish.clearance + extra);
      if (box.left < bounds.left || box.right > bounds.right || box.top < bounds.top || box.bottom > bounds.bottom)
        continue;
      if (std::any_of(obstacles.begin(), obstacles.end(), [&](const Box& other) { return overlap(box, other); }))
        continue;
      PlacedLabel placed{box, std::nullopt};
      const Xy end = nearest_in(box, wish.point);
      if (std::hypot(end.x - wish.point.x, end.y - wish.point.y) > wish.clearance + read_without_line)
        placed.leader_end = end;
      candidates.push_back(placed);
    }
  }
  return candidates;
}

bool collide(const PlacedLabel& a, Xy a_point, const PlacedLabel& b, Xy b_point) {
  return overlap(a.box, b.box) || (a.leader_end && crosses(a_point, *a.leader_end, b.box)) ||
         (b.leader_end && crosses(b_point, *b.leader_end, a.box));
}

// Which placed labels stand in the way of this one.
std::vector<std::size_t> in_the_way(const PlacedLabel& label, std::size_t self, const std::vector<LabelWish>& wishes,
                                    const Places& places) {
  std::vector<std::size_t> blockers;
  for (std::size_t i = 0; i < places.size(); ++i)
    if (i != self && places[i] && collide(label, wishes[self].point, *places[i], wishes[i].point))
      blockers.push_back(i);
  return blockers;
}

using AllCandidates = std::vector<std::vector<PlacedLabel>>;

bool take_free_place(std::size_t self, const AllCandidates& candidates, const std::vector<LabelWish>& wishes,
                     Places& places) {
  for (const PlacedLabel& candidate : candidates[self]) {
    if (!in_the_way(candidate, self, wishes, places).empty()) continue;
    places[self] = candidate;
    return true;
  }
  return false;
}

// Takes a place that one other label holds, if that one can go elsewhere.
bool push_one_aside(std::size_t self, const AllCandidates& candidates, const std::vector<LabelWish>& wishes,
                    Places& places) {
  for (const PlacedLabel& candidate : candidates[self]) {
    const std::vector<std::size_t> blockers = in_the_way(candidate, self, wishes, places);
    if (blockers.size() != 1) continue;
    const std::optional<PlacedLabel> before = places[blockers.front()];
    places[blockers.front()].reset();
    places[self] = candidate;
    if (take_free_place(blockers.front(), candidates, wishes, places)) return true;
    places[self].reset();
    places[blockers.front()] = before;
  }
  return false;
}

}  // namespace

bool overlap(const Box& a, const Box& b) {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

bool crosses(Xy from, Xy to, const Box& box) {
  double enter = 0;
  double leave = 1;
  const auto clip = [&](double start, double step, double low, double high) {
    if (step == 0) return start > low && start < high;
    const double a = (low - start) / step;
    const double b = (high - start) / step;
    enter = std::max(enter, std::min(a, b));
    leave = std::min(leave, std::max(a, b));
    return true;
  };
  return clip(from.x, to.x - from.x, box.left, box.right) && clip(from.y, to.y - from.y, box.top, box.bottom) &&
         enter < leave;
}

Places place_labels(const std::vector<LabelWish>& wishes, const std::vector<Box>& obstacles, const Box& bounds) {
  AllCandidates candidates;
  for (const LabelWish& wish : wishes) candidates.push_back(candidates_of(wish, obstacles, bounds));
  Places places(wishes.size());
  for (std::size_t i = 0; i < wishes.size(); ++i)
    if (!take_free_place(i, candidates, wishes, places)) push_one_aside(i, candidates, wishes, places);
  return places;
}

}  // namespace gentlest
