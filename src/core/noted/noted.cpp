#include "gentlest/noted/noted.hpp"

#include "core/noted/outcomes.hpp"
#include "core/noted/parts.hpp"
#include "core/noted/phrases.hpp"
#include "core/noted/plain_words.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/liquids/notation.hpp"
#include "gentlest/noted/fields.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace gentlest {

namespace {

constexpr std::size_t most_words_of_a_name = 8;

class NotedReader {
 public:
  NotedReader(std::string_view text, const NotedAgainst& against, TypedReading& typed, std::vector<Diagnostic>& faults)
      : text_(text),
        against_(against),
        typed_(typed),
        faults_(faults),
        phrases_(phrases_of(text)),
        outcomes_(against.job) {}

  void run() {
    take_mixture();
    for (std::size_t i = 0; i < phrases_.size(); ++i)
      if (i < mixture_from_ || i >= mixture_to_) take_phrase(phrases_[i]);
    settle_time();
    outcomes_.settle(typed_, faults_);
  }

 private:
  void complain(std::string message, std::string remedy) {
    faults_.push_back({{}, std::move(message), std::move(remedy), {}});
  }

  // A value for a field, once.
  void set(const std::string& key, const std::string& value) {
    const std::string before = is_named(typed_, key) ? get_field(typed_.reading, key) : std::string();
    const bool is_list = key == "light" || key == "photo" || key == "photo_before" || key == "signs";
    if (!before.empty() && !is_list && key != "remark") {
      Reading other;
      if (set_noted_field(other, key, value) && get_field(other, key) == before) return;
      return complain(fmt::format("{} is said twice: \"{}\" and \"{}\"", label_of_key(key), before, value),
                      "give it once");
    }
    const std::string joined_value =
        before.empty() ? value : before + (key == "light" || key == "signs" ? ", " : "; ") + value;
    if (!set_noted_field(typed_.reading, key, joined_value))
      return complain(fmt::format("\"{}\" is not understood for {}", value, label_of_key(key)),
                      fmt::format("expected is {}", find_field(key)->help));
    name_key(typed_, key);
  }

  bool is_mixture(const std::string& text, std::size_t phrases) const {
    const std::string plain = folded(text);
    if (plain == "dry" || plain == "blank") return false;
    if (const auto step = typed_step(text); step && !number_with_comma(plain)) return true;
    if (no_mixture_from(text)) return phrases == 1;
    try {
      parse_mixture(text, against_.catalogue, against_.shelf);
      return true;
    } catch (const InputError&) {
      return false;
    }
  }

  std::string text_of(std::size_t from, std::size_t to) const {
    return std::string(text_.substr(phrases_[from].begin, phrases_[to - 1].end - phrases_[from].begin));
  }

  bool is_plain(std::size_t i) const {
    return phrases_[i].key.empty() && !phrases_[i].is_quoted && !phrases_[i].is_remark;
  }

  // The longest run of phrases that is a mixture, the first of several; "acetone 25, isooctane 75" are two.
  void take_mixture() {
    constexpr std::size_t most_parts = 6;
    if (is_named(typed_, "mixture")) return;
    for (std::size_t length = std::min(most_parts, phrases_.size()); length > 0; --length)
      for (std::size_t from = 0; from + length <= phrases_.size(); ++from) {
        bool is_run = true;
        for (std::size_t i = from; i < from + length; ++i)
          is_run = is_run && (is_plain(i) || (i == from && phrases_[i].key == "mixture")) &&
                   (i + 1 == from + length || !phrases_[i].ends_head);
        if (!is_run || !is_mixture(text_of(from, from + length), length)) continue;
        if (length == 1 && is_name_of_job(phrases_[from].text)) continue;
        mixture_from_ = from;
        mixture_to_ = from + length;
        return set_mixture(text_of(from, from + length));
      }
    take_head_as_mixture();
  }

  // "2-propanol" is a liquid; a passage of that name would be meant by its name.
  bool is_name_of_job(const std::string& text) const {
    const std::vector<MeantName> meant = names_meant(text, against_.job);
    return !meant.empty() && folded(meant.front().name) == folded(text);
  }

