// The catalogue that travels inside the program, read once for all tests, and the files that it was made from.
#pragma once

#include "io/catalogue_files.hpp"

namespace gentlest::test {

inline const Catalogue& shipped_catalogue() {
  static const Catalogue catalogue = read_kept_catalogue(embedded_catalogue());
  return catalogue;
}

inline const std::vector<NamedText>& shipped_files() {
  static const std::vector<NamedText> files = collect_catalogue(GENTLEST_SOURCE_DIR "/solvents");
  return files;
}

}  // namespace gentlest::test
