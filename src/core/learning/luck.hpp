// Luck that a mixture shares with those tested before it. Internal to core.
// What the response curve leaves to chance is one number u per mixture and layer, even between 0 and 1: a swab reaches
// a level where u lies below the level's chance. Mixtures that share their luck have the same u.
#pragma once

#include "gentlest/learning/outlook.hpp"

#include <vector>

namespace gentlest {

/// A test and the level that was read of the layer in question.
struct HeardLuck {
  const PastTest* test = nullptr;
  int level = 0;
  double radius_factor = 1;  ///< longer contact acts as a larger R0
};

/// The tests that speak of the layer to remove, or of a layer to keep, in their order. What passed at a refuted edge
/// speaks of no layer to keep.
std::vector<HeardLuck> heard_of_target(const std::vector<PastTest>& past);
std::vector<HeardLuck> heard_of_kept(const std::vector<PastTest>& past, const std::string& layer);

/// Which readings count first where they contradict each other and are equally near.
enum class Careful { failure, reaction };

struct LuckQuestion {
  const SwabMixture& mixture;
  bool at_edge = false;
  int level = 1;  ///< asked for: this or stronger
  Careful careful = Careful::reaction;
};

/// Chance that the mixture reaches the level, averaged over the particles. Of the luck, so much is shared as the
/// settings and shared_luck say, the nearest tests first; `counts_tests` becomes true where any is.
double chance_with_luck(const LayerBelief& belief, const LuckQuestion& question, const std::vector<HeardLuck>& heard,
                        const NextTestSettings& settings, bool& counts_tests);

}  // namespace gentlest
