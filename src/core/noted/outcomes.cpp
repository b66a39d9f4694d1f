#include "core/noted/outcomes.hpp"

#include "core/noted/parts.hpp"
#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gentlest {

namespace {

bool is_no_change(const TradeWord& word) {
  return word.removal == RemovalReading::no_effect;
}

}  // namespace

Outcomes::Outcomes(const Job& job) {
  // What the job calls so comes first: a layer to keep may be called "varnish".
  for (const Layer& layer : job.layers)
    prefixes_.push_back({folded(layer.name), layer.role == Role::remove ? Side::removal : Side::original,
                         layer.role == Role::remove ? std::string() : layer.name});
  for (const Passage& passage : job.passages) prefixes_.push_back({folded(passage.name), Side::original, passage.name});
  for (const char* word : {"varnish", "coating", "firnis", "vernis"}) prefixes_.push_back({word, Side::removal, {}});
  for (const char* word : {"paint", "original", "surface", "farbe", "peinture"})
    prefixes_.push_back({word, Side::original, {}});
}

std::pair<const TradeWord*, const Outcomes::Prefix*> Outcomes::meaning_of(const std::string& text) const {
  if (const TradeWord* word = find_trade_word(text)) return {word, nullptr};
  const std::string plain = folded(text);
  for (const Prefix& prefix : prefixes_) {
    if (plain.size() < prefix.text.size() + 2 || plain.compare(0, prefix.text.size() + 1, prefix.text + " ") != 0)
      continue;
    std::string rest = plain.substr(prefix.text.size() + 1);
    for (const std::string_view filler : {"is ", "was "})
      if (rest.rfind(filler, 0) == 0) rest.erase(0, filler.size());
    const TradeWord* word = find_trade_word(rest);
    if (word && (word->side == Side::either || word->side == prefix.side)) return {word, &prefix};
  }
  return {nullptr, nullptr};
}

bool Outcomes::understands(const std::string& text) const {
  return meaning_of(text).first != nullptr;
}

bool Outcomes::take(const std::string& text, std::optional<Side> side) {
  const auto [word, prefix] = meaning_of(text);
  if (!word) return false;
  passage_ = prefix ? prefix->passage : std::string();
  if (prefix) side = prefix->side;
  if (word->side != Side::either) {
    if (side && *side != word->side) return false;
    side = word->side;
  }
  mentions_.push_back({word, side, text});
  return true;
}

void Outcomes::take_after_drying(const std::string& text) {
  const auto [word, prefix] = meaning_of(text);
  if (!word || !word->original || *word->original == OriginalReading::nothing_seen) return;
  if (word->side == Side::original || (prefix && prefix->side == Side::original))
    when_dry_.push_back(word);
  else if (!prefix)
    dry_of_either_.push_back(text);
}

void Outcomes::settle(TypedReading& typed, std::vector<Diagnostic>& faults) {
  for (const std::string& text : dry_of_either_)
    faults.push_back({{},
                      fmt::format("\"{}\" may speak of the layer to remove or of the original", text),
                      fmt::format("write \"after drying varnish {0}\" or \"after drying paint {0}\"", text),
                      {}});
  settle_either(typed, faults);
  settle_side(Side::removal, typed, faults);
  settle_side(Side::original, typed, faults);
}

void Outcomes::settle_either(const TypedReading& typed, std::vector<Diagnostic>& faults) {
  std::vector<std::size_t> open, removals, originals;
  bool only_nothing_seen = !is_named(typed, "original") || typed.reading.original == OriginalReading::nothing_seen;
  for (std::size_t i = 0; i < mentions_.size(); ++i) {
    (!mentions_[i].side ? open : *mentions_[i].side == Side::removal ? removals : originals).push_back(i);
    if (mentions_[i].side == Side::original && mentions_[i].word->original != OriginalReading::nothing_seen)
      only_nothing_seen = false;
  }
  if (open.empty()) return;
  const bool any_removal = !removals.empty() || is_named(typed, "removal");
  const bool any_original = !originals.empty() || is_named(typed, "original");
  const auto give = [&](Side side) {
    for (const std::size_t i : open) mentions_[i].side = side;
  };
  if (any_removal && !any_original && (removals.empty() || removals.back() < open.front())) return give(Side::original);
  if (any_original && !any_removal && (only_nothing_seen || (!originals.empty() && open.back() < originals.front())))
    return give(Side::removal);
  if (!any_removal && !any_original && open.size() == 2 &&
      (is_no_change(*mentions_[open[0]].word) || is_no_change(*mentions_[open[1]].word))) {
    mentions_[open[0]].side = Side::removal;
    mentions_[open[1]].side = Side::original;
    return;
  }
  for (const std::size_t i : open) {
    const std::string& text = mentions_[i].text;
    faults.push_back({{},
                      fmt::format("\"{}\" may speak of the layer to remove or of the original", text),
                      fmt::format("write \"varnish {0}\" or \"paint {0}\"", text),
                      {}});
  }
}

void Outcomes::settle_side(Side side, TypedReading& typed, std::vector<Diagnostic>& faults) {
  std::vector<const TradeWord*> words;
  for (const Mention& one : mentions_)
    if (one.side == side) words.push_back(one.word);
  SideReading said = put_together(words, side);
  const char* key = side == Side::removal ? "removal" : "original";
  if (side == Side::original)
    for (const TradeWord* dry : when_dry_) {
      const bool is_denied = said.original == OriginalReading::nothing_seen ||
                             (is_named(typed, "original") && typed.reading.original == OriginalReading::nothing_seen);
      if (is_denied) said.fault = fmt::format("\"nothing seen\" stands beside \"{}\" after drying", dry->text);
      said.original = std::max(said.original.value_or(*dry->original), *dry->original);
    }
  if (!said.fault.empty())
    faults.push_back(
        {{}, fmt::format("{}: {}", key, said.fault), "say one of them, the other as a remark in quotes", {}});
  for (const std::string& sign : said.signs) {
    add_word(typed.reading.signs, sign);
    name_key(typed, "signs");
  }
  if (!said.removal && !said.original) return;
  const bool is_twice = is_named(typed, key) && ((said.removal && typed.reading.removal != said.removal) ||
                                                 (said.original && typed.reading.original != said.original));
  if (is_twice && said.fault.empty())
    faults.push_back({{}, fmt::format("{} is said twice, and not alike", key), "give it once", {}});
  if (said.removal) typed.reading.removal = said.removal;
  if (said.original) typed.reading.original = said.original;
  name_key(typed, key);
}

}  // namespace gentlest
