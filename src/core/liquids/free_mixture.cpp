#include "core/liquids/free_mixture.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/liquids/grade.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace gentlest {

namespace {

enum class Kind { number, ratio, per_cent, part, millilitre, separator, of, word };

struct Token {
  Kind kind = Kind::word;
  std::string_view text;
  std::vector<double> values = {};  // of a number or a ratio
};

constexpr std::array per_cent_words = {"%",    "vol%",  "vol.%", "vol.-%",  "%vol",    "v/v",
                                       "%v/v", "(v/v)", "vol",   "percent", "prozent", "p.c."};
constexpr std::array part_words = {"part", "parts", "teil", "teile", "teilen", "vol.-teile"};
constexpr std::array separator_words = {",", ";", "/", ":", "+", "&", "and", "in", "to", "und", "zu", "et", "with"};

template <std::size_t N>
bool is_one_of(std::string_view text, const std::array<const char*, N>& words) {
  const std::string plain = folded(text);
  return std::any_of(words.begin(), words.end(), [&](const char* word) { return plain == word; });
}

// With a point or a comma, without sign or exponent.
std::optional<double> amount_with_comma(std::string_view text) {
  std::string plain(text);
  if (std::count(plain.begin(), plain.end(), ',') > 1) return std::nullopt;
  std::replace(plain.begin(), plain.end(), ',', '.');
  if (plain.empty() || !is_digit(plain.front()) || !is_digit(plain.back())) return std::nullopt;
  return amount_from(plain);
}

// "1:3", "25/75", "1:1:2".
std::vector<double> ratio_of(std::string_view text) {
  std::vector<double> values;
  while (true) {
    const std::size_t end = text.find_first_of(":/");
    const std::optional<double> value = amount_with_comma(text.substr(0, end));
    if (!value) return {};
    values.push_back(*value);
    if (end == std::string_view::npos) return values;
    text.remove_prefix(end + 1);
  }
}

// Where a name without blanks is cut off: "acetone/isooctane", "ethanol,isooctane", but not "N,N-..." nor "1,4-...".
bool cuts(std::string_view word, std::size_t i) {
  const char c = word[i];
  if (c == ';' || c == '+') return true;
  if (c != ',' && c != '/' && c != ':') return false;
  const bool between_digits = i > 0 && i + 1 < word.size() && is_digit(word[i - 1]) && is_digit(word[i + 1]);
  const bool behind_one_letter = i == 1 && c == ',' && !is_digit(word[0]) && i + 1 < word.size();
  return !between_digits && !behind_one_letter;
}

Token token_of(std::string_view text) {
  if (is_one_of(text, separator_words)) return {Kind::separator, text};
  if (is_one_of(text, per_cent_words)) return {Kind::per_cent, text};
  if (is_one_of(text, part_words)) return {Kind::part, text};
  if (folded(text) == "ml") return {Kind::millilitre, text};
  if (folded(text) == "of") return {Kind::of, text};
  if (const std::optional<double> value = amount_with_comma(text)) return {Kind::number, text, {*value}};
  if (std::vector<double> values = ratio_of(text); values.size() > 1) return {Kind::ratio, text, std::move(values)};
  return {Kind::word, text};
}

// "30%" and "3mL" are a number and what it counts.
void add_word(std::string_view word, std::vector<Token>& tokens) {
  if (word.empty()) return;
  const std::size_t unit = word.find_first_not_of("0123456789.,");
  if (unit != std::string_view::npos && unit > 0 && amount_with_comma(word.substr(0, unit))) {
    const Token counted = token_of(word.substr(unit));
    if (counted.kind == Kind::per_cent || counted.kind == Kind::part || counted.kind == Kind::millilitre) {
      tokens.push_back(token_of(word.substr(0, unit)));
      tokens.push_back(counted);
      return;
    }
  }
  tokens.push_back(token_of(word));
}

std::vector<Token> tokens_of(std::string_view text) {
  std::vector<Token> tokens;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t from = text.find_first_not_of(" \t\n", at);
    if (from == std::string_view::npos) break;
    const std::string_view word = text.substr(from, text.find_first_of(" \t\n", from) - from);
    at = from + word.size();
    if (token_of(word).kind != Kind::word) {
      tokens.push_back(token_of(word));
      continue;
    }
    std::size_t start = 0;
    for (std::size_t i = 0; i < word.size(); ++i) {
      if (!cuts(word, i)) continue;
      add_word(word.substr(start, i - start), tokens);
      tokens.push_back({Kind::separator, word.substr(i, 1)});
      start = i + 1;
    }
    add_word(word.substr(start), tokens);
  }
  return tokens;
}

