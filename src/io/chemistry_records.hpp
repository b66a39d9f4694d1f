// Readers of the catalogue files about liquids together: group parameters, stand-ins, miscibility, cautions. They add
// to the records and leave faults with the file. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/chemistry.hpp"

namespace gentlest {

/// unifac.yaml and unifac_dortmund.yaml; the file says which of the two sets it is.
void read_unifac(YamlFile& file, Chemistry& chemistry);
void read_stand_ins(YamlFile& file, Chemistry& chemistry);
void read_miscibility(YamlFile& file, Chemistry& chemistry);
void read_cautions(YamlFile& file, Chemistry& chemistry);

}  // namespace gentlest
