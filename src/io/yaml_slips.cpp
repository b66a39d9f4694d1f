#include "io/yaml_slips.hpp"

#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"

#include "io/yaml_lines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

namespace gentlest {

namespace {

using Slip = std::optional<YamlSlip>;

YamlSlip slip_at(const YamlLine& line, std::size_t at, std::string message, std::string remedy) {
  return {line.number, static_cast<int>(at) + 1, std::move(message), std::move(remedy)};
}

// "role: remove" out of "role", " remove ".
std::string as_entry(std::string_view key, std::string_view value) {
  return fmt::format("{}: {}", trimmed(key), trimmed(value));
}

bool is_odd_blank(char32_t code) {
  return code == 0xA0 || code == 0x1680 || (code >= 0x2000 && code <= 0x200B) || code == 0x202F || code == 0x205F ||
         code == 0x3000 || code == 0xFEFF;
}

Slip tab_slip(const YamlLine& line, const std::vector<YamlLine>& lines) {
  if (line.blanks.find('\t') == std::string_view::npos) return std::nullopt;
  const auto more = std::count_if(lines.begin(), lines.end(), [&](const YamlLine& other) {
    return other.number > line.number && !other.content.empty() && other.blanks.find('\t') != std::string_view::npos;
  });
  const std::string others = more == 0 ? "" : fmt::format(", and at the start of {} more below", more);
  return slip_at(line, line.blanks.find('\t'), fmt::format("a tab at the start of line {}{}", line.number, others),
                 "use spaces");
}

// A blank that is none: it looks like a space and is a letter to the parser.
Slip blank_slip(const YamlLine& line) {
  bool may_stand = true;  // at the start, behind a dash and behind a colon a space is wanted
  for (std::size_t at = line.blanks.size(); at < line.text.size();) {
    const Letter letter = letter_at(line.text, at);
    if (may_stand && is_odd_blank(letter.code))
      return slip_at(line, at, "a no-break space stands where a plain space is wanted",
                     "type it anew as a plain space");
    may_stand = letter.code == ':' || letter.code == '-' || (may_stand && letter.code == ' ');
    at += letter.bytes.size();
  }
  return std::nullopt;
}

Slip bullet_slip(const YamlLine& line) {
  constexpr std::array<std::string_view, 6> bullets = {"\xE2\x80\x93", "\xE2\x80\x94", "\xE2\x80\xA2",
                                                       "\xC2\xB7",     "\xE2\x88\x92", "* "};
  for (const std::string_view bullet : bullets)
    if (line.content.rfind(bullet, 0) == 0)
      return slip_at(line, line.blanks.size(), fmt::format("\"{}\" begins no item of a list", trimmed(bullet)),
                     fmt::format("write a hyphen and a space: \"- {}\"", trimmed(line.content.substr(bullet.size()))));
  if (line.content.size() > 1 && line.content[0] == '-' && line.content[1] != ' ' && line.content.substr(0, 2) != "--")
    return slip_at(line, line.blanks.size(), "no space stands behind the dash",
                   fmt::format("write \"- {}\"", trimmed(line.content.substr(1))));
  return std::nullopt;
}

bool is_word(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
  });
}

// Keys of the other lines tell "role remove" from a remark without its #.
bool is_key_elsewhere(std::string_view word, const std::vector<YamlLine>& lines) {
  return std::any_of(lines.begin(), lines.end(), [&](const YamlLine& line) { return line.key == word; });
}

Slip colon_slip(const YamlLine& line, const YamlLine* before, const YamlLine* after,
                const std::vector<YamlLine>& lines) {
  const std::string_view item = line.item;
  const auto slip = [&](const char* message, std::string remedy) {
    return slip_at(line, line.item_at, message, std::move(remedy));
  };
  if (const std::size_t wide = item.find("\xEF\xBC\x9A");
      wide != std::string_view::npos && is_word(item.substr(0, wide)))
    return slip("this colon is a wide one",
                fmt::format("write {}", as_entry(item.substr(0, wide), item.substr(wide + 3))));
  const std::size_t colon = item.find(':');
  if (colon != std::string_view::npos && is_word(item.substr(0, colon)))
    return slip("no space stands behind the colon",
                fmt::format("write {}", as_entry(item.substr(0, colon), item.substr(colon + 1))));
  const std::size_t equals = item.find('=');
  if (equals != std::string_view::npos && is_word(trimmed(item.substr(0, equals))))
    return slip("a key and its value are divided by a colon, not by =",
                fmt::format("write {}", as_entry(item.substr(0, equals), item.substr(equals + 1))));
  if (before && before->is_open_key() && !line.is_item && line.indent() <= before->indent())
    return slip("this line belongs behind the colon above", fmt::format("write {}", as_entry(before->key, item)));
  const std::size_t blank = item.find(' ');
  if (blank != std::string_view::npos && is_key_elsewhere(item.substr(0, blank), lines))
    return slip("this line has no colon",
                fmt::format("did you mean \"{}\"?", as_entry(item.substr(0, blank), item.substr(blank))));
  if (is_word(item) && after && after->is_item)
    return slip("this line has no colon", fmt::format("did you mean \"{}:\"?", item));
  return slip("this line has no colon",
              "write it as key: value; a remark begins with #, a text of several lines stands in \"quotes\"");
}

