// The lines of a YAML file as a person sees them: indentation, dash, key, value. Rough on purpose: it is asked only of
// files that the parser does not take.
#pragma once

#include "io/yaml_slips.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// One line that is neither empty nor a remark. All texts are parts of `text`, which must outlive it.
struct YamlLine {
  int number = 0;           ///< from 1
  std::string_view text;    ///< the whole line
  std::string_view blanks;  ///< in front: spaces and tabs
  std::string_view content;
  bool is_item = false;   ///< begins with "- "
  std::string_view item;  ///< the content behind the dash
  std::size_t item_at = 0;
  std::string_view key;    ///< in front of ": "; empty where there is none
  std::string_view value;  ///< behind it, without a remark; or the whole item
  std::size_t value_at = 0;
  bool is_inside = false;  ///< inside a bracket of a line above, or a block text

  int indent() const { return static_cast<int>(blanks.size()); }
  /// Where the key stands: behind the dash.
  int own_indent() const { return static_cast<int>(item_at); }
  bool is_open_key() const { return !key.empty() && value.empty(); }
  /// "note: |": the text stands in the lines below.
  bool opens_block_text() const;
};

/// Where the quote with which the text begins is closed; npos where it is not.
std::size_t end_of_quote(std::string_view text);

/// The lines, and the slips inside brackets, which may go over several of them.
std::vector<YamlLine> yaml_lines(const std::vector<std::string>& texts, std::vector<YamlSlip>& slips);

}  // namespace gentlest