  // Nothing before the colon is a mixture: what is wrong with it is worth more than "not understood".
  void take_head_as_mixture() {
    std::size_t to = 0;
    bool are_all_known = true;
    while (to < phrases_.size()) {
      if (!is_plain(to)) return;
      are_all_known = are_all_known && is_no_mixture(phrases_[to].text);
      if (phrases_[to++].ends_head) break;
    }
    if (to == 0 || !phrases_[to - 1].ends_head || are_all_known) return;
    mixture_from_ = 0;
    mixture_to_ = to;
    set_mixture(text_of(0, to));
  }

  // Something else is meant by it.
  bool is_no_mixture(const std::string& text) const {
    return !plain_word(text).empty() || outcomes_.understands(text) || !names_meant(text, against_.job).empty();
  }

  void set_mixture(const std::string& text) {
    if (is_named(typed_, "mixture") && !typed_.reading.mixture.empty())
      return complain(fmt::format("two mixtures stand there: \"{}\" and \"{}\"", typed_.reading.mixture, text),
                      "one swab has one");
    name_key(typed_, "mixture");
    typed_.reading.mixture = text;  // in full once the plan is at hand
  }

  void take_phrase(const Phrase& phrase) {
    if (phrase.is_remark || (phrase.is_quoted && phrase.key.empty())) return set("remark", phrase.text);
    if (phrase.key == "mixture") return set_mixture(phrase.text);
    if (phrase.key == "removal" || phrase.key == "original") {
      if (outcomes_.take(phrase.text, phrase.key == "removal" ? Side::removal : Side::original)) return;
      return set(phrase.key, phrase.text);
    }
    if (phrase.key == "after_drying") return take_after_drying(phrase.text);
    if (phrase.key == "passage" || phrase.key == "layer") {
      const std::vector<MeantName> meant = names_meant(phrase.text, against_.job);
      return set(phrase.key, meant.size() == 1 ? meant.front().name : phrase.text);
    }
    if (!phrase.key.empty()) return set(phrase.key, phrase.text);
    if (take_whole(phrase.text)) return;
    take_in_pieces(phrase.text);
  }

  void take_after_drying(const std::string& text) {
    set("after_drying", text);
    outcomes_.take_after_drying(text);
  }

  // True where all of the words have one meaning together.
  bool take_whole(const std::string& text) {
    if (says_nothing(text) && folded(text).size() < 4 && !find_trade_word(text)) return true;
    const std::string rest = behind_prefix(text, {"after drying ", "when dry ", "dries ", "dried ", "dry: "});
    if (!rest.empty()) return take_after_drying(rest), true;
    if (outcomes_.take(text, std::nullopt)) {
      if (const std::string passage = outcomes_.passage_said(); !passage.empty()) set("passage", passage);
      return true;
    }
    if (const std::vector<FieldWord> words = plain_word(text); !words.empty()) {
      for (const FieldWord& one : words) set(one.key, one.value);
      // "contact 2 min" says itself that it is no later look.
      const std::string plain = folded(text);
      if (words.front().key == "seconds" && plain.find("min") != std::string::npos && plain.rfind("contact", 0) != 0)
        is_said_in_minutes_ = true;
      return true;
    }
    return take_name(text);
  }

  bool take_name(const std::string& text) {
    const std::vector<MeantName> meant = names_meant(text, against_.job);
    if (meant.empty()) return false;
    if (meant.size() > 1) {
      std::string choices;
      for (const MeantName& one : meant) choices += (choices.empty() ? "\"" : " or \"") + one.name + "\"";
      complain(fmt::format("\"{}\" may be {}", text, choices), "write the whole name");
      return true;
    }
    set(meant.front().is_to_go ? "layer" : "passage", meant.front().name);
    return true;
  }

  // Commas were forgotten: from the left, the most words that mean something.
  void take_in_pieces(const std::string& text) {
    const std::vector<std::string> words = words_in(text);
    for (std::size_t at = 0; at < words.size();) {
      std::size_t taken = 0;
      for (std::size_t count = std::min(most_words_of_a_name, words.size() - at); count > 0 && taken == 0; --count) {
        const std::string piece = joined_words(words, at, count);
        const bool is_whole_text = count == words.size();
        if (!is_whole_text && means_little_alone(piece)) continue;
        if (!is_named(typed_, "mixture") && count > 1 && typed_step(piece)) {
          set_mixture(piece);
          taken = count;
        } else if (take_whole(piece)) {
          taken = count;
        }
      }
      if (taken == 0) return not_understood(joined_words(words, at, words.size() - at), words[at], text);
      at += taken;
    }
  }

