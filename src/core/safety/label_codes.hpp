// The statements of a label by their codes.
#pragma once

#include "gentlest/safety/mixture_hazard.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// In the order of the label.
inline std::vector<std::string> codes_of(const MixtureLabel& label) {
  std::vector<std::string> codes;
  for (const LabelStatement& statement : label.statements) codes.push_back(statement.code);
  return codes;
}

}  // namespace gentlest
