// From a file's text to the tree of its nodes: the only file that knows yaml-cpp.
#include "io/yaml_reader.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

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

  // Whatever is still open when the parser gives up belongs to the tree as well. Why it gave up is told by then: what
  // stands where a key should is a part of that fault, not one of its own.
  YamlNode take_root() {
    has_ended_ = true;
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
    if (node.kind != YamlNode::Kind::scalar || node.text.empty()) {
      if (!has_ended_) file_.complain(node, "a key must be a plain word", "write it as key: value");
    } else if (node.text == "<<") {
      file_.complain(node, "merge keys (<<) are not used here", "write the values out");
    } else if (!parent.keys.insert(node.text).second) {
      file_.complain(node, fmt::format("\"{}\" stands here twice", node.text), "keep one of the two");
    }
    parent.entry = YamlNode::Entry{node.text, node.line, node.column, {}};
  }

  YamlFile& file_;
  YamlNode root_;
  std::vector<Open> open_;
  bool has_ended_ = false;
};

// The parser's own words, with what people usually did wrong.
std::string parse_remedy(const std::string& message) {
  if (message.find("tab") != std::string::npos || message.find("Tab") != std::string::npos)
    return "indent with spaces, not tabs";
  if (message.find("end of") != std::string::npos || message.find("EOF") != std::string::npos)
    return "a bracket or quote is still open: is the file cut off?";
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

}  // namespace gentlest
