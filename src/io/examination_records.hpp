// Reads solvents/examination.yaml. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/catalogue.hpp"

namespace gentlest {

/// Whether sources and families exist is the catalogue's business.
void read_examination(YamlFile& file, CatalogueRecords& records);

}  // namespace gentlest
