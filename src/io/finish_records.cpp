#include "io/finish_records.hpp"

#include "io/observed_parts.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <utility>

namespace gentlest {

namespace {

constexpr const char* light_choice = "dark, uv_filtered, daylight or strong";

Voice read_voice(YamlMap& map) {
  Voice voice;
  voice.where = map.file().place(map.node());
  voice.source = map.need_text("source");
  voice.witness =
      read_word(map, "standing", witness_from_word, Witness::memory, "seen, from memory or common practice");
  voice.cite = map.text("cite");
  voice.note = map.text("note");
  return voice;
}

// A key that may be left out; what it says is one word of a list.
template <class Enum>
Enum read_word_or(YamlMap& map, const char* key, std::optional<Enum> (*from_word)(std::string_view), Enum otherwise,
                  const char* words) {
  return map.find(key) ? read_word(map, key, from_word, otherwise, words) : otherwise;
}

std::vector<Light> read_lights(YamlMap& map) {
  std::vector<Light> lights;
  const YamlNode* node = map.find("light");
  if (!node) return lights;
  for (const YamlNode& item : map.file().list(*node, "light", fmt::format("[uv_filtered], of {}", light_choice))) {
    const std::size_t before = map.file().faults().size();
    const std::string word = map.file().text(item, "light");
    if (const std::optional<Light> light = light_from_word(word))
      lights.push_back(*light);
    else if (map.file().faults().size() == before)
      map.file().complain(item, fmt::format("\"{}\" is no light", word), fmt::format("write {}", light_choice));
  }
  return lights;
}

std::vector<ObservedPart> need_parts(YamlMap& map) {
  const YamlNode* node = map.need("liquid", "isooctane");
  return node ? read_parts(map.file(), *node) : std::vector<ObservedPart>();
}

AppliedIn read_applied(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "applied_in");
  AppliedIn applied;
  applied.parts = need_parts(map);
  applied.as = read_word_or(map, "as", finish_use_from_word, FinishUse::both, "retouching, varnish or both");
  applied.voice = read_voice(map);
  map.done();
  return applied;
}

AgeingFact read_ageing(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "ageing");
  AgeingFact fact;
  map.need("light", "[uv_filtered]");
  fact.lights = read_lights(map);
  fact.change = read_word(map, "change", ageing_from_word, Ageing::none,
                          "none, slight, somewhat_more_polar, much_more_polar or may_not_dissolve");
  fact.voice = read_voice(map);
  map.done();
  return fact;
}

ComesOffFact read_comes_off(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "comes_off");
  ComesOffFact fact;
  fact.state = read_word_or(map, "state", finish_state_from_word, FinishState::either, "fresh, aged or either");
  fact.lights = read_lights(map);
  fact.liquids_in_words = map.text("liquids_in_words");
  const YamlNode* liquid = map.find("liquid");
  if ((liquid != nullptr) == !fact.liquids_in_words.empty())
    file.complain(node, "what takes it off is either liquid or liquids_in_words",
                  "liquids_in_words is for what is no mixture of liquids");
  fact.any_liquid = liquid && liquid->kind == YamlNode::Kind::scalar && liquid->text == "any";
  if (liquid && !fact.any_liquid) fact.parts = read_parts(file, *liquid);
  fact.result = read_word(map, "result", comes_off_from_word, ComesOff::stays, "comes_off, swells, stays or untouched");
  fact.voice = read_voice(map);
  map.done();
  return fact;
}

template <class Record>
std::vector<Record> read_list(YamlMap& map, const char* key, Record (*read)(YamlFile&, const YamlNode&)) {
  std::vector<Record> records;
  if (const YamlNode* node = map.find(key))
    for (const YamlNode& item : map.file().list(*node, key)) records.push_back(read(map.file(), item));
  return records;
}

Finish read_finish(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "finish");
  Finish finish;
  finish.where = file.place(node);
  finish.material = map.need_text("material");
  finish.aged = map.text("aged");
  finish.use = read_word(map, "use", finish_use_from_word, FinishUse::varnish, "retouching, varnish or both");
  finish.word = map.need_text("word");
  finish.propose = map.truth("propose", true);
  finish.applied_in = read_list(map, "applied_in", read_applied);
  if (finish.applied_in.empty() && finish.propose)
    file.complain(node, fmt::format("nothing says in what \"{}\" is put on", finish.word),
                  "add applied_in:, or propose: false");
  finish.ageing = read_list(map, "ageing", read_ageing);
  finish.comes_off = read_list(map, "comes_off", read_comes_off);
  if (const YamlNode* bedded = map.find("bedded")) {
    YamlMap voice(file, *bedded, "bedded");
    finish.bedded = read_voice(voice);
    voice.done();
  }
  map.done();
  return finish;
}

Neighbour read_neighbour(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "neighbour");
  Neighbour neighbour;
  map.need("upper", "[dammar_fresh]");
  neighbour.upper = map.texts("upper");
  map.need("lower", "[oil_paint_old]");
  neighbour.lower = map.texts("lower");
  neighbour.act = read_word(map, "act", finish_act_from_word, FinishAct::both, "put_on, take_off or both");
  neighbour.state = read_word_or(map, "state", finish_state_from_word, FinishState::either, "fresh, aged or either");
  if (const YamlNode* liquid = map.find("liquid")) neighbour.parts = read_parts(file, *liquid);
  neighbour.says =
      read_word(map, "says", neighbour_says_from_word, NeighbourSays::touches, "spares, slight, may_touch or touches");
  neighbour.voice = read_voice(map);
  map.done();
  return neighbour;
}

GeneralFact read_general(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "general");
  GeneralFact fact;
  fact.what = read_word(map, "what", finish_rule_from_word, FinishRule::ask_mixtures,
                        "leaches_like_a_cleaning, one_system_with_its_varnish, differ_in_solubility, ask_mixtures, "
                        "wait_after_cleaning, wait_between_coats or swollen_coats_heal_slowly");
  fact.voice = read_voice(map);
  map.done();
  return fact;
}

}  // namespace

void read_finishes(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "afterwards.yaml");
  map.need("finishes");
  records.finishes.all = read_list(map, "finishes", read_finish);
  records.finishes.neighbours = read_list(map, "neighbours", read_neighbour);
  records.finishes.general = read_list(map, "general", read_general);
  map.done();
}

}  // namespace gentlest
