#include "io/chemistry_records.hpp"

#include "io/cited_figures.hpp"

#include <fmt/format.h>

#include <cmath>
#include <tuple>
#include <utility>

namespace gentlest {

namespace {

int whole_of(YamlFile& file, const YamlNode& node, double value) {
  if (value != std::floor(value) || std::abs(value) > 1e6)
    file.complain(node, fmt::format("{} is no number of a group", value));
  return static_cast<int>(value);
}

// A map of "number: count", e.g. {1: 2, 14: 1}.
Groups read_groups(YamlFile& file, const YamlNode& node) {
  Groups groups;
  if (node.kind != YamlNode::Kind::map) file.complain(node, "groups are written as {number: count}");
  for (const YamlNode::Entry& entry : node.entries) {
    int number = 0;
    for (const char c : entry.key)
      number = c < '0' || c > '9' || number > 9999 ? -1 : number < 0 ? -1 : number * 10 + (c - '0');
    const int count = file.whole(entry.value, "count of a group");
    if (number <= 0 || count <= 0)
      file.complain(entry.line, entry.column, "a group needs a number and a count above 0");
    groups.push_back({number, count});
  }
  return groups;
}

Subgroup read_subgroup(YamlFile& file, const YamlNode& node) {
  Subgroup group;
  const std::vector<YamlNode>& cells = file.list(node, "subgroup");
  if (cells.size() != 5) {
    file.complain(node, "a subgroup has five figures", "write [number, \"name\", main group, R, Q]");
    return group;
  }
  group.number = file.whole(cells[0], "number of a subgroup");
  group.name = file.text(cells[1], "name of a subgroup");
  group.main_group = file.whole(cells[2], "main group");
  group.R = file.number(cells[3], "R");
  group.Q = file.number(cells[4], "Q");
  if (group.R <= 0 || group.Q < 0) file.complain(node, "R must be above 0, Q not below 0");
  return group;
}

Interaction read_interaction(YamlFile& file, const YamlNode& node, bool modified) {
  const std::size_t most = modified ? 5 : 3;
  const std::vector<double> cells = file.numbers(node, "interaction", 3, most);
  if (cells.size() < 3) return {};
  Interaction pair{whole_of(file, node, cells[0]), whole_of(file, node, cells[1]), cells[2], 0, 0};
  if (cells.size() > 3) pair.b = cells[3];
  if (cells.size() > 4) pair.c = cells[4];
  return pair;
}

void check_table(YamlFile& file, const YamlNode& node, const GroupTable& table) {
  for (std::size_t i = 1; i < table.subgroups.size(); ++i)
    if (table.subgroups[i].number == table.subgroups[i - 1].number)
      file.complain(node, fmt::format("subgroup {} stands there twice", table.subgroups[i].number));
  for (std::size_t i = 1; i < table.interactions.size(); ++i) {
    const Interaction& pair = table.interactions[i];
    if (pair.from == table.interactions[i - 1].from && pair.to == table.interactions[i - 1].to)
      file.complain(node, fmt::format("the pair {}, {} stands there twice", pair.from, pair.to));
  }
}

void read_molecules(YamlFile& file, const YamlNode& node, Chemistry& chemistry) {
  if (node.kind != YamlNode::Kind::map) file.complain(node, "molecules are written as id: {number: count}");
  for (const YamlNode::Entry& entry : node.entries)
    chemistry.modified_groups.push_back(
        {entry.key, read_groups(file, entry.value), "gentlest_groups", Standing::derived});
}

std::pair<std::string, std::string> read_pair(YamlFile& file, const YamlNode& node) {
  const std::vector<std::string> ids = file.texts(node, "pair");
  if (ids.size() == 2) return {ids[0], ids[1]};
  file.complain(node, "a pair names two solvents", "write [one, other]");
  return {};
}

KnownPair read_known_pair(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "pair");
  KnownPair pair;
  if (const YamlNode* both = map.need("pair")) std::tie(pair.a, pair.b) = read_pair(file, *both);
  const std::string word = map.need_text("mixing");
  if (const auto mixing = mixing_from_word(word))
    pair.mixing = *mixing;
  else
    file.complain(node, fmt::format("\"{}\" does not say how the pair mixes", word),
                  "write one_liquid, partial or two_liquids");
  pair.critical_temperature_C = map.number_within("critical_temperature_C", -200, 400);
  pair.note = map.text("note");
  pair.source = map.need_text("source");
  pair.standing = read_standing(map);
  map.done();
  return pair;
}

void read_chart(YamlFile& file, const YamlNode& node, Chemistry& chemistry) {
  YamlMap map(file, node, "chart");
  KnownPair pair;
  pair.source = map.need_text("source");
  pair.standing = read_standing(map);
  for (const Mixing mixing : {Mixing::one_liquid, Mixing::partial, Mixing::two_liquids})
    if (const YamlNode* list = map.find(to_word(mixing)))
      for (const YamlNode& item : file.list(*list, "pairs")) {
        std::tie(pair.a, pair.b) = read_pair(file, item);
        pair.mixing = mixing;
        chemistry.known_pairs.push_back(pair);
      }
  map.done();
}

void read_numbers(YamlFile& file, const YamlNode& node, Chemistry& chemistry) {
  YamlMap map(file, node, "miscibility numbers");
  const std::string source = map.need_text("source");
  const Standing standing = read_standing(map);
  if (const YamlNode* of = map.need("of"))
    for (const YamlNode::Entry& entry : of->entries) {
      const std::vector<double> numbers = file.numbers(entry.value, "miscibility number", 1, 2);
      if (numbers.empty()) continue;
      MiscibilityNumber record{entry.key, whole_of(file, entry.value, numbers[0]), std::nullopt, source, standing};
      if (numbers.size() == 2) record.second = whole_of(file, entry.value, numbers[1]);
      chemistry.miscibility_numbers.push_back(std::move(record));
    }
  map.done();
}

StandIn read_stand_in(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "stand-in");
  StandIn stand_in;
  stand_in.solvent = map.need_text("solvent");
  double sum = 0;
  if (const YamlNode* shares = map.need("shares"))
    for (const YamlNode::Entry& entry : shares->entries) {
      stand_in.shares.push_back({entry.key, file.number(entry.value, "share")});
      if (!(stand_in.shares.back().fraction > 0)) file.complain(entry.value, "a share must be above 0");
      sum += stand_in.shares.back().fraction;
    }
  if (std::abs(sum - 1) > 1e-9) file.complain(node, fmt::format("the shares add up to {:.6g}, not to 1", sum));
  stand_in.source = map.need_text("source");
  stand_in.standing = read_standing(map);
  stand_in.note = map.text("note");
  map.done();
  return stand_in;
}

}  // namespace

