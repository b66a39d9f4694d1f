// The swab teaches: readings narrow what is known of a layer's sphere.
// Each layer has its own cloud of particles (possible spheres). A removal reading speaks of the layer to remove only, a
// reading of the original of the kept layer under the swab only, so with independent priors the clouds stay
// independent. Deterministic: own random numbers, the seed is an input. Knows nothing of mixtures, passages or files.
#pragma once

#include "gentlest/learning/reading.hpp"
#include "gentlest/space/hansen.hpp"
#include "gentlest/space/reach.hpp"
#include "gentlest/space/response.hpp"

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// Levels of a reading, for both kinds: 0 nothing ... 4 strongest (RemovalReading, OriginalReading as numbers).
inline constexpr int reading_levels = 5;
using LevelChances = std::array<double, reading_levels>;

/// How strongly a swab acts at a given RED: chance of each level, tabulated over RED from 0 to 6 (linear between nodes
/// 1/128 apart; beyond 6 as at 6).
class ReadingCurve {
 public:
  /// `at_least(RED)[k]` is the chance of level k or stronger, 1 for k = 0, not rising with RED or with k.
  explicit ReadingCurve(const std::function<LevelChances(double RED)>& at_least);

  /// Chance of `level` (0..4) or stronger; 1 for level 0.
  double at_least(int level, double RED) const;
  /// Chances of the five levels; they add up to 1.
  LevelChances chances(double RED) const;
  /// Chances of `level` or stronger at RED = i / nodes_per_unit, for sums over many particles.
  const std::vector<float>& table(int level) const { return tables_[static_cast<std::size_t>(level - 1)]; }

  static constexpr int nodes_per_unit = 128;
  static constexpr int largest_RED = 6;

 private:
  std::array<std::vector<float>, reading_levels - 1> tables_;
};

/// The response curve of the catalogue, read as levels of a swab: level 4 as "dissolves", 3 as "dissolves nearly" or
/// better, 2 from "swells strongly", 1 from "swells" on. Borrowed: a swab acts more shortly; the readings then shift
/// R0, which is all that a change of strength can do to a curve in ln RED. Response::strongest is left out: it says
/// what the grade of a long test is called, while the eye reads levels, and what looks like the strongest on a film
/// that only swells still speaks of where it swells.
ReadingCurve borrowed_curve(const Response& response);

/// The same for a layer that may be of several materials: the mean of their chances, each as far as it is believed. One
/// belief has one curve.
struct WeighedResponse {
  Response response;
  double weight = 1;  ///< positive; weights need not add up to 1
};
ReadingCurve borrowed_curve(const std::vector<WeighedResponse>& responses);

/// The level that a grade limit of the job means: grade 2 ("dissolves nearly") is level 3 ("mostly"), grade 4 is 1.
int level_of_grade(int grade);

/// One idea of what a layer may be.
struct SphereHypothesis {
  UncertainSphere sphere;
  double weight = 1;  ///< positive; weights need not add up to 1
  std::string what;   ///< e.g. "aged dammar, as recorded"
  LocalReach reach = {};
  bool operator==(const SphereHypothesis&) const = default;
};

/// Share of "not as published" for a layer to keep: more than for the one to remove, since there it costs the original
/// when the figures were wrong. Our choice, by the study.
inline constexpr double kept_stray_share = 0.25;

/// What is held of a layer before any swab: candidate materials, and a share for "none of these, or not as published":
/// the same centres with standard deviations `stray_factor` times as wide, or wider. Covariances grow with the square
/// of that factor; where a deviation is raised to its floor they stay.
struct LayerPrior {
  std::vector<SphereHypothesis> hypotheses;  ///< at least one
  double stray_share = 0.08;                 ///< 0..1; the default is our choice, see docs/study.md
  double stray_factor = 2.0;
  /// Stray spheres spread at least so far, MPa^0.5: as resins of one family lie apart (docs/calibration.md, "assumed").
  Hansen stray_sd = {1.0, 1.6, 1.4};
  double stray_R0_sd = 1.9;
  /// Standard deviation of ln(R0 that acts at the edge / R0): the same paint under a frame saw less light. Our choice.
  double edge_spread = 0.10;
  bool operator==(const LayerPrior&) const = default;
};

