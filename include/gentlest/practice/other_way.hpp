// What people consider beside free solvents on a swab: gels, emulsions, water, dry ways, leaving it. Nothing here is
// reckoned; each way is what a publication, the trade or our memory says of it, in the words of the record.
#pragma once

#include "gentlest/finishes/witness.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Families of ways, in the order in which an answer shows them.
enum class WayKind {
  leave,
  thin,
  revarnish,
  solvent_gel,
  tissue,
  emulsion,
  water_gel,
  aqueous,
  soap,
  enzyme,
  mask,  ///< no way by itself: what is done before one
  dry,
  light,
  warning  ///< what was once done and must not be
};
std::string_view to_word(WayKind kind);
std::optional<WayKind> way_kind_from_word(std::string_view word);

/// What of a plan may bring a way up, or speak against it.
enum class Occasion {
  layer_closes,     ///< no window: a layer to keep would be harmed
  shelf_too_weak,   ///< no window: no mixture of the shelf works, however risky
  sightings_close,  ///< no window: every bottle was seen to act on a layer to keep
  limits_close,     ///< no window: the other limits leave no mixture
  not_judged,       ///< the layer to remove has no sphere
  ladder_ends,      ///< there is a ladder, and it has a last rung
  only_swells,      ///< the layer to remove swells but never dissolves
  polar_liquid,     ///< what works holds more than hydrocarbons
  natural_resin,    ///< the layer to remove is one
  synthetic_resin,  ///< the layer to remove is one
  water_sensitive,  ///< a layer to keep or a passage is, as known or suspected
  soft_layer,       ///< a layer to keep or a passage is resinous, waxy or bituminous
  acrylic_paint,    ///< a layer to keep is acrylic paint
  kept_not_judged   ///< a layer to keep has no sphere
};
std::string_view to_word(Occasion occasion);
std::optional<Occasion> occasion_from_word(std::string_view word);

/// One way. Texts that are empty are not known.
struct OtherWay {
  std::string id, name;
  WayKind kind = WayKind::leave;
  std::vector<Occasion> brought_up_by;  ///< empty: always
  std::vector<Occasion> careful_with;
  std::string when, contact, left_behind, action, clearing, watch;  ///< contact: how long; action: of hand or tool
  std::string not_modelled;                                         ///< what no figure of this program speaks of
  std::vector<std::string> sources;                                 ///< keys of sources.yaml, at least one
  Witness witness = Witness::memory;
  Confidence confidence = Confidence::low;
  std::string doubt;  ///< why we doubt the row; may be empty
  bool operator==(const OtherWay&) const = default;
};

}  // namespace gentlest
