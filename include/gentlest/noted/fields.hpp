// One field of a reading from words as people write them: behind a label of `record`, in a cell of a table.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/learning/reading.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// The key that a heading or label means: "Farbe am Tupfer", "at edge", "couche picturale"; empty where none is meant.
/// Case, accents of capital letters, a unit in brackets and a point or colon behind it do not matter.
std::string key_of_heading(std::string_view heading);

/// Sets the field as set_field does, and takes besides: words of the trade in English and for the commonest in German
/// and French, "none", "no", "n/a", "-", a decimal comma, units behind numbers, dates such as 14.3.2026. False where it
/// is not understood; the reading is then unchanged. Precondition: the key is known.
bool set_noted_field(Reading& reading, std::string_view key, const std::string& text);

/// "at the edge", "Rand", "under the frame": where harm matters least, said in place of a passage.
bool means_edge(std::string_view text);

/// Words of harm under `signs` or `after_drying` ("blanched", "paint tacky") beside "nothing seen" of the original: one
/// fault each, since the grade is what the rules count. Old logs hold such readings, so whoever writes asks, not who
/// reads.
std::vector<Diagnostic> denied_harms(const Reading& reading);

/// 2026-03-14 from "14.3.2026" or "14/03/2026"; empty where it is no date, or where day and month may
/// be meant either way.
std::string date_from(std::string_view text);

}  // namespace gentlest
