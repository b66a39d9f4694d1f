#include "io/photographs.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "io/file_kinds.hpp"
#include "io/files.hpp"
#include "io/pixels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <optional>

namespace gentlest {

namespace {

[[noreturn]] void refuse(const std::string& name, std::string message, std::string remedy) {
  throw InputError(Fault::file, {{{name, 0, 0}, std::move(message), std::move(remedy), {}}});
}

// What people send besides JPEG and PNG, by the first bytes.
std::string other_kind(const std::string& bytes) {
  const auto begins = [&](std::string_view mark, std::size_t at = 0) {
    return bytes.size() >= at && bytes.compare(at, mark.size(), mark) == 0;
  };
  if (begins("ftyp", 4)) {
    for (const char* brand : {"heic", "heix", "hevc", "heim", "heis", "mif1", "msf1"})
      if (begins(brand, 8)) return "an HEIC picture";
    if (begins("avif", 8)) return "an AVIF picture";
    if (begins("crx ", 8)) return "a raw picture";
    return "a film";
  }
  if (begins(std::string_view("II*\0", 4)) || begins(std::string_view("MM\0*", 4))) return "a TIFF or raw picture";
  if (begins("RIFF") && begins("WEBP", 8)) return "a WebP picture";
  return foreign_kind(bytes);
}

void expect_jpeg_or_png(const std::string& bytes, const std::string& name) {
  if (bytes.compare(0, 3, "\xFF\xD8\xFF") == 0 || bytes.compare(0, 8, "\x89PNG\r\n\x1A\n") == 0) return;
  if (bytes.empty()) refuse(name, "the file is empty", "copy it from the camera again");
  const std::string kind = other_kind(bytes);
  if (kind.empty()) refuse(name, "this is no picture", "name a JPEG or PNG file");
  refuse(name, "this is " + kind, "save it as JPEG");
}

// Numbers of a TIFF block within a JPEG; nothing beyond its end.
class TiffBlock {
 public:
  explicit TiffBlock(std::string_view bytes) : bytes_(bytes), is_big_endian_(bytes.substr(0, 2) == "MM") {}

  std::optional<std::size_t> number(std::size_t at, std::size_t width) const {
    if (at > bytes_.size() || bytes_.size() - at < width) return std::nullopt;
    std::size_t value = 0;
    for (std::size_t i = 0; i < width; ++i) {
      const std::size_t place = is_big_endian_ ? at + i : at + width - 1 - i;
      value = value << 8 | static_cast<unsigned char>(bytes_[place]);
    }
    return value;
  }

 private:
  std::string_view bytes_;
  bool is_big_endian_;
};

// Of the first directory, tag 0x0112.
int orientation_in(std::string_view tiff) {
  constexpr std::size_t entry_bytes = 12;
  constexpr std::size_t orientation_tag = 0x0112;
  const TiffBlock block(tiff);
  const std::optional<std::size_t> directory = block.number(4, 4);
  const std::optional<std::size_t> count = directory ? block.number(*directory, 2) : std::nullopt;
  for (std::size_t i = 0; count && i < *count; ++i) {
    const std::size_t entry = *directory + 2 + i * entry_bytes;
    const std::optional<std::size_t> tag = block.number(entry, 2);
    const std::optional<std::size_t> value = block.number(entry + 8, 2);
    if (!tag || !value) return 1;
    if (*tag == orientation_tag) return *value >= 1 && *value <= 8 ? static_cast<int>(*value) : 1;
  }
  return 1;
}

}  // namespace

std::vector<std::string> photograph_names(const std::string& text) {
  return items_of(text, ";");
}

bool is_photograph_number(const std::string& name) {
  const std::size_t dot = name.rfind('.');
  const std::size_t ending = dot == std::string::npos ? 0 : name.size() - dot - 1;
  const bool has_ending = ending >= 2 && ending <= 5 &&
                          std::all_of(name.end() - static_cast<std::ptrdiff_t>(ending), name.end(),
                                      [](unsigned char c) { return std::isalnum(c); }) &&
                          std::any_of(name.end() - static_cast<std::ptrdiff_t>(ending), name.end(),
                                      [](unsigned char c) { return std::isalpha(c); });
  return !has_ending;
}

int orientation_of(const std::string& jpeg) {
  constexpr std::size_t segment_head = 4;  // marker and length
  const auto byte = [&](std::size_t at) { return static_cast<std::size_t>(static_cast<unsigned char>(jpeg[at])); };
  std::size_t at = 2;
  while (at + segment_head <= jpeg.size() && byte(at) == 0xFF) {
    const std::size_t marker = byte(at + 1);
    const std::size_t length = byte(at + 2) << 8 | byte(at + 3);
    if (marker == 0xDA || length < 2 || length > jpeg.size() - at - 2) return 1;
    const std::string_view inner = std::string_view(jpeg).substr(at + segment_head, length - 2);
    if (marker == 0xE1 && inner.substr(0, 6) == std::string_view("Exif\0\0", 6)) return orientation_in(inner.substr(6));
    at += 2 + length;
  }
  return 1;
}

std::string small_photograph(const std::string& bytes, const std::string& name) {
  constexpr const char* again = "open it in another program and save it as JPEG";
  constexpr int least_side_px = 1;
  expect_jpeg_or_png(bytes, name);
  const std::optional<PixelSize> size = size_in_pixels(bytes);
  if (!size || size->width < least_side_px || size->height < least_side_px)
    refuse(name, "the picture is damaged: its size cannot be read", again);
  if (static_cast<double>(size->width) * size->height > most_points_of_a_photograph)
    refuse(name, fmt::format("the picture has {} x {} points", size->width, size->height),
           fmt::format("save it smaller: {} million points at most", most_points_of_a_photograph / 1e6));
  std::optional<Pixels> pixels = unpack(bytes);
  if (!pixels) refuse(name, "the picture is damaged: it cannot be unpacked", again);
  return as_jpeg(turned(shrunk(std::move(*pixels), long_side_px), orientation_of(bytes)));
}

std::string read_photograph(const std::string& path) {
  return small_photograph(read_bytes(path, most_bytes_of_a_photograph), path);
}

}  // namespace gentlest
