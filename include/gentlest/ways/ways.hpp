// Which ways beside a ladder of solvents come into question for a plan, and why: facts only. No way is judged and none
// is promised; this program models none of them.
#pragma once

#include "gentlest/practice/other_way.hpp"
#include "gentlest/plan/plan.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// What holds of a plan, and of which of its layers, passages or bottles.
struct OccasionHere {
  Occasion occasion = Occasion::ladder_ends;
  std::vector<std::string> names = {};  ///< layers and passages; for `polar_liquid` labels of liquids. May be empty
  bool operator==(const OccasionHere&) const = default;
};

/// In the order of the enumeration, each at most once.
std::vector<OccasionHere> occasions_of(const Plan& plan, const Catalogue& catalogue);

/// One way, with what brings it up here and what speaks against it here.
struct WayHere {
  const OtherWay* way = nullptr;
  std::vector<Occasion> because = {};  ///< empty: it always comes up
  std::vector<Occasion> careful = {};
};

/// Ways that come into question, by kind and within a kind in the order of the file, those that nothing here speaks
/// against first. Without a plan all of them.
struct WaysAnswer {
  std::vector<OccasionHere> occasions = {};
  std::vector<WayHere> ways = {};
  std::vector<const OtherWay*> passed_over = {};  ///< that nothing here brings up
};
/// The catalogue must outlive the answer.
WaysAnswer ways_for(const Plan& plan, const Catalogue& catalogue);
WaysAnswer all_ways(const Catalogue& catalogue);

/// Of these ways, each once, in the order of sources.yaml.
std::vector<Source> sources_of(const WaysAnswer& answer, const Catalogue& catalogue);

}  // namespace gentlest
