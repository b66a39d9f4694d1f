#include "gentlest/base/typed_number.hpp"

#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

namespace gentlest {

namespace {

// One of `word` is `factor` of `unit`, counted from `zero`.
struct UnitWord {
  std::string_view word;
  std::string_view unit;
  double factor = 1;
  double zero = 0;
};

constexpr double cm_per_inch = 2.54;

constexpr std::array unit_words = {
    UnitWord{"cm", "cm"},
    UnitWord{"centimetres", "cm"},
    UnitWord{"centimeters", "cm"},
    UnitWord{"mm", "cm", 0.1},
    UnitWord{"m", "cm", 100},
    UnitWord{"in", "cm", cm_per_inch},
    UnitWord{"in.", "cm", cm_per_inch},
    UnitWord{"inch", "cm", cm_per_inch},
    UnitWord{"inches", "cm", cm_per_inch},
    UnitWord{"\"", "cm", cm_per_inch},
    UnitWord{"ft", "cm", 12 * cm_per_inch},
    UnitWord{"ml", "mL"},
    UnitWord{"l", "mL", 1000},
    UnitWord{"cl", "mL", 10},
    UnitWord{"ul", "mL", 0.001},
    UnitWord{"\xC2\xB5l", "mL", 0.001},  // the micro sign, and the Greek letter
    UnitWord{"\xCE\xBCl", "mL", 0.001},
    UnitWord{"drop", "mL", 0.05},
    UnitWord{"drops", "mL", 0.05},
    UnitWord{"c", "C"},
    UnitWord{"\xC2\xB0", "C"},
    UnitWord{"\xC2\xB0"
             "c",
             "C"},
    UnitWord{"\xC2\xBA"
             "c",
             "C"},
    UnitWord{"celsius", "C"},
    UnitWord{"f", "C", 5.0 / 9, 32},
    UnitWord{"\xC2\xB0"
             "f",
             "C", 5.0 / 9, 32},
    UnitWord{"fahrenheit", "C", 5.0 / 9, 32},
    UnitWord{"k", "C", 1, 273.15},
    UnitWord{"year", "years"},
    UnitWord{"years", "years"},
    UnitWord{"years old", "years"},
    UnitWord{"yrs", "years"},
    UnitWord{"a", "years"},
    UnitWord{"%", "%"},
    UnitWord{"percent", "%"},
    UnitWord{"per cent", "%"},
    UnitWord{"vol%", "%"},
    UnitWord{"vol.%", "%"},
    UnitWord{"% v/v", "%"},
    UnitWord{"% vol", "%"},
};

constexpr std::array<std::string_view, 13> number_words = {"zero",  "one",   "two",  "three", "four",   "five",  "six",
                                                           "seven", "eight", "nine", "ten",   "eleven", "twelve"};

constexpr std::array<std::string_view, 13> about_words = {"about", "approximately", "approx.", "approx", "around",
                                                          "circa", "roughly",       "ca.",     "ca",     "c.",
                                                          "~",     "\xE2\x89\x88",  "ca,"};

std::string shown(double value) {
  return fmt::format("{:.6g}", value);
}

bool takes_fraction(const WantedNumber& wanted) {
  return !wanted.is_whole && wanted.smallest == 0 && wanted.largest == 1;
}

bool fits(double value, const WantedNumber& wanted) {
  if (wanted.is_whole && value != std::floor(value)) return false;
  return value >= wanted.smallest && value <= wanted.largest && !(takes_fraction(wanted) && (value == 0 || value == 1));
}

// What is wanted, where nothing tells what was meant.
std::string in_general(const WantedNumber& wanted) {
  if (wanted.unit == "years")
    return "write it in years as a number alone, for example 150; the rest belongs in the note";
  if (takes_fraction(wanted)) return "write a number between 0 and 1, for example 0.1 for 10 %";
  const char* number = wanted.is_whole ? "a whole number" : "a number";
  if (std::isfinite(wanted.smallest) && std::isfinite(wanted.largest))
    return fmt::format("write {} from {} to {}", number, shown(wanted.smallest), shown(wanted.largest));
  return wanted.is_whole ? "write a whole number, for example 12" : "write it plainly, for example 12.5";
}

// The number at the start and what stands behind it. A comma before three digits may be a point or divide thousands:
// then both readings.
struct Start {
  std::vector<double> readings;
  std::string rest;
  bool had_comma = false;
};

bool are_thousands(std::string_view text, std::size_t at) {
  return at > 0 && at + 3 < text.size() && is_digit(text[at + 1]) && is_digit(text[at + 2]) && is_digit(text[at + 3]) &&
         (at + 4 == text.size() || !is_digit(text[at + 4]));
}

std::optional<Start> number_start(std::string_view text) {
  std::string digits;
  std::size_t at = 0;
  if (!text.empty() && (text[0] == '-' || text[0] == '+')) digits += text[at++];
  std::optional<std::size_t> comma;
  std::size_t commas = 0;
  bool may_be_thousands = false;
  for (; at < text.size(); ++at) {
    if (is_digit(text[at]) || text[at] == '.') {
      digits += text[at];
    } else if (text[at] == ',' && at + 1 < text.size() && is_digit(text[at + 1])) {
      may_be_thousands = are_thousands(text, at) && digits != "0" && digits != "-0";
      comma = digits.size();
      ++commas;
    } else if (text[at] != ' ' || !are_thousands(text, at)) {
      break;
    }
  }
  Start start;
  start.rest = std::string(trimmed(text.substr(at)));
  start.had_comma = comma.has_value();
  if (commas > 1) return std::nullopt;
  if (comma) {
    std::string pointed = digits;
    if (const auto value = number_from(pointed.insert(*comma, "."))) start.readings.push_back(*value);
  }
  if (!comma || may_be_thousands)
    if (const auto value = number_from(digits)) start.readings.push_back(*value);
  if (start.readings.empty()) return std::nullopt;
  return start;
}

std::string without_about(std::string text, bool& was_about) {
  const std::string low = folded(text);
  for (const std::string_view word : about_words) {
    if (low.rfind(word, 0) != 0 || low.size() == word.size()) continue;
    const char next = low[word.size()];
    if (next != ' ' && !is_digit(next)) continue;
    was_about = true;
    return std::string(trimmed(text.substr(word.size())));
  }
  return text;
}

// "1/4" where a share of 1 is wanted.
std::string cure_of_second_number(double first, const std::string& rest, const WantedNumber& wanted) {
  if (rest.front() == '/' && takes_fraction(wanted))
    if (const auto below = number_from(trimmed(std::string_view(rest).substr(1))); below && *below > first)
      return "write " + shown(first / *below);
  return wanted.unit == "years" || takes_fraction(wanted) ? in_general(wanted) : "write one number alone";
}

bool begins_second_number(const std::string& rest) {
  std::size_t at = 0;
  for (const std::string_view word : {"-", "/", "x", "X", "\xC3\x97", "to ", ":", "*"})
    if (rest.rfind(word, 0) == 0) at = word.size();
  while (at > 0 && at < rest.size() && rest[at] == ' ') ++at;
  return at > 0 && at < rest.size() && is_digit(rest[at]);
}

std::string cure_of_unit(const Start& start, const WantedNumber& wanted) {
  const std::string word = folded(start.rest);
  const double value = start.readings.front();
  if (takes_fraction(wanted) && (word == "%" || word == "percent" || word == "per cent"))
    return fits(value / 100, wanted) ? fmt::format("write {} for {} %", shown(value / 100), shown(value))
                                     : in_general(wanted);
  for (const UnitWord& unit : unit_words) {
    if (word != unit.word || unit.unit != wanted.unit) continue;
    const double converted = (value - unit.zero) * unit.factor;
    if (!fits(converted, wanted)) return in_general(wanted);
    if (unit.factor == 1 && unit.zero == 0)
      return fmt::format("write {}, the unit is {} already", shown(converted), wanted.unit);
    return fmt::format("write {}, it counts in {}", shown(converted), wanted.unit);
  }
  return in_general(wanted);
}

std::string cure_of_bare(const Start& start, const WantedNumber& wanted) {
  std::vector<double> fitting;
  for (const double value : start.readings)
    if (fits(value, wanted)) fitting.push_back(value);
  if (fitting.empty()) {
    const std::string range = cure_of_range(start.readings.front(), wanted);
    return range.empty() ? in_general(wanted) : range;
  }
  if (fitting.size() > 1) return fmt::format("write {} or {}, without a comma", shown(fitting[0]), shown(fitting[1]));
  const bool pointed = start.had_comma && fitting.front() == start.readings.front();
  return fmt::format("write {}{}", shown(fitting.front()), pointed ? ", with a point instead of the comma" : "");
}

}  // namespace

std::string with_plain_signs(std::string_view typed) {
  std::string plain;
  for (std::size_t at = 0; at < typed.size();) {
    const Letter letter = letter_at(typed, at);
    at += letter.bytes.size();
    const char32_t code = letter.code;
    if (code == 0xA0 || code == 0x2007 || code == 0x2009 || code == 0x202F)
      plain += ' ';
    else if ((code >= 0x2010 && code <= 0x2015) || code == 0x2212)
      plain += '-';
    else if (!(code >= 0x2018 && code <= 0x201F) && code != 0xAB && code != 0xBB && code != 0x200B)
      plain += letter.bytes;
  }
  return std::string(trimmed(plain));
}

std::string unit_of_key(std::string_view key) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 5> endings = {
      {{"_cm", "cm"}, {"_mL", "mL"}, {"_C", "C"}, {"_years", "years"}, {"percent", "%"}}};
  for (const auto& [ending, unit] : endings)
    if (key.size() >= ending.size() && key.substr(key.size() - ending.size()) == ending) return std::string(unit);
  return {};
}

