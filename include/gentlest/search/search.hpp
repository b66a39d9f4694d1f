// All mixtures of a shelf, and those that nothing beats.
#pragma once

#include "gentlest/liquids/mixture.hpp"
#include "gentlest/space/chance.hpp"

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
  std::array<std::uint16_t, most_parts> share{};  ///< in grid steps; shares add up to steps_of the task
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

/// A chance as verdicts and judged mixtures hold it, rounded to 1e-9.
double rounded_chance(double chance);

struct Candidate {
  Composition composition;
  Verdict verdict;
  bool operator==(const Candidate&) const = default;
};

/// Carries out tasks that do not touch each other, in any order and at once where it likes, and returns when all are
/// done. The answer of a search does not depend on how. Core itself starts no threads.
using RunTasks = std::function<void(const std::vector<std::function<void()>>&)>;

struct SearchTask;
/// May this mixture of the task be used? Asked with the task itself, which may be a copy; from several tasks at once.
using Allowed = std::function<bool(const SearchTask& task, const Composition& composition)>;

/// What to search: the liquids (sorted by label, so that the order of the user's shelf does not matter), the chance
/// fields of the layer to remove and of everything to keep.
struct SearchTask {
  std::vector<Liquid> shelf;
  std::vector<ChanceField> target;  ///< exactly one
  std::vector<ChanceField> kept;
  int parts = 3;                  ///< largest number of liquids in a mixture, 1..4
  int step_percent = 5;           ///< divides 100
  int cuts = 1;                   ///< each step in so many; above 1 for the shares of a stock of two liquids alone
  std::vector<int> most_percent;  ///< largest share of each liquid of the shelf, per cent; empty: no limits
  Allowed allowed;                ///< e.g. stays one liquid; empty: every mixture
  RunTasks run;                   ///< empty: one task after the other
  std::function<void()> beat;     ///< called every few thousand mixtures, from several tasks at once; may throw to stop
};

/// Steps that the shares of a mixture add up to.
inline int steps_of(const SearchTask& task) {
  return 100 / task.step_percent * task.cuts;
}

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

/// True when no liquid takes more than its largest share.
bool keeps_largest_shares(const SearchTask& task, const Composition& composition);

/// True when the mixture keeps to the task's largest shares and its `allowed`.
bool is_allowed(const SearchTask& task, const Composition& composition);

/// Called many times a second with the number of mixtures settled (judged or ruled out) and of all; may throw to stop.
/// Called from whatever thread carries out a task, but never twice at once.
using SearchProgress = std::function<void(std::uint64_t done, std::uint64_t total)>;
using SearchWitness = std::function<void(const Composition&, const Verdict&)>;

/// Mixtures that no other mixture of the shelf beats, by rising risk and so by rising effect. Of mixtures with equal
/// numbers the one with fewer parts, then the first by labels, then by smaller first shares, stands for all.
/// Rules out whole families of mixtures by bounds (docs/science.md, "Search"); the answer is that of
/// find_frontier_by_visiting, to the bit. Memory: about 20 bytes for each node of a table, and the frontier.
std::vector<Candidate> find_frontier(const SearchTask& task, const SearchProgress& progress = {});

/// The same by judging every mixture one after the other: the plain reference, and the way when the tables do not share
/// their lattice. `witness` sees every allowed mixture; it may be empty. Memory: the frontier only.
std::vector<Candidate> find_frontier_by_visiting(const SearchTask& task, const SearchProgress& progress = {},
                                                 const SearchWitness& witness = {});

/// The same on the given bottles only, by visiting. Without `ask_allowed` the task's `allowed`, which may be slow, is
/// left out: a frontier that the real one does not surpass.
std::vector<Candidate> find_frontier_on(const SearchTask& task, const std::vector<std::uint16_t>& bottles,
                                        bool ask_allowed = true);

}  // namespace gentlest
