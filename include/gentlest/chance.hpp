// Layer 4. How likely a liquid acts on a layer whose sphere is only roughly known.
// The slow functions are the reference; ChanceField is what a search uses, its error against them is tested.
#pragma once

#include "gentlest/hansen.hpp"
#include "gentlest/response.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace gentlest {

/// Chance that the true centre lies nearer to the liquid than `radius` (MPa^0.5, not negative), the centre being
/// Gaussian around `centre` with standard deviations `sd`: the distribution function of a weighted sum of three
/// noncentral chi-squares with one degree of freedom each. Absolute error below 1e-10 for sd from 0.001 to 10.
/// Source of the form: Imhof 1961, Biometrika 48, 419; computed here by quadrature over the ball, see docs/science.md.
double chance_nearer_than(const Hansen& liquid, const Hansen& centre, const Hansen& sd, double radius);

/// Chance that the liquid acts as strongly as `grade` (1..6) or stronger: the response curve averaged over the
/// uncertain sphere. The reference; takes milliseconds. Absolute error below 1e-8.
double chance_of_grade(const Hansen& liquid, const UncertainSphere& sphere, const Response& response, int grade);

/// Middle 90 % of RED over what is not known of the sphere, from a fixed grid of equally likely spheres (no random
/// numbers). Good to about 0.02 in RED, which is finer than any sphere is known.
struct Band {
  double low = 0;
  double high = 0;
  bool operator==(const Band&) const = default;
};
Band RED_band(const Hansen& liquid, const UncertainSphere& sphere);

/// A box of Hansen space.
struct HansenBox {
  Hansen low;
  Hansen high;
};

/// chance_of_grade tabulated over a box, for looking up millions of mixtures. Reads nothing outside the box: a mixture
/// of liquids that lie in the box lies in it too. Differs from the reference by less than 1e-4
/// (tests/unit/test_chance).
class ChanceField {
 public:
  ChanceField(const HansenBox& box, const UncertainSphere& sphere, const Response& response, int grade);

  /// Chance at a point of the box; tricubic interpolation, clamped to 0..1.
  double operator()(const Hansen& point) const;

 private:
  std::array<double, 3> origin_{};  // scaled coordinates of node (0, 0, 0)
  std::array<double, 3> inverse_step_{};
  std::array<std::size_t, 3> nodes_{};
  std::vector<double> values_;  // [D][P][H], H fastest
};

}  // namespace gentlest
