#include "io/kept_tree.hpp"

#include <nlohmann/json.hpp>

#include <stdexcept>
#include <utility>
#include <vector>

namespace gentlest {

namespace {

using nlohmann::json;
using nlohmann::ordered_json;

constexpr char quoted_mark = '"';  // no plain scalar begins with it

ordered_json as_json(const YamlNode& node) {
  switch (node.kind) {
    case YamlNode::Kind::null:
      return nullptr;
    case YamlNode::Kind::scalar:
      return node.quoted ? quoted_mark + node.text : node.text;
    case YamlNode::Kind::list: {
      ordered_json list = ordered_json::array();
      for (const YamlNode& item : node.items) list.push_back(as_json(item));
      return list;
    }
    case YamlNode::Kind::map: {
      ordered_json map = ordered_json::object();
      for (const YamlNode::Entry& entry : node.entries) map[entry.key] = as_json(entry.value);
      return map;
    }
  }
  return nullptr;
}

// The same from the parser's events: no second tree is built on the way.
class Rebuilt final : public nlohmann::json_sax<json> {
 public:
  bool null() override { return add(YamlNode{}); }
  bool string(std::string& text) override {
    YamlNode node;
    node.kind = YamlNode::Kind::scalar;
    node.quoted = !text.empty() && text.front() == quoted_mark;
    node.text = node.quoted ? text.substr(1) : std::move(text);
    return add(std::move(node));
  }
  bool start_array(std::size_t) override { return open(YamlNode::Kind::list); }
  bool end_array() override { return close(); }
  bool start_object(std::size_t) override { return open(YamlNode::Kind::map); }
  bool end_object() override { return close(); }
  bool key(std::string& text) override {
    open_.back().entries.push_back({std::move(text), 0, 0, {}});
    return true;
  }
  bool boolean(bool) override { return false; }
  bool number_integer(std::int64_t) override { return false; }
  bool number_unsigned(std::uint64_t) override { return false; }
  bool number_float(double, const std::string&) override { return false; }
  bool binary(json::binary_t&) override { return false; }
  bool parse_error(std::size_t, const std::string&, const nlohmann::detail::exception&) override { return false; }

  YamlNode take_root() { return std::move(root_); }

 private:
  bool open(YamlNode::Kind kind) {
    open_.emplace_back().kind = kind;
    return true;
  }
  bool close() {
    YamlNode node = std::move(open_.back());
    open_.pop_back();
    return add(std::move(node));
  }
  bool add(YamlNode node) {
    if (open_.empty())
      root_ = std::move(node);
    else if (open_.back().kind == YamlNode::Kind::list)
      open_.back().items.push_back(std::move(node));
    else
      open_.back().entries.back().value = std::move(node);
    return true;
  }

  std::vector<YamlNode> open_;
  YamlNode root_;
};

}  // namespace

std::string kept_text(const YamlNode& node) {
  return as_json(node).dump();
}

YamlNode kept_tree(const std::string& text) {
  Rebuilt rebuilt;
  if (!json::sax_parse(text, &rebuilt)) throw std::invalid_argument("no kept tree");
  return rebuilt.take_root();
}

}  // namespace gentlest
