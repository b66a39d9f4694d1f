// The catalogue of solvents/ as the program reads it, read once for all tests.
#pragma once

#include "gentlest/mixture.hpp"

#include "io/catalogue_files.hpp"

#include <string>

namespace gentlest::test {

inline const Catalogue& whole_catalogue() {
  static const Catalogue catalogue =
      read_catalogue(collect_catalogue(std::string(GENTLEST_SOURCE_DIR) + "/solvents"), "solvents");
  return catalogue;
}

/// "ethanol 96 % 15, white_spirit 85" as a mixture of the catalogue's liquids.
inline Mixture mixture_from(const std::string& text) {
  return parse_mixture(text, whole_catalogue());
}

}  // namespace gentlest::test
