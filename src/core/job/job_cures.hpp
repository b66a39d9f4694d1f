// What was most likely meant by a word of a job that names nothing. Internal to core.
#pragma once

#include "gentlest/catalogue/catalogue.hpp"

#include <string>
#include <string_view>

namespace gentlest {

/// Of a bottle: "ethanol 96 %" with its grade, "acetone 500 ml" with an amount, several bottles in one line; empty
/// where it holds nothing of the kind.
std::string bottle_cure(std::string_view typed, const Catalogue& catalogue);

/// Of a layer's material: several in one line; empty where it holds nothing of the kind.
std::string material_cure(std::string_view typed, const Catalogue& catalogue);

/// A GHS hazard statement: H, three digits, and letters of a narrower one, as H360FD.
bool is_statement_code(std::string_view code);

/// Of what is no code: the code or codes that stand in it.
std::string code_cure(std::string_view typed);

}  // namespace gentlest
