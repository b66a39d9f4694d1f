// Our static ladder on a simulated painting's prior: what `gentlest ladder` prints, with the study's own response.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include "study/session.hpp"

namespace gentlest::study {

/// A response whose chance of `grade` or stronger is that of the curve's matching level (grade 1 is level 4), by
/// putting it all into one stage that meets the curve where it is at 20 % and 80 %. Other grades mean nothing.
Response response_like(const ReadingCurve& curve, int grade);

/// The rungs of design_ladder on three bottles of the allowed shelf: 7 rungs, risk up to 0.10.
std::vector<StudyMixture> static_ladder(const Bench& bench, const World& world, const Catalogue& catalogue);

}  // namespace gentlest::study
