// Points and spheres of Hansen space, and the triangle view that many conservators know.
// All parameters in MPa^0.5. Nothing here knows about solvents or layers by name.
#pragma once

#include <array>

namespace gentlest {

/// Hansen parameters of a liquid, or the centre of a sphere, in MPa^0.5.
struct Hansen {
  double dD = 0;  ///< dispersion
  double dP = 0;  ///< polar
  double dH = 0;  ///< hydrogen bonding
  bool operator==(const Hansen&) const = default;
};

/// Total (Hildebrand) parameter sqrt(dD^2 + dP^2 + dH^2), MPa^0.5.
double total(const Hansen& point);

/// Hansen distance Ra, MPa^0.5: Ra^2 = 4 (dD1-dD2)^2 + (dP1-dP2)^2 + (dH1-dH2)^2.
/// A metric: symmetric, zero only between equal points, triangle inequality holds.
/// Source: Hansen 2007, chapter 1 (formula also in the open reference tables; docs/science.md, "Distance").
double distance_Ra(const Hansen& a, const Hansen& b);

/// The same point in the space where Ra is the plain Euclidean distance: (2 dD, dP, dH), MPa^0.5.
std::array<double, 3> scaled(const Hansen& point);

/// A material's range: liquids nearer to the centre than R0 tend to dissolve it.
struct Sphere {
  Hansen centre;
  double R0 = 0;  ///< MPa^0.5, positive
  bool operator==(const Sphere&) const = default;
};

/// RED = Ra / R0, no unit. Below 1 the liquid lies inside the sphere; 1 is the middle of a band, not a wall.
double relative_distance_RED(const Hansen& liquid, const Sphere& sphere);

/// Covariances of the figures of a sphere with each other, MPa (MPa^0.5 squared). All 0: the figures are independent.
struct SphereCovariance {
  double dD_dP = 0;
  double dD_dH = 0;
  double dP_dH = 0;
  double dD_R0 = 0;
  double dP_R0 = 0;
  double dH_R0 = 0;
  bool operator==(const SphereCovariance&) const = default;
};

/// A sphere as far as it is known: Gaussian centre and radius (the radius truncated at 0).
struct UncertainSphere {
  Sphere mean;
  Hansen sd;                     ///< standard deviation of each centre coordinate, MPa^0.5, not negative
  double R0_sd = 0;              ///< standard deviation of the radius, MPa^0.5, not negative
  SphereCovariance shared = {};  ///< with the deviations a positive semi-definite matrix
  bool operator==(const UncertainSphere&) const = default;
};

/// True when the figures can stand together: radius above 0, no deviation negative, and deviations and covariances a
/// matrix without a negative eigenvalue (to within 1e-6 of the largest, for figures that were rounded when printed).
bool is_possible(const UncertainSphere& sphere);

/// The sphere as a liquid meets it whose own parameters are only known to within `liquid_sd`: what counts is the
/// difference of centre and liquid, so independent variances add up per coordinate, exactly; covariances stay.
UncertainSphere seen_from(const UncertainSphere& sphere, const Hansen& liquid_sd);

/// Teas fractional parameters, per cent; they add up to 100.
struct Teas {
  double fd = 0;
  double fp = 0;
  double fh = 0;
  bool operator==(const Teas&) const = default;
};

/// Teas fractions of a Hansen point: each parameter's share of dD + dP + dH, per cent.
/// Negative parameters (some published centres have one) count as 0. The published Teas table moved several liquids by
/// hand, so it differs from this by up to 12; decisions rest on Ra, the triangle is a view only.
/// Source: Teas 1968; Burke 1984 (docs/science.md, "Teas view"). Precondition: at least one parameter is positive.
Teas teas_fractions(const Hansen& point);

}  // namespace gentlest
