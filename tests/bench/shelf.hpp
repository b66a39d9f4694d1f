// The invented shelf and three layers that all timings use. Fixed seeds.
#pragma once

#include "gentlest/search/search.hpp"

#include <random>
#include <string>
#include <vector>

namespace gentlest::bench {

inline const Response curve{
    {{{0.0790, -8.6322}, {-2.2733, -3.0740}, {-1.6133, -3.4506}, {-1.0738, -2.9088}, {-0.1481, -2.5300}}},
    "solvents/response.yaml"};

/// `count` liquids spread over the part of Hansen space where solvents lie, one layer to remove and two to keep.
inline SearchTask make_task(std::size_t count, std::uint64_t seed, int parts, int step_percent = 5) {
  std::mt19937_64 random(seed);
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random() >> 11) * 0x1p-53;
  };
  const auto point = [&](const HansenBox& box) {
    const double dD = between(box.low.dD, box.high.dD);
    const double dP = between(box.low.dP, box.high.dP);
    return Hansen{dD, dP, between(box.low.dH, box.high.dH)};
  };
  const auto layer = [&](const HansenBox& box, double R0_low, double R0_high) {
    const Hansen centre = point(box);
    const double R0 = between(R0_low, R0_high);
    const double vague = between(1, 3);  // from a fitted sphere to an assumed one
    return UncertainSphere{{centre, R0}, {0.35 * vague, 0.5 * vague, 0.45 * vague}, 0.6 * vague};
  };
  SearchTask task;
  task.parts = parts;
  task.step_percent = step_percent;
  for (std::size_t i = 0; i < count; ++i)
    task.shelf.push_back({"liquid " + std::to_string(1000 + i), nullptr, 0, point({{14, 0, 0}, {19, 14, 22}})});
  const UncertainSphere target = layer({{17, 3, 6}, {20, 7, 11}}, 8, 11);
  const UncertainSphere paint = layer({{16, 6, 6}, {19, 11, 12}}, 5, 8);
  const UncertainSphere passage = layer({{15, 4, 4}, {20, 12, 14}}, 4, 8);
  std::vector<ChanceField> fields =
      chance_fields(bounding_box(task.shelf), {{target, curve, 2}, {paint, curve, 4}, {passage, curve, 4}});
  task.target.push_back(std::move(fields[0]));
  task.kept = {std::move(fields[1]), std::move(fields[2])};
  return task;
}

}  // namespace gentlest::bench