void read_unifac(YamlFile& file, Chemistry& chemistry) {
  YamlMap map(file, file.root(), "a file of group parameters");
  if (const YamlNode* node = map.need("unifac")) {
    YamlMap set(file, *node, "unifac");
    GroupTable table;
    table.modified = set.truth("modified", false);
    const bool for_two_liquids = set.truth("for_two_liquids", false);
    table.source = set.need_text("source");
    if (const YamlNode* list = set.need("subgroups"))
      for (const YamlNode& item : file.list(*list, "subgroups")) table.subgroups.push_back(read_subgroup(file, item));
    if (const YamlNode* list = set.need("interactions"))
      for (const YamlNode& item : file.list(*list, "interactions"))
        table.interactions.push_back(read_interaction(file, item, table.modified));
    sort_table(table);
    check_table(file, *node, table);
    if (const YamlNode* molecules = set.find("molecules")) read_molecules(file, *molecules, chemistry);
    set.done();
    (for_two_liquids  ? chemistry.unifac_liquids
     : table.modified ? chemistry.unifac_modified
                      : chemistry.unifac) = std::move(table);
  }
  map.done();
}

void read_stand_ins(YamlFile& file, Chemistry& chemistry) {
  YamlMap map(file, file.root(), "stand_ins.yaml");
  if (const YamlNode* list = map.need("stand_ins"))
    for (const YamlNode& item : file.list(*list, "stand_ins")) chemistry.stand_ins.push_back(read_stand_in(file, item));
  map.done();
}

void read_miscibility(YamlFile& file, Chemistry& chemistry) {
  YamlMap map(file, file.root(), "miscibility.yaml");
  if (const YamlNode* list = map.need("pairs"))
    for (const YamlNode& item : file.list(*list, "pairs")) chemistry.known_pairs.push_back(read_known_pair(file, item));
  if (const YamlNode* chart = map.need("chart")) read_chart(file, *chart, chemistry);
  if (const YamlNode* numbers = map.need("numbers")) read_numbers(file, *numbers, chemistry);
  map.done();
}

void read_cautions(YamlFile& file, Chemistry& chemistry) {
  YamlMap map(file, file.root(), "cautions.yaml");
  if (const YamlNode* list = map.need("incompatible_pairs"))
    for (const YamlNode& item : file.list(*list, "incompatible_pairs")) {
      YamlMap pair(file, item, "incompatible pair");
      IncompatiblePair read;
      if (const YamlNode* both = pair.need("pair")) std::tie(read.a, read.b) = read_pair(file, *both);
      read.forbidden = pair.truth("forbidden", false);
      read.why = pair.need_text("why");
      read.source = pair.need_text("source");
      read.standing = read_standing(pair);
      pair.done();
      chemistry.incompatible_pairs.push_back(std::move(read));
    }
  if (const YamlNode* list = map.need("gloves"))
    for (const YamlNode& item : file.list(*list, "gloves")) {
      YamlMap glove(file, item, "glove note");
      GloveNote read{glove.need_text("family"), glove.need_text("words"), glove.need_text("source"), {}};
      read.standing = read_standing(glove);
      glove.done();
      chemistry.glove_notes.push_back(std::move(read));
    }
  map.done();
}

}  // namespace gentlest
