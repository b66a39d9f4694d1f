// Liquids as they stand on the shelf, and mixtures of them by volume.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// One bottle of the shelf: a solvent in a certain grade. Water in the bottle (ethanol 96 % holds 4.9 % by volume
/// before mixing) counts as part of the liquid: it moves the Hansen point and decides whether a mixture stays one
/// liquid.
struct Liquid {
  std::string label;  ///< as printed, e.g. "ethanol 96 %"
  const Solvent* solvent = nullptr;
  double water_fraction = 0;  ///< by volume before mixing, 0 (absolute) to below 1
  Hansen hansen;              ///< of the liquid as it is in the bottle, MPa^0.5
  bool denatured = false;     ///< holds a denaturant that no record names; the label says so
};

/// A bottle of this solvent. `grade` is empty (taken as free of water) or as read_grade takes it. The label holds the
/// one spelling of the grade. Throws InputError (Fault::usage) when the grade is not understood, when the solvent has
/// no Hansen parameters, or when water is needed and the catalogue has none.
Liquid make_liquid(const Solvent& solvent, std::string_view grade, const Catalogue& catalogue);
/// The same of a bottle by what it is called: a name for denatured alcohol marks it. The meaning has a record.
Liquid make_liquid(const Meaning<Solvent>& named, std::string_view grade, const Catalogue& catalogue);
bool is_denatured(const Meaning<Solvent>& named);

/// One part of a mixture.
struct Part {
  Liquid liquid;
  double fraction = 0;  ///< of the volume before mixing
};

/// Liquids with volume fractions that add up to 1. Always true of a Mixture: at least one part, every fraction above 0,
/// labels differ, parts sorted by falling fraction and then by label, sum within 1e-9 of 1.
class Mixture {
 public:
  /// Throws InputError (Fault::usage) where the parts break the rules above; fractions are not silently rescaled.
  explicit Mixture(std::vector<Part> parts);

  const std::vector<Part>& parts() const noexcept { return parts_; }

 private:
  std::vector<Part> parts_;
};

/// Adds the mixture's liquids to a list that holds each label once.
void add_liquids(std::vector<Liquid>& liquids, const Mixture& mixture);

/// Of the aliphatic hydrocarbons or the petroleum cuts; an aromatic cut is one of the latter.
bool is_hydrocarbon_or_cut(const Solvent& solvent);

/// Hansen point of a mixture: the volume-weighted mean of its liquids, MPa^0.5. Change of volume on mixing is
/// neglected. Source: Hansen 2007, ch. 1; docs/science.md, "Mixtures".
Hansen mix(const Mixture& mixture);

/// Largest standard deviation of the liquids' own parameters, per coordinate, MPa^0.5; 0 where none is published. No
/// mixture of theirs is known less well: sqrt(sum (fraction * sd)^2) never exceeds it.
Hansen largest_sd(const std::vector<Liquid>& liquids);

}  // namespace gentlest
