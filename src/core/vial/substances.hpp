// A mixture under the names that publications on mixing use: water apart from its alcohol, cuts as cuts. Internal to
// core.
#pragma once

#include "gentlest/liquids/mixture.hpp"

#include <string>
#include <vector>

namespace gentlest {

struct Substance {
  const Solvent* solvent = nullptr;  ///< null for water that came with an alcohol
  std::string id;
  std::string name;
  double fraction = 0;  ///< by volume before mixing
};

std::vector<Substance> substances_of(const Mixture& mixture);

}  // namespace gentlest
