#include "io/conditioning_records.hpp"

#include <algorithm>

namespace gentlest {

namespace {

// Empty after a fault, else just so many.
std::vector<double> need_numbers(YamlMap& map, const char* key, std::size_t count) {
  const YamlNode* node = map.need(key);
  if (!node) return {};
  const std::size_t before = map.file().faults().size();
  std::vector<double> numbers = map.file().numbers(*node, key, count, count);
  return map.file().faults().size() == before ? numbers : std::vector<double>();
}

std::optional<UncertainSphere> read_uncertain_sphere(YamlMap& map) {
  const YamlNode* node = map.find("sphere");
  if (!node) return std::nullopt;
  const std::vector<double> mean = need_numbers(map, "sphere", 4);
  const std::vector<double> sd = need_numbers(map, "sd", 4);
  const std::vector<double> with = need_numbers(map, "covariances", 6);
  if (mean.empty() || sd.empty() || with.empty()) return std::nullopt;
  if (!(mean[3] > 0)) map.file().complain(*node, "the radius R0 must be above 0");
  if (*std::min_element(sd.begin(), sd.end()) < 0) map.file().complain(*node, "a standard deviation cannot be below 0");
  return UncertainSphere{{{mean[0], mean[1], mean[2]}, mean[3]},
                         {sd[0], sd[1], sd[2]},
                         sd[3],
                         {with[0], with[1], with[2], with[3], with[4], with[5]}};
}

LocalReach read_reach(YamlMap& map, double length) {
  LocalReach reach{{}, length};
  const YamlNode* node = map.find("reach");
  if (!node) return reach;
  for (const YamlNode& item : map.file().list(*node, "reach")) {
    const std::size_t before = map.file().faults().size();
    const std::vector<double> n = map.file().numbers(item, "reach [dD, dP, dH, weight]", 4, 4);
    if (map.file().faults().size() == before) reach.places.push_back({{n[0], n[1], n[2]}, n[3]});
  }
  return reach;
}

int need_count(YamlMap& map, const char* key) {
  constexpr int most = 100000;
  if (!map.need(key)) return 0;
  return map.whole_within(key, 0, most).value_or(0);
}

Conditioning read_one(YamlFile& file, const YamlNode& node, double length) {
  YamlMap map(file, node, "conditioned");
  Conditioning one;
  one.material = map.need_text("material");
  one.sphere = read_uncertain_sphere(map);
  one.reach = read_reach(map, length);
  one.observations = need_count(map, "observations");
  one.sources = need_count(map, "sources");
  one.clear_cut = need_count(map, "clear_cut");
  one.right = need_count(map, "right");
  one.brier = map.number_within("brier", 0, 1).value_or(0);
  one.misfits = map.texts("misfits");
  map.done();
  return one;
}

}  // namespace

void read_conditionings(YamlFile& file, CatalogueRecords& records) {
  YamlMap map(file, file.root(), "conditioned.yaml");
  records.swab_ln_further = map.number_within("swab_ln_further", 0, 3).value_or(0);
  const double length = map.number_within("reach_length", 0.1, 100).value_or(1);
  if (const YamlNode* node = map.need("conditioned"))
    for (const YamlNode& item : file.list(*node, "conditioned")) {
      Conditioning one = read_one(file, item, length);
      const bool doubled = std::any_of(records.conditionings.begin(), records.conditionings.end(),
                                       [&](const Conditioning& other) { return other.material == one.material; });
      if (doubled) file.complain(item, "\"" + one.material + "\" stands twice in this file", "leave one");
      records.conditionings.push_back(std::move(one));
    }
  map.done();
}

}  // namespace gentlest
