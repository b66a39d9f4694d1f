// The fields of a reading, once: `record`, tables, the log, lists and reports walk this table.
#pragma once

#include "gentlest/learning/reading.hpp"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace gentlest {

/// What a value of a log line is.
enum class FieldKind { whole, number, truth, text };

/// A field's content for a table: nothing, words, a number, yes and no.
using FieldValue = std::variant<std::monostate, std::string, double, bool>;

struct ReadingField {
  std::string_view key;  ///< in the log, as a table's column and before "=" of `record`; carries the unit
  FieldKind kind = FieldKind::text;
  std::vector<std::string_view> words;  ///< those that it may hold; empty: any
  std::string help;                     ///< what is expected, for messages

  /// As text, empty when there is none: numbers with a point, truth as "yes" or empty.
  std::string (*text)(const Reading&) = nullptr;
  /// From a text that is not empty; false when it is not understood, the reading is then unchanged.
  bool (*set)(Reading&, const std::string&) = nullptr;
  /// As if the key had never been given; x_cm or y_cm the whole site.
  void (*clear)(Reading&) = nullptr;
  /// As it stands, with what it is taken for where nothing was said.
  FieldValue (*value)(const Reading&) = nullptr;
};

/// All fields in the order in which a line of the log shows them.
const std::vector<ReadingField>& reading_fields();

/// Null when there is none of that key.
const ReadingField* find_field(std::string_view key);

/// Precondition for both: the key is known.
std::string get_field(const Reading& reading, std::string_view key);
FieldValue field_value(const Reading& reading, std::string_view key);

/// Sets a value from its text, an empty one clears it. False when it is not understood, or no such key is known.
bool set_field(Reading& reading, std::string_view key, const std::string& text);

}  // namespace gentlest
