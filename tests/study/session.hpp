// One painting, one way of testing it, and what came of it.
#pragma once

#include "gentlest/conduct/conduct.hpp"

#include "study/truth.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest::study {

/// A job as people write it, planned once: aged dammar over old oil paint, eight bottles, default limits.
struct Bench {
  const Catalogue& catalogue;
  Plan plan;
  std::vector<PlanStep> steps;  ///< of the plan
  std::vector<SwabMixture> step_mixtures;
  std::vector<std::vector<SwabMixture>> lines;  ///< rungs of each line
  std::vector<SwabMixture> series;              ///< Feller's, published
  NextTestTask start;                           ///< as a job begins, 8,000 particles a layer
  UncertainSphere young;                        ///< young oil paint
};
Job study_job(int edge_tests);
Bench make_bench(const Catalogue& catalogue, int edge_tests = 8);

/// The same for any such job; without a ladder it has no steps. The paint is not young.
Bench bench_of(const Job& job, const Catalogue& catalogue);

/// Beliefs of so many particles, with the curve that jobs borrow or with the sharp one.
Ground borrowed_ground(const Bench& bench, std::size_t paintings, std::size_t particles = 1000);
Ground sharp_ground(const Bench& bench, std::size_t paintings, std::size_t particles = 1000);

enum class Ending { found, no_window, harmed, used_up };

/// What happened on one painting.
struct Session {
  bool has_window = false;  ///< some rung or half step of the plan is truly good
  bool has_way = false;     ///< to a good one by rungs of its line of which none, its luck known, mostly harms
  Ending ending = Ending::no_window;
  bool truly_good = false;  ///< the mixture found is
  bool harmed = false;      ///< the original of the picture was truly affected at least once
  bool harmed_edge = false;
  int tests = 0, edge_tests = 0;
};

/// What was said before a swab and what happened.
struct Prediction {
  double effect = 0, risk = 0;
  bool moved = false, affected = false;
  bool at_edge = false;
  Purpose purpose = Purpose::climb;
};

bool has_window(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting);

bool has_way(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting);

/// Walks mixtures on the picture; stops at the first that reads as working or as harm. With `edge_tests`, each goes to
/// the edge first while there are any left, and one that harms there ends the walk.
Session walk(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting,
             const std::vector<SwabMixture>& mixtures, int edge_tests);

/// As the program does: the rules say what is open, the beliefs choose.
Session follow(const Bench& bench, const Truth& truth, const Ground& ground, const Painting& painting,
               std::vector<Prediction>* predictions = nullptr, std::vector<Reading>* log = nullptr);

}  // namespace gentlest::study
