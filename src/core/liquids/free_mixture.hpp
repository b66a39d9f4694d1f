// Mixtures as people write them, turned into the one notation. Internal to core.
#pragma once

#include "gentlest/liquids/mixture.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// "1:3 acetone / white spirit" -> "acetone 25%, white spirit 75%": shares in front, ratios, parts, mL, a decimal
/// comma, a comma that was forgotten, "and", "+", "in" and "to" between parts. Nothing for a text that holds none of
/// these or that has no one meaning; the reader of the notation then says what is wrong with it. Throws InputError
/// (Fault::usage) where two meanings are at hand: the person is asked.
std::optional<std::string> in_notation(std::string_view text, const Catalogue& catalogue,
                                       const std::vector<Liquid>& shelf);

}  // namespace gentlest
