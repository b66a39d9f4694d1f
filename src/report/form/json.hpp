// What all JSON reports share. Only for files of report/: nobody else sees the JSON library.
#pragma once

#include "report/form/form.hpp"

#include "gentlest/base/source.hpp"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <vector>

namespace gentlest {

using Json = nlohmann::ordered_json;

/// Grows when a reader of the old form would misunderstand the new; new keys alone do not change it.
inline constexpr int json_format = 1;

/// {"format": 1, "kind": ..., "program": ..., "catalogue": ..., "law_seen_until": ...}, to be filled up.
Json json_document(const std::string& kind, const Edition& edition);

/// Null when there is nothing.
Json json_number(const std::optional<double>& value);

/// A figure that was worked out, to six decimals, so that the last bits of a machine do not show.
Json json_computed(const std::optional<double>& value);

/// Null when the text is empty.
Json json_text(const std::string& text);

Json json_sources(const std::vector<Source>& sources);

/// Indented by two, ends with a line break. Broken UTF-8 is replaced, never an error.
std::string json_dump(const Json& document);

}  // namespace gentlest