// What must not stand bare at the start of a text, and what it would say there.
Slip first_sign_slip(const YamlLine& line) {
  const std::string_view value = line.value;
  if (value == "?")
    return slip_at(line, line.value_at, "a ? alone says nothing here", "write a word instead, for example unknown");
  if (std::string_view("*&!%@`|>?").find(value.front()) == std::string_view::npos) return std::nullopt;
  return slip_at(line, line.value_at,
                 fmt::format("a text that begins with {} stands here without quotes", value.front()),
                 fmt::format("write {}", as_entry(line.key, in_quotes(value))));
}

bool begins_typographic_quote(std::string_view text) {
  const char32_t code = letter_at(text, 0).code;
  return (code >= 0x2018 && code <= 0x201F) || code == 0xAB || code == 0xBB;
}

Slip backslash_slip(const YamlLine& line, std::string_view quoted) {
  for (std::size_t at = 0; at + 1 < quoted.size(); ++at) {
    if (quoted[at] != '\\') continue;
    if (std::string_view("0abtnvfre \"/\\N_LPxuU\t").find(quoted[at + 1]) == std::string_view::npos)
      return slip_at(line, line.value_at + at, "a \\ inside \"quotes\" has a meaning of its own",
                     "write it twice, \\\\, or put the text in 'single quotes'");
    ++at;
  }
  return std::nullopt;
}

Slip quote_slip(const YamlLine& line) {
  const std::string_view value = line.value;
  const char quote = value.front();
  const std::size_t end = end_of_quote(value);
  if (end == std::string_view::npos)
    return slip_at(line, line.value_at, "this quote is never closed", fmt::format("close it with {}", quote));
  const std::string_view rest = trimmed(value.substr(end + 1));
  if (!rest.empty() && rest.front() != '#')
    return slip_at(line, line.value_at + end + 1, "there is text behind the closing quote",
                   quote == '"' ? "put the whole text in quotes; a quote inside it is written \\\""
                                : "put the whole text in \"double quotes\"; then an apostrophe may stand in it");
  return quote == '"' ? backslash_slip(line, value.substr(0, end)) : std::nullopt;
}

Slip value_slip(const YamlLine& line) {
  const std::string_view value = line.value;
  if (value.empty() || value.front() == '[' || value.front() == '{') return std::nullopt;
  if (value.front() == '"' || value.front() == '\'') return quote_slip(line);
  if (line.opens_block_text()) return std::nullopt;
  if (Slip slip = first_sign_slip(line)) return slip;
  const std::size_t colon = value.find(": ");
  if (colon == std::string_view::npos && value.back() != ':') return std::nullopt;
  const std::size_t at = colon == std::string_view::npos ? value.size() - 1 : colon;
  if (begins_typographic_quote(value))
    return slip_at(line, line.value_at, "typographic quotes hold no text together",
                   "write plain quotes: " + as_entry(line.key, in_quotes(value)));
  return slip_at(line, line.value_at + at, "a text with a colon in it stands here without quotes",
                 "write " + as_entry(line.key, in_quotes(value)));
}

std::string spaces(int count) {
  return fmt::format("{} {}", count, count == 1 ? "space" : "spaces");
}

std::string indent_cure(int count) {
  return count == 0 ? "begin it at the start of the line" : "indent it by " + spaces(count);
}

// The columns in which lines above begin that are still open: of keys, and of the dashes of lists.
struct Columns {
  std::vector<int> keys, dashes;

  void close_beyond(int indent) {
    for (std::vector<int>* columns : {&keys, &dashes})
      while (!columns->empty() && columns->back() > indent) columns->pop_back();
  }
  void open(const YamlLine& line) {
    std::vector<int>& own = line.is_item ? dashes : keys;
    if (own.empty() || own.back() < line.indent()) own.push_back(line.indent());
    if (line.is_item && !line.key.empty()) keys.push_back(line.own_indent());
  }
};

