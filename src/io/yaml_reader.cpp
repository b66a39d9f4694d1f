#include "io/yaml_reader.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace gentlest {

namespace {

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

bool has_control_characters(const std::string& text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') || c == 0x7F;
  });
}

bool is_decimal_comma(const std::string& text) {
  std::string pointed = text;
  const std::size_t comma = pointed.find(',');
  if (comma == std::string::npos) return false;
  pointed[comma] = '.';
  return number_from(pointed).has_value();
}

}  // namespace

std::string YamlFile::text(const YamlNode& node, std::string_view what) {
  if (node.kind != YamlNode::Kind::scalar)
    complain(node, fmt::format("{} must be a text, not {}", what, kind_words(node)));
  else if (has_control_characters(node.text))
    complain(node, fmt::format("{} holds control characters", what), "write plain text");
  else
    return node.text;
  return {};
}

double YamlFile::number(const YamlNode& node, std::string_view what) {
  if (node.kind == YamlNode::Kind::scalar && !node.quoted)
    if (const auto value = number_from(node.text)) return *value;
  std::string remedy = "write it plainly, for example 12.5";
  if (node.kind == YamlNode::Kind::scalar && is_decimal_comma(node.text))
    remedy = "write it with a point instead of the comma";
  else if (node.quoted && number_from(node.text))
    remedy = "leave the quotes out";
  complain(node, fmt::format("{} must be a number, not {}", what, kind_words(node)), std::move(remedy));
  return 0;
}

int YamlFile::whole(const YamlNode& node, std::string_view what) {
  const std::size_t before = faults_.size();
  const double value = number(node, what);
  if (faults_.size() == before && (value != std::floor(value) || std::abs(value) > 1e9)) {
    complain(node, fmt::format("{} must be a whole number, not {}", what, node.text));
    return 0;
  }
  return static_cast<int>(value);
}

bool YamlFile::truth(const YamlNode& node, std::string_view what) {
  if (node.kind == YamlNode::Kind::scalar && !node.quoted && (node.text == "true" || node.text == "false"))
    return node.text == "true";
  complain(node, fmt::format("{} must be true or false, not {}", what, kind_words(node)));
  return false;
}

const std::vector<YamlNode>& YamlFile::list(const YamlNode& node, std::string_view what) {
  if (node.kind != YamlNode::Kind::list)
    complain(node, fmt::format("{} must be a list, not {}", what, kind_words(node)),
             "write one \"- item\" a line, or [a, b]");
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

YamlMap::YamlMap(YamlFile& file, const YamlNode& node, std::string what)
    : file_(file), node_(node), what_(std::move(what)) {
  if (node.kind != YamlNode::Kind::map)
    file_.complain(node, fmt::format("{} must be a group of \"key: value\" lines, not {}", what_, kind_words(node)));
}

const YamlNode* YamlMap::find(std::string_view key) {
  if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) asked_.emplace_back(key);
  for (const YamlNode::Entry& entry : node_.entries)
    if (entry.key == key) return &entry.value;
  return nullptr;
}

const YamlNode* YamlMap::need(std::string_view key) {
  const YamlNode* found = find(key);
  if (!found && node_.kind == YamlNode::Kind::map)
    file_.complain(node_, fmt::format("{} lacks the key \"{}\"", what_, key), fmt::format("add {}: ...", key));
  return found;
}

std::string YamlMap::text(std::string_view key) {
  const YamlNode* found = find(key);
  return found ? file_.text(*found, key) : std::string();
}

std::string YamlMap::need_text(std::string_view key) {
  const YamlNode* found = need(key);
  if (!found) return {};
  const std::size_t before = file_.faults().size();
  std::string value = file_.text(*found, key);
  if (value.empty() && file_.faults().size() == before) file_.complain(*found, fmt::format("{} is empty", key));
  return value;
}

std::optional<double> YamlMap::number(std::string_view key) {
  const YamlNode* found = find(key);
  return found ? std::optional(file_.number(*found, key)) : std::nullopt;
}

std::optional<int> YamlMap::whole(std::string_view key) {
  const YamlNode* found = find(key);
  return found ? std::optional(file_.whole(*found, key)) : std::nullopt;
}

bool YamlMap::truth(std::string_view key, bool otherwise) {
  const YamlNode* found = find(key);
  return found ? file_.truth(*found, key) : otherwise;
}

std::vector<std::string> YamlMap::texts(std::string_view key) {
  const YamlNode* found = find(key);
  return found ? file_.texts(*found, key) : std::vector<std::string>();
}

std::optional<double> YamlMap::number_within(std::string_view key, double low, double high) {
  const std::size_t before = file_.faults().size();
  const std::optional<double> value = number(key);
  if (value && file_.faults().size() == before && (*value < low || *value > high))
    file_.complain(*find(key), fmt::format("{} is {}, outside {} to {}", key, *value, low, high));
  return value;
}

std::optional<int> YamlMap::whole_within(std::string_view key, int low, int high) {
  const std::size_t before = file_.faults().size();
  const std::optional<int> value = whole(key);
  if (value && file_.faults().size() == before && (*value < low || *value > high))
    file_.complain(*find(key), fmt::format("{} is {}, outside {} to {}", key, *value, low, high));
  return value;
}

void YamlMap::done() {
  for (const YamlNode::Entry& entry : node_.entries) {
    if (std::find(asked_.begin(), asked_.end(), entry.key) != asked_.end()) continue;
    const std::string near = nearest_name(entry.key, asked_);
    file_.complain(entry.line, entry.column, fmt::format("{} has no key \"{}\"", what_, entry.key),
                   near.empty() ? fmt::format("known keys: {}", fmt::join(asked_, ", "))
                                : fmt::format("did you mean \"{}\"?", near));
  }
}

}  // namespace gentlest
