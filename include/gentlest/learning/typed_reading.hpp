// A reading as it was typed or stands in a row of a table.
#pragma once

#include "gentlest/learning/reading.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// What was not named is not known to be empty.
struct TypedReading {
  Reading reading;
  std::vector<std::string> named;  ///< the keys that were given, with or without content
  Location where = {};             ///< the row, for messages
};

bool is_named(const TypedReading& typed, std::string_view key);
void name_key(TypedReading& typed, std::string_view key);

/// The line of the log that a line of this test and this time of looking corrects, or stands beside; null where there
/// is none yet.
const Reading* line_before(const Reading& reading, const std::vector<Reading>& lines);

/// The reading that will stand in the log: of a correction everything that it does not name stays as it was.
Reading as_it_will_stand(const TypedReading& typed, const std::vector<Reading>& lines);

}  // namespace gentlest
