// What several paintings say together of one material: their common middle, and how far they lie from it.
// Each painting's sphere lies about the material's middle; the middle lies about the stand-in. Pure arithmetic over the
// four figures of a sphere (2 dD, dP, dH, R0), all told from the stand-in.
#pragma once

#include <array>
#include <vector>

namespace gentlest {

using SphereFigures = std::array<double, 4>;               ///< of (2 dD, dP, dH, R0), MPa^0.5
using SphereTable = std::array<std::array<double, 4>, 4>;  ///< symmetric

/// What the tests of one painting say of its sphere, as a Gaussian: proportional to exp(pull.d - d.information.d / 2)
/// for the deviation d from the stand-in. All 0: nothing.
struct PaintingSays {
  SphereTable information{};  ///< 1 / MPa, no negative eigenvalue
  SphereFigures pull{};       ///< 1 / MPa^0.5
};

struct PoolSettings {
  /// Student's law with 4 degrees of freedom (our choice) between paintings: an odd one counts the less the farther off
  /// it lies. Else a normal law, and all count alike.
  bool odd_count_less = true;
  /// How far paintings lie from their middle before any is known, as a root mean square Hansen distance, MPa^0.5: near
  /// 5 is what published cases suggest (of nine old masters with one varnish three let go in toluene, two in toluene 60
  /// acetone 40, four in acetone; the distance is our reckoning). Their radii: as the stand-in's own deviation.
  double between_centre = 5;
  /// For so many paintings that figure counts. Our choice.
  double assumed_paintings = 3;
  int most_rounds = 400;
};

/// What was learnt. `spread` is where the next painting's sphere is looked for.
struct Pool {
  SphereFigures moved{};           ///< of the middle, from the stand-in
  SphereTable moved_covariance{};  ///< what is not known of the middle
  double between_centre = 0;       ///< root mean square Hansen distance of paintings from their middle, MPa^0.5
  double between_R0 = 0;           ///< the same of their radii
  SphereTable spread{};            ///< covariance of the next painting's sphere about the middle
  std::vector<double> weights;     ///< how far each painting counted: about 1, an odd one less
};

/// `stand_in`: covariance of the stand-in, positive definite. Without paintings the stand-in is what remains.
/// The scatter between paintings is found as restricted maximum likelihood finds it, with the assumed scatter counted
/// as `assumed_paintings` more; the spread narrows no further than the paintings differ, and is wider than the
/// stand-in's only as far as the paintings alone show it.
/// Source: the closed forms of the normal random-effects model (DerSimonian and Laird 1986; from memory), Student's law
/// as a normal one of unknown weight (Lange, Little and Taylor 1989; from memory); held against closed forms and a
/// general-purpose library in tests/published/test_pooling.cpp.
Pool pool_paintings(const SphereTable& stand_in, const std::vector<PaintingSays>& paintings,
                    const PoolSettings& settings = {});

}  // namespace gentlest
