// The keys of a reading, once for the log and for tables. Internal to io.
#pragma once

#include "gentlest/learning/reading.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// What a value of a log line is.
enum class FieldKind { whole, number, truth, text };

struct ReadingField {
  std::string_view key;
  FieldKind kind;
  std::string_view help;  ///< what is expected, for messages
};

/// All keys in the order in which a line shows them.
const std::vector<ReadingField>& reading_fields();
const ReadingField* find_field(std::string_view key);

/// The value as text, empty when there is none: numbers with a point, truth as "yes" or empty.
std::string get_field(const Reading& reading, std::string_view key);

/// Sets a value from its text; an empty one clears it, x_cm or y_cm the whole site. False when it is not understood;
/// the reading is then unchanged.
bool set_field(Reading& reading, std::string_view key, const std::string& text);

}  // namespace gentlest
