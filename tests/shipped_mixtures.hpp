// Mixtures of the shipped catalogue's liquids, by their text.
#pragma once

#include "shipped.hpp"

#include "gentlest/liquids/mixture.hpp"
#include "gentlest/liquids/notation.hpp"

#include <string>

namespace gentlest::test {

/// "ethanol 96 % 15, white spirit 85".
inline Mixture mixture_from(const std::string& text) {
  return parse_mixture(text, shipped_catalogue());
}

}  // namespace gentlest::test
