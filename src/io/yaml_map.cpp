// A map of a file read key by key.
#include "io/yaml_reader.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace gentlest {

YamlMap::YamlMap(YamlFile& file, const YamlNode& node, std::string what, const std::string& example)
    : file_(file), node_(node), what_(std::move(what)) {
  if (node.kind == YamlNode::Kind::null)
    file_.complain_of_nothing(node, what_, example.empty() ? "its keys below, each indented by two spaces" : example);
  else if (node.kind != YamlNode::Kind::map)
    file_.complain(node, fmt::format("{} must be a group of \"key: value\" lines, not {}", what_, kind_words(node)),
                   "write " + (example.empty() ? "its keys below, each indented by two spaces" : example));
}

std::string YamlMap::lacks(std::string_view key) const {
  return fmt::format("{} lacks the key \"{}\"", what_, key);
}

const YamlNode* YamlMap::find(std::string_view key) {
  if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) asked_.emplace_back(key);
  for (const YamlNode::Entry& entry : node_.entries)
    if (entry.key == key) return &entry.value;
  return nullptr;
}

const YamlNode* YamlMap::need(std::string_view key, std::string_view example) {
  const YamlNode* found = find(key);
  if (!found && node_.kind == YamlNode::Kind::map) {
    file_.complain(node_, lacks(key), fmt::format("add {}: {}", key, example));
    missing_.emplace_back(key);
  }
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
  if (found->kind == YamlNode::Kind::null && file_.hidden_remark(*found).empty()) {
    file_.complain_of_nothing(*found, key, "it behind the colon", false);
    return {};
  }
  std::string value = file_.text(*found, key);
  if (value.empty() && file_.faults().size() == before)
    file_.complain(*found, fmt::format("{} is empty", key), "write it between the quotes");
  return value;
}

std::optional<double> YamlMap::number(std::string_view key, const WantedNumber& wanted) {
  const YamlNode* found = find(key);
  return found ? std::optional(file_.number(*found, key, wanted)) : std::nullopt;
}

std::optional<int> YamlMap::whole(std::string_view key, const WantedNumber& wanted) {
  const YamlNode* found = find(key);
  return found ? std::optional(file_.whole(*found, key, wanted)) : std::nullopt;
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
  const WantedNumber wanted{unit_of_key(key), low, high, false};
  const std::optional<double> value = number(key, wanted);
  if (value && file_.faults().size() == before && (*value < low || *value > high))
    file_.complain(*find(key), fmt::format("{} is {}, outside {} to {}", key, *value, low, high),
                   cure_of_range(*value, wanted));
  return value;
}

std::optional<int> YamlMap::whole_within(std::string_view key, int low, int high) {
  const std::size_t before = file_.faults().size();
  const WantedNumber wanted{unit_of_key(key), static_cast<double>(low), static_cast<double>(high), true};
  const std::optional<int> value = whole(key, wanted);
  if (value && file_.faults().size() == before && (*value < low || *value > high))
    file_.complain(*find(key), fmt::format("{} is {}, outside {} to {}", key, *value, low, high),
                   cure_of_range(*value, wanted));
  return value;
}

// The missing key that an unknown one was meant as: "Role" is role, "name sky" is name without its colon; and where one
// is missing and one too many, they are the same.
std::optional<std::string> YamlMap::missing_meant_by(const YamlNode::Entry& entry) const {
  for (const std::string& key : missing_)
    if (entry.key.rfind(key + " ", 0) == 0 || entry.key.rfind(key + ":", 0) == 0) return key;
  if (const std::string near = nearest_name(entry.key, asked_); !near.empty())
    return std::find(missing_.begin(), missing_.end(), near) == missing_.end() ? std::nullopt : std::optional(near);
  const auto unknown = std::count_if(node_.entries.begin(), node_.entries.end(), [&](const YamlNode::Entry& other) {
    return std::find(asked_.begin(), asked_.end(), other.key) == asked_.end();
  });
  return missing_.size() == 1 && unknown == 1 ? std::optional(missing_.front()) : std::nullopt;
}

// "{dD: 18,5, dP: 8}": the comma ends the entry, and 5 is taken for a key.
bool YamlMap::complain_of_decimal_comma(const YamlNode::Entry& entry) {
  const bool is_number = entry.key.find_first_not_of("0123456789") == std::string::npos;
  const auto at = std::find_if(node_.entries.begin(), node_.entries.end(),
                               [&](const YamlNode::Entry& other) { return &other == &entry; });
  if (!is_number || entry.value.kind != YamlNode::Kind::null || at == node_.entries.begin()) return false;
  const YamlNode::Entry& before = *(at - 1);
  if (!number_from(before.value.text)) return false;
  file_.complain(before.value,
                 fmt::format("the comma in \"{},{}\" divides two entries here", before.value.text, entry.key),
                 fmt::format("write {}: {}.{}", before.key, before.value.text, entry.key));
  return true;
}

void YamlMap::complain_of_key(const YamlNode::Entry& entry, const std::map<std::string, std::string>& elsewhere) {
  if (complain_of_decimal_comma(entry)) return;
  const std::optional<std::string> missing = missing_meant_by(entry);
  if (missing) file_.withdraw(node_, lacks(*missing));
  if (missing && entry.key.rfind(*missing, 0) == 0 && entry.key.size() > missing->size() + 1 &&
      entry.value.kind == YamlNode::Kind::null) {
    const char* what = entry.key[missing->size()] == ':' ? "space stands behind the colon of" : "colon stands behind";
    return file_.complain(entry.line, entry.column, fmt::format("no {} \"{}\"", what, *missing),
                          fmt::format("write {}: {}", *missing, trimmed(entry.key.substr(missing->size() + 1))));
  }
  const std::string near = missing ? *missing : nearest_name(entry.key, asked_);
  const auto home = elsewhere.find(entry.key);
  std::string remedy = fmt::format("known keys: {}", fmt::join(asked_, ", "));
  if (home != elsewhere.end())
    remedy = fmt::format("it belongs to {}", home->second);
  else if (!near.empty())
    remedy = fmt::format("did you mean \"{}\"?", near);
  file_.complain(entry.line, entry.column, fmt::format("{} has no key \"{}\"", what_, entry.key), std::move(remedy));
}

void YamlMap::done(const std::map<std::string, std::string>& elsewhere) {
  for (const YamlNode::Entry& entry : node_.entries)
    if (std::find(asked_.begin(), asked_.end(), entry.key) == asked_.end()) complain_of_key(entry, elsewhere);
}

}  // namespace gentlest
