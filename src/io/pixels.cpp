#include "io/pixels.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <memory>

// Headers of others, in this file alone: their warnings are theirs.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wall"
#pragma GCC diagnostic ignored "-Wextra"
#pragma GCC diagnostic ignored "-Wpedantic"
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wsign-conversion"
#pragma GCC diagnostic ignored "-Wshadow"
#pragma GCC diagnostic ignored "-Wold-style-cast"
#pragma GCC diagnostic ignored "-Wunused-function"
#pragma GCC diagnostic ignored "-Wmissing-field-initializers"
#define STBI_ONLY_JPEG
#define STBI_ONLY_PNG
#define STBI_NO_STDIO
#define STBI_MAX_DIMENSIONS 30000
#define STB_IMAGE_STATIC
#define STB_IMAGE_IMPLEMENTATION
#include <stb/stb_image.h>
#define STB_IMAGE_RESIZE_STATIC
#define STB_IMAGE_RESIZE_IMPLEMENTATION
#include <stb/stb_image_resize.h>
#define STBI_WRITE_NO_STDIO
#define STB_IMAGE_WRITE_STATIC
#define STB_IMAGE_WRITE_IMPLEMENTATION
#include <stb/stb_image_write.h>
#pragma GCC diagnostic pop

namespace gentlest {

namespace {

constexpr int channels = 3;

std::size_t at_pixel(const PixelSize& size, int x, int y) {
  return (static_cast<std::size_t>(y) * static_cast<std::size_t>(size.width) + static_cast<std::size_t>(x)) * channels;
}

std::size_t bytes_of(const PixelSize& size) {
  return static_cast<std::size_t>(size.width) * static_cast<std::size_t>(size.height) * channels;
}

const unsigned char* start_of(const std::string& bytes) {
  return reinterpret_cast<const unsigned char*>(bytes.data());
}

unsigned char on_white(unsigned char colour, unsigned char cover) {
  constexpr int full = 255;
  return static_cast<unsigned char>((colour * cover + full * (full - cover) + full / 2) / full);
}

void append(void* text, void* data, int size) {
  static_cast<std::string*>(text)->append(static_cast<const char*>(data), static_cast<std::size_t>(size));
}

}  // namespace

std::optional<PixelSize> size_in_pixels(const std::string& bytes) {
  PixelSize size;
  int parts = 0;
  if (!stbi_info_from_memory(start_of(bytes), static_cast<int>(bytes.size()), &size.width, &size.height, &parts))
    return std::nullopt;
  return size;
}

std::optional<Pixels> unpack(const std::string& bytes) {
  constexpr int with_cover = 4;
  Pixels pixels;
  int parts = 0;
  const std::unique_ptr<unsigned char, void (*)(void*)> points(
      stbi_load_from_memory(start_of(bytes), static_cast<int>(bytes.size()), &pixels.size.width, &pixels.size.height,
                            &parts, with_cover),
      stbi_image_free);
  if (!points) return std::nullopt;
  pixels.rgb.resize(bytes_of(pixels.size));
  const unsigned char* from = points.get();
  for (std::size_t i = 0; i < pixels.rgb.size(); i += channels, from += with_cover)
    for (std::size_t k = 0; k < channels; ++k) pixels.rgb[i + k] = on_white(from[k], from[channels]);
  return pixels;
}

Pixels shrunk(Pixels pixels, int long_side) {
  const int longest = std::max(pixels.size.width, pixels.size.height);
  if (longest <= long_side) return pixels;
  const auto scaled = [&](int side) {
    return std::max(1, static_cast<int>(std::lround(static_cast<double>(side) * long_side / longest)));
  };
  Pixels small{{scaled(pixels.size.width), scaled(pixels.size.height)}, {}};
  small.rgb.resize(bytes_of(small.size));
  // 0 where memory ran out: then the large one is better than none.
  const int done =
      stbir_resize_uint8_srgb(pixels.rgb.data(), pixels.size.width, pixels.size.height, 0, small.rgb.data(),
                              small.size.width, small.size.height, 0, channels, STBIR_ALPHA_CHANNEL_NONE, 0);
  return done ? small : pixels;
}

Pixels turned(const Pixels& pixels, int orientation) {
  assert(orientation >= 1 && orientation <= 8);
  if (orientation == 1) return pixels;
  const auto [width, height] = pixels.size;
  const bool swaps = orientation >= 5;
  Pixels upright{{swaps ? height : width, swaps ? width : height}, std::vector<unsigned char>(pixels.rgb.size())};
  const bool from_right = orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
  const bool from_below = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
  for (int y = 0; y < upright.size.height; ++y)
    for (int x = 0; x < upright.size.width; ++x) {
      const int along = swaps ? y : x;
      const int down = swaps ? x : y;
      const std::size_t from =
          at_pixel(pixels.size, from_right ? width - 1 - along : along, from_below ? height - 1 - down : down);
      std::copy_n(pixels.rgb.begin() + static_cast<std::ptrdiff_t>(from), channels,
                  upright.rgb.begin() + static_cast<std::ptrdiff_t>(at_pixel(upright.size, x, y)));
    }
  return upright;
}

std::string as_jpeg(const Pixels& pixels) {
  constexpr int quality = 82;
  std::string text;
  stbi_write_jpg_to_func(append, &text, pixels.size.width, pixels.size.height, channels, pixels.rgb.data(), quality);
  return text;
}

}  // namespace gentlest
