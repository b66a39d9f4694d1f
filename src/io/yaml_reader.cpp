#include "io/yaml_reader.hpp"
#include "io/yaml_slips.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

bool has_control_characters(const std::string& text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') || c == 0x7F;
  });
}

bool is_true_word(const std::string& word) {
  return word == "true" || word == "yes" || word == "on" || word == "y" || word == "1";
}

bool is_false_word(const std::string& word) {
  return word == "false" || word == "no" || word == "off" || word == "n" || word == "0";
}

std::string list_cure(const YamlNode& node) {
  std::string text = node.text;
  if (text.size() > 2 && text.front() == '(' && text.back() == ')') text = text.substr(1, text.size() - 2);
  if (text.size() > 2 && text[0] >= '0' && text[0] <= '9' && text[1] == '.' && text[2] == ' ')
    return "begin each line with a dash and a space, not with a number";
  if (text.size() > 1 && text[0] == '-' && text[1] != ' ') return "put a space behind each dash: \"- item\"";
  const bool is_plain = !text.empty() && text.size() < 60 && text.find_first_of("{}[]:.\n") == std::string::npos;
  if (node.kind == YamlNode::Kind::scalar && is_plain)
    return fmt::format("write [{}]", fmt::join(items_of(text, ",;"), ", "));
  return "write one \"- item\" a line, or [a, b]";
}

WantedNumber with_unit_of(std::string_view key, WantedNumber wanted) {
  if (wanted.unit.empty()) wanted.unit = unit_of_key(key);
  return wanted;
}

}  // namespace

std::string kind_words(const YamlNode& node) {
  switch (node.kind) {
    case YamlNode::Kind::null:
      return "nothing";
    case YamlNode::Kind::list:
      return "a list";
    case YamlNode::Kind::map:
      return "a group of keys";
    case YamlNode::Kind::scalar:
      break;
  }
  const std::string shown = node.text.size() > 40 ? node.text.substr(0, 40) + "..." : node.text;
  return "\"" + shown + "\"";
}

void YamlFile::withdraw(const YamlNode& node, const std::string& message) {
  const Location at = place(node);
  faults_.erase(std::remove_if(faults_.begin(), faults_.end(),
                               [&](const Diagnostic& fault) { return fault.where == at && fault.message == message; }),
                faults_.end());
}

// Behind a value or a key: what a # hides that was meant as text, "#2 Boats". A remark has a space behind its #.
std::string YamlFile::hidden_remark(const YamlNode& node) const {
  if (node.quoted) return {};
  const std::string line = line_text(node.line);
  std::size_t at = static_cast<std::size_t>(std::max(node.column, 1)) - 1;
  if (node.kind == YamlNode::Kind::scalar) {
    if (line.compare(std::min(at, line.size()), node.text.size(), node.text) != 0) return {};
    at += node.text.size();
  } else {
    at = std::min(line.find(':', std::min(at, line.size())), line.size() - 1) + 1;
  }
  const std::string_view rest = trimmed(std::string_view(line).substr(std::min(at, line.size())));
  const bool is_hidden = rest.size() > 1 && rest[0] == '#' &&
                         (node.kind == YamlNode::Kind::null ? rest[1] != ' ' : rest[1] >= '0' && rest[1] <= '9');
  return is_hidden ? std::string(rest) : std::string();
}

void YamlFile::complain_of_nothing(const YamlNode& node, std::string_view what, std::string_view wanted, bool may_go) {
  const std::string line = line_text(node.line);
  const auto at = static_cast<std::size_t>(std::max(node.column, 1)) - 1;
  const bool is_item = at < line.size() && line[at] == '-';
  complain(node, is_item ? "nothing stands behind this dash" : fmt::format("nothing stands behind \"{}\"", what),
           fmt::format("write {}{}", wanted, may_go ? ", or leave the line out" : ""));
}