// A name or a share, or what stands between.
struct Item {
  enum class What { name, share, ratio, separator } what = What::separator;
  std::string_view text;
  std::vector<double> values = {};
  Kind unit = Kind::number;  // number: none was written
  bool is_known = false;
  bool is_alcohol = false;
};

std::string_view span(const std::vector<Token>& tokens, std::size_t first, std::size_t last) {
  const char* begin = tokens[first].text.data();
  return {begin, static_cast<std::size_t>(tokens[last].text.data() + tokens[last].text.size() - begin)};
}

class Itemiser {
 public:
  Itemiser(const std::vector<Token>& tokens, const Catalogue& catalogue, const std::vector<Liquid>& shelf)
      : tokens_(tokens), catalogue_(catalogue), shelf_(shelf) {}

  std::vector<Item> run() {
    for (at_ = 0; at_ < tokens_.size();) take_one();
    return std::move(items_);
  }

 private:
  void take_one() {
    const Token& token = tokens_[at_];
    if (take_name()) return;
    if (token.kind == Kind::number) return take_share();
    if (token.kind == Kind::ratio)
      items_.push_back({Item::What::ratio, token.text, token.values});
    else if (token.kind == Kind::separator)
      items_.push_back({Item::What::separator, token.text});
    else if (token.kind == Kind::word || token.kind == Kind::per_cent)
      add_unknown(token);
    ++at_;  // "of" and "parts" behind a ratio say nothing
  }

  // A name is told by its letters and digits alone, so what stands beside them would be swallowed.
  static bool may_end_a_name(const Token& token) {
    return token.kind == Kind::word || token.kind == Kind::number || token.kind == Kind::ratio;
  }

  // The longest known name that begins here.
  bool take_name() {
    if (!may_end_a_name(tokens_[at_])) return false;
    std::size_t behind = at_;
    while (behind < tokens_.size() && tokens_[behind].text != "," && tokens_[behind].text != ";") ++behind;
    for (std::size_t last = behind; last-- > at_;) {
      if (!may_end_a_name(tokens_[last])) continue;
      const std::string_view text = span(tokens_, at_, last);
      const Meaning<Solvent> meaning = catalogue_.meaning_of_solvent(text);
      const bool is_bottle = std::any_of(shelf_.begin(), shelf_.end(), [&](const Liquid& bottle) {
        return text.find_first_of("0123456789") == std::string_view::npos && folded(bottle.label) == folded(text);
      });
      if (!meaning.record && !meaning.ask && !is_bottle) continue;
      const bool is_alcohol = meaning.record && meaning.record->family == "alcohol";
      items_.push_back({Item::What::name, text, {}, Kind::number, true, is_alcohol});
      at_ = last + 1;
      while (at_ < tokens_.size() && tokens_[at_].kind == Kind::word && is_grade(tokens_[at_].text)) {
        items_.back().text = {
            text.data(), static_cast<std::size_t>(tokens_[at_].text.data() + tokens_[at_].text.size() - text.data())};
        ++at_;
      }
      return true;
    }
    return false;
  }

  void take_share() {
    Item share{Item::What::share, tokens_[at_].text, tokens_[at_].values};
    const std::size_t first = at_++;
    for (; at_ < tokens_.size(); ++at_) {
      const Kind kind = tokens_[at_].kind;
      if (kind != Kind::per_cent && kind != Kind::part && kind != Kind::millilitre) break;
      if (share.unit != Kind::number && share.unit != kind) break;
      share.unit = kind;
    }
    share.text = span(tokens_, first, at_ - 1);
    items_.push_back(std::move(share));
  }

  void add_unknown(const Token& token) {
    if (!items_.empty() && items_.back().what == Item::What::name && !items_.back().is_known) {
      const char* begin = items_.back().text.data();
      items_.back().text = {begin, static_cast<std::size_t>(token.text.data() + token.text.size() - begin)};
    } else {
      items_.push_back({Item::What::name, token.text});
    }
  }

  const std::vector<Token>& tokens_;
  const Catalogue& catalogue_;
  const std::vector<Liquid>& shelf_;
  std::size_t at_ = 0;
  std::vector<Item> items_;
};

struct SharedName {
  std::string name;  // with its grade
  std::optional<double> share;
  Kind unit = Kind::number;
};

