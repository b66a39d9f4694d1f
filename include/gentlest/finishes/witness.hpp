// Who says what is known of liquids and coats, and of what mixture: shared by observations and by what is told of
// finishes.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace gentlest {

/// Who says so: a publication that we saw or whose words were handed on to us, our memory, or the trade at large.
enum class Witness { seen, memory, practice };
std::string_view to_word(Witness witness);
std::optional<Witness> witness_from_word(std::string_view word);

/// How far we trust the row ourselves; no figure of the source.
enum class Confidence { high, medium, low };
std::string_view to_word(Confidence confidence);
std::optional<Confidence> confidence_from_word(std::string_view word);

/// One liquid of what was tried. Water in a grade is a part of its own: "ethanol 95, water 5".
struct ObservedPart {
  std::string solvent;  ///< id
  double percent = 0;   ///< by volume before mixing; all parts add up to 100
  bool operator==(const ObservedPart&) const = default;
};

}  // namespace gentlest
