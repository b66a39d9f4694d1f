// Reads figures that carry their source: "{value: 4, source: key, standing: measured}". Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/catalogue.hpp"

#include <optional>
#include <string>

namespace gentlest {

// One overload for each type of figure; complains at the node when the value has another form.
void read_value(YamlFile& file, const YamlNode& node, double& value);
void read_value(YamlFile& file, const YamlNode& node, bool& value);
void read_value(YamlFile& file, const YamlNode& node, std::string& value);
void read_value(YamlFile& file, const YamlNode& node, Hansen& value);
void read_value(YamlFile& file, const YamlNode& node, Teas& value);
void read_value(YamlFile& file, const YamlNode& node, Sphere& value);
void read_value(YamlFile& file, const YamlNode& node, UncertainSphere& value);  // [sd dD, sd dP, sd dH, sd R0]
void read_value(YamlFile& file, const YamlNode& node, ExplosiveLimits& value);
void read_value(YamlFile& file, const YamlNode& node, PrintedRange& value);
void read_value(YamlFile& file, const YamlNode& node, Antoine& value);

/// The key "standing" of a record; complains when it is missing or not a word we know.
Standing read_standing(YamlMap& map);

/// Key "source", "standing" and "note" of the record, and its value.
template <class T>
Cited<T> read_cited(YamlMap& map) {
  Cited<T> figure;
  if (const YamlNode* value = map.need("value")) read_value(map.file(), *value, figure.value);
  figure.source = map.need_text("source");
  figure.standing = read_standing(map);
  figure.note = map.text("note");
  return figure;
}

template <class T>
std::optional<Cited<T>> read_cited(YamlMap& parent, const char* key) {
  const YamlNode* node = parent.find(key);
  if (!node) return std::nullopt;
  YamlMap map(parent.file(), *node, key);
  Cited<T> figure = read_cited<T>(map);
  map.done();
  return figure;
}

/// A figure on which publications may disagree: others stand beside it, with the reason of the choice.
template <class T>
std::optional<Known<T>> read_known(YamlMap& parent, const char* key) {
  const YamlNode* node = parent.find(key);
  if (!node) return std::nullopt;
  YamlMap map(parent.file(), *node, key);
  Known<T> known;
  known.chosen = read_cited<T>(map);
  if (const YamlNode* others = map.find("others"))
    for (const YamlNode& item : parent.file().list(*others, "others")) {
      YamlMap other(parent.file(), item, "another value");
      known.others.push_back(read_cited<T>(other));
      other.done();
    }
  known.why = map.text("why");
  if (!known.others.empty() && known.why.empty())
    parent.file().complain(*node, "published values disagree, but there is no reason for the one chosen", "add why:");
  map.done();
  return known;
}

/// Either of the two, as the figure's type asks; what is left out stays empty.
template <class T>
void read_figure(YamlMap& parent, const char* key, std::optional<Cited<T>>& figure) {
  figure = read_cited<T>(parent, key);
}
template <class T>
void read_figure(YamlMap& parent, const char* key, std::optional<Known<T>>& figure) {
  figure = read_known<T>(parent, key);
}

}  // namespace gentlest