/// How far a reading can be trusted, and what contact time does. Our choices, see docs/science.md, "Learning".
struct ReadingNoise {
  double slip = 0.06;  ///< chance that a reading of medium confidence is not the level that was there
  double slip_low_confidence = 0.12;
  double slip_high_confidence = 0.02;
  double reference_seconds = 20;  ///< contact time that the curve stands for
  double time_exponent = 0.05;    ///< R0 acts larger by (seconds / reference)^exponent
  bool operator==(const ReadingNoise&) const = default;
};

/// Luck that a mixture has in common with one tested before on the same layer.
struct SharedLuck {
  std::size_t test = 0;  ///< position in LayerBelief::seen
  double share = 0;      ///< 0..1
  bool operator==(const SharedLuck&) const = default;
};

/// What one reading says of one layer.
struct Evidence {
  Hansen point;              ///< of the mixture, MPa^0.5
  LevelChances match{};      ///< chance of this very reading for each level that may truly have been there
  double radius_factor = 1;  ///< R0 acts larger by this
  bool at_edge = false;      ///< speaks of the layer as it is at the edge
  bool is_harm = false;      ///< the original reacted: never a surprise, which would sound as if it were in doubt
  /// With which tests before it the mixture shares its luck, the largest share first. What they did already is then
  /// told again only as far as it is not shared.
  std::vector<SharedLuck> shared = {};
  bool operator==(const Evidence&) const = default;
};

/// Evidence of a level read, with the given chance of a slip: seven slips in ten go to a neighbouring level.
LevelChances match_of_level(int level, double slip);

/// The same for a reading of the original: eight slips in ten overlook harm altogether, or see a slight one where there
/// is none.
LevelChances match_of_original(int level, double slip);

/// What a reading says of the layer to remove, or of the original under the swab (by level_on_original); empty when it
/// says nothing.
std::optional<Evidence> evidence_on_removal(const Reading& reading, const Hansen& point, const ReadingNoise& noise);
std::optional<Evidence> evidence_on_original(const Reading& reading, const Hansen& point, const ReadingNoise& noise);

/// Level of the original in a reading, on its side: colour of its own, or one that nobody identified, counts as the
/// strongest whatever else was seen; colour that was varnish or dirt is 0. Nothing where nobody looked, and where it
/// was retouching, which says nothing of the layer below.
std::optional<int> level_on_original(const Reading& reading);

struct LearningSettings {
  std::size_t particles = 8000;
  std::uint64_t seed = 1;
  double least_effective_share = 0.5;  ///< below this effective share the particles are drawn again and moved
  int moves = 6;                       ///< Metropolis steps after each drawing
};

/// A figure with its middle 90 %.
struct Estimate {
  double mean = 0, low = 0, high = 0;
  bool operator==(const Estimate&) const = default;
};

/// How much less likely the readings were than readings usually are: sum of (-ln chance of the reading, less its
/// expected value), and the variance of that sum. excess / sqrt(variance) is near 0 while the prior is right.
struct Surprise {
  double excess = 0, variance = 0;
  double in_deviations() const;  ///< 0 where nothing was read
  bool operator==(const Surprise&) const = default;
};

/// Possible spheres with their weights, coordinate by coordinate: centre in the scaled space (2 dD, dP, dH), 1/R0, and
/// 1/R0 as it acts at the edge.
struct ParticleCloud {
  std::vector<float> x, y, z, inverse_R0, inverse_R0_edge;
  std::vector<float> weight;  ///< adds up to 1
  std::size_t size() const { return x.size(); }
};

/// A layer as far as it is known now.
class LayerBelief {
 public:
  LayerBelief(LayerPrior prior, ReadingCurve curve, LearningSettings settings = {});

  /// Takes one more piece of evidence in. Strong evidence is taken in by stages and the particles are drawn again and
  /// moved between them, so that they never collapse on a few spheres.
  void learn(const Evidence& evidence);

