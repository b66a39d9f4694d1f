// How the program comes to a figure, step by step: what is put in, with unit, source and standing, and each sum with
// its result. Every step is reckoned from the digits that are printed, so whoever has the page alone can do it again.
// Where a step cannot be done by hand its result stands among what is put in, as `program`.
#pragma once

#include "gentlest/plan/plan.hpp"
#include "gentlest/sums/term.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

enum class SumUnit { none, MPa05, per_cent, volume_percent, weight_percent, mL, C, kPa, cm3_per_mol, g_per_mol, grams };

/// Where a number that is put in comes from.
enum class InputFrom {
  record,    ///< of the catalogue: `source` and `standing`
  material,  ///< the sphere of a layer's material as observations left it, or as recorded
  studio,    ///< the sphere of a layer's material where the studio's finished paintings left it
  job,       ///< what the job or the command line says
  setting,   ///< of the program, fitted or chosen; `source` names where
  program    ///< reckoned in a way that no hand repeats
};

enum class InputKind {
  share,  ///< of a liquid in the mixture, of the volume before mixing
  dD,     ///< of a liquid as it stands in the bottle
  dP,
  dH,
  centre_dD,  ///< of a layer's range
  centre_dP,
  centre_dH,
  radius,
  sd_dD,  ///< as every mixture meets it
  sd_dP,
  sd_dH,
  sd_radius,
  reach_weight,  ///< of a place where observations bend a range, with its point
  reach_length,
  intercept,  ///< of stage `number` of the response curve
  slope,
  grade_that_counts,
  table_weight,  ///< of the four nodes along axis `number_of`, in their order
  RED_of_slice,  ///< of slice `number`
  vial,
  measure,
  steps_measured,  ///< whole steps of a liquid, by largest remainders
  molar_volume,
  molar_mass,
  mole_fraction,
  antoine_A,  ///< of log10(p / kPa) = A - B / (T / K + C)
  antoine_B,
  antoine_C,
  activity,
  pressure,  ///< of the pure liquid at the mixture's flash point
  pressure_at_own_flash,
  own_flash_point,
  flash_temperature  ///< at which the terms add up to 1, found by halving
};

/// One number that is put in.
struct SumInput {
  InputKind kind = InputKind::share;
  std::string of;  ///< label of a liquid, name of a layer; empty of the curve and the vial
  int number_of = 0;
  Term value;  ///< a number
  SumUnit unit = SumUnit::none;
  InputFrom from = InputFrom::record;
  std::string source = {};  ///< key of sources.yaml; of own tests the user's words
  std::optional<Standing> standing = {};
  bool is_detail = false;  ///< shown with all of it only
};

enum class SumSection { point, teas, layer, recipe, weights, label, fire };

enum class StepKind {
  dD,
  dP,
  dH,
  fd,
  fp,
  fh,
  Ra,
  reach_at,  ///< what one place adds to the logarithm of the reach; `number_of` counts them
  reach,
  RED,
  stage,  ///< chance of stopping at stage `number_of`, at the RED of the middle of the range
  chance_at_middle,
  slice,  ///< chance at the RED of slice `number_of`
  slice_mean,
  table_row,    ///< sums of the table's nodes: 4 along dH, 16 of them
  table_plane,  ///< 4 along dP
  chance,       ///< 4 along dD: what the table gives
  effect,
  risk,
  volume,  ///< of a liquid in the vial
  shares_measured,
  weight,  ///< of a molecule, per cm3 of mixture
  weight_percent,
  parts_together,   ///< of a label's rule, against its limit
  vapour_pressure,  ///< of the pure liquid at the mixture's flash point
  vapour_pressure_own_flash,
  flash_term,
  flash_sum,
  flash_point
};

/// How the program prints a result elsewhere.
enum class PrintedAs { nowhere, no_decimals, one_decimal, two_decimals, chance, plain };

struct SumStep {
  StepKind kind = StepKind::dD;
  SumSection section = SumSection::point;
  std::string of;  ///< name of a layer, label of a liquid, code of a statement
  int number_of = 0;
  Term sum;
  Term result;  ///< a number: value_of(sum), rounded
  SumUnit unit = SumUnit::none;
  PrintedAs printed_as = PrintedAs::nowhere;
  double printed = 0;                ///< the program's own figure, which is what it prints
  std::optional<double> limit = {};  ///< of a label's rule, per cent
  bool is_detail = false;
};

struct WorkedSums {
  Mixture mixture;
  std::optional<Origin> rung = {};  ///< where it is one of the plan
  std::vector<SumInput> inputs;
  std::vector<SumStep> steps;
  std::vector<Source> sources;  ///< of the inputs
};

/// Largest difference between a step's result and the program's own figure that rounding alone can make. Where a
/// figure ends in a 5 the last printed digit may differ by one: both are printed.
inline constexpr double slack_of_sums = 2e-6;

/// A mixture against the layers, as `gentlest mixture` judges it, and its recipe.
WorkedSums work_mixture(const Mixture& mixture, const std::vector<PlannedLayer>& layers, const Job& job,
                        const Catalogue& catalogue);

/// The same of a rung, as the plan judged it. Precondition: `judged` is a rung of the plan.
WorkedSums work_rung(const JudgedMixture& judged, const Plan& plan, const Catalogue& catalogue);

/// The estimate of a flash point, of the mixture as it is measured into the job's vial. No steps where it is recorded
/// or not known.
WorkedSums work_flash_point(const Mixture& mixture, const Job& job, const Catalogue& catalogue);

/// The weights behind a label and, of each statement that adds parts up, the sum; as measured into the job's vial.
WorkedSums work_label(const Mixture& mixture, const Job& job, const Catalogue& catalogue);

}  // namespace gentlest
