// A number that a person typed and that cannot be taken as it stands: what would be right, as the cure of a message.
// Nothing is ever taken for what it may mean; it is only said.
#pragma once

#include <limits>
#include <string>
#include <string_view>

namespace gentlest {

/// What is wanted where a number stands.
struct WantedNumber {
  std::string unit = {};  ///< "cm", "mL", "C", "years", "%"; empty where it has none or another
  double smallest = -std::numeric_limits<double>::infinity();
  double largest = std::numeric_limits<double>::infinity();
  bool is_whole = false;
};

/// The text as a keyboard writes it: blanks and dashes of word processors become a space and a hyphen, typographic
/// quotes fall away. What was pasted looks alike and is not.
std::string with_plain_signs(std::string_view typed);

/// The unit that a key carries at its end: "width_cm" is in cm, "step_percent" in %; empty where it carries none.
std::string unit_of_key(std::string_view key);

/// A text that is no plain number: "62 cm" is "write 62, the unit is cm already", "0,25" is to have a point, "25 %"
/// where a share of 1 is wanted is 0.25, "77 F" is 25 C, "three" is 3. Where it is not clear what was meant, what
/// would be right is said without a guess. Never empty.
/// Sources of the units: 1 inch is 25.4 mm (international yard and pound agreement, 1959); 32 F is 0 C and a degree F
/// is 5/9 of a degree C, by definition; a drop is 0.05 mL (common practice, no source).
std::string cure_of_text(std::string_view typed, const WantedNumber& wanted);

/// A number outside its range: "did you mean 0.25?" of 25 where a share of 1 is wanted, and so on; empty where nothing
/// is near.
std::string cure_of_range(double value, const WantedNumber& wanted);

}  // namespace gentlest
