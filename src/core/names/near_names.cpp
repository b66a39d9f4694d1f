#include "gentlest/names/names.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace gentlest {

namespace {

constexpr std::size_t most_offered = 3;
constexpr std::size_t shortest_offered = 4;  // letters; "PM" and "MC" are near to everything
constexpr std::size_t shortest_held = 5;     // letters of a name that stands inside another

constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

struct Near {
  std::size_t distance = none;
  const OfferedName* name = nullptr;
};

// The least distance of each record that is near at all, nearest first.
template <class Distance>
std::vector<OfferedName> nearest_of(const std::vector<OfferedName>& known, const Distance& distance_to,
                                    bool only_equal) {
  std::vector<Near> nearest;
  for (const OfferedName& name : known) {
    const std::size_t distance = distance_to(name);
    if (distance == none) continue;
    const auto same = std::find_if(nearest.begin(), nearest.end(),
                                   [&](const Near& one) { return one.name->belongs_to == name.belongs_to; });
    if (same == nearest.end())
      nearest.push_back({distance, &name});
    else if (distance < same->distance)
      *same = {distance, &name};
  }
  std::stable_sort(nearest.begin(), nearest.end(),
                   [](const Near& a, const Near& b) { return a.distance < b.distance; });
  std::vector<OfferedName> names;
  for (const Near& one : nearest)
    if (names.size() < most_offered && (!only_equal || one.distance == nearest.front().distance))
      names.push_back(*one.name);
  return names;
}

}  // namespace

std::vector<OfferedName> near_names(std::string_view typed, const std::vector<OfferedName>& known) {
  const std::vector<std::string> keys = name_keys(typed);
  if (keys.empty() || keys.front().size() > 100) return {};
  const std::string& wanted = keys.front();
  const std::size_t limit = wanted.size() / 3 + 1;
  const auto key_of = [](const OfferedName& name) {
    const std::vector<std::string> of_name = name_keys(name.text);
    return of_name.empty() || of_name.front().size() < shortest_offered ? std::string() : of_name.front();
  };
  const auto by_letters = [&](const OfferedName& name) {
    const std::string key = key_of(name);
    if (key.empty() || std::max(key.size(), wanted.size()) - std::min(key.size(), wanted.size()) >= limit) return none;
    const std::size_t distance = edit_distance(wanted, key);
    return distance < limit ? distance : none;
  };
  const auto by_holding = [&](const OfferedName& name) {
    const std::string key = key_of(name);
    if (std::min(key.size(), wanted.size()) < shortest_held) return none;
    if (key.find(wanted) != std::string::npos) return key.size() - wanted.size();
    return wanted.find(key) != std::string::npos ? wanted.size() - key.size() : none;
  };
  const std::vector<OfferedName> near = nearest_of(known, by_letters, true);
  return near.empty() ? nearest_of(known, by_holding, false) : near;
}

}  // namespace gentlest
