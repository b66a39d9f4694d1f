// What one swab did: the record that the painting's log holds, one line a swab.
// A plain record; it knows nothing of spheres. Numbers that were not noted down are missing, never 0.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// True for a day of the calendar as YYYY-MM-DD.
bool is_date(std::string_view text);

/// The same, or a month (1987-06) or a year (1987) of which no more is known: old records have no days.
bool is_date_or_part(std::string_view text);

/// What the swab did to the layer that is to go, from weakest to strongest.
enum class RemovalReading { no_effect, softened, partly, mostly, fully };
inline constexpr int removal_reading_count = 5;
/// "no effect", "softened or gelled", "partly removed", "mostly removed", "fully removed".
std::string_view to_word(RemovalReading reading);
std::optional<RemovalReading> removal_reading_from_word(std::string_view word);

/// What the swab did to the original below, from weakest to strongest.
enum class OriginalReading { nothing_seen, recovers, stays, softened, colour_on_swab };
inline constexpr int original_reading_count = 5;
/// "nothing seen", "change that recovers", "change that stays", "softened", "colour on the swab".
std::string_view to_word(OriginalReading reading);
std::optional<OriginalReading> original_reading_from_word(std::string_view word);

/// What a colour on the swab turned out to be. Only `original` and `not_known` speak of the original.
enum class SwabColour { none, varnish, dirt, retouching, original, not_known };
inline constexpr int swab_colour_count = 6;
std::string_view to_word(SwabColour colour);
std::optional<SwabColour> swab_colour_from_word(std::string_view word);

/// How wet the swab was.
enum class SwabWetness { dry, damp, wet };
inline constexpr int wetness_count = 3;
std::string_view to_word(SwabWetness wetness);
std::optional<SwabWetness> swab_wetness_from_word(std::string_view word);

/// How sure the person is of this reading.
enum class ReadingConfidence { low, medium, high };
inline constexpr int confidence_count = 3;
std::string_view to_word(ReadingConfidence confidence);
std::optional<ReadingConfidence> reading_confidence_from_word(std::string_view word);

/// Where on the painting, from its lower left corner.
struct Site {
  Centimetres x, y;
  bool operator==(const Site&) const = default;
};

/// One swab. `test` is its number in the log, from 1; 0 asks the log to give the next one.
struct Reading {
  int test = 0;
  std::string date;     ///< ISO, 2026-03-14, of old tests 1987-06 or 1987; may be empty
  std::string who;      ///< initials or name
  std::string mixture;  ///< as made: "isooctane 70, ethanol 96 % 30" (parse_mixture reads it)
  std::string layer;    ///< the layer that was to go; empty: the uppermost
  std::string passage;  ///< passage or kept layer under the swab; empty: not noted
  std::optional<Site> site;
  bool at_edge = false;             ///< tacking edge, under the frame: where harm matters least
  std::string window_mm;            ///< of the opening, e.g. "5 x 5"
  std::string light;                ///< in which it was looked at: "normal, raking, UV"
  std::string magnification;        ///< e.g. "10x"
  std::string uv_before, uv_after;  ///< what UV showed, in words
  std::string swab;                 ///< e.g. "white cotton"
  std::optional<SwabWetness> wetness;
  std::optional<int> rolls;
  std::optional<double> seconds;          ///< of contact
  std::optional<double> first_effect_s;   ///< of contact, until the layer to remove first moved
  std::optional<RemovalReading> removal;  ///< missing where there was nothing to remove
  std::optional<OriginalReading> original;
  SwabColour colour = SwabColour::none;
  std::string signs;                ///< words of the trade for what was seen, "patchy, smeared" (see noted/words.hpp)
  std::string clearing;             ///< with what, how often
  std::string after_drying;         ///< matt, blanched, halo, tacky, as seen when dry
  std::string photo_before, photo;  ///< file names or numbers of photographs, several behind semicolons
  std::string looked_after;  ///< a later look at an earlier test: how long after, see `look_time_from`; else empty
  ReadingConfidence confidence = ReadingConfidence::medium;
  std::string remark;
  std::string correction;  ///< why this line replaces the earlier one of the same test; empty on a first line
  bool withdrawn = false;  ///< with `correction`: the test does not count at all
  bool operator==(const Reading&) const = default;
};

/// A window as it is kept, mm: "5 x 8" of "5x8", "5 x 8 mm" or "5 by 8"; "5" of a square one. Nothing where it is no
/// size above 0.
std::optional<std::string> window_from(std::string_view text);

/// How long after the test it was looked at again, as it is kept: "20 min", "3 h", "1 day", "7 days"; read from "20
/// minutes later", "next day", "after a week" and the like. Nothing where it is no such time.
std::optional<std::string> look_time_from(std::string_view text);

/// True of a line that only says how an earlier test looked later.
inline bool is_later_look(const Reading& reading) {
  return !reading.looked_after.empty();
}

/// Any reaction of the original, and a colour on the swab of which nobody knows what it was. Old retouching is to be
/// kept unless it is what is removed; that the swab does not know.
bool is_harm(const Reading& reading);

/// Everything in a reading that cannot be: a date that is none, a negative time, a withdrawal without a reason, no
/// mixture, nothing read. A later look needs no mixture. Places are empty; the caller knows the file.
std::vector<Diagnostic> check_reading(const Reading& reading);

/// The readings that count, by test number: each test as its last correction says, without those withdrawn. Later looks
/// are joined to it: of the original the worst of all looks, with `looked_after` where that was seen later; removal as
/// the last look that speaks of it says. Precondition: of each test and each time of looking a line without
/// `correction` is the first (the log sees to it).
std::vector<Reading> current_readings(const std::vector<Reading>& lines);

}  // namespace gentlest
