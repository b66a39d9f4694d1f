// Where the response curve and the default spreads come from: published solubility grades of film formers in
// pure solvents, spheres fitted to them, and a test of both on solvents and film formers they were not fitted to.
// Everything is deterministic. Reading the sets is the business of io/, printing the figures that of cli/.
#pragma once

#include "gentlest/space/hansen.hpp"
#include "gentlest/space/response.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// What one solvent did to one film former. Grade 1 "dissolves" ... 6 "nothing seen"; grade 1 counts as good.
struct Score {
  std::string solvent;
  Hansen hansen;  ///< of the solvent, MPa^0.5
  int grade = 0;
  bool operator==(const Score&) const = default;
};

/// All grades of one film former, and the sphere published for it.
struct ScoreSet {
  std::string code;
  std::string stem;  ///< of its file
  std::string material;
  std::string family;  ///< of resins that stand in for one another in the catalogue, e.g. "alkyd"; may be empty
  std::vector<Score> scores;
  std::optional<Sphere> published;
  std::string left_out;  ///< why it takes no part in the calibration; empty when it does
  bool operator==(const ScoreSet&) const = default;
};

/// How well a sphere sorts the solvents of a set into good and bad.
struct SphereQuality {
  int misplaced = 0;    ///< good solvents outside or bad ones inside
  double data_fit = 0;  ///< exp(-(sum of |Ra - R0| over the misplaced) / number of solvents), 0..1, 1 = none misplaced
  bool operator==(const SphereQuality&) const = default;
};
/// A solvent within this distance of the surface counts as well placed: a fitted sphere touches several solvents, and
/// the last digit of the arithmetic must not decide.
inline constexpr double touching = 1e-4;  // MPa^0.5
SphereQuality judge_sphere(const std::vector<Score>& scores, const Sphere& sphere);

/// Limits of the sphere fit, MPa^0.5: beyond them no solvent lies that could hold a sphere in place.
inline constexpr double largest_fitted_R0 = 30;
inline constexpr double furthest_fitted_centre = 30;

/// Why centre and radius of a fit are not pinned down.
enum class FitDoubt {
  few_bad_solvents,  ///< fewer than 10 fail to dissolve it
  radius_runs_away,
  larger_fits,  ///< a sphere more than 40 % larger fits almost as well
  liquids_alike_in_dD,
  liquids_alike_in_dP,
  liquids_alike_in_dH
};

/// A fitted sphere and whether the solvents hold it in place.
struct SphereFit {
  Sphere sphere;
  SphereQuality quality;
  double R0_low =
      0;  ///< smallest and largest radius (of a ladder of 5 % steps from half to twice R0) at which a sphere
  double R0_high = 0;  ///< with the centre fitted anew has a data fit within 0.01 of the best
  int bad_solvents = 0;
  std::vector<FitDoubt> doubts;  ///< empty: bracketed
};

/// Sphere of the largest data fit. For a given centre the best radius is found exactly (the loss is convex and
/// piecewise linear in the radius; among equally good radii the middle one); the centre by Nelder-Mead from a fixed set
/// of starts. Spheres that fit equally well are told apart by the smaller radius (0.001 MPa^0.5 of misplacement a
/// unit). Source of the data fit: Hansen 2007, chapter 1 (from memory). Throws std::invalid_argument without a good
/// solvent.
SphereFit fit_sphere(const std::vector<Score>& scores);

/// The same without the check of the bracket, which takes most of the time.
Sphere fit_sphere_only(const std::vector<Score>& scores);

/// A grade seen at a RED (> 0).
struct GradedRED {
  double RED = 0;
  int grade = 0;
  bool operator==(const GradedRED&) const = default;
};

/// Most likely figures of a plain logistic regression P(yes) = 1 / (1 + exp(-(intercept + slope x))), by Newton's
/// method with halved steps where the likelihood would fall. A slope that would come out positive is set to 0. Where
/// yes and no do not overlap the slope has no finite best value; it is then stopped at 60 and reported as it stands.
Response::Stage fit_logistic(const std::vector<double>& x, const std::vector<bool>& yes);

/// The five stages of the response curve, each fitted to the cases that reach it, on ln RED.
Response fit_response(const std::vector<GradedRED>& seen);

