// Which mixture to try next, or why to stop.
// The caller gives the mixtures that may be proposed (hazards, miscibility, shelf and bottle limits are settled before)
// and what is believed of each layer; here one is chosen. Gentle first: the step in effect is bounded, and the risk
// limit is raised only where nothing below it promises anything.
#pragma once

#include "gentlest/learning/learning.hpp"

#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace gentlest {

/// A mixture as far as beliefs need it.
struct SwabMixture {
  Hansen point;
  /// Share by volume of each bottle, by its label; adds up to 1. Empty where it is not known: then nothing but the same
  /// mixture shares its luck.
  std::vector<std::pair<std::string, double>> shares = {};
  bool operator==(const SwabMixture&) const = default;
};

/// One test already made, as far as beliefs need it.
struct PastTest {
  SwabMixture mixture;
  bool at_edge = false;
  std::string passage;          ///< colour under the swab; empty: not noted
  std::optional<int> removal;   ///< level read on the layer to remove, 0..4; nothing where it was not looked at
  std::optional<int> original;  ///< level read on the original, 0..4 (level_on_original); nothing where not looked at
  std::string layer = {};       ///< name of the KeptBelief that it spoke of; empty: of all
  double radius_factor = 1;     ///< as in its Evidence: longer contact acts as a larger R0
  bool operator==(const PastTest&) const = default;
};

/// True when two mixtures count as the same one: their points lie within 0.05 MPa^0.5.
bool is_same(const Hansen& a, const Hansen& b);

/// Harm on the picture with a mixture that had passed at the edge on the same layer: the edge is not the picture, so
/// no pass there lowers a risk any more.
bool is_edge_refuted(const std::vector<PastTest>& past);

/// How bold the search is. Defaults: tuned on simulated paintings, docs/study.md.
struct NextTestSettings {
  int effect_level = 3;  ///< level of a removal reading that counts as "moved"
  int most_tests = 24;
  double picture_risk = 0.10;  ///< no test on the picture at more risk than this, believed now
  double edge_risk = 0.25;     ///< nor at the edge at more than this
  /// So many standard deviations off, the readings fit badly with what was held before, and the caps are these:
  double surprised_at = surprising_deviations;
  double picture_risk_when_surprised = 0.05;
  double edge_risk_when_surprised = 0.15;
  double found_at = 0.5;  ///< a mixture is called found from this chance of `good` on

  // Of the search off the ladder.
  std::vector<double> risk_limits = {0.02, 0.05, 0.10, 0.20};  ///< raised one by one
  double least_promise = 0.07;   ///< chance of "moved and unaffected" below which a mixture is not worth a swab
  double step = 0.5;             ///< largest step in effect (as believed before the tests) beyond the boldest one tried
  double price_of_test = 0.035;  ///< a swab costs as much as this chance of harm

  /// Where the readings are surprising:
  double promise_when_surprised = 0.08;   ///< a mixture must promise more,
  double risk_when_surprised = 0.05;      ///< the risk limit is raised no further than this,
  double edge_needed_when_surprised = 0;  ///< and a mixture of more risk than this must first pass at the edge

  double sure = 0.90;              ///< stop when the working mixture is truly good with this chance
  double good_effect = 0.60;       ///< truly good: moves the layer with at least this chance,
  double good_risk = 0.27;         ///< and affects none to keep with more than this
  double confirming_risk = 0.025;  ///< risk limit of the tests after the first success
  int most_confirming = 3;         ///< tests made after the first success to be sure of it

  int most_at_edge = 8;             ///< tests on an edge where harm matters least; 0: there is none
  double edge_below = 0.30;         ///< an edge test is made where the first risk limit promises less than this,
  double edge_gain = 0.15;          ///< and the mixture that it may open promises so much more
  double edge_needed_above = 0.05;  ///< a mixture of more risk must first pass at the edge, while there is one
  double passed_risk = 0.05;        ///< what passed there may be put on the picture at a risk up to this

  /// How much of what the curve leaves to chance goes with the mixture, not with the swab, 0..1: so much does a test
  /// say of the same mixture, and of its neighbours as far as they share its luck (shared_luck).
  double luck_of_mixture = 0;
  double luck_reach = 3;  ///< MPa^0.5: mixtures of the same bottles so far apart share exp(-1/2) of their luck
};

/// The settings of a job: the defaults, whose risk limits end at 0.20, in the same proportion to the job's own limit.
/// With a borrowed curve most of the luck goes with the mixture, since its scatter is one between liquids on one resin:
/// 0.8, our choice.
NextTestSettings settings_within(double risk_limit, bool has_borrowed_curve);

/// A kept layer or passage with what is believed of it.
struct KeptBelief {
  std::string name;
  LayerBelief belief;
  int risk_level = 1;  ///< level of a reading of the original that counts as "affected" here
};

