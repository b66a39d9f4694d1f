// Layer 5. All mixtures of a shelf, and those that nothing beats.
#pragma once

#include "gentlest/chance.hpp"
#include "gentlest/mixture.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace gentlest {

inline constexpr int most_parts = 4;

/// A mixture inside a search: positions on the shelf and shares in steps of the grid. Parts stand in shelf order.
struct Composition {
  std::array<std::uint16_t, most_parts> liquid{};
  std::array<std::uint16_t, most_parts> share{};  ///< in grid steps; shares add up to 100 / step_percent
  int parts = 0;
  bool operator==(const Composition&) const = default;
};

/// The two numbers of a mixture, and which kept layer gives the risk (index into SearchTask::kept). Both numbers are
/// rounded to 1e-9, so that equal means equal on every machine and for every order of the shelf.
struct Verdict {
  double effect = 0;
  double risk = 0;
  int riskiest = -1;
  bool operator==(const Verdict&) const = default;
};

struct Candidate {
  Composition composition;
  Verdict verdict;
  bool operator==(const Candidate&) const = default;
};

/// What to search: the liquids (sorted by label, so that the order of the user's shelf does not matter), the chance
/// fields of the layer to remove and of everything to keep.
struct SearchTask {
  std::vector<Liquid> shelf;
  std::vector<ChanceField> target;  ///< exactly one
  std::vector<ChanceField> kept;
  int parts = 3;         ///< largest number of liquids in a mixture, 1..4
  int step_percent = 5;  ///< divides 100
  /// Says no to mixtures that must not be proposed (one that parts, one that drifts). Asked only of mixtures that would
  /// otherwise be kept; must always give the same answer for the same mixture. Empty: all are allowed.
  std::function<bool(const Composition&, const Verdict&)> allowed;
};

/// Smallest box that holds the Hansen points of all liquids. Precondition: at least one liquid.
HansenBox bounding_box(const std::vector<Liquid>& shelf);

/// Effect and risk at a point of Hansen space. With nothing to keep the risk is 0.
Verdict judge(const SearchTask& task, const Hansen& point);

/// Hansen point of a composition, MPa^0.5.
Hansen point_of(const SearchTask& task, const Composition& composition);

/// The mixture of a composition.
Mixture mixture_of(const SearchTask& task, const Composition& composition);

/// Number of mixtures of at most `parts` of `liquids` liquids whose shares are multiples of 1/steps.
std::uint64_t count_mixtures(std::size_t liquids, int parts, int steps);

/// Calls visit(composition) once for every mixture of at most `parts` of the given liquids (positions on the shelf, in
/// rising order), in a fixed order: fewer parts first.
void for_each_composition(const std::vector<std::uint16_t>& liquids, int parts, int steps,
                          const std::function<void(const Composition&)>& visit);

/// True when a is at least as good as b in both numbers and better in one.
bool beats(const Verdict& a, const Verdict& b);

/// Allowed mixtures that no other allowed mixture of the shelf beats, by rising risk and so by rising effect. Of
/// mixtures with equal numbers the one with fewer parts, then the first by labels, stands for all. Calls progress(done,
/// total) now and then and witness(composition, verdict) for every mixture; both may be empty. Memory: the frontier
/// only.
using SearchProgress = std::function<void(std::uint64_t done, std::uint64_t total)>;
using SearchWitness = std::function<void(const Composition&, const Verdict&)>;
std::vector<Candidate> find_frontier(const SearchTask& task, const SearchProgress& progress = {},
                                     const SearchWitness& witness = {});

/// The same on the given bottles only.
std::vector<Candidate> find_frontier_on(const SearchTask& task, const std::vector<std::uint16_t>& bottles);

}  // namespace gentlest
