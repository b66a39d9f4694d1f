// Pictures as points, by stb (Debian: libstb-dev). The one place that knows it.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

struct PixelSize {
  int width = 0;
  int height = 0;
};

/// Red, green, blue, eight bits each, row by row from above; at least one point.
struct Pixels {
  PixelSize size;
  std::vector<unsigned char> rgb;
};

/// By the head alone; nothing where it cannot be read.
std::optional<PixelSize> size_in_pixels(const std::string& bytes);

/// Transparent places become white. Nothing of a picture that is damaged, or longer than 30,000 points on a side.
std::optional<Pixels> unpack(const std::string& bytes);

/// Its long side at most `long_side`; a smaller one stays as it is.
Pixels shrunk(Pixels pixels, int long_side);

/// Turned and mirrored so that a picture of that orientation (1 to 8, Exif) stands upright.
Pixels turned(const Pixels& pixels, int orientation);

std::string as_jpeg(const Pixels& pixels);

}  // namespace gentlest