/// How grades fall in one band of RED.
struct BandShares {
  double from = 0, to = 0;
  int count = 0;
  double dissolved = 0;  ///< share of grade 1
  double swollen = 0;    ///< share of grades 2 to 5
  double untouched = 0;  ///< share of grade 6
  bool operator==(const BandShares&) const = default;
};
std::vector<BandShares> shares_by_band(const std::vector<GradedRED>& seen);

/// Scores of a prediction on cases it was not fitted to, beside those of the plain shares that ignore RED.
struct CurveScore {
  double log_score = 0, log_score_of_shares = 0;  ///< mean of -ln P(grade seen); smaller is better
  double brier_2 = 0, brier_2_of_shares = 0;      ///< mean (P(grade <= 2) - seen)^2
  double brier_4 = 0, brier_4_of_shares = 0;      ///< mean (P(grade <= 4) - seen)^2
  double right_grade = 0, right_grade_guess = 0;  ///< share of cases whose likeliest grade was seen; of the majority's
  double right_dissolves = 0;                     ///< share right on "dissolves" where called at a chance of one half
  double right_inside = 0;                        ///< share right on "dissolves" where called at RED < 1
  double right_guess = 0;                         ///< share right by each film former's own majority answer
};

/// Figures of one set.
struct SetFigures {
  std::string code, material;
  Sphere published;
  SphereQuality quality;  ///< of the published sphere
  int rank = 0;           ///< of the published sphere by data fit among all published spheres on this set; 1 = best
  SphereFit refit;
};

/// Two determinations of what is taken for the same sphere, and the solvents they sort.
struct SpherePair {
  Sphere first;
  Sphere second;
  std::vector<Hansen> solvents;
};

/// How far the two of a pair lie apart, MPa^0.5.
struct SphereScatter {
  int pairs = 0;
  Hansen centre;        ///< root mean square difference of each coordinate
  double R0 = 0;        ///< of the radius
  double boundary = 0;  ///< of Ra - R0, over the solvents at a RED from 0.5 to 1.5 of the first: what a choice rests on
};

/// Differences of a coordinate or radius above `cap` count as `cap`; the boundary is not capped.
SphereScatter scatter_of(const std::vector<SpherePair>& pairs, double cap);

/// Independent standard deviations in the proportions of `shape` that move the boundary by `boundary`, root mean square
/// over the solvents of the pairs at a RED from 0.5 to 1.5. Needed because centre and radius of a fit slide together:
/// differences of coordinates taken as independent would move the boundary much too far.
SphereScatter independent_spread(const std::vector<SpherePair>& pairs, const SphereScatter& shape, double boundary);

/// The spheres that share a default spread.
enum class SpreadGroup {
  held,  ///< in place by their solvents, of which fewer than weak_from_misplaced are misplaced
  weak,  ///< held, but so many or more are misplaced
  open,  ///< not held
  all,
  kin  ///< one resin for another of its family
};

/// Differences and default spread of one group.
struct SpreadRow {
  SpreadGroup group = SpreadGroup::all;
  SphereScatter seen;
  SphereScatter spread;  ///< as independent standard deviations
};

/// Everything `gentlest calibrate` prints.
struct Calibration {
  std::vector<SetFigures> sets;
  std::vector<BandShares> in_sample;        ///< by the published spheres
  std::vector<BandShares> cross_validated;  ///< every solvent by a sphere fitted without it
  Response response;                        ///< fitted to the cross-validated REDs of all sets
  CurveScore left_out_score;                ///< each film former by a curve fitted to the others
  std::vector<SpreadRow> spreads;
};

inline constexpr int weak_from_misplaced = 14;
inline constexpr int fold_count = 8;
inline constexpr double scatter_cap = 6;  ///< MPa^0.5, for coordinates where a refit runs away

/// Default spreads: published sphere against refit for sets held in place by their solvents, for weak ones (14 or more
/// misplaced), for those not held, for all; and each published sphere against the others of its family, whose
/// standard deviation (the difference of two members over sqrt 2) is taken for the error of a stand-in. All have the
/// proportions of the differences over all sets.
std::vector<SpreadRow> default_spreads(const std::vector<ScoreSet>& sets, const std::vector<SetFigures>& figures);

/// Grades of a set at REDs out of sample: solvent i belongs to fold i mod 8 and is measured by a sphere fitted to the
/// other seven folds.
std::vector<GradedRED> held_out_REDs(const ScoreSet& set);

/// All figures, from the sets that are not left out and have a published sphere. Takes some seconds.
Calibration calibrate(const std::vector<ScoreSet>& sets);

}  // namespace gentlest
