// Later looks at a test: what was seen then counts, what was read first stays.
#include "gentlest/learning/typed_reading.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

namespace {

Reading first_reading() {
  Reading reading;
  reading.test = 4;
  reading.mixture = "acetone 100";
  reading.removal = RemovalReading::mostly;
  reading.original = OriginalReading::nothing_seen;
  return reading;
}

Reading look(const std::string& when, OriginalReading original) {
  Reading reading;
  reading.test = 4;
  reading.looked_after = when;
  reading.original = original;
  return reading;
}

}  // namespace

TEST_CASE("a time after the test is kept in one spelling", "[looks]") {
  for (const char* text :
       {"1 day", "next day", "the next day", "after a day", "1 d", "one day", "after 1 day", "a day later"})
    CHECK(look_time_from(text) == "1 day");
  for (const char* text : {"7 days", "a week", "after a week", "1 week", "one week later"})
    CHECK(look_time_from(text) == "7 days");
  for (const char* text : {"20 min", "20min", "after 20 minutes", "20 min later"})
    CHECK(look_time_from(text) == "20 min");
  CHECK(look_time_from("3 hours") == "3 h");
  CHECK(look_time_from("2 months") == "2 months");
  for (const char* text : {"", "soon", "day", "20", "0 min", "-1 day", "20 s", "after", "1 2 days"}) {
    INFO(text);
    CHECK_FALSE(look_time_from(text).has_value());
  }
}

TEST_CASE("a window is a size in mm", "[looks]") {
  for (const char* text : {"5 x 8", "5x8", "5 x 8 mm", "5 by 8", "5 \xC3\x97 8 mm"})
    CHECK(window_from(text) == "5 x 8");
  CHECK(window_from("5") == "5");
  CHECK(window_from("5 mm") == "5");
  CHECK(window_from("2,5 x 3") == "2.5 x 3");
  for (const char* text : {"", "large", "0 x 5", "5 x", "x", "-5", "5 x 5 x 5", "5 cm"}) {
    INFO(text);
    CHECK_FALSE(window_from(text).has_value());
  }
}

TEST_CASE("a later look counts the worst that was seen and takes nothing back", "[looks]") {
  Reading blanched = look("1 day", OriginalReading::stays);
  blanched.signs = "blanched";
  const std::vector<Reading> current = current_readings({first_reading(), blanched});
  REQUIRE(current.size() == 1);
  CHECK(current[0].original == OriginalReading::stays);
  CHECK(current[0].removal == RemovalReading::mostly);
  CHECK(current[0].looked_after == "1 day");
  CHECK(current[0].signs == "blanched (1 day after)");
  CHECK(current[0].mixture == "acetone 100");
  // What recovered by the next day was harm all the same.
  Reading harmed = first_reading();
  harmed.original = OriginalReading::softened;
  const Reading after = current_readings({harmed, look("1 day", OriginalReading::nothing_seen)}).front();
  CHECK(after.original == OriginalReading::softened);
  CHECK(after.looked_after.empty());
  // Of two looks the graver.
  const Reading both = current_readings({first_reading(), look("20 min", OriginalReading::softened),
                                         look("1 day", OriginalReading::recovers)})
                           .front();
  CHECK(both.original == OriginalReading::softened);
  CHECK(both.looked_after == "20 min");
  // The later look may say other of the layer to remove.
  Reading more = look("1 day", OriginalReading::nothing_seen);
  more.removal = RemovalReading::partly;
  CHECK(current_readings({first_reading(), more}).front().removal == RemovalReading::partly);
}

TEST_CASE("whatever first and later looks say, the test harmed where one of them did", "[looks]") {
  const auto each = [](auto work) {
    for (int original = -1; original < original_reading_count; ++original)
      for (int colour = 0; colour < swab_colour_count; ++colour) work(original, static_cast<SwabColour>(colour));
  };
  int seen = 0;
  each([&](int original, SwabColour colour) {
    each([&](int later_original, SwabColour later_colour) {
      Reading first = first_reading();
      first.original = original < 0 ? std::nullopt : std::optional(static_cast<OriginalReading>(original));
      first.colour = colour;
      Reading later = look("1 day", OriginalReading::nothing_seen);
      later.original = later_original < 0 ? std::nullopt : std::optional(static_cast<OriginalReading>(later_original));
      later.removal = RemovalReading::no_effect;
      later.colour = later_colour;
      const Reading joined = current_readings({first, later}).front();
      INFO(original << " " << to_word(colour) << " then " << later_original << " " << to_word(later_colour));
      CHECK(is_harm(joined) == (is_harm(first) || is_harm(later)));
      CHECK((joined.looked_after.empty() || is_harm(later)));
      if (!is_harm(first) && is_harm(later)) CHECK(joined.looked_after == "1 day");
      ++seen;
    });
  });
  CHECK(seen == 36 * 36);
}

TEST_CASE("a look is corrected and withdrawn by itself", "[looks]") {
  Reading corrected = look("1 day", OriginalReading::nothing_seen);
  corrected.correction = "it was the light";
  CHECK(current_readings({first_reading(), look("1 day", OriginalReading::stays), corrected}).front().original ==
        OriginalReading::nothing_seen);
  Reading withdrawn = look("1 day", OriginalReading::stays);
  withdrawn.correction = "another spot";
  withdrawn.withdrawn = true;
  const std::vector<Reading> lines = {first_reading(), look("1 day", OriginalReading::stays), withdrawn};
  CHECK(current_readings(lines).front().original == OriginalReading::nothing_seen);
  // A correction of the test itself leaves the look.
  Reading of_test = first_reading();
  of_test.correction = "read again";
  CHECK(current_readings({first_reading(), look("1 day", OriginalReading::stays), of_test}).front().original ==
        OriginalReading::stays);
  TypedReading typed;
  typed.reading = look("", OriginalReading::recovers);
  typed.reading.correction = "read again";
  typed.named = {"test", "original", "correction"};
  const Reading stands = as_it_will_stand(typed, {first_reading(), look("1 day", OriginalReading::stays)});
  CHECK(stands.mixture == "acetone 100");
  CHECK(stands.looked_after.empty());
}

TEST_CASE("what a look or a window cannot be is told", "[looks]") {
  Reading reading = first_reading();
  reading.window_mm = "large";
  reading.seconds = 10;
  reading.first_effect_s = 20;
  CHECK(check_reading(reading).size() == 2);
  CHECK(check_reading(look("1 day", OriginalReading::stays)).empty());
  CHECK(check_reading(look("soon", OriginalReading::stays)).size() == 1);
  Reading of_none = look("1 day", OriginalReading::stays);
  of_none.test = 0;
  CHECK(check_reading(of_none).size() == 1);
}
