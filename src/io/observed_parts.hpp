// What files of facts share: one word of a list, and liquids with their shares. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/observation.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

// A key whose value is one word of a list.
template <class Enum>
Enum read_word(YamlMap& map, const char* key, std::optional<Enum> (*from_word)(std::string_view), Enum otherwise,
               const char* words) {
  const YamlNode* node = map.need(key);
  if (!node) return otherwise;
  const std::size_t before = map.file().faults().size();
  const std::string word = map.file().text(*node, key);
  if (const std::optional<Enum> value = from_word(word)) return *value;
  if (map.file().faults().size() == before)
    map.file().complain(*node, fmt::format("{} \"{}\" is none of the words for it", key, word),
                        fmt::format("write {}", words));
  return otherwise;
}

/// "isooctane 70, ethanol 30", all in per cent by volume, or one id alone. Complains of what is none of this; whether
/// the ids exist is the catalogue's business.
std::vector<ObservedPart> read_parts(YamlFile& file, const YamlNode& node);

}  // namespace gentlest
