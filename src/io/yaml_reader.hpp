// Strict YAML: a small tree with the place of everything, and readers that collect every fault instead of stopping at
// the first. The only user of yaml-cpp.
#pragma once

#include "gentlest/base/diagnostic.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gentlest {

/// One node of a file. Lines and columns count from 1.
struct YamlNode {
  enum class Kind { null, scalar, list, map };
  struct Entry;
  Kind kind = Kind::null;
  int line = 0;
  int column = 0;
  bool quoted = false;
  std::string text;             ///< of a scalar
  std::vector<YamlNode> items;  ///< of a list
  std::vector<Entry> entries;   ///< of a map, in the order of the file
};

struct YamlNode::Entry {
  std::string key;
  int line = 0;
  int column = 0;
  YamlNode value;
};

/// A file's text, its tree, and the faults found so far.
class YamlFile {
 public:
  /// Parses at once. Broken YAML, anchors, aliases, tags, doubled keys, a second document are faults; the tree is
  /// then as far as it was read.
  YamlFile(std::string name, std::string text);

  const YamlNode& root() const noexcept { return root_; }
  const std::vector<Diagnostic>& faults() const noexcept { return faults_; }
  std::vector<Diagnostic> take_faults() { return std::move(faults_); }
  Location place(int line, int column) const { return {name_, line, column}; }
  Location place(const YamlNode& node) const { return place(node.line, node.column); }
  /// The line as it stands in the file; empty when there is none of that number.
  std::string line_text(int line) const;

  /// Whether the quoted text that begins here has an end: yaml-cpp takes the end of the file for one.
  bool quote_is_closed(int line, int column) const;

  void complain(int line, int column, std::string message, std::string remedy = {});
  void complain(const YamlNode& node, std::string message, std::string remedy = {});

  // Each reads a scalar or list of one type; on a fault it complains, naming `what`, and returns a harmless value.
  std::string text(const YamlNode& node, std::string_view what);
  double number(const YamlNode& node, std::string_view what);
  int whole(const YamlNode& node, std::string_view what);
  bool truth(const YamlNode& node, std::string_view what);
  std::vector<std::string> texts(const YamlNode& node, std::string_view what);
  std::vector<double> numbers(const YamlNode& node, std::string_view what, std::size_t least, std::size_t most);
  /// The items of a list; complains and returns nothing when it is none.
  const std::vector<YamlNode>& list(const YamlNode& node, std::string_view what);

 private:
  std::string name_;
  std::string text_;
  std::vector<std::size_t> line_starts_;
  YamlNode root_;
  std::vector<Diagnostic> faults_;
};

/// Reads a map key by key and remembers which keys were asked for; done() complains about the others.
class YamlMap {
 public:
  /// `what` names the record in messages, e.g. "layer". Complains when the node is no map.
  YamlMap(YamlFile& file, const YamlNode& node, std::string what);

  const YamlNode* find(std::string_view key);  ///< null when absent
  const YamlNode* need(std::string_view key);  ///< complains when absent

  std::string text(std::string_view key);       ///< empty when absent
  std::string need_text(std::string_view key);  ///< complains when absent or empty
  std::optional<double> number(std::string_view key);
  std::optional<int> whole(std::string_view key);
  bool truth(std::string_view key, bool otherwise);
  std::vector<std::string> texts(std::string_view key);
  /// Within low..high, or complains at the value.
  std::optional<double> number_within(std::string_view key, double low, double high);
  std::optional<int> whole_within(std::string_view key, int low, int high);

  void done();

  YamlFile& file() noexcept { return file_; }
  const YamlNode& node() const noexcept { return node_; }

 private:
  YamlFile& file_;
  const YamlNode& node_;
  std::string what_;
  std::vector<std::string> asked_;
};

}  // namespace gentlest
