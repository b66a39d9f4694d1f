// Readers of the catalogue files about liquids together: group parameters, stand-ins, miscibility, water in
// alcohols, cautions. They add to the records and leave faults with the file. Internal to io.
#pragma once

#include "io/yaml_reader.hpp"

#include "gentlest/catalogue/chemistry.hpp"

namespace gentlest {

/// unifac.yaml, unifac_dortmund.yaml, unifac_liquids.yaml; the file says which of the three sets it is.
void read_unifac(YamlFile& file, Chemistry& chemistry);
void read_stand_ins(YamlFile& file, Chemistry& chemistry);
void read_miscibility(YamlFile& file, Chemistry& chemistry);
void read_water_limits(YamlFile& file, Chemistry& chemistry);
void read_strengths(YamlFile& file, Chemistry& chemistry);
void read_cautions(YamlFile& file, Chemistry& chemistry);

}  // namespace gentlest