class FreeReader {
 public:
  FreeReader(std::string_view text, std::vector<Item> items) : text_(text), items_(std::move(items)) {}

  std::optional<std::string> run() {
    const auto ratios =
        std::count_if(items_.begin(), items_.end(), [](const Item& item) { return item.what == Item::What::ratio; });
    const bool is_read = ratios == 0 ? read_pieces() : ratios == 1 && read_ratio();
    if (!is_read || !give_the_rest() || !is_free_) return std::nullopt;
    return written();
  }

 private:
  [[noreturn]] void ask(std::string message, std::string remedy) const {
    throw InputError(Fault::usage, {{{"mixture", 1, 0}, std::move(message), std::move(remedy), std::string(text_)}});
  }

  // "1:3 acetone / white spirit": as many numbers as names, in their order.
  bool read_ratio() {
    std::vector<double> values;
    for (const Item& item : items_) {
      if (item.what == Item::What::ratio) values = item.values;
      if (item.what == Item::What::name) parts_.push_back({std::string(item.text), {}, Kind::part});
      if (item.what != Item::What::share) continue;
      if (parts_.empty() || !looks_like_a_grade(item)) return false;
      parts_.back().name += " " + std::string(item.text);
    }
    if (parts_.size() < 2) return false;
    if (values.size() != parts_.size())
      ask(fmt::format("the ratio holds {} numbers for {} liquids", values.size(), parts_.size()),
          "write one number a liquid, e.g. \"1:3 acetone / white spirit\"");
    for (std::size_t i = 0; i < values.size(); ++i) parts_[i].share = values[i];
    return is_free_ = true;
  }

  static bool looks_like_a_grade(const Item& share) {
    return share.unit == Kind::per_cent && share.values.front() > 50 && share.values.front() <= 100;
  }

  // What stands between two separators is one liquid with its share, or several whose comma was forgotten.
  bool read_pieces() {
    std::vector<Item> piece;
    for (std::size_t i = 0; i <= items_.size(); ++i) {
      if (i < items_.size() && items_[i].what != Item::What::separator) {
        piece.push_back(items_[i]);
        continue;
      }
      if (!read_piece(piece)) return false;
      piece.clear();
      if (i == items_.size()) break;
      const bool is_plain = items_[i].text == "," || items_[i].text == ";";
      is_free_ = is_free_ || !is_plain;
      rest_is_said_ = rest_is_said_ || folded(items_[i].text) == "in";
    }
    return !parts_.empty();
  }

  bool read_piece(const std::vector<Item>& piece) {
    const auto names = static_cast<std::size_t>(
        std::count_if(piece.begin(), piece.end(), [](const Item& item) { return item.what == Item::What::name; }));
    const bool all_known = std::all_of(piece.begin(), piece.end(),
                                       [](const Item& item) { return item.what != Item::What::name || item.is_known; });
    if (names == 0 || (names > 1 && !all_known)) return false;
    is_free_ = is_free_ || names > 1;
    return piece.front().what == Item::What::share ? read_shares_first(piece) : read_shares_behind(piece, names);
  }

  bool read_shares_first(const std::vector<Item>& piece) {
    is_free_ = true;
    std::vector<Item> waiting;  // shares since the last name
    const auto put_grade = [&](const Item& share) {
      if (!looks_like_a_grade(share))
        ask(fmt::format("\"{}\" stands beside {}, which has a share already", share.text, parts_.back().name),
            "put a comma between the liquids, and write a grade with its %, e.g. \"30 % ethanol 96 %\"");
      parts_.back().name += " " + std::string(share.text);
    };
    for (const Item& item : piece) {
      if (item.what == Item::What::share) {
        waiting.push_back(item);
        continue;
      }
      if (waiting.empty()) return false;
      for (std::size_t i = 0; i + 1 < waiting.size(); ++i) {
        if (parts_.empty()) return false;
        put_grade(waiting[i]);
      }
      parts_.push_back({std::string(item.text), waiting.back().values.front(), waiting.back().unit});
      waiting.clear();
    }
    for (const Item& share : waiting) put_grade(share);
    return true;
  }

