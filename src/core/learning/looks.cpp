// Later looks at a test, and the words for when they were.
#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace gentlest {

namespace {

struct TimeWord {
  std::string_view word;
  std::string_view one, many;
  int times;
};
constexpr std::array<TimeWord, 18> time_words = {{{"min", "min", "min", 1},
                                                  {"min.", "min", "min", 1},
                                                  {"minute", "min", "min", 1},
                                                  {"minutes", "min", "min", 1},
                                                  {"h", "h", "h", 1},
                                                  {"hr", "h", "h", 1},
                                                  {"hour", "h", "h", 1},
                                                  {"hours", "h", "h", 1},
                                                  {"d", "day", "days", 1},
                                                  {"day", "day", "days", 1},
                                                  {"days", "day", "days", 1},
                                                  {"week", "day", "days", 7},
                                                  {"weeks", "day", "days", 7},
                                                  {"fortnight", "day", "days", 14},
                                                  {"month", "month", "months", 1},
                                                  {"months", "month", "months", 1},
                                                  {"year", "month", "months", 12},
                                                  {"years", "month", "months", 12}}};
constexpr double longest_look = 10000;

// "20min" is two words.
void split_glued(std::vector<std::string>& words) {
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::size_t unit = words[i].find_first_not_of("0123456789.");
    if (unit == std::string::npos || unit == 0) continue;
    const std::string rest = words[i].substr(unit);
    words[i].resize(unit);
    words.insert(words.begin() + static_cast<std::ptrdiff_t>(i) + 1, rest);
  }
}

// How grave: 0 where it is no harm. A harm without a word for the original is a colour on the swab.
int rank(const Reading& reading) {
  return is_harm(reading) ? 1 + static_cast<int>(reading.original.value_or(OriginalReading::colour_on_swab)) : 0;
}

void take_original(Reading& reading, const Reading& look) {
  reading.original = look.original.value_or(OriginalReading::colour_on_swab);
  const bool speaks_of_original = reading.colour == SwabColour::original || reading.colour == SwabColour::not_known;
  if (look.original == OriginalReading::colour_on_swab || look.colour != SwabColour::none)
    if (!speaks_of_original) reading.colour = look.colour;
}

void append(std::string& text, const std::string& more, const std::string& when) {
  if (more.empty()) return;
  text += fmt::format("{}{} ({} after)", text.empty() ? "" : "; ", more, when);
}

void join_look(Reading& reading, const Reading& look) {
  if (look.removal) reading.removal = look.removal;
  if (rank(look) > rank(reading)) {
    take_original(reading, look);
    reading.looked_after = look.looked_after;
  } else if (!reading.original && !is_harm(reading) && look.original) {
    take_original(reading, look);
  }
  append(reading.signs, look.signs, look.looked_after);
  append(reading.after_drying, look.after_drying, look.looked_after);
  append(reading.uv_after, look.uv_after, look.looked_after);
  append(reading.clearing, look.clearing, look.looked_after);
  append(reading.photo, look.photo, look.looked_after);
  append(reading.remark, look.remark, look.looked_after);
}

}  // namespace

std::optional<std::string> window_from(std::string_view text) {
  std::string plain = folded(text);
  if (plain.size() > 2 && plain.compare(plain.size() - 2, 2, "mm") == 0)
    plain = folded(plain.substr(0, plain.size() - 2));
  for (const std::string_view between : {"\xC3\x97", "by", "*"})
    if (const std::size_t at = plain.find(between); at != std::string::npos) plain.replace(at, between.size(), "x");
  std::replace(plain.begin(), plain.end(), ',', '.');
  const std::size_t cross = plain.find('x');
  const auto side = [](std::string_view side_text) -> std::optional<double> {
    const std::optional<double> value = amount_from(trimmed(side_text));
    return value && *value > 0 && *value <= 1000 ? value : std::nullopt;
  };
  const std::optional<double> first = side(std::string_view(plain).substr(0, cross));
  if (cross == std::string::npos) return first ? std::optional(fmt::format("{}", *first)) : std::nullopt;
  const std::optional<double> second = side(std::string_view(plain).substr(cross + 1));
  return first && second ? std::optional(fmt::format("{} x {}", *first, *second)) : std::nullopt;
}

std::optional<std::string> look_time_from(std::string_view text) {
  std::vector<std::string> words = words_in(folded(text));
  split_glued(words);
  if (!words.empty() && (words.front() == "after" || words.front() == "the")) words.erase(words.begin());
  if (!words.empty() && (words.back() == "later" || words.back() == "after")) words.pop_back();
  if (words.size() == 2 && (words[0] == "next" || words[0] == "following")) words[0] = "1";
  if (words.size() == 2 && (words[0] == "a" || words[0] == "an" || words[0] == "one")) words[0] = "1";
  if (words.size() != 2) return std::nullopt;
  const std::optional<double> count = amount_from(words[0]);
  const auto unit =
      std::find_if(time_words.begin(), time_words.end(), [&](const TimeWord& one) { return one.word == words[1]; });
  if (!count || unit == time_words.end() || *count <= 0 || *count > longest_look) return std::nullopt;
  const double value = *count * unit->times;
  return fmt::format("{} {}", value, value == 1 ? unit->one : unit->many);
}

bool is_harm(const Reading& reading) {
  const SwabColour colour = reading.colour;
  const bool colour_counts = colour == SwabColour::original || colour == SwabColour::not_known;
  if (!reading.original) return colour_counts || colour == SwabColour::retouching;
  switch (*reading.original) {
    case OriginalReading::nothing_seen:
      return colour_counts;
    case OriginalReading::colour_on_swab:
      return colour != SwabColour::varnish && colour != SwabColour::dirt;
    default:
      return true;
  }
}

std::vector<Reading> current_readings(const std::vector<Reading>& lines) {
  std::map<int, Reading> first;
  std::map<int, std::vector<Reading>> looks;
  for (const Reading& line : lines) {
    if (!is_later_look(line)) {
      first[line.test] = line;
      continue;
    }
    std::vector<Reading>& of_test = looks[line.test];
    const auto same = std::find_if(of_test.begin(), of_test.end(),
                                   [&](const Reading& one) { return one.looked_after == line.looked_after; });
    if (same == of_test.end())
      of_test.push_back(line);
    else
      *same = line;
  }
  std::vector<Reading> current;
  for (auto& [test, reading] : first) {
    if (reading.withdrawn) continue;
    for (const Reading& look : looks[test])
      if (!look.withdrawn) join_look(reading, look);
    current.push_back(std::move(reading));
  }
  return current;
}

}  // namespace gentlest
