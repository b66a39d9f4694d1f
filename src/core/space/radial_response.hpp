// The response curve as a function of the distance alone: averaged over the radius that is only roughly known.
// Internal to core; what remains for chance.cpp is the average over the centre.
#pragma once

#include "gentlest/space/hansen.hpp"
#include "gentlest/space/response.hpp"

#include <vector>

namespace gentlest {

class RadialResponse {
 public:
  /// Tabulates the chance of `grade` or stronger from distance 0 to `farthest`, every `spacing` (both MPa^0.5).
  RadialResponse(const UncertainSphere& sphere, const Response& response, int grade, double farthest, double spacing);

  /// The same averaged over a Gaussian of standard deviation `blur` (MPa^0.5, above 0) along each axis of the scaled
  /// space: a ball so blurred is still a function of the distance alone. Tabulated anew, every `blur` / 25.
  RadialResponse blurred(double blur) const;

  /// Chance at a distance; cubic interpolation, the last value beyond the table.
  double operator()(double distance) const;

  /// Standard deviation, in MPa^0.5, of the Gaussian step that is as steep as this curve at its steepest.
  double width() const { return width_; }

 private:
  RadialResponse() = default;

  double inverse_spacing_ = 1;
  double width_ = 1;
  std::vector<double> values_;  // values_[i] belongs to distance (i - 1) * spacing: one node of padding on each side
};

}  // namespace gentlest
