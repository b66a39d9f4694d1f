// How bottles and mixtures are written and read: what notation.cpp writes, parse_mixture and read_grade (grade.hpp)
// read back out of jobs, logs and the command line. So it is no sentence, and is the same in every tongue.
#pragma once

#include "gentlest/liquids/mixture.hpp"

#include <optional>
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

/// What is tried like a mixture and is none: it has no place among the spheres.
enum class NoMixture {
  blank,   ///< a dry swab, saliva or water
  aqueous  ///< a solution under a name of the person's own: "aqueous: citrate 2 % pH 7"
};
/// Read from "dry swab", "dry", "saliva", "water", "blank", "aqueous: NAME" or "solution: NAME"; nothing where it is
/// none of these, or where the name is missing.
std::optional<NoMixture> no_mixture_from(std::string_view text);
/// As the log keeps it: "dry swab", "aqueous: citrate 2 % pH 7". Precondition: no_mixture_from reads it.
std::string no_mixture_text(std::string_view text);

/// Reads "ethanol 30, isooctane 70": name (id, other name or CAS number), optional grade as in "ethanol 96 % 30", then
/// the share, all in per cent (sum 100) or all in fractions (sum 1); a name that ends in a number ("Solvesso 100")
/// still needs its share behind it, unless it stands alone. What is none of this is read as people write it: the share
/// in front ("30 % ethanol, 70 % isooctane"), ratios ("1:3 acetone / white spirit"), parts ("acetone 1, white spirit
/// 4": whole numbers up to 20 that add up to neither 1 nor 100), mL, decimal commas, a forgotten comma, "and", "+",
/// "in", "to". A name without a grade means the bottle of that solvent on `shelf`: of several the one without a grade.
/// Throws InputError (Fault::usage) with one fault per mistake: unknown name with the nearest known ones, ambiguous
/// name with its choices, grade that is not understood, name that fits several bottles, share that is not a number,
/// negative, zero, doubled part, sum off; and where two meanings are at hand ("ethanol 96 isooctane 4"), a question.
Mixture parse_mixture(std::string_view text, const Catalogue& catalogue, const std::vector<Liquid>& shelf = {});

/// An own solution whose name is not handed on: "aqueous: not named".
std::string unnamed_solution();

/// True where the words are the notation itself, which needs no turning round: what parse_mixture reads first.
bool is_in_notation(std::string_view text, const Catalogue& catalogue, const std::vector<Liquid>& shelf = {});

}  // namespace gentlest
