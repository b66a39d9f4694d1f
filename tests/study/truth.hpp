// Simulated paintings for docs/study.md: truths that whoever tests does not see, and what swabs do and read there.
// Nothing here shows that Hansen spheres describe the removal of a varnish; ways of testing are compared.
#pragma once

#include "gentlest/learning/outlook.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace gentlest::study {

/// What is true of all paintings of a row. Without any mark: the model's own truth, the very prior of a job's beliefs
/// with its share of strays, its curve, its share of luck. Every figure here is assumed.
struct Truth {
  std::string name;
  bool as_recorded = false;      ///< no layer is a stray: spheres as the record says
  bool by_probit = false;        ///< chances by a normal law in RED, not a logistic one in ln RED; the same medians
  bool is_ellipsoid = false;     ///< reach differs by the axis, ln-normal with 0.25
  bool has_two_regions = false;  ///< half of the picture is another paint: centre off by 1.5, ln R0 by 0.15; the edge
                                 ///< is like the first half
  bool is_patchy = false;        ///< the varnish's ln R0 differs by 0.12 from spot to spot
  bool overlooks = false;        ///< three in ten slight changes of the original are read as "nothing seen"
  bool varies_contact = false;   ///< 5 to 60 s, noted; acts by (seconds / 20)^0.1, twice the exponent that is assumed
  bool has_no_window = false;    ///< whatever moves the varnish harms the paint
  bool is_young_paint = false;   ///< the paint is young where the record says old
  bool has_fresh_luck = false;   ///< luck belongs to each swab, nothing of it to the mixture
  bool has_own_luck = false;     ///< luck belongs to the mixture, neighbours share none
};

/// The plain truth first, then one broken in each way.
std::vector<Truth> all_truths();

/// What a row is played on: beliefs as a job begins with them, and how swabs act.
struct Ground {
  NextTestTask start;     ///< beliefs before any swab, settings, no tests; one kept layer
  UncertainSphere young;  ///< what the paint is where it is young
  ReadingCurve removal;   ///< how swabs act, known to the beliefs
  ReadingCurve harm;
  std::size_t paintings = 300;
};

/// The study's sharp curves: levels at RED 1.12, 1.045, 0.97, 0.90 for removal and 1.00, 0.93, 0.86, 0.80 for harm,
/// each a logistic of width 0.05. Assumed.
ReadingCurve sharp_removal();
ReadingCurve sharp_harm();

/// Luck over Hansen space: evenly between 0 and 1, smooth over 3 MPa^0.5, half of it common to all bottles, half that
/// of the set of bottles alone.
class LuckField {
 public:
  LuckField(std::uint64_t seed, bool is_rough);
  double of(const SwabMixture& mixture) const;

 private:
  std::uint64_t seed_;
  bool is_rough_;  ///< every mixture its own
};

struct TrueLayer {
  std::array<double, 3> centre{};  ///< scaled: 2 dD, dP, dH
  double R0 = 1, R0_edge = 1;
};

struct Painting {
  TrueLayer varnish, paint, second_paint;
  std::array<double, 3> stretch = {1, 1, 1};  ///< of distances along each axis
  std::uint64_t seed = 0;
};

std::vector<Painting> make_paintings(const Truth& truth, const Ground& ground, std::uint64_t seed);

/// What really happened under a swab, and what was read.
struct SwabOutcome {
  int removal = 0, harm = 0;
  int removal_read = 0, harm_read = 0;
  double seconds = 20;
};
/// `spot`: number of the swab on this painting; the same call has the same outcome, whoever asks.
SwabOutcome swab(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture,
                 bool at_edge, std::size_t spot);

/// True chances of a mixture on the picture at 20 s, its luck known: over spots and what luck is the swab's own. Of two
/// regions the worse counts.
double true_effect(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture);
double true_risk(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture);

/// Moves the varnish with a chance of at least 0.6, harms the paint with one of at most 0.27.
bool is_truly_good(const Truth& truth, const Ground& ground, const Painting& painting, const SwabMixture& mixture);

}  // namespace gentlest::study
