// One painting, one way of testing it, and what came of it.
#pragma once

#include "gentlest/learning/next_test.hpp"

#include "study/shelf.hpp"
#include "study/simulation.hpp"

#include <functional>
#include <string>
#include <vector>

namespace gentlest::study {

/// Everything the ways of testing share.
struct Bench {
  std::vector<const Solvent*> liquids;   ///< the allowed shelf, then what only the published series need
  std::vector<StudyMixture> candidates;  ///< of the allowed shelf only
  std::vector<StudyMixture> thirteen;
  std::vector<std::vector<StudyMixture>> ten_percent;
};
Bench make_bench(const Catalogue& catalogue);

/// What happened on one painting.
struct Session {
  bool has_window = false;     ///< a candidate exists with RED <= 0.9 to the varnish and >= 1.1 to the paint
  bool found = false;          ///< a swab read "mostly or fully removed" and "nothing seen"
  bool reported = false;       ///< a mixture was reported as found
  double reported_effect = 0;  ///< its true chances
  double reported_risk = 0;
  bool harmed = false;  ///< the original of the picture was truly affected at least once
  bool harmed_edge = false;
  int tests = 0;  ///< all swabs, those at the edge too
  int edge_tests = 0;
  double largest_true_risk = 0;
  bool truly_good() const { return reported && reported_effect >= 0.6 && reported_risk <= 0.27; }
};

/// The true place of every mixture on one painting: the liquids' own errors included.
class TruePlaces {
 public:
  TruePlaces(const Bench& bench, const World& world, const Painting& painting);
  Hansen of(const StudyMixture& mixture) const;

 private:
  std::vector<Hansen> liquids_;
};

bool has_window(const Bench& bench, const TruePlaces& places, const Painting& painting);

/// Walks fixed ladders one after the other. Stops at the first mixture that works; a harm reading ends the ladder, and
/// the next one is taken up only when `switches`; the second harm reading ends all.
Session walk_ladders(const Bench& bench, const World& world, const Painting& painting,
                     const std::vector<std::vector<StudyMixture>>& ladders, bool switches);

/// What a prediction said and what happened, for the calibration tables.
struct Prediction {
  double effect = 0, risk = 0;
  bool moved = false, affected = false;
  bool confirm = false;  ///< made after a first success
};
struct Coverage {
  bool varnish = false, paint = false;  ///< the true RED of the last mixture lay in the 90 % interval
  double least_effective = 0;           ///< smallest effective share of particles seen
};

/// Learns from every swab.
struct Learner {
  std::string name;
  NextTestSettings settings;
  double stray_share = 0.08, paint_stray_share = kept_stray_share, stray_factor = 2;
  double slip = 0.06;
  std::size_t particles = 1000;
  std::size_t rough = 256;
  std::optional<NextTestTask> start;  ///< made by prepare(), and the first proposal, the same for all paintings
  NextTest first;
};
void prepare(Learner& learner, const Bench& bench, const World& world);
Session learn_session(const Bench& bench, const World& world, const Painting& painting, const Learner& learner,
                      std::vector<Prediction>* predictions = nullptr, std::vector<Coverage>* coverage = nullptr);

/// One swab with the truly best candidate.
Session ask_oracle(const Bench& bench, const World& world, const Painting& painting);

}  // namespace gentlest::study
