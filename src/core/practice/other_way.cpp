#include "gentlest/practice/other_way.hpp"

#include "core/base/enum_words.hpp"

#include <array>
#include <utility>

namespace gentlest {

namespace {
constexpr std::array<std::pair<WayKind, std::string_view>, 14> kind_words = {{{WayKind::leave, "leave"},
                                                                              {WayKind::thin, "thin"},
                                                                              {WayKind::revarnish, "revarnish"},
                                                                              {WayKind::solvent_gel, "solvent_gel"},
                                                                              {WayKind::tissue, "tissue"},
                                                                              {WayKind::emulsion, "emulsion"},
                                                                              {WayKind::water_gel, "water_gel"},
                                                                              {WayKind::aqueous, "aqueous"},
                                                                              {WayKind::soap, "soap"},
                                                                              {WayKind::enzyme, "enzyme"},
                                                                              {WayKind::mask, "mask"},
                                                                              {WayKind::dry, "dry"},
                                                                              {WayKind::light, "light"},
                                                                              {WayKind::warning, "warning"}}};

constexpr std::array<std::pair<Occasion, std::string_view>, 14> occasion_words = {
    {{Occasion::layer_closes, "layer_closes"},
     {Occasion::shelf_too_weak, "shelf_too_weak"},
     {Occasion::sightings_close, "sightings_close"},
     {Occasion::limits_close, "limits_close"},
     {Occasion::not_judged, "not_judged"},
     {Occasion::ladder_ends, "ladder_ends"},
     {Occasion::only_swells, "only_swells"},
     {Occasion::polar_liquid, "polar_liquid"},
     {Occasion::natural_resin, "natural_resin"},
     {Occasion::synthetic_resin, "synthetic_resin"},
     {Occasion::water_sensitive, "water_sensitive"},
     {Occasion::soft_layer, "soft_layer"},
     {Occasion::acrylic_paint, "acrylic_paint"},
     {Occasion::kept_not_judged, "kept_not_judged"}}};
}  // namespace

std::string_view to_word(WayKind kind) {
  return word_of(kind_words, kind);
}

std::optional<WayKind> way_kind_from_word(std::string_view word) {
  return value_of<WayKind>(kind_words, word);
}

std::string_view to_word(Occasion occasion) {
  return word_of(occasion_words, occasion);
}

std::optional<Occasion> occasion_from_word(std::string_view word) {
  return value_of<Occasion>(occasion_words, word);
}

}  // namespace gentlest
