// What a gentler mixture gives up against the original.
#pragma once

#include "gentlest/answers/substitute.hpp"

#include <string>
#include <vector>

namespace gentlest {

/// "lies 1.20 MPa^0.5 from the original", "dries faster, ..."; never empty.
std::vector<std::string> gives_up_words(const Substitute& substitute);

}  // namespace gentlest
