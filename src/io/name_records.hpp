// Names as the catalogue's files write them: those of a record, and those that mean more than one. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/catalogue.hpp"

#include <vector>

namespace gentlest {

/// The names under a key of a record: a list of English ones, or a list for each language,
/// {en: [...], de: [...], trade: [...]}. None where the key is missing.
std::vector<OtherName> read_names(YamlMap& record, const char* key);

/// names.yaml.
void read_ambiguous_names(YamlFile& file, CatalogueRecords& records);

}  // namespace gentlest