  const LayerPrior& prior() const noexcept { return prior_; }
  const ReadingCurve& curve() const noexcept { return curve_; }
  /// The same layer before any reading.
  LayerBelief before() const { return LayerBelief(prior_, curve_, settings_); }
  /// As taken in: `radius_factor` with that of the point's place (radius_factor_at).
  const std::vector<Evidence>& seen() const noexcept { return seen_; }

  /// By how much R0 acts larger at this point (LocalReach), in all that follows: of several hypotheses the mean of the
  /// logarithms, each as far as it was believed before any reading. A particle does not know its hypothesis.
  double radius_factor_at(const Hansen& point) const;

  /// Chance that a swab with this mixture does `level` (1..4) or more, averaged over the particles.
  double chance(const Hansen& point, int level) const;

  /// The chance again, with the 90 % interval over what is not known of the sphere; and RED.
  Estimate chance_estimate(const Hansen& point, int level) const;
  Estimate RED_estimate(const Hansen& point) const;
  Estimate dD() const;
  Estimate dP() const;
  Estimate dH() const;
  Estimate R0() const;

  /// Effective number of particles, (sum w)^2 / sum w^2.
  double effective_particles() const;

  /// How likely each hypothesis is now, and "none of these or not as published"; they add up to 1.
  std::vector<double> hypothesis_chances() const;
  /// How likely each reading was, in the light of the prior and the readings before it.
  const std::vector<double>& predicted() const noexcept { return predicted_; }
  /// Of each reading. One of a harm surprises nobody: 0 and 0.
  const std::vector<Surprise>& surprises() const noexcept { return surprises_; }
  /// Of all readings together.
  Surprise surprise() const;
  const ParticleCloud& particles() const noexcept { return cloud_; }

 private:
  LevelChances chances_of(std::size_t test, const std::array<double, 3>& centre, double inverse_R0,
                          double inverse_R0_edge) const;
  std::vector<float> log_chances_of(std::size_t test) const;
  void note_surprise();
  void take_in(double share);

  LayerPrior prior_;
  ReadingCurve curve_;
  LearningSettings settings_;
  std::vector<Evidence> seen_;
  std::vector<std::vector<float>>
      log_match_;  // for each piece of evidence, ln chance over RED as in the curve's tables
  std::vector<double> predicted_;
  std::vector<Surprise> surprises_;
  ParticleCloud cloud_;
};

/// How far the readings narrowed a figure.
enum class Narrowing { learnt, little, open };

/// One figure of a layer's sphere: what it is now, MPa^0.5, and how wide its middle 90 % is against that of the prior.
struct LearntFigure {
  Estimate now;
  double width_left = 1;
  Narrowing narrowing = Narrowing::open;
};

/// A material that the layer may be.
struct HypothesisChance {
  std::string what;  ///< SphereHypothesis::what
  double chance = 0;
};

/// So many standard deviations less likely than readings usually are: what was held before fits badly.
inline constexpr double surprising_deviations = 2;

/// A test whose reading was hardly to be expected (surprising_deviations). Never one of a harm.
struct SurprisingTest {
  int test = 0;
  double chance = 0;  ///< of that reading, as held before it
};

/// What was learnt of a layer and what is still open.
struct LearntOfLayer {
  std::string layer;
  bool is_tested = false;  ///< false: no test has spoken of it yet, and nothing below is filled in
  LearntFigure dD, dP, dH, R0;
  std::vector<HypothesisChance> hypotheses;  ///< in the order of the prior; empty where it holds one only
  double stray_chance = 0;                   ///< that it is none of these, or not as published
  bool is_stray = false;  ///< that is the likelier: the tests do not fit what the layer was taken for
  std::vector<SurprisingTest> surprising;
  double effective_particles = 0;
  std::size_t particles = 0;
};

/// `tests`: the number of the test behind each piece of evidence seen.
LearntOfLayer learnt_of(const LayerBelief& belief, const std::string& layer, const std::vector<int>& tests);

}  // namespace gentlest
