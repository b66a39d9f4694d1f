// Simulated studios: twenty paintings of the same two materials, the last planned with what the others taught.
#pragma once

#include "study/session.hpp"

#include <string>
#include <vector>

namespace gentlest::study {

/// How the true spheres of a studio's paintings lie. All assumed. Hansen distances, MPa^0.5.
struct StudioTruth {
  double off = 2;      ///< of the unknown middle from the stand-in, in a direction drawn for each studio and material
  double scatter = 2;  ///< root mean square, of the paintings about that middle
  double R0_scatter = 1;  ///< standard deviation
  std::size_t paintings = 20;
};

/// What became of the last painting, tested as the first one is and with the studio; and of the first.
struct StudioRun {
  Session first, last_without, last_with;
  double middle_off_without = 0, middle_off_with = 0;  ///< of the varnish's start from the true middle
  double between = 0;                                  ///< as found for the varnish
};

/// One studio. Its earlier paintings are tested as if it had no memory.
StudioRun run_studio(const Bench& bench, const StudioTruth& truth, std::uint64_t seed);

/// Markdown: both scatters, so many studios each.
std::string studio_section(const Bench& bench, int studios);

}  // namespace gentlest::study
