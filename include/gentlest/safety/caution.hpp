// What a person should be told before working with a mixture: cautions that fit it, liquids that must not
// meet, a word on gloves. Always second to the safety data sheet and to local rules.
#pragma once

#include "gentlest/safety/mixture_hazard.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// What a person is told; the report words it.
enum class CautionKind {
  not_a_permission,   ///< a plan is one for tests
  data_sheets_first,  ///< and local rules
  no_clash_known,     ///< among several liquids, which proves nothing
  clash,              ///< `liquids` are the two, `pair` the record
  vapour_catches_fire,
  catches_fire_warm,
  hides_flash_point,
  never_by_mouth,
  through_skin,
  unborn_child,  ///< genes, fertility and cancer too
  hormones,
  eyes,
  last_resort,
  peroxides,
  denatured,  ///< the bottle holds more than its record says
  extraction,
  gloves,  ///< `gloves` is the record
  gloves_differ,
  swabs_as_waste,
  label_every_vial
};

/// Where a caution comes from.
enum class CautionOrigin {
  common_practice,     ///< of the trade, published by nobody
  statements,          ///< of the mixture's label or of a bottle
  skin_records,        ///< notations and statements of the catalogue
  incompatible_pairs,  ///< of the catalogue
  published            ///< Caution::source
};

struct Caution {
  CautionKind kind = CautionKind::data_sheets_first;
  CautionOrigin origin = CautionOrigin::common_practice;
  std::string source = {};                 ///< key of sources.yaml; empty unless it is published
  std::vector<std::string> liquids = {};   ///< labels of those it is for; empty: for all
  const GloveNote* gloves = nullptr;       ///< the catalogue's, which must outlive this
  const IncompatiblePair* pair = nullptr;  ///< the same
  bool operator==(const Caution&) const = default;
};

/// Two liquids that must not meet (pair->forbidden) or that change each other.
struct Clash {
  std::string a, b;                        ///< labels
  const IncompatiblePair* pair = nullptr;  ///< the catalogue's, which must outlive this
  bool operator==(const Clash&) const = default;
};

/// All recorded clashes among these liquids, forbidden ones first. No clash found is not a proof of compatibility.
std::vector<Clash> clashes_among(const std::vector<Liquid>& liquids, const Catalogue& catalogue);

/// A mixture and the label it has by the rules of the GHS.
struct LabelledMixture {
  Mixture mixture;
  MixtureLabel label;
};

/// Cautions that fit any of these mixtures, each once, naming the liquids it is for; the general ones included; the
/// deferral to the safety data sheet comes first. Liquids of different mixtures count as meeting: their swabs do.
std::vector<Caution> cautions_for(const std::vector<LabelledMixture>& mixtures, const Catalogue& catalogue);
std::vector<Caution> cautions_for(const Mixture& mixture, const MixtureLabel& label, const Catalogue& catalogue);

}  // namespace gentlest
