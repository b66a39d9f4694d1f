// How bottles and mixtures are written and read: what notation.cpp writes, parse_mixture and read_grade (grade.hpp)
// read back out of jobs, logs and the command line. So it is no sentence, and is the same in every tongue.
#pragma once

#include "gentlest/liquids/mixture.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// The one spelling of a strength: "96 %" by volume, "95.6 % w/w" by weight.
enum class StrengthBasis { volume, weight };
std::string grade_text(double percent, StrengthBasis basis);

/// "ethanol 96 %"; the name alone where no grade is stated.
std::string bottle_label(std::string_view solvent, std::string_view grade);

/// "isooctane 70, ethanol 96 % 30": the parts in per cent by volume, largest first.
std::string to_text(const Mixture& mixture);

/// Reads "ethanol 30, isooctane 70": name (id, other name or CAS number), optional grade as in "ethanol 96 % 30", then
/// the share, all in per cent (sum 100) or all in fractions (sum 1); a name that ends in a number ("Solvesso 100")
/// still needs its share behind it, unless it stands alone; "70:30" style ratios are not guessed. A name without a
/// grade means the bottle of that solvent on `shelf`: of several the one without a grade. Throws InputError
/// (Fault::usage) with one fault per mistake: unknown name with the nearest known ones, ambiguous name with its
/// choices, grade that is not understood, name that fits several bottles, share that is not a number, negative, zero,
/// doubled part, sum off.
Mixture parse_mixture(std::string_view text, const Catalogue& catalogue, const std::vector<Liquid>& shelf = {});

}  // namespace gentlest
