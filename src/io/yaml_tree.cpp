// From a file's text to the tree of its nodes: the only file that knows yaml-cpp.
#include "io/yaml_reader.hpp"
#include "io/yaml_slips.hpp"

#include <fmt/format.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
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
      file_.complain(node, "this quote is never closed", "close it; is the file cut off?");
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
    bool is_told = false;  // that keys stand twice
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
    file_.complain(mark.line + 1, mark.column + 1, "tags (!name) are not used here",
                   "leave it out; a text that begins with ! belongs in \"quotes\"");
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
    if (node.kind == YamlNode::Kind::null) put_at_its_key(node);
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
  // The parser gives nothing the place of what comes next; a person looks for it where it is missing.
  void put_at_its_key(YamlNode& node) {
    if (open_.empty()) return;
    const Open& parent = open_.back();
    if (parent.entry) {
      node.line = parent.entry->line;
      node.column = parent.entry->column;
    } else if (parent.node.kind == YamlNode::Kind::list) {
      file_.put_at_dash_above(node);
    }
  }

  // A group whose first key comes again is two groups without a dash between them: one slip, told once.
  void tell_doubled(Open& parent, const YamlNode& node) {
    const bool is_item = open_.size() > 1 && open_[open_.size() - 2].node.kind == YamlNode::Kind::list;
    const bool is_block = parent.node.line < node.line;
    if (is_item && is_block && !parent.node.entries.empty() && parent.node.entries.front().key == node.text) {
      file_.complain(node, fmt::format("\"{}\" stands here twice", node.text),
                     fmt::format("begins a new item here? Then put a dash in front: \"- {}:\"", node.text));
      parent.is_told = true;
    } else if (!parent.is_told) {
      file_.complain(node, fmt::format("\"{}\" stands here twice", node.text), "keep one of the two");
    }
  }

  void take_key(Open& parent, const YamlNode& node) {
    if (node.kind != YamlNode::Kind::scalar || node.text.empty()) {
      if (!has_ended_) file_.complain(node, "a key must be a plain word", "write it as key: value");
    } else if (node.text == "<<") {
      file_.complain(node, "merge keys (<<) are not used here", "write the values out");
    } else if (!parent.keys.insert(node.text).second) {
      tell_doubled(parent, node);
    }
    parent.entry = YamlNode::Entry{node.text, node.line, node.column, {}};
  }

  YamlFile& file_;
  YamlNode root_;
  std::vector<Open> open_;
  bool has_ended_ = false;
};

}  // namespace

// One slip of the hand is told once: what the parser stumbled over below it is no fault of its own.
void YamlFile::complain_of_slip(int stopped_at) {
  std::vector<std::string> lines;
  for (std::size_t i = 0; i < line_starts_.size(); ++i) lines.push_back(line_text(static_cast<int>(i) + 1));
  const YamlSlip slip = find_slip(lines, stopped_at)
                            .value_or(YamlSlip{stopped_at, 1, "from this line on the file cannot be read",
                                               "check indentation, colons, quotes and brackets here and above"});
  faults_.erase(std::remove_if(faults_.begin(), faults_.end(),
                               [&](const Diagnostic& fault) { return fault.where.line >= slip.line; }),
                faults_.end());
  complain(slip.line, slip.column, slip.message, slip.remedy);
}

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
      const int line = line_of_divider(more.line);
      complain(line, 1, "a second document begins here",
               fmt::format("one file holds one job or record; leave out the line {}", line_text(line)));
    }
  } catch (const YAML::ParserException& error) {
    root_ = builder.take_root();
    complain_of_slip(error.mark.line + 1);
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

int YamlFile::line_of_divider(int below) const {
  for (int line = below; line > 0; --line)
    if (const std::string text = line_text(line); text.rfind("---", 0) == 0 || text.rfind("...", 0) == 0) return line;
  return below;
}

void YamlFile::put_at_dash_above(YamlNode& node) const {
  for (int line = node.line; line > 0; --line) {
    std::string text = line_text(line);
    if (line == node.line) text.resize(std::min(text.size(), static_cast<std::size_t>(node.column) - 1));
    text = text.substr(0, text.find('#'));
    const std::size_t last = text.find_last_not_of(' ');
    if (last == std::string::npos) continue;
    if (text[last] != '-') return;
    node.line = line;
    node.column = static_cast<int>(last) + 1;
    return;
  }
}

void YamlFile::complain(int line, int column, std::string message, std::string remedy) {
  faults_.push_back({place(line, column), std::move(message), std::move(remedy), line_text(line)});
}

void YamlFile::complain(const YamlNode& node, std::string message, std::string remedy) {
  complain(node.line, node.column, std::move(message), std::move(remedy));
}

}  // namespace gentlest
