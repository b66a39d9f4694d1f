// other_ways.yaml. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/catalogue.hpp"

namespace gentlest {

void read_other_ways(YamlFile& file, CatalogueRecords& records);

}  // namespace gentlest