  void not_understood(const std::string& rest, const std::string& word, const std::string& phrase) {
    std::vector<std::string> known = trade_word_texts();
    for (const MeantName& one : all_names(against_.job)) known.push_back(one.name);
    for (const std::string& one : plain_word_texts()) known.push_back(one);
    std::string near = nearest_name(phrase, known);
    const bool is_of_phrase = !near.empty();
    if (near.empty()) near = nearest_name(rest, known);
    if (near.empty()) near = nearest_name(word, known);
    complain(fmt::format("\"{}\" is not understood", is_of_phrase ? phrase : word),
             near.empty() ? "write it as `gentlest help record` shows, or put a remark in quotes or behind --; what is "
                            "tried and no solvent mixture is written \"aqueous: NAME\""
                          : fmt::format("did you mean \"{}\"?", near));
  }

  // "20 min" of a test that the log holds is when it was looked at again; of a new one it is contact, if short.
  void settle_time() {
    constexpr double longest_contact_s = 300;
    Reading& reading = typed_.reading;
    if (!is_named(typed_, "seconds") || !reading.seconds || *reading.seconds < 60) return;
    const bool is_there = std::any_of(against_.lines.begin(), against_.lines.end(),
                                      [&](const Reading& line) { return line.test == reading.test; });
    const double minutes = *reading.seconds / 60;
    if (!is_said_in_minutes_ || !reading.looked_after.empty() || !reading.correction.empty()) return;
    if (reading.test > 0 && is_there) {
      reading.seconds.reset();
      typed_.named.erase(std::remove(typed_.named.begin(), typed_.named.end(), "seconds"), typed_.named.end());
      return set("looked_after", fmt::format("{} min", minutes));
    }
    if (*reading.seconds > longest_contact_s)
      complain(fmt::format("{} min: of contact, or a later look?", minutes),
               fmt::format("write \"contact: {} s\", or with the number of the test \"after {} min\"", *reading.seconds,
                           minutes));
  }

  std::string_view text_;
  const NotedAgainst& against_;
  TypedReading& typed_;
  std::vector<Diagnostic>& faults_;
  std::vector<Phrase> phrases_;
  Outcomes outcomes_;
  std::size_t mixture_from_ = 0, mixture_to_ = 0;
  bool is_said_in_minutes_ = false;
};

std::string in_quotes(const std::string& value) {
  std::string plain = value;
  std::replace(plain.begin(), plain.end(), '"', '\'');
  return plain.find_first_of(",;:") == std::string::npos && plain.find("--") == std::string::npos ? plain
                                                                                                  : "\"" + plain + "\"";
}

}  // namespace

std::string mixture_in_full(const std::string& text, const NotedAgainst& against) {
  if (const std::optional<TypedStep> step = typed_step(text)) return to_text(against.mixture_of_step(*step));
  if (const std::optional<NoMixture> none = no_mixture_from(text)) return no_mixture_text(text);
  const Mixture mixture = parse_mixture(text, against.catalogue, against.shelf);
  return is_in_notation(text, against.catalogue, against.shelf) ? text : to_text(mixture);
}

void read_noted(std::string_view text, const NotedAgainst& against, TypedReading& typed,
                std::vector<Diagnostic>& faults) {
  const std::string plain = with_sites_joined(text);
  NotedReader(plain, against, typed, faults).run();
}

std::vector<std::string> noted_lines(const TypedReading& typed) {
  std::vector<std::string> lines;
  for (const ReadingField& field : reading_fields()) {
    const std::string key(field.key);
    if (!is_named(typed, key) || (key == "y_cm" && is_named(typed, "x_cm"))) continue;
    const std::string value = get_field(typed.reading, key);
    if (key == "at_edge")
      lines.push_back(typed.reading.at_edge ? "at the edge" : "on the picture");
    else if (key == "x_cm" && typed.reading.site)
      lines.push_back(fmt::format("at {}/{} cm", typed.reading.site->x.value, typed.reading.site->y.value));
    else if (value.empty())
      lines.push_back(label_of_key(key) + ": n/a");
    else if (key == "mixture" && !no_mixture_from(value))
      lines.push_back(label_of_key(key) + ": " + value);
    else
      lines.push_back(label_of_key(key) + ": " + in_quotes(value) + unit_behind(key));
  }
  return lines;
}

}  // namespace gentlest
