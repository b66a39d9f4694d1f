// How a mixture drifts while it dries: composition, Hansen point and time against the share evaporated.
// The liquid is taken as well stirred, at one temperature, drying into clean air. It does not see the swab's fibres,
// the cooling by fast liquids, nor what soaks into the painting.
#pragma once

#include "gentlest/vial/equilibrium.hpp"
#include "gentlest/vial/miscibility.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

struct DriftPoint {
  double evaporated = 0;                 ///< share of the volume that has gone, 0 to below 1
  std::vector<double> volume_fractions;  ///< of what is left, in the order of Mixture::parts(); they add up to 1
  Hansen point;                          ///< of what is left, MPa^0.5
  double time = 0;  ///< since the start; 1 is the time in which as much n-butyl acetate would have dried away
};

struct Drift {
  Celsius temperature;
  std::vector<DriftPoint> path;       ///< at 0, 5, 10 ... 95 and 99 % evaporated
  bool ideal = false;                 ///< activity coefficients not known, taken as 1
  std::string last;                   ///< label of the bottle of which most is left at the end
  std::optional<double> parts_at;     ///< first share evaporated at which what is left parts into two liquids
  std::vector<StandInUse> stand_ins;  ///< what was reckoned as something else
  std::vector<UncertainPressure> uncertain_pressures;  ///< at this temperature
  std::vector<std::string> sources;                    ///< keys of sources.yaml
};

/// The path of a mixture. Law: the flux of each kind of molecule into the air is k x_i gamma_i p_i / (R T), with one
/// mass-transfer factor k for all. The factor differs between liquids by the diffusion in air, about as the cube root
/// of the molar mass, and by cooling; one k meets published relative evaporation rates within a factor of 2.7, fast
/// liquids being slower in print (tests/published/test_evaporation.cpp): the order in which liquids leave is sound,
/// times are rough. A Dormand-Prince 5(4) integration in ln of the amounts, error per step below 1e-8. Nothing when a
/// molar volume or a vapour pressure is not known (missing_for_drift names them), or when n-butyl acetate, the unit of
/// time, is not in the catalogue. Temperature 0 to 40 C.
std::optional<Drift> evaporate(const Mixture& mixture, const Catalogue& catalogue,
                               Celsius temperature = room_temperature);

/// Does the path reach a Hansen point at which `is_beyond` holds before judged_until? The same path in a fraction of
/// the time, left at once where the answer is yes. Nothing where evaporate gives nothing.
std::optional<bool> drifts_to(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature,
                              const std::function<bool(const Hansen&)>& is_beyond);

/// A figure without which a drift cannot be reckoned.
struct MissingFigure {
  enum class What {
    amount,           ///< molar volume or molar mass of a bottle
    vapour_pressure,  ///< of a molecule, at this temperature
    unit_of_time      ///< the figures of n-butyl acetate
  };
  What what = What::amount;
  std::string of;  ///< label or name; empty for the unit of time
  Celsius temperature = room_temperature;
  bool operator==(const MissingFigure&) const = default;
};

/// What is missing for evaporate; empty when nothing is.
std::vector<MissingFigure> missing_for_drift(const Mixture& mixture, const Catalogue& catalogue,
                                             Celsius temperature = room_temperature);

/// Share evaporated up to which a drift is judged: what dries after nine tenths have gone is a film too thin to work.
/// A convention of ours.
inline constexpr double judged_until = 0.9;

/// What a drift means for one layer.
struct DriftRisk {
  double at_start = 0;                    ///< chance at the start
  double worst = 0;                       ///< largest chance up to judged_until
  double worst_at = 0;                    ///< share evaporated at that point
  std::optional<double> beyond_limit_at;  ///< first share evaporated at which the chance passes the limit
};

/// `chance` gives the chance that a liquid at a Hansen point acts on the layer. Between the points of the path the
/// chance is taken as a straight line.
DriftRisk judge_drift(const Drift& drift, const std::function<double(const Hansen&)>& chance, double limit);

/// Relative evaporation rate of a pure liquid by the same law, n-butyl acetate = 1, by volume; nothing when figures are
/// missing.
std::optional<double> evaporation_rate(const Solvent& solvent, const Catalogue& catalogue,
                                       Celsius temperature = room_temperature);

}  // namespace gentlest