// A line that does not stand under those that it belongs to.
Slip indent_slip(const YamlLine& line, const YamlLine& above, const Columns& columns) {
  const int indent = line.indent();
  if (indent > above.own_indent()) {
    if (above.is_open_key() || above.value.empty()) return std::nullopt;
    return slip_at(
        line, line.blanks.size(),
        fmt::format("this line is indented by {}, the one above by {}", spaces(indent), spaces(above.own_indent())),
        "lines that belong together begin in one column: which of the two is out of place?");
  }
  if (above.is_open_key() && line.is_item && indent == above.own_indent()) return std::nullopt;  // as YAML allows
  const std::vector<int>& allowed = line.is_item ? columns.dashes : columns.keys;
  if (allowed.empty() || std::find(allowed.begin(), allowed.end(), indent) != allowed.end()) return std::nullopt;
  const int nearest = *std::min_element(allowed.begin(), allowed.end(), [&](int a, int b) {
    return std::abs(a - indent) < std::abs(b - indent) || (std::abs(a - indent) == std::abs(b - indent) && a > b);
  });
  return slip_at(line, line.blanks.size(),
                 fmt::format("this line is indented by {}, {} above by {}", spaces(indent),
                             line.is_item ? "the items" : "those", spaces(nearest)),
                 indent_cure(nearest));
}

std::vector<YamlSlip> indent_slips(const std::vector<YamlLine>& lines) {
  std::vector<YamlSlip> slips;
  Columns columns;
  const YamlLine* above = nullptr;
  for (const YamlLine& line : lines) {
    if (line.is_inside) continue;
    if (line.key.empty() && !line.is_item) {
      above = nullptr;
      continue;
    }
    if (above)
      if (Slip slip = indent_slip(line, *above, columns)) slips.push_back(std::move(*slip));
    columns.close_beyond(line.indent());
    columns.open(line);
    above = &line;
  }
  return slips;
}

Slip line_slip(std::size_t i, const std::vector<YamlLine>& lines) {
  const YamlLine& line = lines[i];
  if (Slip slip = tab_slip(line, lines)) return slip;
  if (line.is_inside) return std::nullopt;
  if (Slip slip = blank_slip(line)) return slip;
  if (Slip slip = bullet_slip(line)) return slip;
  if (line.key.empty() && !line.is_item) {
    const YamlLine* before = i > 0 ? &lines[i - 1] : nullptr;
    const bool goes_on = before && !before->value.empty() && line.indent() > before->own_indent();
    if (goes_on) return std::nullopt;
    return colon_slip(line, before, i + 1 < lines.size() ? &lines[i + 1] : nullptr, lines);
  }
  if (line.key.empty() && !line.value.empty() && line.value.find(':') != std::string_view::npos)
    if (const std::size_t colon = line.value.find(':'); is_word(line.value.substr(0, colon)))
      return colon_slip(line, nullptr, nullptr, lines);
  return value_slip(line);
}

}  // namespace

std::string in_quotes(std::string_view text) {
  std::string quoted = "\"";
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    at += letter.bytes.size();
    if ((letter.code >= 0x201C && letter.code <= 0x201F) || letter.code == 0xAB || letter.code == 0xBB) continue;
    if (letter.code == '"' || letter.code == '\\') quoted += '\\';
    quoted += letter.bytes;
  }
  return quoted + "\"";
}

std::optional<YamlSlip> find_slip(const std::vector<std::string>& texts, int stopped_at) {
  std::vector<YamlSlip> slips;  // of signs: they tell more than what a line looks like beside others
  const std::vector<YamlLine> lines = yaml_lines(texts, slips);
  // From below, the nearest alone: each is held against all other lines, and a file may be long.
  for (std::size_t i = lines.size(); i-- > 0;) {
    if (lines[i].number > stopped_at) continue;
    if (Slip slip = line_slip(i, lines)) {
      slips.push_back(std::move(*slip));
      break;
    }
  }
  const auto nearest = [&](std::vector<YamlSlip>& from) {
    Slip found;
    for (YamlSlip& slip : from)
      if (slip.line <= stopped_at && (!found || slip.line >= found->line)) found = std::move(slip);
    return found;
  };
  Slip of_signs = nearest(slips);
  std::vector<YamlSlip> of_columns = indent_slips(lines);
  Slip of_column = nearest(of_columns);
  Slip& slip = !of_signs || (of_column && of_column->line > of_signs->line + 1) ? of_column : of_signs;
  const bool is_last = slip && !lines.empty() && lines.back().number == slip->line;
  if (is_last && slip->message.find("never closed") != std::string::npos) slip->remedy += "; is the file cut off?";
  return std::move(slip);
}

}  // namespace gentlest
