// Cuts what was typed into phrases. Internal to core.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

struct Phrase {
  std::string text;
  std::string key;  ///< of the reading, where a label with a colon stood before it
  bool is_quoted = false;
  bool is_remark = false;  ///< behind " -- "
  bool ends_head = false;  ///< a colon stood behind it, and it is no label
  std::size_t begin = 0;   ///< where it stands in the text that was cut
  std::size_t end = 0;
};

/// At commas, semicolons, line breaks and colons, but not between digits nor in quotes.
std::vector<Phrase> phrases_of(std::string_view text);

}  // namespace gentlest
