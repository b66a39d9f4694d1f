// A tree of nodes as JSON text, which is read many times faster than the YAML it came from: the catalogue inside the
// program. A mark of ours stands before what was quoted, for "12" is a text and 12 a number. Places are not kept.
#pragma once

#include "io/yaml_reader.hpp"

#include <string>

namespace gentlest {

std::string kept_text(const YamlNode& node);

/// Of a text that kept_text made; throws std::invalid_argument of any other.
YamlNode kept_tree(const std::string& text);

}  // namespace gentlest
