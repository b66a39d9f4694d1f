// Plan + catalogue + readings -> what is known now and the next test. Pure: same input, same answer.
#pragma once

#include "gentlest/conduct/conduct.hpp"
#include "gentlest/learning/outlook.hpp"
#include "gentlest/learning/reading.hpp"
#include "gentlest/plan/plan.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Why a test teaches nothing here.
enum class LeftOutWhy {
  unknown_passage,     ///< its passage is none of the job's
  unreadable_mixture,  ///< what is written of its mixture cannot be read
  other_layer,         ///< it is about a layer that this plan does not remove
  no_solvent_mixture   ///< a solution of the person's own: it has no place among the spheres
};
struct LeftOutTest {
  int test = 0;
  LeftOutWhy why = LeftOutWhy::unknown_passage;
  std::string what;  ///< the passage or layer; of a mixture the message that reading it gave
  bool operator==(const LeftOutTest&) const = default;
};

/// What to do next.
enum class NextKind {
  test,           ///< make `NextAnswer::test`
  found,          ///< stop: a mixture works
  unsure,         ///< stop: it worked by the rules, and is not believed to do so again
  no_window,      ///< stop: nothing is left that the rules and the risk allow
  ended,          ///< stop: Conduct::end says why
  tests_used_up,  ///< stop: as many tests as the limit allows
  not_judged      ///< the layer to remove has no sphere: no figure chooses a test
};

/// A test that the rules allow and whose risk is too high.
struct TooRisky {
  OpenTest test;
  double risk = 0;
  double cap = 0;
  std::string layer;  ///< that gives the risk
};

/// A test that the rules allow, on a way up that promises too little to be worth a swab.
struct TooLittle {
  OpenTest test;
  double promise = 0;  ///< most that a rung from it on is believed to move the layer and harm nothing
  double least = 0;    ///< that is asked for
};

/// The next test, or the stop, and the rule that shaped it.
struct NextAnswer {
  NextKind kind = NextKind::no_window;
  Rule rule = Rule::no_window_last;
  std::optional<OpenTest> test;             ///< for `test`
  std::optional<Mixture> mixture;           ///< to try, or that worked
  double cap = 0;                           ///< for `test`: its risk was held against
  std::optional<CandidateOutlook> outlook;  ///< of `mixture` where it is to be tried, or on the picture
  std::optional<WorkingMixture> working;    ///< that works now
  std::vector<TooRisky> too_risky;          ///< passed over, in the order of the rules
  std::vector<TooLittle> too_little;        ///< the same
  bool is_surprised = false;                ///< the readings fit badly with what was held before
};

/// Where the testing of one painting stands.
struct Progress {
  std::vector<PlannedLayer> layers;
  std::size_t target = 0;                ///< index into layers
  std::vector<JobBottle> left_off;       ///< bottles not used, each with the reason
  std::vector<Reading> counted;          ///< readings that the beliefs learnt from, by test number
  std::vector<LeftOutTest> not_counted;  ///< in the order of their numbers; a harm among them still closes
  NextTestTask task;                     ///< beliefs after all readings; layers without a sphere have none
  Conduct conduct;
  NextAnswer next;
  std::map<std::string, std::vector<int>> heard =
      {};                                      ///< by layer: the tests behind what its belief has seen, in order
  std::optional<JudgedMixture> proposed = {};  ///< `next.mixture` as a plan judges it, with its origin
  std::vector<Caution> cautions = {};          ///< of that mixture, whichever bottles it is of
  std::vector<FirstTest> first_tests = {};     ///< as in the plan, without what was tried
  std::vector<JudgedMixture> to_try = {};      ///< that first_tests speak of
};

/// Of the layer to remove, then of each to keep.
std::vector<LearntOfLayer> what_was_learnt(const Progress& progress);

/// Learns from the readings of the plan's painting and says what comes next: of the tests that the rules of conduct
/// leave open the first whose risk keeps to the cap of its place (NextTestSettings). A passage without a material of
/// its own speaks of its layer; a reading without a passage of the uppermost kept layer. Because the response curve is
/// borrowed from long contact, R0 is taken as uncertain by another 15 % (our choice).
Progress follow_readings(const Plan& plan, const Catalogue& catalogue, const std::vector<Reading>& readings);

/// What is held of a layer before any test, and how it answers a swab. Precondition: it has a sphere.
LayerPrior prior_of(const PlannedLayer& layer);
ReadingCurve curve_of(const PlannedLayer& layer);

/// The beliefs of the plan's layers before any test.
NextTestTask task_before_tests(const Plan& plan);

/// Only what the readings teach these beliefs and what the rules make of them: no next test, no liquids to try. The
/// plan needs no ladder.
Progress take_readings(const Plan& plan, const Catalogue& catalogue, const std::vector<Reading>& readings,
                       NextTestTask before);

/// A mixture as beliefs see it: its point and the share of each bottle.
SwabMixture swab_mixture_of(const Mixture& mixture);

/// How much room the ladder has above a mixture: of its rungs with more effect, how many, from the gentlest on, stay
/// within the job's risk limit and are not closed. Effect and risk as believed after all readings.
struct RungRoom {
  std::size_t within = 0;
  std::size_t stronger = 0;
};
RungRoom room_above(const Mixture& mixture, const Plan& plan, const Progress& progress);

}  // namespace gentlest
