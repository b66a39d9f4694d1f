#include "report/form/json.hpp"

#include "report/form/format.hpp"

#include "gentlest/base/letters.hpp"

#include <fmt/format.h>

namespace gentlest {

Json json_document(const std::string& kind, const Edition& edition) {
  return {{"format", json_format},
          {"kind", kind},
          {"program", edition.program},
          {"catalogue", edition.catalogue},
          {"law_seen_until", json_text(edition.law.seen_until)}};
}

Json json_number(const std::optional<double>& value) {
  return value ? Json(data_value(*value)) : Json();
}

Json json_computed(const std::optional<double>& value) {
  return value ? Json(computed_value(*value)) : Json();
}

Json json_text(const std::string& text) {
  return text.empty() ? Json() : Json(text);
}

Json json_sources(const std::vector<Source>& sources) {
  Json list = Json::array();
  for (const Source& source : sources)
    list.push_back({{"key", source.key}, {"citation", source.citation}, {"seen", json_text(source.seen)}});
  return list;
}

std::string json_dump(const Json& document) {
  // The library escapes the controls below a blank only. The others stand inside strings, where \u means the same.
  const std::string text = document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
  std::string shown;
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    at += letter.bytes.size();
    if (letter.code >= 0x7F && is_control(letter.code))
      shown += fmt::format("\\u{:04x}", static_cast<unsigned>(letter.code));
    else
      shown += letter.bytes;
  }
  return shown;
}

}  // namespace gentlest
