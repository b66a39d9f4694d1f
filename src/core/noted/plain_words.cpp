#include "core/noted/plain_words.hpp"

#include "core/noted/parts.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading.hpp"
#include "gentlest/noted/fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <regex>

namespace gentlest {

namespace {

struct FixedWord {
  std::string_view text, key, value;
};
constexpr FixedWord fixed_words[] = {
    {"edge", "at_edge", "yes"},
    {"at the edge", "at_edge", "yes"},
    {"on the edge", "at_edge", "yes"},
    {"tacking edge", "at_edge", "yes"},
    {"under the frame", "at_edge", "yes"},
    {"rand", "at_edge", "yes"},
    {"am rand", "at_edge", "yes"},
    {"bord", "at_edge", "yes"},
    {"au bord", "at_edge", "yes"},
    {"picture", "at_edge", "no"},
    {"on the picture", "at_edge", "no"},
    {"in the picture", "at_edge", "no"},
    {"damp", "wetness", "damp"},
    {"wet", "wetness", "wet"},
    {"dry", "wetness", "dry"},
    {"damp swab", "wetness", "damp"},
    {"wet swab", "wetness", "wet"},
    {"unsure", "confidence", "low"},
    {"not sure", "confidence", "low"},
    {"low confidence", "confidence", "low"},
    {"confidence low", "confidence", "low"},
    {"medium confidence", "confidence", "medium"},
    {"confidence medium", "confidence", "medium"},
    {"fairly sure", "confidence", "medium"},
    {"sure", "confidence", "high"},
    {"high confidence", "confidence", "high"},
    {"confidence high", "confidence", "high"},
    {"raking", "light", "raking"},
    {"raking light", "light", "raking"},
    {"normal light", "light", "normal"},
    {"uv", "light", "UV"},
    {"uv light", "light", "UV"},
    {"no colour", "colour", "none"},
    {"no color", "colour", "none"},
};

constexpr const char* number = R"((\d+(?:[.,]\d+)?))";

std::string with_point(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  return text;
}

// "dirt on the swab", "colour dirt", "varnish colour".
std::vector<FieldWord> colour_word(const std::string& plain) {
  static const std::regex shapes(
      R"(^(?:colou?r (.+)|(.+) colou?r|(.+) on (?:the )?swab|(.+) am tupfer|(.+) sur le coton)$)");
  std::smatch parts;
  if (!std::regex_match(plain, parts, shapes)) return {};
  for (std::size_t i = 1; i < parts.size(); ++i) {
    Reading reading;
    const std::string word = parts[i];
    if (word.empty() || word == "none" || !set_noted_field(reading, "colour", word)) continue;
    return {{"colour", std::string(to_word(reading.colour))}};
  }
  return {};
}

// The first that matches; $1 is its number.
struct Shape {
  std::regex shape;
  const char* key;
  const char* before;  // of the value
};
const std::vector<Shape>& shapes() {
  const auto shape = [](const std::string& text) { return std::regex("^" + text + "$"); };
  const std::string n = number;
  static const std::vector<Shape> all = {
      {shape("(?:test|essai) (?:no\\.? |nr\\.? )?#?(\\d+)"), "test", ""},
      {shape("#(\\d+)"), "test", ""},
      {shape("(?:(?:first|effect|moved|first effect) (?:after )?)" + n + " *(?:s|sec|secs|seconds?|sek)\\.?"),
       "first_effect_s", ""},
      {shape("(?:contact )?" + n + " *(?:s|sec|secs|seconds?|sek|sekunden|secondes?)\\.?(?: contact)?"), "seconds", ""},
      {shape("(\\d+) *(?:rolls?|rollen)"), "rolls", ""},
      {shape("(?:under )?(\\d+ *)(?:x|\xC3\x97)"), "magnification", ""},
      {shape("x *(\\d+)"), "magnification", ""},
      {shape("(?:by|von|par) ([^ ]{1,30}|[^ ]\\. ?[^ ]\\.)"), "who", ""},
      {shape("(?:photo|photograph|foto) before (.+)"), "photo_before", ""},
      {shape("before ([^ ]+\\.(?:jpe?g|png|tiff?|heic|webp))"), "photo_before", ""},
      {shape("(?:photo |photograph |foto |after )?([^ ]+\\.(?:jpe?g|png|tiff?|heic|webp))"), "photo", ""},
      {shape("(?:photo|photograph|foto) (?:no\\.? )?(\\d+)"), "photo", ""},
      {shape("(?:cleared with|cleared|clearing|clearance|rinsed with) (.+)"), "clearing", ""},
      {shape("uv before (.+)"), "uv_before", ""},
      {shape("uv after (.+)"), "uv_after", ""},
  };
  return all;
}

// As it was typed, where folding would spoil it.
std::string original_spelling(const std::string& text, const std::smatch& found) {
  const auto at = static_cast<std::size_t>(found.position(1));
  return std::string(trimmed(std::string_view(text).substr(at, static_cast<std::size_t>(found.length(1)))));
}

std::vector<FieldWord> shaped_word(const std::string& text, const std::string& plain) {
  std::smatch found;
  for (const Shape& one : shapes()) {
    if (!std::regex_match(plain, found, one.shape)) continue;
    std::string value = original_spelling(text, found);
    const std::string_view key = one.key;
    if (key == "magnification") return {{"magnification", std::string(trimmed(value)) + "x"}};
    if (key == "seconds" || key == "first_effect_s") value = with_point(value);
    return {{one.key, value}};
  }
  static const std::regex minutes(std::string("^(?:contact )?") + number + " *(?:min|mins|minutes?)\\.?$");
  if (std::regex_match(plain, found, minutes))
    return {{"seconds", fmt::format("{}", 60 * *number_from(with_point(found[1])))}};
  return {};
}

std::vector<FieldWord> site_word(const std::string& plain) {
  static const std::regex with_unit(std::string("^(?:at )?") + number + " *[/x] *" + number + " *cm$");
  static const std::regex with_at(std::string("^at ") + number + " *[/ ] *" + number + "$");
  static const std::regex with_letters(std::string("^x *=? *") + number + " *(?:cm)? *y *=? *" + number + " *(?:cm)?$");
  std::smatch found;
  for (const std::regex* shape : {&with_unit, &with_at, &with_letters})
    if (std::regex_match(plain, found, *shape)) return {{"x_cm", with_point(found[1])}, {"y_cm", with_point(found[2])}};
  return {};
}

bool is_size(const std::string& plain) {
  static const std::regex shape(std::string("^(?:window )?") + number + " *(?:(?:x|by|\xC3\x97|\\*) *" + number +
                                " *(?:mm)?|mm)$");
  return std::regex_match(plain, shape);
}

bool is_look_time(const std::string& plain) {
  const bool says_later = plain.rfind("after ", 0) == 0 || plain.find("later") != std::string::npos ||
                          plain.rfind("next ", 0) == 0 || plain.rfind("the next ", 0) == 0 ||
                          plain.rfind("following ", 0) == 0;
  static const std::regex long_unit(R"(^\d+(?:\.\d+)? *(?:h|hours?|d|days?|weeks?|months?)$)");
  return look_time_from(plain).has_value() && (says_later || std::regex_match(plain, long_unit));
}

}  // namespace

std::vector<FieldWord> plain_word(const std::string& text) {
  const std::string typed(trimmed(text));
  if (typed.size() > longest_shape) return {};
  const std::string plain = folded(typed);
  for (const FixedWord& one : fixed_words)
    if (one.text == plain) return {{std::string(one.key), std::string(one.value)}};
  if (is_look_time(plain)) return {{"looked_after", *look_time_from(plain)}};
  if (is_size(plain)) return {{"window_mm", plain.rfind("window ", 0) == 0 ? plain.substr(7) : plain}};
  for (const auto& words : {site_word(plain), colour_word(plain)})
    if (!words.empty()) return words;
  if (const std::string date = date_from(typed); !date.empty()) return {{"date", date}};
  return shaped_word(typed, plain);
}

std::vector<std::string> plain_word_texts() {
  std::vector<std::string> texts;
  for (const FixedWord& one : fixed_words) texts.emplace_back(one.text);
  return texts;
}

std::vector<MeantName> all_names(const Job& job) {
  std::vector<MeantName> names;
  for (const Layer& layer : job.layers) names.push_back({layer.name, layer.role == Role::remove});
  for (const Passage& passage : job.passages) names.push_back({passage.name, false});
  return names;
}

std::vector<MeantName> names_meant(const std::string& text, const Job& job) {
  const std::string plain = folded(text);
  std::vector<MeantName> begin_so;
  for (const MeantName& one : all_names(job)) {
    const std::string name = folded(one.name);
    if (name == plain) return {one};
    if (plain.size() >= 3 && name.compare(0, plain.size(), plain) == 0) begin_so.push_back(one);
  }
  return begin_so;
}

std::string label_of_key(std::string_view key) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 5> labels = {
      {{"seconds", "contact"},
       {"first_effect_s", "first effect"},
       {"window_mm", "window"},
       {"who", "by"},
       {"at_edge", "edge or picture"}}};
  for (const auto& [one, label] : labels)
    if (one == key) return std::string(label);
  return with_blanks(key);
}

