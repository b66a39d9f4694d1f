// The label of a mixture by the additivity rules of the GHS, from the records of its parts.
// A part without a record, or a rule that cannot be decided, is named as "not known": the label is then a minimum.
// Records are harmonised entries, themselves a minimum; the safety data sheets decide.
#pragma once

#include "gentlest/safety/exposure.hpp"

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

/// One substance of a mixture, by weight.
struct Ingredient {
  std::string name;
  double weight_percent = 0;
  std::optional<Hazards> hazards;  ///< nothing: no record
  bool without_hazard = false;     ///< true for water: needs no record
};

/// One statement on the label and the rule that put it there.
struct LabelStatement {
  std::string code;     ///< e.g. H336
  std::string because;  ///< "acetone 25 % + isooctane 75 % reach 20 %"
  bool operator==(const LabelStatement&) const = default;
};

/// How acutely toxic a mixture is by one route; nothing when no ingredient is known to be.
struct AcuteToxicity {
  std::optional<double> ATE;   ///< mg/kg, for vapour mg/L over 4 h
  double unknown_percent = 0;  ///< by weight, without a record
  bool operator==(const AcuteToxicity&) const = default;
};

struct MixtureLabel {
  std::string signal_word;                 ///< "Danger", "Warning" or empty
  std::vector<LabelStatement> statements;  ///< sorted by code, each once
  std::vector<std::string> pictograms;
  std::vector<std::string> not_known;  ///< in plain words; when empty, every rule could be decided
  std::vector<std::string> remarks;    ///< minimum classifications, conditions of the records
  AcuteToxicity oral, dermal, vapour;
  bool complete() const noexcept { return not_known.empty(); }
};

/// Acute toxicity estimate of a mixture: 100 / ATE = sum of C / ATE; with more than 10 per cent unknown, 100 is lowered
/// by what is unknown. `per_cent` by weight, ATE above 0; ingredients below their cut-off (0.1 per cent in categories 1
/// to 3, else 1) are left out by the caller. Nothing without any ingredient. Source: CLP Annex I 3.1.3.6, Table 1.1.
std::optional<double> acute_toxicity_estimate(const std::vector<double>& per_cent, const std::vector<double>& ATE,
                                              double unknown_percent = 0);

/// Every rule but flammability, on ingredients that add up to 100 per cent. Generic limits of CLP Annex I (from memory
/// but for those marked seen in docs/science.md); specific limits, M factors and ATE values in the records override
/// them, each statement's own; of several bands for one statement the lowest share counts. A statement that no rule
/// dilutes is carried over, never dropped. Aspiration: solvents of this catalogue are taken as thinner than 20.5 mm2/s.
MixtureLabel classify(const std::vector<Ingredient>& ingredients);

/// The label of a mixture: classify on its parts by weight (the water of an alcohol apart), and the flammable category
/// from the estimated flash point and start of boiling. A liquid alone, or with so little beside it (1 per cent by
/// volume) that its flash point stays (1 C), keeps its own flammable class; alone it keeps what its record says. Where
/// the flash point is not known the label carries the worst flame of a part, and says that it is not known.
MixtureLabel label_of(const Mixture& mixture, const Catalogue& catalogue);

}  // namespace gentlest
