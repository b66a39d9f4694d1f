// What every report has in common: the form asked for, how it may look, and which editions it rests on.
#pragma once

#include "gentlest/base/source.hpp"

#include <cstddef>
#include <string>

namespace gentlest {

enum class Form { text, csv, json };

/// Columns of a text that goes to no terminal, and the narrowest and widest page that a text follows.
inline constexpr std::size_t usual_width = 80;
inline constexpr std::size_t narrowest_width = 60;
inline constexpr std::size_t widest_width = 140;

/// How a text may look. Bold is the only ornament, and never the only sign of anything.
struct Style {
  bool bold = false;
  std::size_t width = usual_width;  ///< no line is wider, in columns of a terminal
};

/// Printed in every report, so that a result can be traced.
struct Edition {
  std::string program;
  std::string catalogue;
  Law law = {};  ///< up to which day the law on hazards was seen
};

}  // namespace gentlest
