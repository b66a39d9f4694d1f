// Strict YAML: a small tree with the place of everything, and readers that collect every fault instead of stopping at
// the first. The only user of yaml-cpp.
#pragma once

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/typed_number.hpp"

#include <array>
#include <cstddef>
#include <map>
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
  /// Parses at once. Broken YAML (told as the slip that most likely made it), anchors, aliases, tags, doubled keys, a
  /// second document are faults; the tree is then as far as it was read.
  YamlFile(std::string name, std::string text);

  /// Of a tree that was read before: no line of it is known any more.
  YamlFile(std::string name, YamlNode root) : name_(std::move(name)), root_(std::move(root)) {}

  const YamlNode& root() const noexcept { return root_; }
  const std::vector<Diagnostic>& faults() const noexcept { return faults_; }
  std::vector<Diagnostic> take_faults() { return std::move(faults_); }
  Location place(int line, int column) const { return {name_, line, column}; }
  Location place(const YamlNode& node) const { return place(node.line, node.column); }
  /// The line as it stands in the file; empty when there is none of that number.
  std::string line_text(int line) const;

  /// Whether the quoted text that begins here has an end: yaml-cpp takes the end of the file for one.
  bool quote_is_closed(int line, int column) const;

  /// Gives a missing item the place of the dash behind which it is missing.
  void put_at_dash_above(YamlNode& node) const;

  void complain(int line, int column, std::string message, std::string remedy = {});
  void complain(const YamlNode& node, std::string message, std::string remedy = {});
  /// Takes a complaint back that another one at another place says better.
  void withdraw(const YamlNode& node, const std::string& message);

  // Each reads a scalar or list of one type; on a fault it complains, naming `what`, and returns a harmless value.
  std::string text(const YamlNode& node, std::string_view what);
  double number(const YamlNode& node, std::string_view what, const WantedNumber& wanted = {});
  int whole(const YamlNode& node, std::string_view what, WantedNumber wanted = {});
  bool truth(const YamlNode& node, std::string_view what);
  std::vector<std::string> texts(const YamlNode& node, std::string_view what);
  std::vector<double> numbers(const YamlNode& node, std::string_view what, std::size_t least, std::size_t most);
  /// The items of a list; complains and returns nothing when it is none. `example` is the cure, where an item is more
  /// than a word.
  const std::vector<YamlNode>& list(const YamlNode& node, std::string_view what, const std::string& example = {});

  /// "nothing stands behind "title"", with what to do; `may_go` where the line may be left out.
  void complain_of_nothing(const YamlNode& node, std::string_view what, std::string_view wanted, bool may_go = true);
  /// What a # behind the value or the key hides that was meant as text, as in "Boats #2"; empty where it hides nothing.
  std::string hidden_remark(const YamlNode& node) const;

 private:
  void complain_of_slip(int stopped_at);
  int line_of_divider(int below) const;

  std::string name_;
  std::string text_;
  std::vector<std::size_t> line_starts_;
  YamlNode root_;
  std::vector<Diagnostic> faults_;
};

/// What stands there, for messages: "nothing", "a list", "a group of keys", or the text in quotes.
std::string kind_words(const YamlNode& node);

/// Reads a map key by key and remembers which keys were asked for; done() complains about the others.
class YamlMap {
 public:
  /// `what` names the record in messages, e.g. "layer", `example` shows one. Complains when the node is no map.
  YamlMap(YamlFile& file, const YamlNode& node, std::string what, const std::string& example = {});

  const YamlNode* find(std::string_view key);  ///< null when absent
  /// Complains when absent; `example` shows the value.
  const YamlNode* need(std::string_view key, std::string_view example = "...");

  std::string text(std::string_view key);       ///< empty when absent
  std::string need_text(std::string_view key);  ///< complains when absent or empty
  std::optional<double> number(std::string_view key, const WantedNumber& wanted = {});
  std::optional<int> whole(std::string_view key, const WantedNumber& wanted = {});
  bool truth(std::string_view key, bool otherwise);
  std::vector<std::string> texts(std::string_view key);
  /// Within low..high, or complains at the value.
  std::optional<double> number_within(std::string_view key, double low, double high);
  std::optional<int> whole_within(std::string_view key, int low, int high);

  /// Complains about the keys that nobody asked for. One that is near to a missing key is the same slip, told once.
  /// `elsewhere` says where a key belongs that stands in the wrong group.
  void done(const std::map<std::string, std::string>& elsewhere = {});

  YamlFile& file() noexcept { return file_; }
  const YamlNode& node() const noexcept { return node_; }

 private:
  YamlFile& file_;
  const YamlNode& node_;
  void complain_of_key(const YamlNode::Entry& entry, const std::map<std::string, std::string>& elsewhere);
  bool complain_of_decimal_comma(const YamlNode::Entry& entry);
  std::optional<std::string> missing_meant_by(const YamlNode::Entry& entry) const;
  std::string lacks(std::string_view key) const;

  std::string what_;
  std::vector<std::string> asked_;
  std::vector<std::string> missing_;
};

}  // namespace gentlest
