#include "gentlest/learning/reading_fields.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <charconv>
#include <type_traits>

namespace gentlest {

namespace {

// From text, one for each type of member; false when it is not understood.

template <class Value>
bool store(Value& target, const std::optional<Value>& value) {
  if (value) target = *value;
  return value.has_value();
}

bool take(std::string& target, const std::string& text) {
  target = text;
  return true;
}

bool take(int& target, const std::string& text) {
  int value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return false;
  target = value;
  return true;
}

bool take(double& target, const std::string& text) {
  return store(target, number_from(text));
}

bool take(bool& target, const std::string& text) {
  if (text != "yes" && text != "no") return false;
  target = text == "yes";
  return true;
}

bool take(RemovalReading& target, const std::string& text) {
  return store(target, removal_reading_from_word(text));
}
bool take(OriginalReading& target, const std::string& text) {
  return store(target, original_reading_from_word(text));
}
bool take(SwabColour& target, const std::string& text) {
  return store(target, swab_colour_from_word(text));
}
bool take(SwabWetness& target, const std::string& text) {
  return store(target, swab_wetness_from_word(text));
}
bool take(ReadingConfidence& target, const std::string& text) {
  return store(target, reading_confidence_from_word(text));
}

template <class Value>
bool take(std::optional<Value>& target, const std::string& text) {
  Value value{};
  if (!take(value, text)) return false;
  target = value;
  return true;
}

// To text, as the log says it: what is as nothing was said is empty.

std::string text_of(const std::string& value) {
  return value;
}
std::string text_of(int value) {
  return std::to_string(value);
}
std::string text_of(double value) {
  return fmt::format("{}", value);
}
std::string text_of(bool value) {
  return value ? "yes" : "";
}
std::string text_of(SwabColour value) {
  return value == SwabColour::none ? "" : std::string(to_word(value));
}
template <class Enum, class = std::enable_if_t<std::is_enum_v<Enum>>>
std::string text_of(Enum value) {
  return std::string(to_word(value));
}
template <class Value>
std::string text_of(const std::optional<Value>& value) {
  return value ? text_of(*value) : "";
}

// As it stands, for tables.

FieldValue value_of(const std::string& value) {
  return value.empty() ? FieldValue() : FieldValue(value);
}
FieldValue value_of(int value) {
  return static_cast<double>(value);
}
FieldValue value_of(double value) {
  return value;
}
FieldValue value_of(bool value) {
  return value;
}
template <class Enum, class = std::enable_if_t<std::is_enum_v<Enum>>>
FieldValue value_of(Enum value) {
  return std::string(to_word(value));
}
template <class Value>
FieldValue value_of(const std::optional<Value>& value) {
  return value ? value_of(*value) : FieldValue();
}

template <class Value>
struct Inner {
  using Type = Value;
};
template <class Value>
struct Inner<std::optional<Value>> {
  using Type = Value;
};

template <class Value>
constexpr FieldKind kind_of() {
  if constexpr (std::is_same_v<Value, bool>)
    return FieldKind::truth;
  else if constexpr (std::is_same_v<Value, int>)
    return FieldKind::whole;
  else if constexpr (std::is_same_v<Value, double>)
    return FieldKind::number;
  else
    return FieldKind::text;
}

template <auto Member>
ReadingField field(std::string_view key, std::string help) {
  using Value = std::decay_t<decltype(Reading().*Member)>;
  return {key,
          kind_of<typename Inner<Value>::Type>(),
          {},
          std::move(help),
          [](const Reading& reading) { return text_of(reading.*Member); },
          [](Reading& reading, const std::string& text) { return take(reading.*Member, text); },
          [](Reading& reading) { reading.*Member = Reading().*Member; },
          [](const Reading& reading) { return value_of(reading.*Member); }};
}

template <auto Member>
ReadingField choice(std::string_view key, int count) {
  using Enum = typename Inner<std::decay_t<decltype(Reading().*Member)>>::Type;
  std::vector<std::string_view> words;
  for (int i = 0; i < count; ++i) words.push_back(to_word(static_cast<Enum>(i)));
  ReadingField made = field<Member>(key, enumerated(words, "or"));
  made.words = std::move(words);
  return made;
}

// Words that are kept in one spelling.
template <std::string Reading::*Member, std::optional<std::string> (*Spelling)(std::string_view)>
ReadingField kept_as(std::string_view key, std::string help) {
  ReadingField made = field<Member>(key, std::move(help));
  made.set = [](Reading& reading, const std::string& text) { return store(reading.*Member, Spelling(text)); };
  return made;
}

bool set_coordinate(Reading& reading, Centimetres Site::*which, const std::string& text) {
  double value = 0;
  if (!take(value, text)) return false;
  // A site with one coordinate only is not a number for the other: check_reading reports it.
  if (!reading.site) reading.site = Site{{-1}, {-1}};
  ((*reading.site).*which).value = value;
  return true;
}

std::optional<double> coordinate_of(const Reading& reading, Centimetres Site::*which) {
  return reading.site ? std::optional(((*reading.site).*which).value) : std::nullopt;
}

template <Centimetres Site::*Which>
ReadingField coordinate(std::string_view key) {
  return {key,
          FieldKind::number,
          {},
          "a number with a point",
          [](const Reading& reading) { return text_of(coordinate_of(reading, Which)); },
          [](Reading& reading, const std::string& text) { return set_coordinate(reading, Which, text); },
          [](Reading& reading) { reading.site.reset(); },
          [](const Reading& reading) { return value_of(coordinate_of(reading, Which)); }};
}

}  // namespace

const std::vector<ReadingField>& reading_fields() {
  static const std::vector<ReadingField> fields = {
      field<&Reading::test>("test", "a whole number"),
      field<&Reading::date>("date", "a date such as 2026-03-14"),
      field<&Reading::who>("who", "a name"),
      field<&Reading::mixture>("mixture", "a mixture such as \"isooctane 70, ethanol 30\""),
      field<&Reading::layer>("layer", "the name of a layer"),
      field<&Reading::passage>("passage", "the name of a passage"),
      coordinate<&Site::x>("x_cm"),
      coordinate<&Site::y>("y_cm"),
      field<&Reading::at_edge>("at_edge", "yes or no"),
      kept_as<&Reading::window_mm, window_from>("window_mm", "a size in mm such as 5 or 5 x 8"),
      field<&Reading::light>("light", "text"),
      field<&Reading::magnification>("magnification", "text"),
      field<&Reading::uv_before>("uv_before", "text"),
      field<&Reading::uv_after>("uv_after", "text"),
      field<&Reading::swab>("swab", "text"),
      choice<&Reading::wetness>("wetness", wetness_count),
      field<&Reading::rolls>("rolls", "a whole number"),
      field<&Reading::seconds>("seconds", "a number with a point"),
      field<&Reading::first_effect_s>("first_effect_s", "a number with a point"),
      choice<&Reading::removal>("removal", removal_reading_count),
      choice<&Reading::original>("original", original_reading_count),
      choice<&Reading::colour>("colour", swab_colour_count),
      field<&Reading::signs>("signs", "text"),
      field<&Reading::clearing>("clearing", "text"),
      field<&Reading::after_drying>("after_drying", "text"),
      field<&Reading::photo_before>("photo_before", "names of photographs"),
      field<&Reading::photo>("photo", "names of photographs"),
      kept_as<&Reading::looked_after, look_time_from>("looked_after", "a time such as 20 min, 1 day or after a week"),
      choice<&Reading::confidence>("confidence", confidence_count),
      field<&Reading::remark>("remark", "text"),
      field<&Reading::correction>("correction", "the reason"),
      field<&Reading::withdrawn>("withdrawn", "yes or no"),
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
  const ReadingField* field = find_field(key);
  assert(field);
  return field->text(reading);
}

FieldValue field_value(const Reading& reading, std::string_view key) {
  const ReadingField* field = find_field(key);
  assert(field);
  return field->value(reading);
}

bool set_field(Reading& reading, std::string_view key, const std::string& text) {
  const ReadingField* field = find_field(key);
  if (!field) return false;
  if (!text.empty()) return field->set(reading, text);
  field->clear(reading);
  return true;
}

}  // namespace gentlest
