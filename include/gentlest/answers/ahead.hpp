// The tests that lie ahead on a painting: the one that is proposed, then what may follow it. For cards and vials; pure.
#pragma once

#include "gentlest/answers/bench.hpp"
#include "gentlest/answers/progress.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// When a test that lies ahead is made.
enum class AheadIf {
  now,                 ///< it is the one that is proposed
  borne_without_gain,  ///< only if the one before left the original untouched and did not move the layer as wanted
  worked               ///< only if the one before moved the layer as wanted and left the original untouched
};

struct TestAhead {
  BenchMixture mixture;             ///< with its origin in the plan, where it is of the plan
  std::optional<std::size_t> step;  ///< index into Conduct::steps
  std::optional<Place> place;       ///< nothing: the reading before it will tell
  std::string passage = {};
  AheadIf when = AheadIf::now;
};

/// The proposed test, then the rungs above it on its line that nothing closes, or after a success the passages that
/// are left. Empty after a stop: nothing is proposed then. Where no figure chooses a test, the liquids to try alone
/// that were not tried. Throws as prepare_bench.
std::vector<TestAhead> tests_ahead(const Plan& plan, const Progress& progress, const Catalogue& catalogue);

/// What a vial is wanted for: the proposed mixture, then those of tests_ahead, then the rungs and steps of the bench
/// that nothing closes; after a success that ends the tests the mixture that works; after any other stop none.
std::vector<BenchMixture> vials_ahead(const Plan& plan, const Progress& progress, const Bench& bench,
                                      const Catalogue& catalogue);

/// True of a planned mixture that a harm closes for some layer, but for the one that is proposed elsewhere.
bool is_struck_out(const Progress& progress, std::size_t step);

}  // namespace gentlest
