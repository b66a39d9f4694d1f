#include "io/other_way_records.hpp"

#include "io/word_of_list.hpp"

#include <set>
#include <utility>

namespace gentlest {

namespace {

const char* const kinds =
    "leave, thin, revarnish, solvent_gel, tissue, emulsion, water_gel, aqueous, soap, enzyme, mask, dry, light or "
    "warning";
const char* const occasions =
    "layer_closes, shelf_too_weak, sightings_close, limits_close, not_judged, ladder_ends, only_swells, polar_liquid, "
    "natural_resin, synthetic_resin, water_sensitive, soft_layer, acrylic_paint or kept_not_judged";

std::vector<Occasion> read_occasions(YamlMap& map, const char* key) {
  std::vector<Occasion> found;
  if (const YamlNode* node = map.find(key))
    for (const YamlNode& item : map.file().list(*node, key, "[ladder_ends]"))
      found.push_back(word_at(map.file(), item, key, occasion_from_word, Occasion::ladder_ends, occasions));
  return found;
}

// What was seen names a publication; what was not must not look as if it had been.
void check_standing(YamlMap& map, const OtherWay& way) {
  if (way.sources.empty()) return map.file().complain(map.node(), "a way needs a source", "name a key of sources.yaml");
  const std::string& first = way.sources.front();
  const bool told = first != "common_practice" && first != "recalled";
  if (way.witness == Witness::seen && !told)
    map.file().complain(map.node(), "what was seen names what it was seen in first",
                        "name a publication, or write standing: from memory or common practice");
  if (way.witness == Witness::practice && first != "common_practice")
    map.file().complain(map.node(), "common practice has the source common_practice first");
}

OtherWay read_way(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "way");
  OtherWay way;
  way.id = map.need_text("id");
  way.kind = read_word(map, "kind", way_kind_from_word, WayKind::leave, kinds);
  way.name = map.need_text("name");
  way.brought_up_by = read_occasions(map, "for");
  way.careful_with = read_occasions(map, "careful");
  way.when = map.need_text("when");
  way.contact = map.text("contact");
  way.left_behind = map.text("left_behind");
  way.action = map.text("action");
  way.clearing = map.text("clearing");
  way.watch = map.need_text("watch");
  way.not_modelled = map.text("not_modelled");
  if (map.need("source", "[a_key]")) way.sources = map.texts("source");
  way.witness = read_word(map, "standing", witness_from_word, Witness::memory, "seen, from memory or common practice");
  way.confidence = read_word(map, "confidence", confidence_from_word, Confidence::low, "high, medium or low");
  way.doubt = map.text("doubt");
  check_standing(map, way);
  map.done();
  return way;
}

}  // namespace

void read_other_ways(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "other_ways.yaml");
  std::set<std::string> ids;
  if (const YamlNode* list = map.need("ways"))
    for (const YamlNode& item : file.list(*list, "ways")) {
      records.other_ways.push_back(read_way(file, item));
      const std::string& id = records.other_ways.back().id;
      if (!ids.insert(id).second)
        file.complain(item, "the way \"" + id + "\" stands twice", "give each an id of its own");
    }
  map.done();
}

}  // namespace gentlest
