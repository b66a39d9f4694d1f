// The page for whoever has no terminal, as it was built into the program.
#pragma once

#include <string>

namespace gentlest {

/// The whole file gentlest.html; empty where the program was built without it (docs/page.md).
std::string own_page();

}  // namespace gentlest
