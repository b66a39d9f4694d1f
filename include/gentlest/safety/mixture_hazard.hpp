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

/// The rule that put a statement on a label; behind it what `figures` of the LabelReason are.
enum class LabelRule {
  parts_reach,       ///< the parts together; the limit that counts unless a record sets its own, per cent
  part_reaches,      ///< a part alone; its limit, per cent
  allergy,           ///< a part alone
  ozone,             ///< a part alone
  carried,           ///< by a part: no rule dilutes the statement
  acute_water_life,  ///< share of what poisons water life, per cent, each with its factor M
  water_life_1,      ///< share of category 1 (for long), per cent, each with its factor M
  water_life_2,      ///< the same, and the share of category 2
  water_life_3,      ///< the same, and the share of category 3
  water_life_4,
  acute_toxicity,   ///< the mixture's estimate, mg/kg or mg/L
  recorded,         ///< the pure liquid, by its record
  own_flash_point,  ///< the pure liquid, or nearly, by its flash point in C; no figure: not known
  flame_of_part,    ///< carried by a part: the mixture's own flash point is not known
  flash_point       ///< the mixture's: LabelReason::flash
};

struct LabelReason {
  struct Share {
    std::string name;
    double weight_percent = 0;
    bool operator==(const Share&) const = default;
  };
  LabelRule rule = LabelRule::recorded;
  std::vector<Share> parts = {};  ///< that the rule counted
  std::vector<double> figures = {};
  std::optional<FlashPoint> flash = {};
  bool operator==(const LabelReason&) const = default;
};

/// One statement on the label and the rule that put it there.
struct LabelStatement {
  std::string code;  ///< e.g. H336
  LabelReason because;
  bool operator==(const LabelStatement&) const = default;
};

/// What of a label cannot be decided.
struct LabelGap {
  enum class What {
    record,      ///< an ingredient has none: `of` and its weight
    flame,       ///< how easily the mixture catches fire: `flash`
    denaturant,  ///< of a denatured liquid: no record, `of` is its label
    shares       ///< by weight, so nothing: molar mass or volume of `of` is not known
  };
  What what = What::record;
  std::vector<std::string> of = {};
  double weight_percent = 0;
  std::optional<FlashPoint> flash = {};
  bool operator==(const LabelGap&) const = default;
};

/// What is to be said beside a label.
struct LabelRemark {
  enum class What {
    minimum_only,  ///< the record is one, suppliers may classify further
    of_record,     ///< `words` of the record itself
    severer_flame  ///< the flash point asks for `due`, the record says `recorded`: the former counts
  };
  What what = What::minimum_only;
  std::string of;  ///< name of the ingredient
  std::string words = {};
  std::string recorded = {}, due = {};
  std::optional<Celsius> flash_point = {};
  bool operator==(const LabelRemark&) const = default;
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
  std::vector<LabelGap> not_known;  ///< when empty, every rule could be decided
  std::vector<LabelRemark> remarks;
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