  bool read_shares_behind(const std::vector<Item>& piece, std::size_t names) {
    for (std::size_t i = 0; i < piece.size();) {
      const Item& name = piece[i++];
      parts_.push_back({std::string(name.text), {}, Kind::number});
      std::vector<Item> shares;
      while (i < piece.size() && piece[i].what == Item::What::share) shares.push_back(piece[i++]);
      if (shares.size() > 2) return false;
      if (shares.empty()) continue;
      const Item& share = shares.back();
      if (shares.size() == 2) parts_.back().name += " " + std::string(shares.front().text);
      if (shares.size() == 1 && names > 1 && name.is_alcohol && could_be_a_grade(share))
        ask(fmt::format("is \"{}\" the grade of {} or its share?", share.text, name.text),
            fmt::format(
                "put commas between the liquids: \"{0} {1}, ...\" for a share, \"{0} {1} % 30, ...\" for a grade "
                "with a share behind it",
                name.text, fmt::format("{}", share.values.front())));
      parts_.back().share = share.values.front();
      parts_.back().unit = share.unit;
      is_free_ = is_free_ || share.text.find(',') != std::string_view::npos || share.unit == Kind::part ||
                 share.unit == Kind::millilitre;
    }
    return true;
  }

  // Usual strengths of alcohols begin there.
  static bool could_be_a_grade(const Item& share) {
    constexpr double weakest = 90;
    return share.unit != Kind::part && share.unit != Kind::millilitre && share.values.front() >= weakest &&
           share.values.front() <= 100;
  }

  // "30 % ethanol in isooctane": the one liquid without a share is the rest.
  bool give_the_rest() {
    std::vector<SharedName*> without;
    double sum = 0;
    bool all_per_cent = true;
    for (SharedName& part : parts_) {
      if (!part.share) without.push_back(&part);
      sum += part.share.value_or(0);
      all_per_cent = all_per_cent && (!part.share || part.unit == Kind::per_cent);
    }
    if (without.empty()) return true;
    if (without.size() > 1 || !rest_is_said_ || !all_per_cent || sum <= 0 || sum >= 100) return false;
    without.front()->share = 100 - sum;
    without.front()->unit = Kind::per_cent;
    return true;
  }

  std::optional<std::string> written() {
    const auto are_all = [&](auto holds) { return std::all_of(parts_.begin(), parts_.end(), holds); };
    const bool any_parts = !are_all([](const SharedName& part) { return part.unit != Kind::part; });
    const bool any_mL = !are_all([](const SharedName& part) { return part.unit != Kind::millilitre; });
    const bool any_per_cent = !are_all([](const SharedName& part) { return part.unit != Kind::per_cent; });
    if ((any_mL && !are_all([](const SharedName& part) { return part.unit == Kind::millilitre; })) ||
        (any_parts && any_per_cent))
      ask("the shares are not all of one kind", "write all in per cent, all in parts or all in mL");
    double sum = 0;
    for (const SharedName& part : parts_) sum += *part.share;
    if (sum <= 0) return std::nullopt;
    const bool is_scaled = any_parts || any_mL;
    std::string text;
    for (const SharedName& part : parts_) {
      const double share = is_scaled ? 100 * *part.share / sum : *part.share;
      text += fmt::format("{}{} {}{}", text.empty() ? "" : ", ", part.name, share, any_per_cent ? "%" : "");
    }
    return text;
  }

  std::string_view text_;
  std::vector<Item> items_;
  std::vector<SharedName> parts_;
  bool is_free_ = false;  // else it is the notation itself
  bool rest_is_said_ = false;
};

// "acetone 1, white spirit 4": small whole numbers that add up to neither 1 nor 100 are parts.
bool are_small_parts(const std::vector<Item>& items) {
  constexpr double most = 20;
  double sum = 0;
  std::size_t shares = 0, names = 0;
  for (const Item& item : items) {
    if (item.what == Item::What::name) names += item.is_known ? 1u : 100u;
    if (item.what != Item::What::share) continue;
    if (item.unit != Kind::number || item.values.front() > most || item.values.front() < 1 ||
        item.values.front() != std::floor(item.values.front()))
      return false;
    sum += item.values.front();
    ++shares;
  }
  return shares > 1 && shares == names && sum != 1 && sum != 100;
}

}  // namespace

std::optional<std::string> in_notation(std::string_view text, const Catalogue& catalogue,
                                       const std::vector<Liquid>& shelf) {
  const std::vector<Token> tokens = tokens_of(text);
  if (tokens.size() < 2) return std::nullopt;
  std::vector<Item> items = Itemiser(tokens, catalogue, shelf).run();
  if (are_small_parts(items))
    for (Item& item : items)
      if (item.what == Item::What::share) item.unit = Kind::part;
  return FreeReader(text, std::move(items)).run();
}

}  // namespace gentlest
