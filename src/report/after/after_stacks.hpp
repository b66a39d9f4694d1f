// Every stack of an answer in the order in which pages show them.
#pragma once

#include "gentlest/afterwards/afterwards.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

struct ListedStack {
  const char* group;     ///< asked, retouching, varnish, under, over, between
  std::size_t rank = 0;  ///< from 1, within the group
  const JudgedStack* stack = nullptr;
};
/// The answer must outlive them.
std::vector<ListedStack> listed_stacks(const Afterwards& answer);

/// What is done in each liquid that is named, each liquid once, in the order in which pages show them.
std::vector<const ActInMixture*> named_liquids(const Afterwards& answer);

/// The place that suits a retouching best of those without a second varnish.
const JudgedStack* best_place(const RetouchingPlace& place);

}  // namespace gentlest
