// What files of facts share: liquids with their shares. Internal to io.
#pragma once

#include "io/word_of_list.hpp"
#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/observation.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// "isooctane 70, ethanol 30", all in per cent by volume, or one id alone. Complains of what is none of this; whether
/// the ids exist is the catalogue's business.
std::vector<ObservedPart> read_parts(YamlFile& file, const YamlNode& node);

}  // namespace gentlest
