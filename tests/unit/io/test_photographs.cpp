// Photographs: turned as their camera says, small, and refused in plain words. A PNG is written here by the book
// (PNG specification, ISO/IEC 15948, with stored blocks of RFC 1951), orientations are those of Exif 2.3, table 4.
#include "gentlest/base/diagnostic.hpp"
#include "io/photographs.hpp"
#include "io/pixels.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cstdint>

using namespace gentlest;

namespace {

std::string big_endian(std::uint32_t value) {
  std::string text;
  for (int shift = 24; shift >= 0; shift -= 8) text += static_cast<char>(value >> shift & 0xFFu);
  return text;
}

std::uint32_t crc_of(const std::string& bytes) {
  std::uint32_t crc = 0xFFFFFFFFu;
  for (const char c : bytes) {
    crc ^= static_cast<unsigned char>(c);
    for (int bit = 0; bit < 8; ++bit) crc = crc & 1u ? crc >> 1 ^ 0xEDB88320u : crc >> 1;
  }
  return ~crc;
}

std::string chunk(const std::string& kind, const std::string& data) {
  return big_endian(static_cast<std::uint32_t>(data.size())) + kind + data + big_endian(crc_of(kind + data));
}

// Stored blocks, and Adler-32.
std::string zlib_stored(const std::string& data) {
  std::string text = "\x78\x01";
  constexpr std::size_t most = 65535;
  for (std::size_t at = 0; at == 0 || at < data.size(); at += most) {
    const std::size_t size = std::min(most, data.size() - at);
    text += at + size >= data.size() ? '\1' : '\0';
    for (const std::size_t number : {size, ~size})
      for (int shift = 0; shift <= 8; shift += 8) text += static_cast<char>(number >> shift & 0xFFu);
    text += data.substr(at, size);
  }
  std::uint32_t a = 1;
  std::uint32_t b = 0;
  for (const char c : data) {
    a = (a + static_cast<unsigned char>(c)) % 65521;
    b = (b + a) % 65521;
  }
  return text + big_endian(b << 16 | a);
}

using Colour = std::array<int, 4>;
constexpr Colour red = {255, 0, 0, 255};
constexpr Colour blue = {0, 0, 255, 255};
constexpr Colour clear = {0, 0, 0, 0};

// The left half in one colour, the right half in the other.
std::string png(int width, int height, Colour left, Colour right) {
  std::string rows;
  for (int y = 0; y < height; ++y) {
    rows += '\0';
    for (int x = 0; x < width; ++x)
      for (const int part : x < width / 2 ? left : right) rows += static_cast<char>(part);
  }
  std::string head = big_endian(static_cast<std::uint32_t>(width)) + big_endian(static_cast<std::uint32_t>(height));
  head += std::string("\x08\x06\0\0\0", 5);
  return "\x89PNG\r\n\x1A\n" + chunk("IHDR", head) + chunk("IDAT", zlib_stored(rows)) + chunk("IEND", "");
}

// An Exif block with the one tag, in either order of bytes, behind the first marker.
std::string with_orientation(std::string jpeg, int orientation, bool big) {
  std::string tiff = big ? std::string("MM\0*\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01\0", 19)
                         : std::string("II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0", 18);
  tiff += static_cast<char>(orientation);
  tiff += std::string(big ? 6 : 7, '\0');
  const std::string inner = std::string("Exif\0\0", 6) + tiff;
  const std::size_t length = inner.size() + 2;
  return jpeg.insert(
      2, std::string("\xFF\xE1") + static_cast<char>(length >> 8) + static_cast<char>(length & 0xFFu) + inner);
}

std::array<int, 3> colour_at(const Pixels& pixels, int x, int y) {
  const auto at = static_cast<std::size_t>(3 * (y * pixels.size.width + x));
  return {pixels.rgb[at], pixels.rgb[at + 1], pixels.rgb[at + 2]};
}

bool is_reddish(const Pixels& pixels, int x, int y) {
  const std::array<int, 3> c = colour_at(pixels, x, y);
  return c[0] > 150 && c[2] < 100;
}

std::string fault_of(const std::string& bytes) {
  try {
    small_photograph(bytes, "photo");
  } catch (const InputError& error) {
    return error.faults().front().message + " / " + error.faults().front().remedy;
  }
  return {};
}

}  // namespace

TEST_CASE("a photograph is shrunk to its long side and stays what it shows") {
  const std::string small = small_photograph(png(2400, 1000, red, blue), "photo");
  const std::optional<Pixels> pixels = unpack(small);
  REQUIRE(pixels);
  CHECK(small.substr(0, 3) == "\xFF\xD8\xFF");
  CHECK(pixels->size.width == 1200);
  CHECK(pixels->size.height == 500);
  CHECK(is_reddish(*pixels, 100, 250));
  CHECK_FALSE(is_reddish(*pixels, 1100, 250));
  const std::optional<Pixels> same = unpack(small_photograph(png(64, 32, red, blue), "photo"));
  REQUIRE(same);
  CHECK(same->size.width == 64);
}

TEST_CASE("what is transparent becomes white") {
  const std::optional<Pixels> pixels = unpack(small_photograph(png(64, 32, clear, blue), "photo"));
  REQUIRE(pixels);
  for (const int part : colour_at(*pixels, 8, 16)) CHECK(part > 240);
}

