#include "io/yaml_reader.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>
#include <sstream>

namespace gentlest {

namespace {

// Builds our tree from the parser's events. Places are known here and nowhere later, so form is judged here.
class TreeBuilder : public YAML::EventHandler {
 public:
  explicit TreeBuilder(YamlFile& file) : file_(file) {}

  void OnDocumentStart(const YAML::Mark&) override {}
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override {
    refuse_anchor(mark, anchor);
    add(node_at(mark, YamlNode::Kind::null));
  }
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
    file_.complain(mark.line + 1, mark.column + 1, "aliases (*name) are not used here", "write the value out");
    add(node_at(mark, YamlNode::Kind::null));
  }
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override {
    refuse_anchor(mark, anchor);
    if (tag != "?" && tag != "!") refuse_tag(mark);
    YamlNode node = node_at(mark, YamlNode::Kind::scalar);
    node.text = value;
    node.quoted = tag == "!";
    if (node.quoted && !file_.quote_is_closed(node.line, node.column))
      file_.complain(node, "not valid YAML: this quote is never closed", "is the file cut off?");
    add(std::move(node));
  }
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, YamlNode::Kind::list);
  }
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value) override {
    open(mark, tag, anchor, YamlNode::Kind::map);
  }
  void OnMapEnd() override { close(); }

  // Whatever is still open when the parser gives up belongs to the tree as well.
  YamlNode take_root() {
    while (!open_.empty()) close();
    return std::move(root_);
  }

 private:
  struct Open {
    YamlNode node;
    std::optional<YamlNode::Entry> entry;  // key read, value awaited
    std::set<std::string> keys;
  };

  static YamlNode node_at(const YAML::Mark& mark, YamlNode::Kind kind) {
    YamlNode node;
    node.kind = kind;
    node.line = mark.line + 1;
    node.column = mark.column + 1;
    return node;
  }
  void refuse_anchor(const YAML::Mark& mark, YAML::anchor_t anchor) {
    if (anchor != 0)
      file_.complain(mark.line + 1, mark.column + 1, "anchors (&name) are not used here", "write the value out");
  }
  void refuse_tag(const YAML::Mark& mark) {
    file_.complain(mark.line + 1, mark.column + 1, "tags (!name) are not used here", "leave the tag out");
  }
  void open(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor, YamlNode::Kind kind) {
    refuse_anchor(mark, anchor);
    if (tag != "?" && tag != "!" && !tag.empty()) refuse_tag(mark);
    open_.push_back({node_at(mark, kind), std::nullopt, {}});
  }
  void close() {
    YamlNode node = std::move(open_.back().node);
    open_.pop_back();
    add(std::move(node));
  }
  void add(YamlNode node) {
    if (open_.empty()) {
      root_ = std::move(node);
      return;
    }
    Open& parent = open_.back();
    if (parent.node.kind == YamlNode::Kind::list) {
      parent.node.items.push_back(std::move(node));
    } else if (!parent.entry) {
      take_key(parent, node);
    } else {
      parent.entry->value = std::move(node);
      parent.node.entries.push_back(std::move(*parent.entry));
      parent.entry.reset();
    }
  }
  void take_key(Open& parent, const YamlNode& node) {
    if (node.kind != YamlNode::Kind::scalar || node.text.empty())
      file_.complain(node, "a key must be a plain word", "write it as key: value");
    else if (node.text == "<<")
      file_.complain(node, "merge keys (<<) are not used here", "write the values out");
    else if (!parent.keys.insert(node.text).second)
      file_.complain(node, fmt::format("\"{}\" stands here twice", node.text), "keep one of the two");
    parent.entry = YamlNode::Entry{node.text, node.line, node.column, {}};
  }

  YamlFile& file_;
  YamlNode root_;
  std::vector<Open> open_;
};

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

std::optional<double> plain_number(const std::string& text) {
  if (text.empty() || text.find_first_not_of("0123456789+-.eE") != std::string::npos) return std::nullopt;
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  if (end != text.c_str() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

bool is_decimal_comma(const std::string& text) {
  std::string pointed = text;
  const std::size_t comma = pointed.find(',');
  if (comma == std::string::npos) return false;
  pointed[comma] = '.';
  return plain_number(pointed).has_value();
}

// The parser's own words, with what people usually did wrong.
std::string parse_remedy(const std::string& message) {
  if (message.find("tab") != std::string::npos || message.find("Tab") != std::string::npos)
    return "indent with spaces, not tabs";
  if (message.find("end of") != std::string::npos) return "a bracket or quote is still open: is the file cut off?";
  return "check indentation, colons and quotes around here; a text with : or # in it belongs in \"quotes\"";
}

}  // namespace

YamlFile::YamlFile(std::string name, std::string text) : name_(std::move(name)), text_(std::move(text)) {
  line_starts_.push_back(0);
  for (std::size_t i = 0; i < text_.size(); ++i)
    if (text_[i] == '\n') line_starts_.push_back(i + 1);
  TreeBuilder builder(*this);
  try {
    std::istringstream in(text_);
    YAML::Parser parser(in);
    if (!parser.HandleNextDocument(builder)) complain(1, 1, "the file is empty");
    root_ = builder.take_root();
    TreeBuilder second(*this);
    if (faults_.empty() && parser.HandleNextDocument(second)) {
      const YamlNode more = second.take_root();
      complain(more.line, more.column, "a second document begins here", "one file holds one document; leave out ---");
    }
  } catch (const YAML::ParserException& error) {
    complain(error.mark.line + 1, error.mark.column + 1, "not valid YAML: " + error.msg, parse_remedy(error.msg));
    root_ = builder.take_root();
  }
}

std::string YamlFile::line_text(int line) const {
  if (line < 1 || static_cast<std::size_t>(line) > line_starts_.size()) return {};
  const std::size_t from = line_starts_[static_cast<std::size_t>(line) - 1];
  std::string text = text_.substr(from, text_.find('\n', from) - from);
  if (!text.empty() && text.back() == '\r') text.pop_back();
  return text;
}

bool YamlFile::quote_is_closed(int line, int column) const {
  std::size_t at = line_starts_[static_cast<std::size_t>(line) - 1] + static_cast<std::size_t>(column) - 1;
  if (at >= text_.size()) return false;
  const char quote = text_[at];
  if (quote != '"' && quote != '\'') return true;  // a block text, which needs no closing
  for (++at; at < text_.size(); ++at) {
    const bool skip_next = (quote == '"' && text_[at] == '\\') ||
                           (quote == '\'' && text_[at] == '\'' && at + 1 < text_.size() && text_[at + 1] == '\'');
    if (skip_next)
      ++at;
    else if (text_[at] == quote)
      return true;
  }
  return false;
}

void YamlFile::complain(int line, int column, std::string message, std::string remedy) {
  faults_.push_back({place(line, column), std::move(message), std::move(remedy), line_text(line)});
}

void YamlFile::complain(const YamlNode& node, std::string message, std::string remedy) {
  complain(node.line, node.column, std::move(message), std::move(remedy));
}

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
    if (const auto value = plain_number(node.text)) return *value;
  std::string remedy = "write it plainly, for example 12.5";
  if (node.kind == YamlNode::Kind::scalar && is_decimal_comma(node.text))
    remedy = "write it with a point instead of the comma";
  else if (node.quoted && plain_number(node.text))
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
  asked_.emplace_back(key);
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
