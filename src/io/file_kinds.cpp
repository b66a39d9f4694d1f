#include "io/file_kinds.hpp"

#include "gentlest/base/text.hpp"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

namespace gentlest {

namespace {

using namespace std::string_view_literals;

struct Beginning {
  std::string_view bytes;
  const char* kind;
};

// Of the formats' own specifications; from memory.
constexpr std::array beginnings = {
    Beginning{"PK\x03\x04"sv, "a Word, spreadsheet or zip file"},
    Beginning{"\xD0\xCF\x11\xE0"sv, "an old Word or spreadsheet file"},
    Beginning{"%PDF"sv, "a PDF document"},
    Beginning{"{\\rtf"sv, "a formatted text (RTF)"},
    Beginning{"\x89PNG"sv, "a picture (PNG)"},
    Beginning{"\xFF\xD8\xFF"sv, "a picture (JPEG)"},
    Beginning{"GIF8"sv, "a picture (GIF)"},
    Beginning{"II*\0"sv, "a picture (TIFF)"},
    Beginning{"MM\0*"sv, "a picture (TIFF)"},
    Beginning{"\x1F\x8B"sv, "a packed file (gzip)"},
    Beginning{"<!doctype html"sv, "a web page (HTML)"},
    Beginning{"<html"sv, "a web page (HTML)"},
    Beginning{"<svg"sv, "a drawing (SVG)"},
    Beginning{"<?xml"sv, "an XML file"},
};

std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    lines.push_back(trimmed(text.substr(0, end)));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

bool begins_key_of_job(std::string_view line) {
  constexpr std::array<std::string_view, 6> keys = {"gentlest", "object", "layers", "passages", "shelf", "limits"};
  const std::string low = folded(line.substr(std::min(line.find_first_not_of("{\" "), line.size())));
  return low.rfind("gentlest_log", 0) != 0 &&
         std::any_of(keys.begin(), keys.end(), [&](std::string_view key) { return low.rfind(key, 0) == 0; });
}

}  // namespace

std::string foreign_kind(std::string_view bytes) {
  const std::string start = folded(bytes.substr(0, 64));
  for (const Beginning& one : beginnings)
    if (bytes.rfind(one.bytes, 0) == 0 || (one.bytes.front() == '<' && start.rfind(one.bytes, 0) == 0)) return one.kind;
  return {};
}

std::optional<Diagnostic> no_job_fault(std::string_view text, const std::string& file) {
  const std::vector<std::string_view> lines = lines_of(text);
  if (std::any_of(lines.begin(), lines.end(), begins_key_of_job)) return std::nullopt;
  const auto first = std::find_if(lines.begin(), lines.end(),
                                  [](std::string_view line) { return !line.empty() && line.front() != '#'; });
  const auto fault = [&](const char* message, const char* remedy) {
    const int line = first == lines.end() ? 1 : static_cast<int>(first - lines.begin()) + 1;
    return Diagnostic{{file, line, 1}, message, remedy, first == lines.end() ? "" : std::string(*first)};
  };
  const char* begin = "a job begins with \"gentlest_job: 1\"; `gentlest new FILE` writes one to fill in";
  if (first == lines.end()) return fault("the file is empty", begin);
  if (first->rfind("{\"gentlest_log\"", 0) == 0)
    return fault("this is a log of tests, not a job",
                 "name the job here; where a log is asked for it stands behind the job");
  const std::size_t divider = first->find_first_of(",;\t");  // with no blank behind it, as prose has
  const bool is_table = divider != std::string_view::npos && divider + 1 < first->size() &&
                        (*first)[divider + 1] != ' ' && first->find(": ") == std::string_view::npos &&
                        first->find('{') == std::string_view::npos;
  return fault(is_table ? "this looks like a table, not like a job" : "this is no job", begin);
}

bool begins_job(std::string_view line) {
  return trimmed(line).rfind("gentlest_job:", 0) == 0;
}

}  // namespace gentlest