struct NextTestTask {
  std::vector<Hansen> candidates;     ///< Hansen points of the mixtures that may be proposed
  std::optional<LayerBelief> target;  ///< nothing where its sphere is not known: then no test can be chosen
  std::vector<KeptBelief> kept;
  std::vector<std::string> passages;  ///< colours that a working mixture must pass; may be empty
  std::vector<PastTest> past;
  NextTestSettings settings;
};

enum class NextStep {
  try_mixture,    ///< on the picture
  try_at_edge,    ///< first where harm matters least
  confirm,        ///< a mixture worked; this test makes surer of the best one
  try_passage,    ///< the working mixture on a colour not yet tested
  found,          ///< stop: a mixture works, with its margin
  no_window,      ///< stop: nothing allowed promises to work within the risk limits
  closed,         ///< stop: the original reacted twice
  tests_used_up,  ///< stop: as many tests as the limit allows
  not_judged      ///< the layer to remove has no sphere: no figure chooses a test
};

/// Why that step.
enum class NextReason {
  promises_most,          ///< try_mixture: most promise for the least risk within `risk_limit`
  passed_at_edge,         ///< try_mixture: of those that passed at the edge it promises most
  promises_more_at_edge,  ///< try_at_edge: more than what is gentle enough for the picture
  risky_best,             ///< try_at_edge: the best choice left, but not without risk
  likeliest_each_time,    ///< confirm: the likeliest to work each time
  passage_untested,       ///< try_passage
  worked,                 ///< found
  nothing_promises,       ///< no_window: nothing has `least_promise` at a risk up to `most_risk`
  harmed_twice,           ///< closed
  tests_made,             ///< tests_used_up
  next_rung,              ///< try_mixture, confirm: no risk can be told, so the ladder is walked rung by rung
  layer_not_judged,       ///< try_at_edge: no figure says what it does to a layer to keep
  target_not_judged       ///< not_judged
};

/// What a mixture is believed to do now.
struct CandidateOutlook {
  std::optional<std::size_t> candidate;  ///< position among the candidates; empty for a mixture that is none of them
  Hansen point;
  double effect = 0;  ///< chance that it moves the layer to remove
  double risk = 0;    ///< largest chance that it affects something to keep
  double good = 0;    ///< chance that it moves that layer and leaves all there is to keep as it was
  std::string riskiest;
  bool counts_tests = false;  ///< the figures count what mixtures did that share its luck, not the spheres alone
};

struct NextTest {
  NextStep step = NextStep::no_window;
  std::optional<CandidateOutlook> mixture;  ///< to try, or that was found, or that came nearest
  double risk_limit = 0;                    ///< the limit under which it was chosen
  std::optional<std::size_t> worked;        ///< the past test whose mixture this is, where one worked
  std::string passage;                      ///< for try_passage
  std::vector<std::string> untested;        ///< passages on which the mixture was not tried
  NextReason reason = NextReason::nothing_promises;
  double least_promise = 0;    ///< for no_window: a mixture would have to promise so much, 0..1,
  double most_risk = 0;        ///< at a risk of no more than this, 0..1
  double worked_good = 0;      ///< for confirm: chance that the mixture that worked is truly good, 0..1
  std::size_t tests_made = 0;  ///< for tests_used_up
  bool is_surprised = false;   ///< the readings fit badly with what was held before
  std::size_t drifting = 0;    ///< mixtures passed over, since they get riskier than allowed while drying
};

/// Does this candidate come to a Hansen point at which `is_beyond` holds while it dries?
using DriftQuestion = std::function<bool(std::size_t candidate, const std::function<bool(const Hansen&)>& is_beyond)>;

/// Without a question, drying is not asked about. Precondition: the task has a target.
NextTest choose_next_test(const NextTestTask& task, const DriftQuestion& drifts_to = {});

/// What the next swab with a mixture is believed to do, on the picture or at the edge: the one answer that the choice,
/// report and sheet print. By the spheres, and as far as its luck is that of mixtures tested before, by what those did:
/// what did nothing bounds the luck of its neighbours from one side, what moved or harmed from the other. A reading is
/// trusted as far as it does not slip. Where readings contradict each other the careful ones count: failures on the
/// layer to remove, harm on those to keep. Precondition: the task has a target.
CandidateOutlook outlook_of(const NextTestTask& task, const SwabMixture& mixture, bool at_edge = false);

/// How far two mixtures share their luck, 0..1: exp(-(Ra / reach)^2 / 2) times the part of their bottles that both hold
/// (a bottle counts wholly from a twentieth of the volume on). 1 of the same mixture.
double shared_luck(const SwabMixture& a, const SwabMixture& b, double reach);

/// How badly the readings of all layers fit, in standard deviations; 0 before any reading.
double surprise_of(const NextTestTask& task);

}  // namespace gentlest
