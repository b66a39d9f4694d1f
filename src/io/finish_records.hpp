// Reads solvents/afterwards.yaml. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/catalogue.hpp"

namespace gentlest {

/// Adds what the file holds; whether its names exist is the catalogue's business.
void read_finishes(YamlFile& file, CatalogueRecords& records);

}  // namespace gentlest
