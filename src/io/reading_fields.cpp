#include "io/reading_fields.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace gentlest {

namespace {

std::optional<int> whole_from(const std::string& text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<bool> truth_from(const std::string& text) {
  if (text == "yes") return true;
  if (text == "no") return false;
  return std::nullopt;
}

std::string number_text(const std::optional<double>& value) {
  return value ? fmt::format("{}", *value) : "";
}

// Stores what was understood; false when nothing was.
template <class Target, class Value>
bool store(Target& target, const std::optional<Value>& value) {
  if (value) target = *value;
  return value.has_value();
}

std::string* text_field(Reading& reading, std::string_view key) {
  if (key == "date") return &reading.date;
  if (key == "who") return &reading.who;
  if (key == "mixture") return &reading.mixture;
  if (key == "layer") return &reading.layer;
  if (key == "passage") return &reading.passage;
  if (key == "swab") return &reading.swab;
  if (key == "clearing") return &reading.clearing;
  if (key == "after_drying") return &reading.after_drying;
  if (key == "remark") return &reading.remark;
  if (key == "correction") return &reading.correction;
  return nullptr;
}

bool set_site(Reading& reading, bool is_x, const std::string& text) {
  if (text.empty()) {
    reading.site.reset();
    return true;
  }
  const std::optional<double> value = number_from(text);
  if (!value) return false;
  // A site with one coordinate only is not a number for the other: check_reading reports it.
  if (!reading.site) reading.site = Site{{-1}, {-1}};
  (is_x ? reading.site->x : reading.site->y).value = *value;
  return true;
}

// As if the key had never been given.
bool clear_field(Reading& reading, std::string_view key) {
  const Reading none;
  if (key == "test") reading.test = none.test;
  if (key == "x_cm" || key == "y_cm") return set_site(reading, key == "x_cm", "");
  if (key == "at_edge") reading.at_edge = none.at_edge;
  if (key == "rolls") reading.rolls = none.rolls;
  if (key == "seconds") reading.seconds = none.seconds;
  if (key == "removal") reading.removal = none.removal;
  if (key == "original") reading.original = none.original;
  if (key == "colour") reading.colour = none.colour;
  if (key == "confidence") reading.confidence = none.confidence;
  if (key == "withdrawn") reading.withdrawn = none.withdrawn;
  return find_field(key) != nullptr;
}

}  // namespace

const std::vector<ReadingField>& reading_fields() {
  static const std::vector<ReadingField> fields = {
      {"test", FieldKind::whole, "a whole number"},
      {"date", FieldKind::text, "a date such as 2026-03-14"},
      {"who", FieldKind::text, "a name"},
      {"mixture", FieldKind::text, "a mixture such as \"isooctane 70, ethanol 30\""},
      {"layer", FieldKind::text, "the name of a layer"},
      {"passage", FieldKind::text, "the name of a passage"},
      {"x_cm", FieldKind::number, "a number with a point"},
      {"y_cm", FieldKind::number, "a number with a point"},
      {"at_edge", FieldKind::truth, "yes or no"},
      {"swab", FieldKind::text, "text"},
      {"rolls", FieldKind::whole, "a whole number"},
      {"seconds", FieldKind::number, "a number with a point"},
      {"removal", FieldKind::text, "no effect, softened or gelled, partly removed, mostly removed or fully removed"},
      {"original", FieldKind::text,
       "nothing seen, change that recovers, change that stays, softened or colour on the swab"},
      {"colour", FieldKind::text, "none, varnish, dirt, retouching, original or not known"},
      {"clearing", FieldKind::text, "text"},
      {"after_drying", FieldKind::text, "text"},
      {"confidence", FieldKind::text, "low, medium or high"},
      {"remark", FieldKind::text, "text"},
      {"correction", FieldKind::text, "the reason"},
      {"withdrawn", FieldKind::truth, "yes or no"},
  };
  return fields;
}

const ReadingField* find_field(std::string_view key) {
  const std::vector<ReadingField>& fields = reading_fields();
  const auto found =
      std::find_if(fields.begin(), fields.end(), [&](const ReadingField& field) { return field.key == key; });
  return found == fields.end() ? nullptr : &*found;
}

std::string get_field(const Reading& reading, std::string_view key) {
  Reading copy = reading;
  if (const std::string* text = text_field(copy, key)) return *text;
  if (key == "test") return std::to_string(reading.test);
  if (key == "x_cm") return reading.site ? number_text(reading.site->x.value) : "";
  if (key == "y_cm") return reading.site ? number_text(reading.site->y.value) : "";
  if (key == "at_edge") return reading.at_edge ? "yes" : "";
  if (key == "rolls") return reading.rolls ? std::to_string(*reading.rolls) : "";
  if (key == "seconds") return number_text(reading.seconds);
  if (key == "removal") return reading.removal ? std::string(to_word(*reading.removal)) : "";
  if (key == "original") return reading.original ? std::string(to_word(*reading.original)) : "";
  if (key == "colour") return reading.colour != SwabColour::none ? std::string(to_word(reading.colour)) : "";
  if (key == "confidence") return std::string(to_word(reading.confidence));
  if (key == "withdrawn") return reading.withdrawn ? "yes" : "";
  return "";
}

bool set_field(Reading& reading, std::string_view key, const std::string& text) {
  if (std::string* target = text_field(reading, key)) {
    *target = text;
    return true;
  }
  if (text.empty()) return clear_field(reading, key);
  if (key == "test") return store(reading.test, whole_from(text));
  if (key == "x_cm" || key == "y_cm") return set_site(reading, key == "x_cm", text);
  if (key == "at_edge") return store(reading.at_edge, truth_from(text));
  if (key == "rolls") return store(reading.rolls, whole_from(text));
  if (key == "seconds") return store(reading.seconds, number_from(text));
  if (key == "removal") return store(reading.removal, removal_reading_from_word(text));
  if (key == "original") return store(reading.original, original_reading_from_word(text));
  if (key == "colour") return store(reading.colour, swab_colour_from_word(text));
  if (key == "confidence") return store(reading.confidence, confidence_from_word(text));
  if (key == "withdrawn") return store(reading.withdrawn, truth_from(text));
  return false;
}

}  // namespace gentlest