std::string cure_of_text(std::string_view typed, const WantedNumber& wanted) {
  bool was_about = false;
  const std::string text = without_about(with_plain_signs(typed), was_about);
  for (std::size_t i = 0; i < number_words.size(); ++i)
    if (folded(text) == number_words[i] && fits(static_cast<double>(i), wanted)) return fmt::format("write {}", i);
  std::optional<Start> start = number_start(text);
  if (!start) return in_general(wanted);
  if (begins_second_number(start->rest)) return cure_of_second_number(start->readings.front(), start->rest, wanted);
  while (!start->rest.empty() && (start->rest.back() == ',' || start->rest.back() == ';')) start->rest.pop_back();
  if (!start->rest.empty() && start->rest.front() == '#')
    return fmt::format("put a space in front of the #, and write {}", shown(start->readings.front()));
  std::string cure = start->rest.empty() ? cure_of_bare(*start, wanted) : cure_of_unit(*start, wanted);
  if (was_about && fits(start->readings.front(), wanted) && start->rest.empty())
    cure += "; how sure it is belongs in the note";
  return cure;
}

std::string cure_of_range(double value, const WantedNumber& wanted) {
  const auto ask = [&](double meant) {
    return fits(meant, wanted) ? fmt::format("did you mean {}?", shown(meant)) : std::string();
  };
  if (value < 0 && wanted.smallest >= 0) return ask(-value);
  if (takes_fraction(wanted)) return value > 1 && value < 100 ? ask(value / 100) : std::string();
  if (wanted.unit == "%" && value > 0 && value < 1) return ask(value * 100);
  if (wanted.unit == "C" && value > wanted.largest && fits((value - 32) * 5 / 9, wanted))
    return fmt::format("it counts in C; {} F would be {:.3g}", shown(value), (value - 32) * 5 / 9);
  if (wanted.unit == "cm" && value > wanted.largest && fits(value / 10, wanted))
    return fmt::format("it counts in cm; {} mm would be {}", shown(value), shown(value / 10));
  return {};
}

}  // namespace gentlest
