#include "report/considered/way_words.hpp"

#include "report/bottle/caution_words.hpp"
#include "report/form/format.hpp"

#include <algorithm>

namespace gentlest {

std::string kind_title(WayKind kind) {
  switch (kind) {
    case WayKind::leave:
      return "Leaving it";
    case WayKind::thin:
      return "Thinning";
    case WayKind::revarnish:
      return "Saturating";
    case WayKind::solvent_gel:
      return "Solvent gels";
    case WayKind::tissue:
      return "Loaded tissue";
    case WayKind::emulsion:
      return "Emulsions";
    case WayKind::water_gel:
      return "Water gels";
    case WayKind::aqueous:
      return "Water, pH, conductivity, chelators";
    case WayKind::soap:
      return "Soaps";
    case WayKind::enzyme:
      return "Enzymes";
    case WayKind::mask:
      return "Shielding first";
    case WayKind::dry:
      return "Dry methods";
    case WayKind::light:
      return "Lasers";
    case WayKind::warning:
      return "Never";
  }
  return {};
}

std::string occasion_word(Occasion occasion) {
  switch (occasion) {
    case Occasion::layer_closes:
      return "harm to a layer";
    case Occasion::shelf_too_weak:
      return "shelf too weak";
    case Occasion::sightings_close:
      return "acted elsewhere";
    case Occasion::limits_close:
      return "limits of the job";
    case Occasion::not_judged:
      return "layer not judged";
    case Occasion::ladder_ends:
      return "end of the ladder";
    case Occasion::only_swells:
      return "only swells";
    case Occasion::polar_liquid:
      return "polar liquid";
    case Occasion::natural_resin:
      return "natural resin";
    case Occasion::synthetic_resin:
      return "synthetic resin";
    case Occasion::water_sensitive:
      return "water-sensitive";
    case Occasion::soft_layer:
      return "soft layer";
    case Occasion::acrylic_paint:
      return "acrylic paint";
    case Occasion::kept_not_judged:
      return "kept, not judged";
  }
  return {};
}

namespace {

std::string sentence_of(Occasion occasion) {
  switch (occasion) {
    case Occasion::layer_closes:
      return "no window: what would work is too risky for";
    case Occasion::shelf_too_weak:
      return "no window: nothing on the shelf, however risky, moves";
    case Occasion::sightings_close:
      return "no window: every bottle was seen to act on a layer to keep";
    case Occasion::limits_close:
      return "no window: the job's other limits leave no mixture at all";
    case Occasion::not_judged:
      return "no ladder can be reckoned: nothing is known of the range of";
    case Occasion::ladder_ends:
      return "there is a ladder; this is for where its last rung is not enough";
    case Occasion::only_swells:
      return "swells but never dissolves:";
    case Occasion::polar_liquid:
      return "what works holds more than hydrocarbons:";
    case Occasion::natural_resin:
      return "a natural resin is to go:";
    case Occasion::synthetic_resin:
      return "a synthetic resin is to go:";
    case Occasion::water_sensitive:
      return "may not bear water:";
    case Occasion::soft_layer:
      return "resinous, waxy or bituminous, known or suspected:";
    case Occasion::acrylic_paint:
      return "acrylic paint is to stay:";
    case Occasion::kept_not_judged:
      return "to keep, and no figure speaks of it:";
  }
  return {};
}

}  // namespace

std::string occasion_words(const OccasionHere& here) {
  const std::string names = joined(here.names);
  return sentence_of(here.occasion) + (names.empty() ? "" : " " + names);
}

std::string or_not_known(const std::string& text) {
  return text.empty() ? not_known : text;
}

std::vector<std::pair<std::string, std::string>> fields_of(const OtherWay& way) {
  std::vector<std::pair<std::string, std::string>> fields = {{"when", way.when},
                                                             {"how long", or_not_known(way.contact)},
                                                             {"stays behind", or_not_known(way.left_behind)},
                                                             {"hand", or_not_known(way.action)},
                                                             {"clearing", or_not_known(way.clearing)},
                                                             {"watch", way.watch}};
  fields.emplace_back("not modelled", way.not_modelled.empty() ? "any of it" : way.not_modelled);
  return fields;
}

std::string standing_words(const OtherWay& way) {
  const std::string said =
      way.witness == Witness::practice ? std::string(common_practice) : std::string(to_word(way.witness));
  std::string words = said + "; our confidence " + std::string(to_word(way.confidence));
  if (!way.doubt.empty()) words += "; our doubt: " + way.doubt;
  return words;
}

std::vector<std::string> citations_of(const OtherWay& way, const std::vector<Source>& sources) {
  std::vector<std::string> citations;
  for (const std::string& key : way.sources) {
    const auto source = std::find_if(sources.begin(), sources.end(), [&](const Source& one) { return one.key == key; });
    if (source == sources.end()) continue;
    const bool is_publication = key != "common_practice" && key != "recalled";
    citations.push_back(source->citation + (is_publication ? " (read: " + source->seen + ")" : ""));
  }
  return citations;
}

}  // namespace gentlest
