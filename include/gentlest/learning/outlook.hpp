// What the swabs so far say of the next one.
// Knows nothing of rules: the caller says which tests are open (conduct) and chooses among them; here is what a mixture
// is believed to do, how far it shares its luck with what was tested, and how much risk the choice may take.
#pragma once

#include "gentlest/learning/learning.hpp"

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
  /// What the readings say: of the layer to remove, of the original.
  std::optional<Evidence> on_removal = {}, on_original = {};
  bool operator==(const PastTest&) const = default;
};

/// True when two mixtures count as the same one: their points lie within 0.05 MPa^0.5.
bool is_same(const Hansen& a, const Hansen& b);

/// Harm on the picture with a mixture that had passed at the edge on the same layer: the edge is not the picture, so
/// no pass there lowers a risk any more.
bool is_edge_refuted(const std::vector<PastTest>& past);

/// How much risk a test may take. Defaults: tuned on simulated paintings, docs/study.md.
struct NextTestSettings {
  int effect_level = 3;  ///< level of a removal reading that counts as "moved"
  int most_tests = 24;
  double picture_risk = 0.10;  ///< no test on the picture at more risk than this, believed now
  double edge_risk = 0.25;     ///< nor at the edge at more than this
  /// So many standard deviations off, the readings fit badly with what was held before, and the caps are these:
  double surprised_at = surprising_deviations;
  double picture_risk_when_surprised = 0.05;
  double edge_risk_when_surprised = 0.15;
  double least_promise = 0.20;  ///< a way up is gone on with from this chance of `good` of its best rung left on
  double found_at = 0.5;        ///< a mixture is called found from this chance of `good` on

  /// How much of what the curve leaves to chance goes with the mixture, not with the swab, 0..1: so much does a test
  /// say of the same mixture, and of its neighbours as far as they share its luck (shared_luck).
  double luck_of_mixture = 0;
  double luck_reach = 3;  ///< MPa^0.5: mixtures of the same bottles so far apart share exp(-1) of their luck
};

/// The settings of a job: the caps of NextTestSettings hold at a risk limit of 0.25 and follow the job's own in
/// proportion. With a borrowed curve most of the luck goes with the mixture, since its scatter is one between liquids
/// on one resin: 0.8, our choice.
NextTestSettings settings_within(double risk_limit, bool has_borrowed_curve);

/// A kept layer or passage with what is believed of it.
struct KeptBelief {
  std::string name;
  LayerBelief belief;
  /// From this level of a reading on the layer is harmed. By the rules of conduct any reaction is harm, also one that
  /// the plan's risk does not count since the material bears it.
  int risk_level = 1;
};

/// What is believed now, and what it rests on.
struct NextTestTask {
  std::optional<LayerBelief> target;  ///< nothing where its sphere is not known: then no test can be chosen
  std::vector<KeptBelief> kept;
  std::vector<PastTest> past;
  NextTestSettings settings;
};

/// What a mixture is believed to do now.
struct CandidateOutlook {
  Hansen point;
  double effect = 0;  ///< chance that it moves the layer to remove
  double risk = 0;    ///< largest chance that something to keep reacts in any way
  double good = 0;    ///< chance that it moves that layer and leaves all there is to keep as it was
  std::string riskiest;
  bool counts_tests = false;  ///< the figures count what mixtures did that share its luck, not the spheres alone
};

/// What the next swab with a mixture is believed to do, on the picture or at the edge: the one answer that the choice,
/// report and sheet print. By the spheres, and as far as its luck is that of mixtures tested before, by what those did:
/// what did nothing bounds the luck of its neighbours from one side, what moved or harmed from the other. A reading is
/// trusted as far as it does not slip. Where readings contradict each other the nearest counts, of
/// equally near ones the careful one, and a harm always. `touched`: names of the kept layers that the swab touches;
/// empty: all of them. Precondition: the task has a target.
CandidateOutlook outlook_of(const NextTestTask& task, const SwabMixture& mixture, bool at_edge = false,
                            const std::vector<std::string>& touched = {});

/// Takes a test in: the beliefs learn what it says, as far as what its luck shares with tests before it does not say
/// so already, and it stands in `past`. Where the picture refutes the edge, the layers to keep are learnt anew without
/// what passed there.
void take_in(NextTestTask& task, const PastTest& test);

/// How far two mixtures share their luck, 0..1: exp(-Ra / reach) times the part of their bottles that both hold
/// (a bottle counts wholly from a twentieth of the volume on). 1 of the same mixture.
double shared_luck(const SwabMixture& a, const SwabMixture& b, double reach);

/// How badly the readings of all layers fit, in standard deviations; 0 before any reading.
double surprise_of(const NextTestTask& task);

}  // namespace gentlest
