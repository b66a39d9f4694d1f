// Reader of conditioned.yaml: what observations made of the spheres. Complains about what is wrong in the file.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"
#include "io/yaml_reader.hpp"

namespace gentlest {

void read_conditionings(YamlFile& file, CatalogueRecords& records);

}  // namespace gentlest
