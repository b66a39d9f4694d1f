#include "io/cited_figures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

void read_value(YamlFile& file, const YamlNode& node, double& value) {
  value = file.number(node, "value");
}

void read_value(YamlFile& file, const YamlNode& node, bool& value) {
  value = file.truth(node, "value");
}

void read_value(YamlFile& file, const YamlNode& node, std::string& value) {
  value = file.text(node, "value");
}

void read_value(YamlFile& file, const YamlNode& node, Hansen& value) {
  const std::vector<double> n = file.numbers(node, "value [dD, dP, dH]", 3, 3);
  value = {n[0], n[1], n[2]};
}

void read_value(YamlFile& file, const YamlNode& node, Teas& value) {
  const std::vector<double> n = file.numbers(node, "value [fd, fp, fh]", 3, 3);
  value = {n[0], n[1], n[2]};
}

void read_value(YamlFile& file, const YamlNode& node, Sphere& value) {
  const std::size_t before = file.faults().size();
  const std::vector<double> n = file.numbers(node, "value [dD, dP, dH, R0]", 4, 4);
  value = {{n[0], n[1], n[2]}, n[3]};
  if (file.faults().size() == before && !(value.R0 > 0)) file.complain(node, "the radius R0 must be above 0");
}

void read_value(YamlFile& file, const YamlNode& node, UncertainSphere& value) {
  const std::vector<double> n = file.numbers(node, "value [sd dD, sd dP, sd dH, sd R0]", 4, 4);
  value = {{}, {n[0], n[1], n[2]}, n[3]};
  if (*std::min_element(n.begin(), n.end()) < 0) file.complain(node, "a standard deviation cannot be below 0");
}

void read_value(YamlFile& file, const YamlNode& node, ExplosiveLimits& value) {
  const std::vector<double> n = file.numbers(node, "value [lower, upper]", 1, 2);
  value.lower_percent = n[0];
  if (node.items.size() == 2) value.upper_percent = n[1];
}

void read_value(YamlFile& file, const YamlNode& node, PrintedRange& value) {
  const std::vector<double> n = file.numbers(node, "value [low, high]", 2, 2);
  value = {n[0], n[1]};
  if (value.high < value.low) file.complain(node, "the end of a range cannot lie below its beginning");
}

void read_value(YamlFile& file, const YamlNode& node, Antoine& value) {
  const std::vector<double> n = file.numbers(node, "value [A, B, C, from_K, to_K]", 5, 5);
  value = {n[0], n[1], n[2], n[3], n[4]};
}

Standing read_standing(YamlMap& map) {
  constexpr Standing all[] = {Standing::measured, Standing::estimated, Standing::derived, Standing::memory,
                              Standing::assumed};
  const YamlNode* node = map.need("standing");
  if (!node) return Standing::memory;
  const std::string word = map.file().text(*node, "standing");
  for (const Standing standing : all)
    if (to_word(standing) == word) return standing;
  map.file().complain(*node, fmt::format("\"{}\" is not a standing", word),
                      "write measured, estimated, derived, from memory or assumed");
  return Standing::memory;
}

}  // namespace gentlest
