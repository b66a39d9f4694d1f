#include "io/yaml_lines.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

YamlLine line_of(std::string_view text, int number) {
  YamlLine line;
  line.number = number;
  line.text = text;
  line.blanks = text.substr(0, std::min(text.find_first_not_of(" \t"), text.size()));
  line.content = text.substr(line.blanks.size());
  line.item = line.content;
  line.item_at = line.blanks.size();
  while (line.item.substr(0, 2) == "- " || line.item == "-") {
    line.is_item = true;
    const std::size_t next = std::min(line.item.find_first_not_of(' ', 1), line.item.size());
    line.item_at += next;
    line.item.remove_prefix(next);
  }
  line.value = line.item;
  line.value_at = line.item_at;
  return line;
}

// "key: value", where the item begins with neither quote nor bracket; a remark is cut off.
void read_entry(YamlLine& line) {
  const auto cut_remark = [&] {
    if (!line.value.empty() && (line.value.front() == '"' || line.value.front() == '\'')) return;
    if (line.value.substr(0, 1) == "#") line.value = {};
    line.value = trimmed(line.value.substr(0, line.value.find(" #")));
  };
  if (line.item.empty() || std::string_view("\"'[{").find(line.item.front()) != std::string_view::npos) return;
  std::size_t colon = line.item.find(':');
  while (colon != std::string_view::npos && colon + 1 < line.item.size() && line.item[colon + 1] != ' ' &&
         line.item[colon + 1] != '\t')
    colon = line.item.find(':', colon + 1);
  if (colon == std::string_view::npos || line.item.find(" #") < colon) return cut_remark();
  line.key = trimmed(line.item.substr(0, colon));
  const std::size_t start = std::min(line.item.find_first_not_of(" \t", colon + 1), line.item.size());
  line.value = line.item.substr(start);
  line.value_at = line.item_at + start;
  cut_remark();
}

struct Bracket {
  char sign;
  int line;
  std::size_t at;
};

char closing_of(char open) {
  return open == '[' ? ']' : '}';
}

// What stands in brackets, over as many lines as they take.
class BracketReader {
 public:
  explicit BracketReader(std::vector<YamlSlip>& slips) : slips_(slips) {}

  bool is_open() const { return !open_.empty(); }

  void read(const YamlLine& line, std::size_t from) {
    line_ = &line;
    begin_part(from);
    for (at_ = from; at_ < line.text.size(); ++at_) {
      const char c = line.text[at_];
      const bool starts = trimmed(line.text.substr(part_, at_ - part_)).empty() || line.text[at_ - 1] == ' ';
      if (c == '#' && at_ > 0 && line.text[at_ - 1] == ' ') return;
      if ((c == '"' || c == '\'') && starts) {
        const std::size_t end = end_of_quote(line.text.substr(at_));
        if (end == std::string_view::npos) {
          open_.clear();
          return slip(at_, "this quote is never closed", fmt::format("close it with {}", c));
        }
        at_ += end;
      } else if (!take(c)) {
        open_.clear();
        return;
      }
    }
  }

  // At a line that begins a new entry further out, or at the end of the file.
  void tell_open() {
    if (open_.empty()) return;
    slips_.push_back({open_.back().line, static_cast<int>(open_.back().at) + 1, "this bracket is never closed",
                      fmt::format("close it with {}", closing_of(open_.back().sign))});
    open_.clear();
  }

 private:
  void slip(std::size_t at, std::string message, std::string remedy) {
    slips_.push_back({line_->number, static_cast<int>(at) + 1, std::move(message), std::move(remedy)});
  }

  void begin_part(std::size_t at) {
    part_ = at;
    colons_ = 0;
  }

  // False where nothing sensible can follow.
  bool take(char c) {
    if (c == '[' || c == '{') {
      open_.push_back({c, line_->number, at_});
      begin_part(at_ + 1);
    } else if (c == ']' || c == '}') {
      return close(c);
    } else if (c == ',') {
      begin_part(at_ + 1);
    } else if (c == ':' && line_->text.substr(at_ + 1, 1) == " ") {
      if (++colons_ == 2) tell_missing_comma();
    } else if (c == '?' && at_ + 1 < line_->text.size() && std::string_view(",]} ").find(line_->text[at_ + 1]) < 4) {
      const std::string_view word = trimmed(line_->text.substr(part_, at_ - part_));
      slip(at_, "a ? cannot stand here", fmt::format("leave it out: {}", word));
      return false;
    }
    return true;
  }

