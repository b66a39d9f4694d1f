// A first answer that fits one screen: what must stand there, and lists of which the end may be left to --full.
#pragma once

#include "report/form/form.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

/// Lines of a first answer, on pages of the usual width and wider.
inline constexpr std::size_t screen_lines = 40;

/// One piece of a screen, from the top down.
struct ScreenPart {
  std::string head = {};                ///< always there; may be empty
  std::vector<std::string> items = {};  ///< whole lines, each ended by a line break
  std::size_t least = 0;  ///< so many items are never left out; of a part that must stand as it is, all of them
};

bool fits_screen(const std::string& text);

/// "5 more in --full".
std::string more_in_full(std::size_t count);

/// A part of which nothing may be left out.
ScreenPart must_stand(std::string text);

/// A list under its heading, each item a bullet; `least` of them always stand.
ScreenPart screen_list(const std::string& title, const std::vector<std::string>& items, std::size_t least,
                       const Style& style);

/// The parts below each other. Where they take more lines than a screen has, items go from the end of the last part
/// that can spare one, then of the part before it; in their place stands how many more there are in --full. What must
/// stand does, even if the screen is full.
std::string screen_of(std::vector<ScreenPart> parts, const Style& style);

/// The parts below each other with nothing left out.
std::string whole_of(const std::vector<ScreenPart>& parts);

}  // namespace gentlest