std::string YamlFile::text(const YamlNode& node, std::string_view what) {
  if (const std::string hidden = hidden_remark(node); !hidden.empty())
    complain(node, fmt::format("what stands behind # is a remark and is not read as part of {}", what),
             fmt::format("write {}: {}", what, in_quotes(node.text + (node.text.empty() ? "" : " ") + hidden)));
  else if (node.kind == YamlNode::Kind::null)
    complain_of_nothing(node, what, "a text");
  else if (node.kind != YamlNode::Kind::scalar)
    complain(
        node, fmt::format("{} must be a text, not {}", what, kind_words(node)),
        node.kind == YamlNode::Kind::list ? "write one alone, without brackets or dash" : "write it behind the colon");
  else if (has_control_characters(node.text))
    complain(node, fmt::format("{} holds control characters", what), "write plain text");
  else
    return node.text;
  return {};
}

double YamlFile::number(const YamlNode& node, std::string_view what, const WantedNumber& wanted) {
  const bool is_scalar = node.kind == YamlNode::Kind::scalar;
  const std::optional<double> value = is_scalar ? number_from(node.text) : std::nullopt;
  if (value && !node.quoted) return *value;
  if (node.kind == YamlNode::Kind::null) {
    complain_of_nothing(node, what, "a number");
  } else {
    std::string remedy = "write one number alone";
    if (value)
      remedy = "leave the quotes out";
    else if (is_scalar)
      remedy = cure_of_text(node.text, with_unit_of(what, wanted));
    complain(node, fmt::format("{} must be a number, not {}", what, kind_words(node)), std::move(remedy));
  }
  return 0;
}

int YamlFile::whole(const YamlNode& node, std::string_view what, WantedNumber wanted) {
  const std::size_t before = faults_.size();
  wanted.is_whole = true;
  const double value = number(node, what, wanted);
  if (faults_.size() == before && (value != std::floor(value) || std::abs(value) > 1e9)) {
    complain(node, fmt::format("{} must be a whole number, not {}", what, node.text),
             cure_of_range(value, with_unit_of(what, wanted)));
    return 0;
  }
  return static_cast<int>(value);
}

bool YamlFile::truth(const YamlNode& node, std::string_view what) {
  const bool is_scalar = node.kind == YamlNode::Kind::scalar;
  if (is_scalar && !node.quoted && (node.text == "true" || node.text == "false")) return node.text == "true";
  if (node.kind == YamlNode::Kind::null) {
    complain_of_nothing(node, what, "true or false");
    return false;
  }
  std::string remedy;
  const std::string word = folded(node.text);
  const std::string near = nearest_name(word, {"true", "false"});
  if (is_scalar && node.quoted && (node.text == "true" || node.text == "false"))
    remedy = "leave the quotes out";
  else if (is_scalar && (is_true_word(word) || is_false_word(word)))
    remedy = is_true_word(word) ? "write true" : "write false";
  else if (!near.empty())
    remedy = fmt::format("did you mean {}?", near);
  complain(node, fmt::format("{} must be true or false, not {}", what, kind_words(node)), std::move(remedy));
  return false;
}

const std::vector<YamlNode>& YamlFile::list(const YamlNode& node, std::string_view what, const std::string& example) {
  if (node.kind == YamlNode::Kind::null)
    complain_of_nothing(node, what, "[] for none");
  else if (node.kind != YamlNode::Kind::list)
    complain(node, fmt::format("{} must be a list, not {}", what, kind_words(node)),
             example.empty() ? list_cure(node) : example);
  return node.items;  // empty for anything but a list
}

std::vector<std::string> YamlFile::texts(const YamlNode& node, std::string_view what) {
  std::vector<std::string> values;
  for (const YamlNode& item : list(node, what)) values.push_back(text(item, what));
  return values;
}

std::vector<double> YamlFile::numbers(const YamlNode& node, std::string_view what, std::size_t least,
                                      std::size_t most) {
  std::vector<double> values;
  for (const YamlNode& item : list(node, what)) values.push_back(number(item, what));
  if (node.kind == YamlNode::Kind::list && (values.size() < least || values.size() > most))
    complain(node, fmt::format("{} must hold {} numbers, not {}", what,
                               least == most ? fmt::format("{}", least) : fmt::format("{} to {}", least, most),
                               values.size()));
  values.resize(std::max(values.size(), most));
  return values;
}

}  // namespace gentlest
