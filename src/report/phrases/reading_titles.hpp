// What the fields of a reading are called on paper: on the card that is filled in, and in the report made of it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// "until it acted, s" of "first_effect_s". Precondition: a key of reading_fields().
const char* title_of_field(std::string_view key);

/// Words to tick for what was seen besides the grade: of the layer to remove, of the original, and when dry. The log
/// keeps them as they stand here.
const std::vector<const char*>& removal_signs();
const std::vector<const char*>& original_signs();
const std::vector<const char*>& drying_signs();

/// Lights to look in, and the times of a later look.
const std::vector<const char*>& lights();
const std::vector<const char*>& later_looks();

}  // namespace gentlest