// Exif 2.3, table 4: where the 0th row and the 0th column of the stored picture are in the scene. The stored pixel of
// row 0, column 0 is therefore in this corner, and the row runs along this side.
TEST_CASE("each orientation of Exif stands upright") {
  struct Turn {
    int orientation;
    bool first_row_is_side;  ///< left or right, so width and height change places
    bool at_right, at_bottom;
  };
  for (const Turn& turn : {Turn{1, false, false, false},
                           {2, false, true, false},
                           {3, false, true, true},
                           {4, false, false, true},
                           {5, true, false, false},
                           {6, true, true, false},
                           {7, true, true, true},
                           {8, true, false, true}}) {
    INFO(turn.orientation);
    Pixels stored{{3, 2}, std::vector<unsigned char>(18, 0)};
    stored.rgb[0] = 200;  // row 0, column 0: red
    stored.rgb[7] = 200;  // row 0, column 2: green
    const Pixels upright = turned(stored, turn.orientation);
    CHECK(upright.size.width == (turn.first_row_is_side ? 2 : 3));
    CHECK(upright.size.height == (turn.first_row_is_side ? 3 : 2));
    const int x = turn.at_right ? upright.size.width - 1 : 0;
    const int y = turn.at_bottom ? upright.size.height - 1 : 0;
    CHECK(colour_at(upright, x, y)[0] == 200);
    const int along_x = turn.first_row_is_side ? x : upright.size.width - 1 - x;
    const int along_y = turn.first_row_is_side ? upright.size.height - 1 - y : y;
    CHECK(colour_at(upright, along_x, along_y)[1] == 200);
  }
}

TEST_CASE("the orientation is read in either order of bytes, and only where it is one") {
  const std::string jpeg = small_photograph(png(64, 32, red, blue), "photo");
  CHECK(orientation_of(jpeg) == 1);
  for (const bool big : {false, true})
    for (int orientation = 1; orientation <= 8; ++orientation)
      CHECK(orientation_of(with_orientation(jpeg, orientation, big)) == orientation);
  CHECK(orientation_of(with_orientation(jpeg, 9, true)) == 1);
  CHECK(orientation_of(with_orientation(jpeg, 0, false)) == 1);
  const std::string tall = small_photograph(with_orientation(jpeg, 6, true), "photo");
  const std::optional<Pixels> pixels = unpack(tall);
  REQUIRE(pixels);
  CHECK(pixels->size.width == 32);
  CHECK(pixels->size.height == 64);
  CHECK(is_reddish(*pixels, 16, 8));  // left of what was stored is above
  CHECK_FALSE(is_reddish(*pixels, 16, 56));
}

TEST_CASE("what is no photograph is refused in plain words") {
  CHECK(fault_of("") == "the file is empty / copy it from the camera again");
  CHECK(fault_of("hello") == "this is no picture / name a JPEG or PNG file");
  CHECK(fault_of(std::string("\0\0\0\x18", 4) + "ftypheic") == "this is an HEIC picture / save it as JPEG");
  CHECK(fault_of(std::string("\0\0\0\x18", 4) + "ftypmif1") == "this is an HEIC picture / save it as JPEG");
  CHECK(fault_of(std::string("II*\0", 4)) == "this is a TIFF or raw picture / save it as JPEG");
  CHECK(fault_of("RIFF1234WEBP") == "this is a WebP picture / save it as JPEG");
}

TEST_CASE("a file cut off within its first bytes is refused like any other") {
  for (const std::string& whole : {std::string("\0\0\0\x18"
                                               "ftypheic",
                                               12),
                                   std::string("RIFF1234WEBP"), std::string("\xFF\xD8\xFF\xE1", 4),
                                   std::string("\x89PNG\r\n\x1A\n"), std::string("II*\0", 4), std::string("GIF89a")})
    for (std::size_t length = 0; length <= whole.size(); ++length)
      CHECK(fault_of(whole.substr(0, length)).find(" / ") != std::string::npos);
}

TEST_CASE("a huge size is refused before anything is unpacked, and so is a side beyond all cameras") {
  std::string bomb = png(2, 2, red, blue);
  const std::string head = chunk("IHDR", big_endian(12000) + big_endian(12000) + std::string("\x08\x06\0\0\0", 5));
  bomb.replace(8, head.size(), head);
  CHECK(fault_of(bomb) == "the picture has 12000 x 12000 points / save it smaller: 120 million points at most");
  const std::string wide = chunk("IHDR", big_endian(2000000) + big_endian(2) + std::string("\x08\x06\0\0\0", 5));
  bomb.replace(8, wide.size(), wide);
  CHECK(fault_of(bomb).find("damaged") != std::string::npos);
}

TEST_CASE("a photograph cut off or scratched anywhere is shown or refused, and nothing worse") {
  const std::string drawn = png(40, 30, red, blue);
  const std::string jpeg = with_orientation(small_photograph(drawn, "photo"), 6, true);
  int refused = 0;
  for (const std::string& whole : {drawn, jpeg})
    for (std::size_t at = 0; at < whole.size(); at += 7) {
      if (!fault_of(whole.substr(0, at)).empty()) ++refused;
      std::string scratched = whole;
      scratched[at] = static_cast<char>(scratched[at] ^ 0x55);
      fault_of(scratched);
    }
  CHECK(refused > 20);
}

TEST_CASE("names of photographs are parted at semicolons; a number is no file") {
  CHECK(photograph_names(" IMG_1.jpg ; 17;;") == std::vector<std::string>{"IMG_1.jpg", "17"});
  CHECK(photograph_names("").empty());
  for (const char* number : {"17", "no. 17", "A 3", "2.12", "film 3.5"}) CHECK(is_photograph_number(number));
  for (const char* file : {"IMG_1.jpg", "a/b.PNG", "x.heic", "photo 3.jpeg"}) CHECK_FALSE(is_photograph_number(file));
}
