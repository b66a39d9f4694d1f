// The vapour above a mixture (modified Raoult's law), and its boiling point.
#pragma once

#include "gentlest/catalogue/vapour.hpp"
#include "gentlest/vial/molecules.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// A vapour pressure that is not had from its equation inside the range of that.
struct UncertainPressure {
  const Solvent* solvent = nullptr;
  PressureBasis basis = PressureBasis::two_points;
};

/// Vapour pressures and activity coefficients of the molecules of one mixture. Built once per mixture, asked at many
/// temperatures and compositions.
class VapourModel {
 public:
  /// The catalogue must outlive it.
  VapourModel(const Breakdown& breakdown, const Catalogue& catalogue);

  /// False: groups or figures are missing, the mixture is taken as ideal (every activity coefficient is 1).
  bool knows_activity() const noexcept { return knows_activity_; }
  /// Vapour pressures of the pure liquids, kPa; nothing when one of them is not known.
  std::optional<std::vector<double>> pure_kPa(Celsius temperature) const;
  /// Natural logarithms of the activity coefficients at mole fractions x.
  std::vector<double> ln_gamma(const std::vector<double>& x, Celsius temperature) const;
  /// Partial pressures x_i gamma_i p_i above the liquid, kPa; nothing when a pure pressure is not known.
  std::optional<std::vector<double>> partial_kPa(const std::vector<double>& x, Celsius temperature) const;
  /// Activity model at one temperature, for asking many compositions; nothing when it is taken as ideal.
  std::optional<Activity> activity_at(Celsius temperature) const;
  /// Of the molecules whose vapour pressure is known at this temperature, each solvent once.
  std::vector<UncertainPressure> uncertain_pressures(Celsius temperature) const;
  /// Keys of sources.yaml behind the answer at this temperature.
  std::vector<std::string> sources(Celsius temperature) const;

  const std::vector<const Solvent*>& solvents() const noexcept { return solvents_; }

 private:
  std::vector<const Solvent*> solvents_;
  std::vector<Groups> groups_;
  const GroupTable* table_;
  bool knows_activity_ = false;
};

/// Names of the molecules without a vapour pressure at this temperature.
std::vector<std::string> missing_for_vapour(const VapourModel& model, Celsius temperature);

/// Temperature at which the partial pressures of a liquid of mole fractions x add up to `kPa` (the start of boiling),
/// to 1e-6 C. Nothing when pressures are missing or the answer lies outside -80 to 200 C. The liquid is taken as one
/// phase.
std::optional<Celsius> boiling_point(const VapourModel& model, const std::vector<double>& x, double kPa = 101.325);

}  // namespace gentlest
