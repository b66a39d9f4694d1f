// What happens in the vial, in words: one liquid or two and why, how sure a drift is, what is missing for it.
#pragma once

#include "gentlest/vial/evaporation.hpp"
#include "gentlest/vial/miscibility.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

inline constexpr const char* parts_in_two = "parts into two liquids";

/// Short, for tables and for programs too: "one liquid", "near the border".
std::string_view to_word(Phases phases);
std::string_view to_word(PhasesBasis basis);

/// One sentence without a full stop: why the answer is what it is.
std::string phases_because(const PhaseAnswer& answer);

/// How a vapour pressure was had: "equation inside its range".
std::string_view to_word(PressureBasis basis);

/// Sentences without a full stop: stand-ins, ideal mixture, pressures outside the range of their equations.
std::vector<std::string> drift_warnings(const Drift& drift);

/// "vapour pressure of ethanol at 20 C": each figure by its name.
std::vector<std::string> missing_words(const std::vector<MissingFigure>& missing);

}  // namespace gentlest
