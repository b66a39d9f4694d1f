// The table of a reading's fields, and that the document names each.
#include "gentlest/learning/reading_fields.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>
#include <map>
#include <set>

using namespace gentlest;

namespace {

// One sound text of each key, and what a reading then holds.
const std::map<std::string, std::string>& samples() {
  static const std::map<std::string, std::string> texts = {{"test", "3"},
                                                           {"date", "2026-03-14"},
                                                           {"who", "A.B."},
                                                           {"mixture", "acetone 100"},
                                                           {"layer", "varnish"},
                                                           {"passage", "red glaze"},
                                                           {"x_cm", "12.5"},
                                                           {"y_cm", "3"},
                                                           {"at_edge", "yes"},
                                                           {"window_mm", "5 x 8"},
                                                           {"light", "normal, raking"},
                                                           {"magnification", "10x"},
                                                           {"uv_before", "greenish"},
                                                           {"uv_after", "dark"},
                                                           {"swab", "cotton"},
                                                           {"wetness", "damp"},
                                                           {"rolls", "10"},
                                                           {"seconds", "20.5"},
                                                           {"first_effect_s", "5"},
                                                           {"removal", "partly removed"},
                                                           {"original", "change that stays"},
                                                           {"colour", "varnish"},
                                                           {"signs", "patchy, smeared"},
                                                           {"clearing", "isooctane"},
                                                           {"after_drying", "blanched"},
                                                           {"photo_before", "11.jpg"},
                                                           {"photo", "12.jpg; 13.jpg"},
                                                           {"looked_after", "1 day"},
                                                           {"confidence", "high"},
                                                           {"remark", "slow"},
                                                           {"correction", "seen dry"},
                                                           {"withdrawn", "yes"}};
  return texts;
}

}  // namespace

TEST_CASE("every field is set, read and cleared by its own key and touches no other", "[reading]") {
  CHECK(reading_fields().size() == samples().size());
  for (const ReadingField& field : reading_fields()) {
    const std::string key(field.key);
    INFO(key);
    REQUIRE(samples().count(key) == 1);
    Reading reading;
    REQUIRE(set_field(reading, key, samples().at(key)));
    CHECK(get_field(reading, key) == samples().at(key));
    for (const ReadingField& other : reading_fields()) {
      const bool same_site = key.substr(1) == "_cm" && other.key.substr(1) == "_cm";
      if (other.key != field.key && !same_site) CHECK(get_field(reading, other.key) == get_field({}, other.key));
    }
    REQUIRE(set_field(reading, key, ""));
    CHECK(reading == Reading());
  }
}

TEST_CASE("the two distances of a site are kept apart, and an empty field has no text", "[reading]") {
  Reading reading;
  CHECK(set_field(reading, "x_cm", "12.5"));
  CHECK(set_field(reading, "y_cm", "3"));
  REQUIRE(reading.site);
  CHECK(reading.site->x.value == 12.5);
  CHECK(reading.site->y.value == 3);
  CHECK(field_value(reading, "x_cm") == FieldValue(12.5));
  CHECK(field_value(reading, "y_cm") == FieldValue(3.0));
  for (const ReadingField& field : reading_fields())
    if (field.key != "test" && field.key != "confidence") CHECK(get_field({}, field.key).empty());
}

TEST_CASE("what a field cannot hold is refused and changes nothing", "[reading]") {
  const std::map<std::string, std::string> wrong = {{"test", "3a"},
                                                    {"x_cm", "left"},
                                                    {"at_edge", "true"},
                                                    {"rolls", "2.5"},
                                                    {"seconds", "long"},
                                                    {"removal", "a little"},
                                                    {"original", "no effect"},
                                                    {"colour", "blue"},
                                                    {"confidence", "sure"},
                                                    {"withdrawn", "maybe"},
                                                    {"window_mm", "large"},
                                                    {"wetness", "soaked"},
                                                    {"looked_after", "soon"},
                                                    {"first_effect_s", "at once"}};
  for (const auto& [key, text] : wrong) {
    INFO(key);
    Reading reading;
    reading.mixture = "acetone 100";
    const Reading before = reading;
    CHECK_FALSE(set_field(reading, key, text));
    CHECK(reading == before);
    CHECK_FALSE(find_field(key)->help.empty());
  }
  Reading reading;
  CHECK_FALSE(set_field(reading, "no_such_key", "1"));
  CHECK(find_field("confidence")->help == "low, medium or high");
}

TEST_CASE("a field's value says what is taken where nothing was said", "[reading]") {
  const Reading none;
  CHECK(field_value(none, "mixture") == FieldValue());
  CHECK(field_value(none, "seconds") == FieldValue());
  CHECK(field_value(none, "x_cm") == FieldValue());
  CHECK(field_value(none, "at_edge") == FieldValue(false));
  CHECK(field_value(none, "confidence") == FieldValue(std::string("medium")));
  CHECK(field_value(none, "colour") == FieldValue(std::string("none")));
  Reading one;
  one.rolls = 4;
  CHECK(field_value(one, "rolls") == FieldValue(4.0));
}

TEST_CASE("the document names every key of a reading and every word", "[reading]") {
  std::ifstream in(std::string(GENTLEST_SOURCE_DIR) + "/docs/data-format.md");
  const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  const std::string log = text.substr(text.find("## The log of tests"));
  for (const ReadingField& field : reading_fields()) {
    INFO(field.key);
    CHECK(log.find("`" + std::string(field.key) + "`") != std::string::npos);
    for (const std::string_view word : field.words)
      if (word != "none") CHECK(log.find("`" + std::string(word) + "`") != std::string::npos);
  }
}