  bool close(char c) {
    begin_part(at_ + 1);
    if (open_.empty()) {
      slip(at_, fmt::format("this {} closes nothing", c), "leave it out");
      return false;
    }
    const Bracket last = open_.back();
    open_.pop_back();
    if (closing_of(last.sign) != c) {
      slip(at_, fmt::format("a {} is closed by {}", last.sign, c), fmt::format("write {}", closing_of(last.sign)));
      open_.clear();
      return false;
    }
    if (!open_.empty()) return true;
    const std::string_view rest = trimmed(line_->text.substr(at_ + 1));
    if (rest.empty() || rest.front() == '#') return true;
    if (rest.front() == ']' || rest.front() == '}') {
      slip(line_->text.find(rest.front(), at_ + 1), fmt::format("this {} closes nothing", rest.front()),
           "leave it out");
    } else {
      slip(line_->text.find(rest, at_ + 1), "there is text behind the closing bracket",
           line_->key.empty() ? "leave it out, or put the whole text in \"quotes\""
                              : fmt::format("write {}: {}", line_->key, in_quotes(line_->value)));
    }
    return false;
  }

  // "sky of: oil paint": in front of the word that has the second colon.
  void tell_missing_comma() {
    const std::string_view part = line_->text.substr(part_, at_ - part_);
    const std::size_t blank = part.find_last_of(' ');
    const std::string_view word = blank == std::string_view::npos ? part : part.substr(blank + 1);
    const std::size_t before =
        blank == std::string_view::npos ? std::string_view::npos : part.find_last_not_of(' ', blank);
    const bool semicolon = before != std::string_view::npos && part[before] == ';';
    if (semicolon)
      slip(part_ + before, "inside brackets entries are divided by commas, not by ;", "write , instead");
    else
      slip(at_ - word.size(), fmt::format("a comma is missing in front of \"{}:\"", word),
           fmt::format("write \", {}:\"", word));
  }

  std::vector<YamlSlip>& slips_;
  std::vector<Bracket> open_;
  const YamlLine* line_ = nullptr;
  std::size_t at_ = 0;
  std::size_t part_ = 0;
  int colons_ = 0;
};

}  // namespace

bool YamlLine::opens_block_text() const {
  return !value.empty() && (value.front() == '|' || value.front() == '>') &&
         value.find_first_not_of("|>+-0123456789") == std::string_view::npos;
}

std::size_t end_of_quote(std::string_view text) {
  const char quote = text.front();
  for (std::size_t at = 1; at < text.size(); ++at) {
    const bool is_pair = (quote == '"' && text[at] == '\\') || (quote == '\'' && text.substr(at, 2) == "''");
    if (is_pair)
      ++at;
    else if (text[at] == quote)
      return at;
  }
  return std::string_view::npos;
}

std::vector<YamlLine> yaml_lines(const std::vector<std::string>& texts, std::vector<YamlSlip>& slips) {
  std::vector<YamlLine> lines;
  BracketReader brackets(slips);
  int block_indent = -1;  // of the key whose block text goes on
  for (std::size_t i = 0; i < texts.size(); ++i) {
    YamlLine line = line_of(texts[i], static_cast<int>(i) + 1);
    if (line.content.empty() || line.content.front() == '#' || line.content.substr(0, 3) == "---") continue;
    line.is_inside = block_indent >= 0 && line.indent() > block_indent;
    if (!line.is_inside) {
      block_indent = -1;
      read_entry(line);
      if (brackets.is_open() &&
          (line.is_item || (!line.key.empty() && line.text.find_first_of(",]}") == std::string::npos)))
        brackets.tell_open();
      const bool begins = !line.value.empty() && (line.value.front() == '[' || line.value.front() == '{');
      line.is_inside = brackets.is_open();
      if (line.is_inside || begins) brackets.read(line, line.is_inside ? line.blanks.size() : line.value_at);
      if (!line.is_inside && line.opens_block_text()) block_indent = line.indent();
    }
    lines.push_back(line);
  }
  brackets.tell_open();
  return lines;
}

}  // namespace gentlest
