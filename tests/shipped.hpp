// The catalogue that travels inside the program, read once for all tests.
#pragma once

#include "io/catalogue_files.hpp"

namespace gentlest::test {

inline const Catalogue& shipped_catalogue() {
  static const Catalogue catalogue = read_catalogue(embedded_catalogue());
  return catalogue;
}

}  // namespace gentlest::test
