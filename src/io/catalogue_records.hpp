// One reader for each kind of catalogue file; they add to the records and leave faults with the file. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/catalogue.hpp"

namespace gentlest {

void read_law(YamlFile& file, CatalogueRecords& records);
void read_sources(YamlFile& file, CatalogueRecords& records);
void read_liquids(YamlFile& file, CatalogueRecords& records);
void read_materials(YamlFile& file, CatalogueRecords& records);
void read_spreads(YamlFile& file, CatalogueRecords& records);
void read_response(YamlFile& file, CatalogueRecords& records);

/// A list of flags of a material, by their words.
std::vector<Flag> read_flags(YamlFile& file, const YamlNode& node, const char* key);

}  // namespace gentlest
