#include "gentlest/learning/reading.hpp"

#include <catch2/catch.hpp>

using namespace gentlest;

namespace {

Reading sound(int test) {
  Reading reading;
  reading.test = test;
  reading.mixture = "isooctane 70, ethanol 30";
  reading.removal = RemovalReading::partly;
  reading.original = OriginalReading::nothing_seen;
  return reading;
}

}  // namespace

TEST_CASE("every word of a reading leads back to its value") {
  for (int i = 0; i < removal_reading_count; ++i)
    CHECK(removal_reading_from_word(to_word(static_cast<RemovalReading>(i))) == static_cast<RemovalReading>(i));
  for (int i = 0; i < original_reading_count; ++i)
    CHECK(original_reading_from_word(to_word(static_cast<OriginalReading>(i))) == static_cast<OriginalReading>(i));
  for (int i = 0; i < 6; ++i)
    CHECK(swab_colour_from_word(to_word(static_cast<SwabColour>(i))) == static_cast<SwabColour>(i));
  for (int i = 0; i < 3; ++i)
    CHECK(reading_confidence_from_word(to_word(static_cast<ReadingConfidence>(i))) ==
          static_cast<ReadingConfidence>(i));
  CHECK(removal_reading_from_word(" Partly Removed ") == RemovalReading::partly);
  CHECK_FALSE(removal_reading_from_word("partly").has_value());
}

TEST_CASE("a reading that cannot be is told with every fault") {
  CHECK(check_reading(sound(1)).empty());
  Reading bad = sound(-1);
  bad.date = "2026-02-29";
  bad.seconds = 0;
  bad.rolls = -2;
  bad.mixture = " ";
  bad.site = Site{{3}, {-1}};
  bad.removal.reset();
  bad.original.reset();
  CHECK(check_reading(bad).size() == 7);
  Reading leap = sound(1);
  leap.date = "2028-02-29";
  CHECK(check_reading(leap).empty());
  for (const char* date : {"2026-13-01", "2026-00-10", "2026-04-31", "26-04-30", "2026/04/30", "2026-04-00"}) {
    INFO(date);
    leap.date = date;
    CHECK(check_reading(leap).size() == 1);
  }
}

TEST_CASE("a later line replaces the earlier one of its test, a withdrawal strikes it out") {
  Reading corrected = sound(2);
  corrected.removal = RemovalReading::fully;
  corrected.correction = "read again under the microscope";
  Reading withdrawn;
  withdrawn.test = 1;
  withdrawn.correction = "wrong bottle";
  withdrawn.withdrawn = true;
  CHECK(check_reading(withdrawn).empty());
  const std::vector<Reading> current = current_readings({sound(1), sound(2), sound(3), corrected, withdrawn});
  REQUIRE(current.size() == 2);
  CHECK(current[0] == corrected);
  CHECK(current[1] == sound(3));
  withdrawn.correction.clear();
  CHECK(check_reading(withdrawn).size() == 1);
}
