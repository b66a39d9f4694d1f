// Widths of text without a font at hand.
#include "report/draw/svg.hpp"

#include "gentlest/base/letters.hpp"

#include <array>
#include <cstdint>
#include <utility>

namespace gentlest {

namespace {

// Advance widths of the signs from space to tilde in DejaVu Sans, thousandths of the size; measured in a browser.
constexpr std::array<std::uint16_t, 95> plain_widths = {
    318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361,  318, 337, 636, 636, 636,
    636, 636, 636, 636, 636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632,
    575, 775, 752, 295, 295, 656, 557, 863, 748, 787, 603, 787, 695, 635,  611, 732, 684, 989, 685,
    611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635, 615, 352,  635, 634, 278, 278, 579,
    278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592,  525, 636, 337, 636, 838};
constexpr std::array<std::uint16_t, 95> bold_widths = {
    348, 456,  521, 838, 696, 1002, 872, 306, 457, 457, 523, 838, 380, 415,  380, 365, 696, 696,  696,
    696, 696,  696, 696, 696, 696,  696, 400, 400, 838, 838, 838, 580, 1000, 774, 762, 734, 830,  683,
    683, 821,  837, 372, 372, 775,  637, 995, 837, 850, 733, 850, 770, 720,  682, 812, 774, 1103, 771,
    724, 725,  457, 365, 457, 838,  500, 500, 675, 716, 593, 716, 678, 435,  716, 712, 343, 343,  665,
    343, 1042, 712, 687, 716, 716,  493, 595, 478, 712, 652, 924, 645, 652,  582, 712, 365, 712,  838};

constexpr const char* ellipsis = "\u2026";

bool is_combining(char32_t code) {
  return (code >= 0x300 && code <= 0x36F) || (code >= 0x200B && code <= 0x200F) || (code >= 0x2066 && code <= 0x2069) ||
         (code >= 0xFE00 && code <= 0xFE0F);
}

// Thousandths of the size; beyond ASCII by script, on the wide side.
double sign_width(char32_t code, bool bold) {
  if (code >= 32 && code < 127) return bold ? bold_widths[code - 32] : plain_widths[code - 32];
  if (code < 32 || is_combining(code)) return code < 32 ? 350 : 0;
  const double heavier = bold ? 1.1 : 1;
  if (code < 0x250) return 780 * heavier;      // Latin with marks
  if (code < 0x590) return 900 * heavier;      // Greek, Cyrillic, Armenian
  if (code < 0x0E00) return 900 * heavier;     // Hebrew, Arabic, Indian scripts
  if (code >= 0x1F000) return 1350 * heavier;  // pictures
  return 1050 * heavier;
}

void push_broken(std::vector<std::string>& lines, std::string_view word, double size, double width, bool bold) {
  std::string line;
  double used = 0;
  for (std::size_t at = 0; at < word.size();) {
    const Letter letter = letter_at(word, at);
    const double wide = sign_width(letter.code, bold) * size / 1000;
    if (!line.empty() && used + wide > width) {
      lines.push_back(std::move(line));
      line.clear();
      used = 0;
    }
    line.append(letter.bytes);
    used += wide;
    at += letter.bytes.size();
  }
  lines.push_back(std::move(line));
}

}  // namespace

std::string isolated(std::string_view text) {
  for (const char c : text)
    if (static_cast<unsigned char>(c) >= 0x80) return "\u2068" + std::string(text) + "\u2069";
  return std::string(text);
}

double text_width(std::string_view text, double size, bool bold) {
  double thousandths = 0;
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    thousandths += sign_width(letter.code, bold);
    at += letter.bytes.size();
  }
  return thousandths * size / 1000;
}

std::string shortened(std::string_view text, double size, double width, bool bold) {
  if (text_width(text, size, bold) <= width) return std::string(text);
  const double room = width - text_width(ellipsis, size, bold);
  double used = 0;
  std::size_t at = 0;
  while (at < text.size()) {
    const Letter letter = letter_at(text, at);
    used += sign_width(letter.code, bold) * size / 1000;
    if (used > room) break;
    at += letter.bytes.size();
  }
  while (at > 0 && text[at - 1] == ' ') --at;
  return std::string(text.substr(0, at)) + ellipsis;
}

std::vector<std::string> text_lines(std::string_view text, double size, double width, bool bold) {
  std::vector<std::string> lines = {""};
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = text.find_first_of(" \n", at);
    if (end == std::string_view::npos) end = text.size();
    const std::string_view word = text.substr(at, end - at);
    const std::string longer = lines.back().empty() ? std::string(word) : lines.back() + " " + std::string(word);
    if (text_width(longer, size, bold) <= width) {
      lines.back() = longer;
    } else {
      if (lines.back().empty()) lines.pop_back();
      push_broken(lines, word, size, width, bold);
    }
    at = end + 1;
  }
  return lines;
}

}  // namespace gentlest
