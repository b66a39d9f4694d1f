// Nothing rests on colour: what is drawn in the pictures is told apart by shape, dash or pattern, or by lightness that
// stays under colour blindness and in grey.
#include "report/draw/palette.hpp"

#include <catch2/catch.hpp>
#include "near.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace gentlest {

namespace {

using Rgb = std::array<double, 3>;
using Matrix = std::array<Rgb, 3>;

// Machado, Oliveira and Fernandes 2009, "A physiologically-based model for simulation of color vision deficiency", IEEE
// Trans. Vis. Comput. Graph. 15(6), matrices at severity 1.0, for linear RGB. The first two were compared with two
// public copies of the table, the third is from memory; each keeps grey, so its rows add up to 1.
constexpr Matrix protanopia = {
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix deuteranopia = {
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix tritanopia = {
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};
// Grey: the luminance of IEC 61966-2-1 (sRGB) in all three channels.
constexpr Matrix grey = {{{0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}}};
constexpr Matrix usual = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr std::array<Matrix, 5> eyes = {usual, protanopia, deuteranopia, tritanopia, grey};

double linear(int channel) {
  const double v = channel / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

Rgb linear_of(const std::string& colour) {
  Rgb rgb{};
  for (std::size_t i = 0; i < 3; ++i) rgb[i] = linear(std::stoi(colour.substr(1 + 2 * i, 2), nullptr, 16));
  return rgb;
}

double luminance(const std::string& colour, const Matrix& eye) {
  const Rgb rgb = linear_of(colour);
  double sum = 0;
  for (std::size_t i = 0; i < 3; ++i) {
    double seen = 0;
    for (std::size_t k = 0; k < 3; ++k) seen += eye[i][k] * rgb[k];
    sum += grey[0][i] * std::min(1.0, std::max(0.0, seen));
  }
  return sum;
}

// Contrast of WCAG 2: 1 to 21.
double contrast(const std::string& a, const std::string& b, const Matrix& eye) {
  const double la = luminance(a, eye);
  const double lb = luminance(b, eye);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

double least_contrast(const std::string& a, const std::string& b) {
  double least = 21;
  for (const Matrix& eye : eyes) least = std::min(least, contrast(a, b, eye));
  return least;
}

// What a picture shows side by side.
struct Look {
  std::string name, colour, dash;
  Mark mark;
  Hatch hatch;
};

bool differ_in_shape(const Look& a, const Look& b) {
  return a.mark != b.mark && (a.dash != b.dash || a.hatch != b.hatch);
}

std::vector<Look> all_layers() {
  std::vector<Look> looks;
  for (const LayerLook& look : removed_looks)
    looks.push_back({"removed", look.colour, look.dash, look.mark, look.hatch});
  for (const LayerLook& look : kept_looks) looks.push_back({"kept", look.colour, look.dash, look.mark, look.hatch});
  return looks;
}

}  // namespace

TEST_CASE("the simulations keep grey and take the colours from the eyes that lack them") {
  for (const Matrix& eye : eyes)
    for (const Rgb& row : eye) CHECK(row[0] + row[1] + row[2] == test::near(1, 2e-6));
  // Red looks dark to protanopes, who lack the cones for it; to the others hardly darker.
  CHECK(luminance("#ff0000", protanopia) < 0.6 * luminance("#ff0000", usual));
  CHECK(luminance("#ff0000", deuteranopia) > luminance("#ff0000", usual));
  for (const Matrix& eye : eyes) CHECK(contrast("#ffffff", "#000000", eye) == test::near(21, 0.01));
}

TEST_CASE("layers differ in shape or in lightness that every eye sees") {
  constexpr double threshold = 1.5;
  const std::vector<Look> looks = all_layers();
  for (std::size_t i = 0; i < looks.size(); ++i)
    for (std::size_t k = 0; k < i; ++k) {
      INFO(looks[i].name << " " << i << " and " << looks[k].name << " " << k);
      CHECK((differ_in_shape(looks[i], looks[k]) || least_contrast(looks[i].colour, looks[k].colour) >= threshold));
    }
}

TEST_CASE("what is to go and what is to stay differ in lightness too, and every line stands out from paper") {
  CHECK(least_contrast(remove_ink, keep_ink) >= 1.5);
  for (const char* colour : {remove_ink, keep_ink, limit_ink, ink, pale_ink, own_series_ink}) {
    INFO(colour);
    CHECK(least_contrast(colour, "#ffffff") >= 3);  // WCAG 2.1, 1.4.11: what is no text
  }
  for (const char* colour : {remove_ink, keep_text_ink, limit_ink, ink, pale_ink}) {
    INFO(colour);
    CHECK(least_contrast(colour, "#ffffff") >= 4.5);  // the same, 1.4.3: text
  }
}

}  // namespace gentlest
