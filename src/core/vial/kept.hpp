// What was worked out of single vials is kept: whoever tries another limit on the same shelf asks of the same mixtures
// again, and neither phases nor drying depend on a limit. Internal to core.
#pragma once

#include "gentlest/base/quantity.hpp"
#include "gentlest/liquids/mixture.hpp"

#include <cstdint>
#include <mutex>
#include <optional>
#include <string>
#include <unordered_map>
#include <utility>

namespace gentlest {

/// All that phases and drying depend on, as one key: the very catalogue, the room, and bottle by bottle the record,
/// the label (which names the grade), water and share.
std::string vial_key(const Mixture& mixture, const Catalogue& catalogue, Celsius temperature);

/// One value for each key.
template <class Value>
class Kept {
 public:
  /// What `ask` says of the key's value, made by `make` where there is none yet. A value may grow by being asked: it is
  /// taken out, asked and put back, and who comes meanwhile begins a new one.
  template <class Make, class Ask>
  auto answer(const std::string& key, Make&& make, Ask&& ask) {
    std::optional<Value> value = take(key);
    if (!value) value.emplace(make());
    const auto said = ask(*value);
    put(key, std::move(*value));
    return said;
  }

 private:
  std::optional<Value> take(const std::string& key) {
    const std::lock_guard<std::mutex> lock(mutex_);
    const auto found = values_.find(key);
    if (found == values_.end()) return std::nullopt;
    std::optional<Value> value(std::move(found->second));
    values_.erase(found);
    return value;
  }
  void put(const std::string& key, Value value) {
    const std::lock_guard<std::mutex> lock(mutex_);
    // Some MB at most; many shelves in one run are rare, and then all begins anew.
    if (values_.size() >= most_values) values_.clear();
    values_.insert_or_assign(key, std::move(value));
  }

  static constexpr std::size_t most_values = 20000;
  std::mutex mutex_;
  std::unordered_map<std::string, Value> values_;
};

}  // namespace gentlest