std::string unit_behind(std::string_view key) {
  return key == "seconds" || key == "first_effect_s" ? " s" : key == "window_mm" ? " mm" : "";
}

std::string behind_prefix(const std::string& text, std::initializer_list<std::string_view> beginnings) {
  const std::string plain = folded(text);
  for (const std::string_view one : beginnings)
    if (plain.size() > one.size() && plain.compare(0, one.size(), one) == 0)
      return std::string(trimmed(trimmed(text).substr(one.size())));
  return {};
}

std::string joined_words(const std::vector<std::string>& words, std::size_t from, std::size_t count) {
  std::string text;
  for (std::size_t i = from; i < from + count; ++i) text += (text.empty() ? "" : " ") + words[i];
  return text;
}

bool means_little_alone(const std::string& text) {
  constexpr std::array<std::string_view, 12> words = {"no",   "none", "nothing", "all", "dry",   "-",
                                                      "ganz", "rien", "nichts",  "mat", "keine", "aucun"};
  return std::find(words.begin(), words.end(), folded(text)) != words.end();
}

std::string with_sites_joined(std::string_view text) {
  static const std::regex site(std::string("\\bat ") + number + ", +" + number + "( *cm)?");
  // Quotes and remarks stay as they were typed.
  std::string joined;
  const std::size_t remark = std::min(text.find(" -- "), text.size());
  bool is_quoted = false;
  for (std::size_t from = 0; from < remark;) {
    const std::size_t end = std::min(text.find('"', from), remark);
    const std::string piece(text.substr(from, end - from));
    joined += is_quoted || piece.size() > longest_shape ? piece : std::regex_replace(piece, site, "at $1/$2 cm");
    if (end < remark) joined += '"';
    is_quoted = !is_quoted;
    from = end + 1;
  }
  return joined.append(text.substr(remark));
}

bool number_with_comma(const std::string& text) {
  static const std::regex shape(std::string("^") + number + "$");
  return text.size() <= longest_shape && std::regex_match(text, shape);
}

bool means_edge(std::string_view text) {
  const std::string plain = folded(trimmed(text));
  return std::any_of(std::begin(fixed_words), std::end(fixed_words), [&](const FixedWord& word) {
    return word.text == plain && word.key == "at_edge" && word.value == "yes";
  });
}

}  // namespace gentlest
