#include "gentlest/names/names.hpp"

#include "core/base/enum_words.hpp"

#include "gentlest/base/letters.hpp"
#include "gentlest/base/text.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace gentlest {

namespace {

constexpr std::array<std::pair<NameKind, std::string_view>, 8> name_kind_words = {{{NameKind::english, "en"},
                                                                                   {NameKind::german, "de"},
                                                                                   {NameKind::french, "fr"},
                                                                                   {NameKind::italian, "it"},
                                                                                   {NameKind::spanish, "es"},
                                                                                   {NameKind::abbreviation, "abbr"},
                                                                                   {NameKind::trade, "trade"},
                                                                                   {NameKind::denatured, "denatured"}}};

// Letters from U+00C0 to U+00DF without their accents; those from U+00E0 on follow in the same order, but for the last.
constexpr std::array<std::string_view, 32> latin = {"a", "a", "a", "a", "a", "a", "ae", "c", "e",  "e", "e",
                                                    "e", "i", "i", "i", "i", "d", "n",  "o", "o",  "o", "o",
                                                    "o", "x", "o", "u", "u", "u", "u",  "y", "th", "ss"};

constexpr char32_t combining_diaeresis = 0x308;

bool is_separator(char32_t code) {
  constexpr std::u32string_view marks = U" \t\u00A0\u2009\u202F-_'`./(),[]\u2019\u2018\u02BC\u00B4\u2212";
  return marks.find(code) != std::u32string_view::npos || (code >= 0x2010 && code <= 0x2015);
}

bool is_umlaut(char32_t code) {
  return code == 0xC4 || code == 0xD6 || code == 0xDC || code == 0xE4 || code == 0xF6 || code == 0xFC;
}

std::string_view greek_word(char32_t code) {
  switch (code) {
    case 0x391:
    case 0x3B1:
      return "alpha";
    case 0x392:
    case 0x3B2:
      return "beta";
    case 0x393:
    case 0x3B3:
      return "gamma";
    default:
      return {};
  }
}

void add_letter(std::string& text, const Letter& letter) {
  const char32_t code = letter.code;
  if (code >= U'A' && code <= U'Z')
    text += static_cast<char>(code - U'A' + U'a');
  else if (code == 0xFF)
    text += 'y';
  else if (code >= 0xC0 && code < 0xFF)
    text += latin[(code - 0xC0) % latin.size()];
  else if (code == 0x152 || code == 0x153)
    text += "oe";
  else if (!greek_word(code).empty())
    text += greek_word(code);
  else if (!(code >= 0x300 && code <= 0x36F))  // a combining accent falls away
    text += letter.bytes;
}

using Words = std::vector<std::string>;

// The words of a name, folded; an umlaut becomes its vowel, with an e behind it where it is to be written out.
Words folded_words(std::string_view text, bool umlauts_written_out) {
  Words words(1);
  for (std::size_t at = 0; at < text.size();) {
    const Letter letter = letter_at(text, at);
    at += letter.bytes.size();
    if (is_separator(letter.code)) {
      if (!words.back().empty()) words.emplace_back();
      continue;
    }
    add_letter(words.back(), letter);
    if (umlauts_written_out && (is_umlaut(letter.code) || letter.code == combining_diaeresis)) words.back() += 'e';
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

std::string key_of(const Words& words) {
  std::string key;
  for (const std::string& word : words) {
    if (!key.empty() && is_digit(key.back()) && is_digit(word.front())) key += '-';
    key += word;
  }
  return key;
}

std::vector<Words> spellings_of(std::string_view text) {
  std::vector<Words> spellings = {folded_words(text, false), folded_words(text, true)};
  if (spellings[0] == spellings[1]) spellings.pop_back();
  return spellings;
}

bool is_vowel(char c) {
  return std::string_view("aeiou").find(c) != std::string_view::npos;
}

// What one word may be the plural of; the word itself comes first. No -n behind another vowel than e: "hexanon" is
// no plural of "hexano".
Words singulars_of(const std::string& word) {
  Words singulars = {word};
  const auto add = [&](std::size_t cut, std::string_view ending = {}) {
    if (word.size() >= cut + 4) singulars.push_back(word.substr(0, word.size() - cut) + std::string(ending));
  };
  if (word.size() < 4 || std::any_of(word.begin(), word.end(), is_digit)) return singulars;
  const char last = word.back();
  const char before = word[word.size() - 2];
  if (last == 's') add(1);
  if (last == 's' && before == 'e' && !is_vowel(word[word.size() - 3])) add(2);
  if (last == 'n' && before == 'e') add(1);
  if (last == 'n' && before == 'e' && !is_vowel(word[word.size() - 3])) add(2);
  if (last == 'x' && before == 'u') add(1);
  if (last == 'e' && !is_vowel(before)) add(1);
  if (last == 'e') add(1, "a");
  if (last == 'i') {
    add(1, "o");
    add(1, "e");
    add(1, "a");
  }
  return singulars;
}

bool is_same(const NameIndex::Target& a, const NameIndex::Target& b) {
  return a.index == b.index && a.is_ask == b.is_ask;
}

}  // namespace

std::string_view to_word(NameKind kind) {
  return word_of(name_kind_words, kind);
}

std::optional<NameKind> name_kind_from_word(std::string_view word) {
  return value_of<NameKind>(name_kind_words, word);
}

std::string denatured_name(std::string_view name) {
  return "denatured " + std::string(name);
}

std::vector<std::string> name_keys(std::string_view text) {
  std::vector<std::string> keys;
  for (const Words& words : spellings_of(text))
    if (std::string key = key_of(words); !key.empty()) keys.push_back(std::move(key));
  return keys;
}

std::vector<std::string> singular_keys(std::string_view text) {
  constexpr std::size_t most_words = 5;  // longer texts are no name that is put into the plural
  std::vector<std::string> keys;
  for (const Words& words : spellings_of(text)) {
    if (words.empty() || words.size() > most_words) continue;
    std::vector<Words> all = {{}};
    for (auto word = words.begin(); word != words.end(); ++word) {
      // "essence E" is no plural of "essence": nothing changes before a letter of its own.
      const bool stays = std::any_of(word + 1, words.end(), [](const std::string& later) { return later.size() == 1; });
      std::vector<Words> longer;
      for (const Words& begun : all)
        for (const std::string& singular : stays ? Words{*word} : singulars_of(*word)) {
          longer.push_back(begun);
          longer.back().push_back(singular);
        }
      all = std::move(longer);
    }
    for (std::size_t i = 1; i < all.size(); ++i) keys.push_back(key_of(all[i]));  // the first is the text itself
    if (words.back().size() >= 4) keys.push_back(key_of(words) + "s");            // known in the plural only
  }
  return keys;
}

std::optional<NameIndex::Target> NameIndex::add(Names& names, const std::string& key, Target target) {
  const auto [place, is_new] = names.emplace(key, target);
  if (is_new || is_same(place->second, target)) return std::nullopt;
  return place->second;
}

std::optional<NameIndex::Target> NameIndex::add_literal(std::string_view text, Target target) {
  return add(literal_, folded(text), target);
}

std::optional<NameIndex::Target> NameIndex::add_name(std::string_view text, Target target) {
  if (const auto found = literal_.find(folded(text)); found != literal_.end() && !is_same(found->second, target))
    return found->second;
  std::optional<Target> collision;
  for (const std::string& key : name_keys(text))
    if (const auto other = add(names_, key, target)) collision = other;
  return collision;
}

std::optional<NameIndex::Target> NameIndex::add_folded_id(std::string_view id, Target target) {
  std::optional<Target> collision;
  for (const std::string& key : name_keys(id)) {
    if (const auto found = names_.find(key); found != names_.end() && !is_same(found->second, target))
      collision = found->second;
    if (const auto other = add(ids_, key, target)) collision = other;
  }
  return collision;
}

std::optional<NameIndex::Target> NameIndex::find_key(const std::string& key) const {
  if (const auto found = names_.find(key); found != names_.end()) return found->second;
  if (const auto found = ids_.find(key); found != ids_.end()) return found->second;
  return std::nullopt;
}

std::optional<NameIndex::Target> NameIndex::find(std::string_view typed) const {
  if (const auto found = literal_.find(folded(typed)); found != literal_.end()) return found->second;
  for (const std::string& key : name_keys(typed))
    if (const auto found = find_key(key)) return found;
  std::optional<Target> meant;
  for (const std::string& key : singular_keys(typed)) {
    const auto found = find_key(key);
    if (found && meant && !is_same(*found, *meant)) return std::nullopt;  // a plural of two names is neither
    if (found) meant = found;
  }
  return meant;
}

}  // namespace gentlest
