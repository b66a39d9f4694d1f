#include "gentlest/learning/typed_reading.hpp"

#include "gentlest/learning/reading_fields.hpp"

#include <algorithm>

namespace gentlest {

bool is_named(const TypedReading& typed, std::string_view key) {
  return std::find(typed.named.begin(), typed.named.end(), key) != typed.named.end();
}

void name_key(TypedReading& typed, std::string_view key) {
  if (!is_named(typed, key)) typed.named.emplace_back(key);
}

const Reading* line_before(const Reading& reading, const std::vector<Reading>& lines) {
  const auto last = std::find_if(lines.rbegin(), lines.rend(), [&](const Reading& line) {
    return line.test == reading.test && line.looked_after == reading.looked_after;
  });
  return last == lines.rend() ? nullptr : &*last;
}

Reading as_it_will_stand(const TypedReading& typed, const std::vector<Reading>& lines) {
  const Reading* last = line_before(typed.reading, lines);
  if (typed.reading.correction.empty() || !last) return typed.reading;
  Reading reading = *last;
  for (const std::string& key : typed.named) set_field(reading, key, get_field(typed.reading, key));
  return reading;
}

}  // namespace gentlest
