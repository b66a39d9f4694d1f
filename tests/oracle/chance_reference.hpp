// The chance by another way than the program's tables: slow, without interpolation, checked against published tables
// of the distribution behind it (tests/published/test_chance_tables.cpp).
#pragma once

#include "gentlest/space/chance.hpp"

namespace gentlest::test {

/// Chance that the true centre lies nearer to the liquid than `radius` (MPa^0.5, not negative), the centre being
/// Gaussian around `centre` with standard deviations `sd`: the distribution function of a weighted sum of three
/// noncentral chi-squares with one degree of freedom each. Absolute error below 1e-10 for sd from 0.001 to 10.
/// Source of the form: Imhof 1961, Biometrika 48, 419; computed by quadrature over the ball, see docs/science.md.
double chance_nearer_than(const Hansen& liquid, const Hansen& centre, const Hansen& sd, double radius);

/// Chance that the liquid acts as strongly as `grade` (1..6) or stronger: the response curve averaged over the
/// uncertain sphere. Takes milliseconds. Absolute error below 1e-8.
double chance_of_grade(const Hansen& liquid, const UncertainSphere& sphere, const Response& response, int grade);

/// The same for a sphere with covariances, and for one that is bent in places: the plain sum over R0 and then over the
/// centre given R0, in the coordinates of a triangle L with L L^T = the covariance matrix; no eigenvalues, no blur, no
/// interpolation but in RED. Takes some hundredths of a second. Absolute error below 1e-6 where no deviation is more
/// than about three times the width of the curve.
double chance_by_sums(const Hansen& liquid, const FieldSubject& subject);

}  // namespace gentlest::test
