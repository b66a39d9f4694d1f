// The catalogue's records on liquids together, read from solvents/ as the program reads them.
#pragma once

#include "gentlest/chemistry.hpp"
#include "gentlest/diagnostic.hpp"

#include "io/chemistry_records.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

namespace gentlest::test {

template <class Reader>
void read_chemistry_file(const std::string& name, Chemistry& chemistry, Reader read) {
  const std::string path = std::string(GENTLEST_SOURCE_DIR) + "/solvents/" + name;
  std::ifstream in(path);
  std::stringstream text;
  text << in.rdbuf();
  YamlFile file(path, text.str());
  read(file, chemistry);
  if (!file.faults().empty()) throw std::runtime_error(render(file.faults()));
}

inline Chemistry read_group_tables() {
  Chemistry chemistry;
  read_chemistry_file("unifac.yaml", chemistry, read_unifac);
  read_chemistry_file("unifac_dortmund.yaml", chemistry, read_unifac);
  return chemistry;
}

/// Read once for all tests.
inline const Chemistry& group_tables() {
  static const Chemistry chemistry = read_group_tables();
  return chemistry;
}

}  // namespace gentlest::test
