// A key whose value is one word of a list. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>

namespace gentlest {

/// The word at a node; `otherwise` where it is none, with a complaint that names the `words` there are.
template <class Enum>
Enum word_at(YamlFile& file, const YamlNode& node, const char* key, std::optional<Enum> (*from_word)(std::string_view),
             Enum otherwise, const std::string& words) {
  const std::size_t before = file.faults().size();
  const std::string word = file.text(node, key);
  if (const std::optional<Enum> value = from_word(word)) return *value;
  if (file.faults().size() == before)
    file.complain(node, fmt::format("{} \"{}\" is none of the words for it", key, word),
                  fmt::format("write {}", words));
  return otherwise;
}

/// The same of a key that must stand there.
template <class Enum>
Enum read_word(YamlMap& map, const char* key, std::optional<Enum> (*from_word)(std::string_view), Enum otherwise,
               const std::string& words) {
  const YamlNode* node = map.need(key);
  return node ? word_at(map.file(), *node, key, from_word, otherwise, words) : otherwise;
}

}  // namespace gentlest
