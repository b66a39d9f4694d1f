#include "gentlest/learning/reading.hpp"
#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace gentlest {

namespace {

constexpr std::array<std::string_view, removal_reading_count> removal_words = {
    "no effect", "softened or gelled", "partly removed", "mostly removed", "fully removed"};
constexpr std::array<std::string_view, original_reading_count> original_words = {
    "nothing seen", "change that recovers", "change that stays", "softened", "colour on the swab"};
constexpr std::array<std::string_view, swab_colour_count> colour_words = {"none",       "varnish",  "dirt",
                                                                          "retouching", "original", "not known"};
constexpr std::array<std::string_view, wetness_count> wetness_words = {"dry", "damp", "wet"};
constexpr std::array<std::string_view, confidence_count> confidence_words = {"low", "medium", "high"};

template <class Enum, std::size_t N>
std::optional<Enum> from_word(std::string_view word, const std::array<std::string_view, N>& words) {
  const std::string wanted = folded(word);
  for (std::size_t i = 0; i < N; ++i)
    if (wanted == words[i]) return static_cast<Enum>(i);
  return std::nullopt;
}

bool is_leap(int year) {
  return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

bool is_length(double value) {
  return std::isfinite(value) && value >= 0 && value <= 100000;
}

}  // namespace

bool is_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  for (const std::size_t i : {0u, 1u, 2u, 3u, 5u, 6u, 8u, 9u})
    if (text[i] < '0' || text[i] > '9') return false;
  const auto number = [&](std::size_t from, std::size_t count) {
    int value = 0;
    for (std::size_t i = from; i < from + count; ++i) value = 10 * value + (text[i] - '0');
    return value;
  };
  const int month = number(5, 2);
  if (month < 1 || month > 12) return false;
  constexpr std::array<int, 12> days = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const int most = days[static_cast<std::size_t>(month - 1)] + (month == 2 && is_leap(number(0, 4)) ? 1 : 0);
  const int day = number(8, 2);
  return day >= 1 && day <= most;
}

bool is_date_or_part(std::string_view text) {
  if (text.size() == 4) return is_date(std::string(text) + "-01-01");
  if (text.size() == 7) return is_date(std::string(text) + "-01");
  return is_date(text);
}

std::string_view to_word(RemovalReading reading) {
  return removal_words[static_cast<std::size_t>(reading)];
}
std::optional<RemovalReading> removal_reading_from_word(std::string_view word) {
  return from_word<RemovalReading>(word, removal_words);
}

std::string_view to_word(OriginalReading reading) {
  return original_words[static_cast<std::size_t>(reading)];
}
std::optional<OriginalReading> original_reading_from_word(std::string_view word) {
  return from_word<OriginalReading>(word, original_words);
}

std::string_view to_word(SwabColour colour) {
  return colour_words[static_cast<std::size_t>(colour)];
}
std::optional<SwabColour> swab_colour_from_word(std::string_view word) {
  return from_word<SwabColour>(word, colour_words);
}

std::string_view to_word(SwabWetness wetness) {
  return wetness_words[static_cast<std::size_t>(wetness)];
}
std::optional<SwabWetness> swab_wetness_from_word(std::string_view word) {
  return from_word<SwabWetness>(word, wetness_words);
}

std::string_view to_word(ReadingConfidence confidence) {
  return confidence_words[static_cast<std::size_t>(confidence)];
}
std::optional<ReadingConfidence> reading_confidence_from_word(std::string_view word) {
  return from_word<ReadingConfidence>(word, confidence_words);
}

std::vector<Diagnostic> check_reading(const Reading& reading) {
  std::vector<Diagnostic> faults;
  const auto complain = [&](std::string message, std::string remedy) {
    faults.push_back({{}, std::move(message), std::move(remedy), {}});
  };
  if (reading.test < 0 || reading.test > 1'000'000)
    complain("the test number must be 1 or more", "leave it out to get the next one");
  if (!reading.date.empty() && !is_date_or_part(reading.date))
    complain(fmt::format("\"{}\" is not a date", reading.date), "write it as 2026-03-14, or the year alone");
  if (reading.site && !(is_length(reading.site->x.value) && is_length(reading.site->y.value)))
    complain("the site does not lie on a painting", "give both distances in cm from the lower left corner");
  if (reading.rolls && *reading.rolls < 0) complain("the number of rolls is negative", "count them, or leave it out");
  if (reading.seconds && !(std::isfinite(*reading.seconds) && *reading.seconds > 0))
    complain("the contact time must be above 0 seconds", "leave it out where it was not taken");
  if (reading.first_effect_s && !(std::isfinite(*reading.first_effect_s) && *reading.first_effect_s >= 0))
    complain("the time of the first effect is negative", "give it in seconds of contact, or leave it out");
  if (reading.first_effect_s && reading.seconds && *reading.first_effect_s > *reading.seconds)
    complain("the first effect came after the contact had ended", "first_effect_s is no more than seconds");
  if (!reading.window_mm.empty() && !window_from(reading.window_mm))
    complain(fmt::format("\"{}\" is no size of a window", reading.window_mm), "write it in mm, \"5\" or \"5 x 8\"");
  if (is_later_look(reading) && !look_time_from(reading.looked_after))
    complain(fmt::format("\"{}\" is no time after a test", reading.looked_after),
             "write for example \"20 min\", \"1 day\" or \"after a week\"");
  if (is_later_look(reading) && reading.test == 0) complain("a later look names no test", "say which, e.g. test 4");
  if (reading.withdrawn && reading.correction.empty())
    complain("a test is withdrawn without a reason", "say why in the correction");
  if (reading.withdrawn) return faults;
  if (trimmed(reading.mixture).empty() && !is_later_look(reading))
    complain("the mixture is missing", "e.g. \"isooctane 70, ethanol 30\"");
  if (!reading.removal && !reading.original)
    complain("nothing was read", "give what the swab did to the layer to remove, to the original, or both");
  return faults;
}

}  // namespace gentlest
