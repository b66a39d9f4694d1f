// Readers of water_limits.yaml and strengths.yaml.
#include "io/chemistry_records.hpp"
#include "io/cited_figures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

// [share of the wet alcohol, water in it] or the same with what the group method gives there.
WaterLimit::Point read_limit_point(YamlFile& file, const YamlNode& node) {
  const std::vector<double> cells = file.numbers(node, "point of a water limit", 2, 3);
  const bool has_computed = node.items.size() == 3;
  for (const double cell : cells)
    if (!(cell >= 0 && cell <= 100)) file.complain(node, fmt::format("{} is outside 0 to 100 %", cell));
  return {cells[0], cells[1], has_computed ? std::optional(cells[2]) : std::nullopt};
}

void check_limit_points(YamlFile& file, const YamlNode& node, const WaterLimit& limit) {
  if (limit.points.empty()) return file.complain(node, "a water limit needs at least one point");
  for (std::size_t i = 1; i < limit.points.size(); ++i)
    if (limit.points[i].wet_percent <= limit.points[i - 1].wet_percent)
      file.complain(node, "the points of a water limit stand by rising share of the alcohol");
  const bool lacks = std::any_of(limit.points.begin(), limit.points.end(),
                                 [](const WaterLimit::Point& point) { return !point.computed_percent; });
  if (limit.corrects && lacks)
    file.complain(node, "a limit that corrects others gives the computed limit at each point",
                  "write [share of the alcohol, water measured, water computed]");
}

WaterLimit read_water_limit(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "water limit");
  WaterLimit limit;
  limit.alcohol = map.need_text("alcohol");
  limit.other = map.need_text("other");
  for (const char* key : {"temperature_C", "used_from_percent", "used_to_percent", "spread_percent"}) map.need(key);
  limit.temperature_C = map.number_within("temperature_C", -20, 60).value_or(25);
  limit.from_wet_percent = map.number_within("used_from_percent", 0, 100).value_or(0);
  limit.to_wet_percent = map.number_within("used_to_percent", 0, 100).value_or(0);
  limit.spread_percent = map.number_within("spread_percent", 0, 10).value_or(0);
  if (limit.from_wet_percent > limit.to_wet_percent)
    file.complain(node, "used_from_percent lies above used_to_percent", "write the smaller share first");
  if (const YamlNode* list = map.need("points"))
    for (const YamlNode& item : file.list(*list, "points")) limit.points.push_back(read_limit_point(file, item));
  if (const YamlNode* kind = map.find("corrects")) {
    limit.corrects = hydrocarbon_kind_from_word(file.text(*kind, "corrects"));
    if (!limit.corrects) file.complain(*kind, "no such kind of hydrocarbon", "write aliphatic or aromatic");
  }
  check_limit_points(file, node, limit);
  limit.source = map.need_text("source");
  limit.standing = read_standing(map);
  limit.note = map.text("note");
  map.done();
  return limit;
}

// Rising shares from 0 to 100 with densities that fall: what lies between can be read off.
void check_strengths(YamlFile& file, const YamlNode& node, const StrengthTable& table) {
  for (std::size_t i = 1; i < table.points.size(); ++i)
    if (table.points[i].mass_percent <= table.points[i - 1].mass_percent ||
        table.points[i].density_kg_per_m3 >= table.points[i - 1].density_kg_per_m3)
      return file.complain(node, "densities fall as the share of the alcohol rises", "sort the points by rising share");
  if (table.points.size() < 2 || table.points.front().mass_percent != 0 || table.points.back().mass_percent != 100)
    file.complain(node, "densities of an alcohol in water go from 0 to 100 % by weight");
}

StrengthTable read_strength_table(YamlFile& file, const YamlNode& node) {
  YamlMap map(file, node, "densities of an alcohol in water");
  StrengthTable table;
  table.alcohol = map.need_text("alcohol");
  if (const YamlNode* list = map.need("points"))
    for (const YamlNode& item : file.list(*list, "points")) {
      const std::vector<double> cells = file.numbers(item, "density", 2, 2);
      if (!(cells[0] >= 0 && cells[0] <= 100) || !(cells[1] > 500 && cells[1] < 1100))
        file.complain(item, "this is no share by weight with a density in kg/m3", "write for example [94, 807.0]");
      table.points.push_back({cells[0], cells[1]});
    }
  check_strengths(file, node, table);
  table.source = map.need_text("source");
  table.standing = read_standing(map);
  table.note = map.text("note");
  map.done();
  return table;
}

}  // namespace

void read_water_limits(YamlFile& file, Chemistry& chemistry) {
  YamlMap map(file, file.root(), "water_limits.yaml");
  if (const YamlNode* list = map.need("water_limits"))
    for (const YamlNode& item : file.list(*list, "water_limits"))
      chemistry.water_limits.push_back(read_water_limit(file, item));
  map.done();
}

void read_strengths(YamlFile& file, Chemistry& chemistry) {
  YamlMap map(file, file.root(), "strengths.yaml");
  if (const YamlNode* list = map.need("strengths"))
    for (const YamlNode& item : file.list(*list, "strengths"))
      chemistry.strengths.push_back(read_strength_table(file, item));
  map.done();
}

}  // namespace gentlest
