// Reads the files of solvents/observations/. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/catalogue.hpp"

namespace gentlest {

/// Adds the observations of one file; whether their names exist is the catalogue's business.
void read_observations(YamlFile& file, CatalogueRecords& records);

}  // namespace gentlest
