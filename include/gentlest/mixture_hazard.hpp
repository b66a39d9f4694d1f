// Layer 7. The label of a mixture by the additivity rules of the GHS, from the records of its parts.
// A part without a record, or a rule that cannot be decided, is named as "not known": the label is then a minimum.
// Records are harmonised entries, themselves a minimum; the safety data sheets decide.
#pragma once

#include "gentlest/exposure.hpp"

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

/// Acute toxicity estimate of a mixture: 100 / ATE = sum of C / ATE over ingredients of at least 1 per cent; with more
/// than 10 per cent unknown, 100 is lowered by what is unknown. `per_cent` by weight, ATE above 0. Nothing without any
/// ingredient of 1 per cent. Source: CLP Annex I 3.1.3.6.
std::optional<double> acute_toxicity_estimate(const std::vector<double>& per_cent, const std::vector<double>& ATE,
                                              double unknown_percent = 0);

/// Statement of the flammable category by CLP Annex I 2.6: below 23 C and boiling up to 35 C H224, below 23 C H225, up
/// to 60 C H226, else empty. An estimated flash point counts as 5 C lower (CLP Annex I 2.6.4.3, from memory).
std::string flammable_statement(Celsius flash_point, Celsius boiling_point, bool estimated);

/// Every rule but flammability, on ingredients that add up to 100 per cent. Generic limits of CLP Annex I (from memory
/// but for those marked seen in docs/science.md); specific limits, M factors and ATE values in the records override
/// them. Aspiration: solvents of this catalogue are taken as thinner than 20.5 mm2/s.
MixtureLabel classify(const std::vector<Ingredient>& ingredients);

/// The label of a mixture: classify on its parts by weight (the water of an alcohol apart), and the flammable category
/// from the estimated flash point and start of boiling. One recorded liquid without water keeps its own statements.
MixtureLabel label_of(const Mixture& mixture, const Catalogue& catalogue);

/// A limit that a record sets for one statement, as printed: "STOT SE 3; H335: C >= 25 %".
struct SpecificLimit {
  std::string code;
  double from_percent = 0;
  std::optional<double> below_percent;
  bool operator==(const SpecificLimit&) const = default;
};

/// Reads the limits out of Hazards::specific_limits; text that is no limit is left alone.
std::vector<SpecificLimit> specific_limits_in(const std::string& text);

/// "Oral: ATE = 1200 mg/kg bw": the figure after ATE for a route ("Oral", "Dermal", "Inhalation"); nothing when absent.
std::optional<double> recorded_ATE(const std::string& text, const std::string& route);

/// "M=10": 10; 1 when absent.
double M_factor(const std::string& text);

}  // namespace gentlest
