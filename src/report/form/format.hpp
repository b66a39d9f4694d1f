// Where numbers become text. Always a decimal point, never an exponent, never "-0".
#pragma once

#include "gentlest/space/hansen.hpp"
#include "report/form/form.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace gentlest {

inline constexpr const char* not_known = "not known";
inline constexpr const char* no_record = "no record (not a sign of harmlessness)";

/// Fixed number of decimals.
std::string fixed(double value, int places);

/// A figure as it was recorded: at most 6 significant digits, no trailing zeros.
std::string as_recorded(double value);

/// A figure for machines: at most 12 significant digits, no trailing zeros.
std::string as_data(double value);

/// The value that as_data prints, for JSON.
double data_value(double value);

/// A computed figure for machines: six decimals, which hides the last bit that differs between machines.
double computed_value(double value);

/// Fixed decimals, or "not known".
std::string fixed_or_unknown(const std::optional<double>& value, int places);

/// A chance (0..1) in per cent: one decimal below 20 %, none above, "<0.1 %" and ">99 %" at the ends: no chance is ever
/// rounded to none or to certainty.
std::string per_cent(double chance);

/// The same beside a limit (0..1): with as many more decimals as it takes for the two, as printed, to stand to each
/// other as they do, so 0.4968 beside 0.5 is "49.7 %". What differs by less than 1e-9 is equal.
std::string per_cent_beside(double chance, double limit);

/// A limit or setting (0..1) in per cent as it was set, e.g. "2.5 %": no chance, so 0 and 100 stay.
std::string setting_per_cent(double share);

/// "gentlest 0.1.0, catalogue 1.3.0": what a result is traced by.
std::string edition_words(const Edition& edition);

/// 1234567 as "1,234,567".
std::string with_commas(std::uint64_t count);

/// "1 rung", "2 rungs".
std::string counted(std::size_t count, const std::string& one, const std::string& many);

/// "a, b, c"; `none` when there is nothing to join.
std::string joined(const std::vector<std::string>& items, const std::string& between = ", ",
                   const std::string& none = {});

}  // namespace gentlest
