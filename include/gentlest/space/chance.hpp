// How likely a liquid acts on a layer whose sphere is only roughly known.
// ChanceField is what a search uses; its error against a slow reference is tested (tests/oracle).
#pragma once

#include "gentlest/space/hansen.hpp"
#include "gentlest/space/reach.hpp"
#include "gentlest/space/response.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace gentlest {

/// Middle 90 % of RED over what is not known of the sphere, from 8191 equally likely spheres on a fixed lattice (no
/// random numbers). The two ends lie at shares of 0.05 and 0.95 to within 0.003 (tested against noncentral
/// chi-squares).
struct Band {
  double low = 0;
  double high = 0;
  bool operator==(const Band&) const = default;
};
/// Covariances enter by the lower triangle L with L L^T = the covariance matrix; the reach at the liquid's point scales
/// every radius alike. Precondition: is_possible(sphere).
Band RED_band(const Hansen& liquid, const UncertainSphere& sphere, const LocalReach& reach = {});

/// True when RED = 1 lies in the band as it is printed, to two decimals: whether the mixture is inside or outside is
/// open.
bool holds_the_border(const Band& band);

/// A box of Hansen space.
struct HansenBox {
  Hansen low;
  Hansen high;
  bool operator==(const HansenBox&) const = default;
};

/// Where the nodes of a table lie, in the scaled space (2 dD, dP, dH).
struct FieldLattice {
  std::array<double, 3> origin{};  ///< of node (0, 0, 0)
  std::array<double, 3> step{};
  std::array<double, 3> inverse_step{};
  std::array<std::size_t, 3> nodes{};  ///< at least 4 along each axis
  bool operator==(const FieldLattice&) const = default;
};

/// A point as a table sees it: the first of the 4 x 4 x 4 nodes around it and their weights along each axis.
struct FieldPlace {
  std::array<std::size_t, 3> first{};
  std::array<std::array<double, 4>, 3> weight{};
};
FieldPlace place_on(const FieldLattice& lattice, const Hansen& point);

/// What one table is of: the chance of `grade` or stronger on one layer.
struct FieldSubject {
  UncertainSphere sphere;
  Response response;
  int grade = 1;
  LocalReach reach = {};
  bool operator==(const FieldSubject&) const = default;
};

/// Chance that a liquid acts as strongly as `grade` (1..6) or stronger: the response curve averaged over the uncertain
/// sphere, tabulated over a box, for looking up millions of mixtures. Reads nothing outside the box: a mixture
/// of liquids that lie in the box lies in it too. Differs from the reference by less than 1e-4, for spheres so sharp
/// that the table would grow without bound by less than 4e-3 where the centre is known no better than `best_known_sd`
/// (tests/unit/test_chance). A table takes at most 50 MB and some seconds, whatever the sphere. How a sphere with
/// covariances or with places where it is bent is averaged: core/space/joint_chance.hpp; such a table takes some tenths
/// of a second for the liquids of a usual shelf.
class ChanceField {
 public:
  ChanceField(const HansenBox& box, const UncertainSphere& sphere, const Response& response, int grade);

  /// Chance at a point of the box; tricubic interpolation, clamped to 0..1.
  double operator()(const Hansen& point) const { return at(place_on(lattice_, point)); }

  /// The same at a place found before on a table with the same lattice; the same bits.
  double at(const FieldPlace& place) const;

  /// RED of a point to the middle of the range that the table is of.
  double RED(const Hansen& point) const { return relative_distance_RED(point, sphere_, reach_); }

  const FieldLattice& lattice() const noexcept { return lattice_; }
  const std::vector<double>& values() const noexcept { return values_; }  ///< [D][P][H], H fastest

 private:
  friend std::vector<ChanceField> chance_fields(const HansenBox& box, const std::vector<FieldSubject>& subjects);
  ChanceField() = default;

  FieldLattice lattice_;
  std::vector<double> values_;
  Sphere sphere_;
  LocalReach reach_;
};

/// One table for each subject, all on one lattice that is fine enough for every one of them. A search over tables that
/// share their lattice prunes whole families of mixtures; over others it must visit every mixture.
std::vector<ChanceField> chance_fields(const HansenBox& box, const std::vector<FieldSubject>& subjects);

}  // namespace gentlest
