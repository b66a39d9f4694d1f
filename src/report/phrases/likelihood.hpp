// A chance in the four words of the first screen, so that nobody reads a rough figure as a forecast.
#pragma once

#include <string>

namespace gentlest {

/// "hardly" below 15 %, "perhaps" below 50 %, "likely" below 85 %, "nearly sure" from there on. Precondition: 0..1.
std::string likelihood_word(double chance);

/// The same as a bar of four fields, "#..." to "####": as many filled as the word stands from "hardly".
std::string likelihood_bar(double chance);

}  // namespace gentlest
