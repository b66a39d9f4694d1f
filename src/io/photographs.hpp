// Photographs that a reading names, made small enough to travel inside a page.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace gentlest {

/// Larger files are refused unread.
inline constexpr std::size_t most_bytes_of_a_photograph = 60u << 20;
/// More than this is refused before it is unpacked: 120 million points take 840 MB while they are unpacked.
inline constexpr double most_points_of_a_photograph = 120e6;
/// The long side of what stands in the page.
inline constexpr int long_side_px = 1200;

/// "IMG_1.jpg; 17" as its single names, without what surrounds them.
std::vector<std::string> photograph_names(const std::string& text);

/// True of a name without the ending of a file: the number of a picture on a card or in another file.
bool is_photograph_number(const std::string& name);

/// The JPEG or PNG at `path`, turned as its camera says, at most long_side_px long, as the bytes of a JPEG on white
/// ground. Throws InputError (Fault::file): missing, too large, no picture, another kind of picture, damaged.
std::string read_photograph(const std::string& path);

/// The same of bytes; `name` is for messages.
std::string small_photograph(const std::string& bytes, const std::string& name);

/// How a JPEG is to be turned, 1 to 8 as in Exif 2.3, tag 0x0112 (Orientation); 1 where it does not say.
int orientation_of(const std::string& jpeg);

}  // namespace gentlest
