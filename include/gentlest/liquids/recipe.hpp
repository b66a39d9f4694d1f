// What a person measures into the vial: volumes rounded to what can be measured, and the mixture they make.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/quantity.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One drop of an ordinary pipette, mL. Common practice, no source: drops of different liquids and pipettes differ by
/// half, so a recipe in drops is rough.
inline constexpr double drop_mL = 0.05;

/// The vial and the smallest amount that is measured into it.
struct Measuring {
  Millilitres vial{10};
  Millilitres step{0.5};  ///< e.g. 0.1, 0.5, or drop_mL
  bool operator==(const Measuring&) const = default;
};

/// True where the step is one drop: volumes are then counted, not measured.
bool is_in_drops(const Measuring& measuring);

struct RecipeLine {
  Liquid liquid;
  int steps = 0;  ///< at least 1
  Millilitres volume;
};

struct Recipe {
  Measuring measuring;
  std::vector<RecipeLine> lines;  ///< in the order of the mixture's parts
  Millilitres total;              ///< the vial, or the largest multiple of the step that fits into it
  Mixture as_measured;            ///< what the rounded volumes make; to be judged in place of the mixture
  double largest_change = 0;      ///< largest difference of a share by rounding, 0..1
};

/// What keeps a vial from being filled for so many parts, without a place; nothing where it can be.
std::optional<Diagnostic> measuring_fault(std::size_t parts, const Measuring& measuring);

/// Throws InputError (Fault::usage) when vial or step is not positive, when the step is larger than the vial, or when
/// the vial holds fewer steps than `parts`.
void check_measurable(std::size_t parts, const Measuring& measuring);

/// Rounds a mixture. Volumes are whole steps, at least one each, and add up to the vial where the vial is a whole
/// number of steps; among those, largest remainders first, so that no share is off by a step or more unless it was too
/// small to measure. Throws what check_measurable throws for the mixture's parts.
Recipe round_recipe(const Mixture& mixture, const Measuring& measuring);

/// What to add of a stock to a volume that holds the share `from` of it, to bring that to the share `to`. Change of
/// volume on mixing is neglected: (from * volume + x) / (volume + x) = to. Precondition: 0 <= from <= to < 1.
Millilitres top_up(Millilitres volume, double from, double to);

/// Total of each bottle over a session's vials, by label.
struct SessionTotal {
  std::string label;
  Millilitres volume;
  bool operator==(const SessionTotal&) const = default;
};
std::vector<SessionTotal> session_totals(const std::vector<Recipe>& recipes);

}  // namespace gentlest
