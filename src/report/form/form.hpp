// What every report has in common: the form asked for, how it may look, and which editions it rests on.
#pragma once

#include "gentlest/base/source.hpp"

#include <cstddef>
#include <string>

namespace gentlest {

enum class Form { text, csv, json };

/// Widest line of any text report, in columns of a terminal.
inline constexpr std::size_t page_width = 100;

/// How a text may look. Bold is the only ornament, and never the only sign of anything.
struct Style {
  bool bold = false;
};

/// Printed in every report, so that a result can be traced.
struct Edition {
  std::string program;
  std::string catalogue;
  Law law = {};  ///< up to which day the law on hazards was seen
};

}  // namespace gentlest
