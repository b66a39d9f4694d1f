// What the label of a bottle says of its strength, and how much water that means.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace gentlest {

/// A grade as it is understood.
struct Grade {
  std::string text;  ///< one spelling for all ways to write it: "96 %", "95 % w/w", "absolute"; empty: none stated
  double water_fraction = 0;  ///< by volume before mixing, 0 to below 1
};

/// Understood of every solvent: nothing; "absolute", "anhydrous", "dry"; a per cent with a point or a comma, written
/// "96 %", "96", "96 vol%", "96 % v/v", "96 °" (all by volume) or "95 % w/w", "95 wt%" (by weight). In an alcohol the
/// rest is water: alcohol and water shrink when they are mixed, so by the density tables of the catalogue "96 %" of
/// ethanol by volume holds 4.9 % of water; where there is no table the shrinking is neglected. In other liquids a per
/// cent is a purity that says nothing of water, and plain words ("technical") are let through.
/// Throws InputError (Fault::usage) on anything else, and on an alcohol of 50 % or less.
Grade read_grade(const Solvent& solvent, std::string_view text, const Catalogue& catalogue);

/// True when the words alone, whatever the liquid, are a grade: for finding where a name ends.
bool is_grade(std::string_view text);

/// "97 %" of whole per cent by volume, 51 to 100; 100 is "absolute".
std::string grade_of_percent(int percent);

/// The weakest grade in whole per cent by volume that holds no more than so much water (a fraction by volume before
/// mixing): "97 %", or "absolute" above 99 %.
std::string grade_within(const Solvent& alcohol, double water_fraction, const Catalogue& catalogue);

}  // namespace gentlest
