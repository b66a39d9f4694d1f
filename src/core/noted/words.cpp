#include "gentlest/noted/words.hpp"

#include "gentlest/base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace gentlest {

namespace {

using R = RemovalReading;
using O = OriginalReading;
constexpr std::nullopt_t no = std::nullopt;
constexpr Side to_go = Side::removal;
constexpr Side kept = Side::original;
constexpr Side either = Side::either;

// Common practice, no source. What a conservator calls lifted has lost its hold: as grave as softened.
constexpr TradeWord words[] = {
    {"no effect", to_go, R::no_effect, no, ""},
    {"nothing moved", to_go, R::no_effect, no, ""},
    {"not moved", to_go, R::no_effect, no, ""},
    {"did nothing", to_go, R::no_effect, no, ""},
    {"keine wirkung", to_go, R::no_effect, no, ""},
    {"ohne wirkung", to_go, R::no_effect, no, ""},
    {"sans effet", to_go, R::no_effect, no, ""},
    {"aucun effet", to_go, R::no_effect, no, ""},
    {"softened or gelled", to_go, R::softened, no, ""},
    {"gelled", to_go, R::softened, no, "gelled"},
    {"smeared", to_go, R::softened, no, "smeared"},
    {"smears", to_go, R::softened, no, "smeared"},
    {"patchy", to_go, R::partly, no, "patchy"},
    {"partly", to_go, R::partly, no, ""},
    {"partly removed", to_go, R::partly, no, ""},
    {"partially", to_go, R::partly, no, ""},
    {"partially removed", to_go, R::partly, no, ""},
    {"teilweise", to_go, R::partly, no, ""},
    {"teilweise entfernt", to_go, R::partly, no, ""},
    {"partiellement", to_go, R::partly, no, ""},
    {"en partie", to_go, R::partly, no, ""},
    {"mostly", to_go, R::mostly, no, ""},
    {"mostly removed", to_go, R::mostly, no, ""},
    {"weitgehend", to_go, R::mostly, no, ""},
    {"größtenteils", to_go, R::mostly, no, ""},
    {"presque tout", to_go, R::mostly, no, ""},
    {"en grande partie", to_go, R::mostly, no, ""},
    {"fully", to_go, R::fully, no, ""},
    {"fully removed", to_go, R::fully, no, ""},
    {"completely", to_go, R::fully, no, ""},
    {"all", to_go, R::fully, no, ""},
    {"all removed", to_go, R::fully, no, ""},
    {"dissolves", to_go, R::fully, no, ""},
    {"dissolved", to_go, R::fully, no, ""},
    {"vollständig", to_go, R::fully, no, ""},
    {"ganz", to_go, R::fully, no, ""},
    {"entièrement", to_go, R::fully, no, ""},
    {"complètement", to_go, R::fully, no, ""},
    {"nothing seen", kept, no, O::nothing_seen, ""},
    {"unaffected", kept, no, O::nothing_seen, ""},
    {"untouched", kept, no, O::nothing_seen, ""},
    {"intact", kept, no, O::nothing_seen, ""},
    {"ok", kept, no, O::nothing_seen, ""},
    {"okay", kept, no, O::nothing_seen, ""},
    {"nichts gesehen", kept, no, O::nothing_seen, ""},
    {"nichts zu sehen", kept, no, O::nothing_seen, ""},
    {"intakt", kept, no, O::nothing_seen, ""},
    {"rien vu", kept, no, O::nothing_seen, ""},
    {"rien de visible", kept, no, O::nothing_seen, ""},
    {"change that recovers", kept, no, O::recovers, ""},
    {"recovers", kept, no, O::recovers, ""},
    {"recovered", kept, no, O::recovers, ""},
    {"change that stays", kept, no, O::stays, ""},
    {"stays", kept, no, O::stays, ""},
    {"blanched", kept, no, O::stays, "blanched"},
    {"blanching", kept, no, O::stays, "blanched"},
    {"blanches", kept, no, O::stays, "blanched"},
    {"krepiert", kept, no, O::stays, "blanched"},
    {"blanchi", kept, no, O::stays, "blanched"},
    {"lost gloss", kept, no, O::stays, "lost gloss"},
    {"gloss lost", kept, no, O::stays, "lost gloss"},
    {"loss of gloss", kept, no, O::stays, "lost gloss"},
    {"glanzverlust", kept, no, O::stays, "lost gloss"},
    {"perte de brillant", kept, no, O::stays, "lost gloss"},
    {"matt", kept, no, O::stays, "matt"},
    {"matte", kept, no, O::stays, "matt"},
    {"mat", kept, no, O::stays, "matt"},
    {"halo", kept, no, O::stays, "halo"},
    {"lifted", kept, no, O::softened, "lifted"},
    {"lifting", kept, no, O::softened, "lifted"},
    {"flaked", kept, no, O::softened, "flaked"},
    {"flaking", kept, no, O::softened, "flaked"},
    {"abgehoben", kept, no, O::softened, "lifted"},
    {"soulevé", kept, no, O::softened, "lifted"},
    {"colour on the swab", kept, no, O::colour_on_swab, ""},
    {"colour on swab", kept, no, O::colour_on_swab, ""},
    {"color on the swab", kept, no, O::colour_on_swab, ""},
    {"color on swab", kept, no, O::colour_on_swab, ""},
    {"farbe am tupfer", kept, no, O::colour_on_swab, ""},
    {"couleur sur le coton", kept, no, O::colour_on_swab, ""},
    {"softened", either, R::softened, O::softened, ""},
    {"softens", either, R::softened, O::softened, ""},
    {"angelöst", either, R::softened, O::softened, ""},
    {"erweicht", either, R::softened, O::softened, ""},
    {"ramolli", either, R::softened, O::softened, ""},
    {"swollen", either, R::softened, O::softened, "swollen"},
    {"swelled", either, R::softened, O::softened, "swollen"},
    {"gequollen", either, R::softened, O::softened, "swollen"},
    {"gonflé", either, R::softened, O::softened, "swollen"},
    {"tacky", either, R::softened, O::softened, "tacky"},
    {"sticky", either, R::softened, O::softened, "tacky"},
    {"klebrig", either, R::softened, O::softened, "tacky"},
    {"collant", either, R::softened, O::softened, "tacky"},
    {"none", either, R::no_effect, O::nothing_seen, ""},
    {"no", either, R::no_effect, O::nothing_seen, ""},
    {"nothing", either, R::no_effect, O::nothing_seen, ""},
    {"no change", either, R::no_effect, O::nothing_seen, ""},
    {"unchanged", either, R::no_effect, O::nothing_seen, ""},
    {"keine", either, R::no_effect, O::nothing_seen, ""},
    {"nichts", either, R::no_effect, O::nothing_seen, ""},
    {"unverändert", either, R::no_effect, O::nothing_seen, ""},
    {"aucun", either, R::no_effect, O::nothing_seen, ""},
    {"rien", either, R::no_effect, O::nothing_seen, ""},
    {"inchangé", either, R::no_effect, O::nothing_seen, ""},
};

// Blanched, matt, swollen, tacky: what may have come back when it dried.
bool may_recover(const TradeWord& word) {
  return word.sign != "lifted" && word.sign != "flaked";
}

void add_sign(std::vector<std::string>& signs, const TradeWord& word, Side side) {
  if (word.sign.empty()) return;
  std::string sign(word.sign);
  if (word.side == Side::either) sign = (side == Side::removal ? "varnish " : "paint ") + sign;
  if (std::find(signs.begin(), signs.end(), sign) == signs.end()) signs.push_back(std::move(sign));
}

template <class Grade>
struct Grades {
  std::optional<Grade> said, by_sign;
  std::string fault;

  void take(Grade grade, const TradeWord& word) {
    std::optional<Grade>& target = word.sign.empty() ? said : by_sign;
    if (word.sign.empty() && said && *said != grade)
      fault = fmt::format("it is said to be both \"{}\" and \"{}\"", to_word(*said), to_word(grade));
    target = target ? std::max(*target, grade) : grade;
  }
};

}  // namespace

const TradeWord* find_trade_word(std::string_view text) {
  const std::string plain = folded(text);
  const auto found =
      std::find_if(std::begin(words), std::end(words), [&](const TradeWord& word) { return word.text == plain; });
  return found == std::end(words) ? nullptr : found;
}

std::vector<std::string> trade_word_texts() {
  std::vector<std::string> texts;
  for (const TradeWord& word : words) texts.emplace_back(word.text);
  return texts;
}

bool says_nothing(std::string_view text) {
  constexpr std::array<std::string_view, 12> empty_words = {"-",     "--",   "n/a",  "none",   "no",  "nil",
                                                            "keine", "kein", "nein", "aucune", "non", "\xE2\x80\x93"};
  const std::string plain = folded(text);
  return plain.empty() || std::find(empty_words.begin(), empty_words.end(), plain) != empty_words.end();
}

SideReading put_together(const std::vector<const TradeWord*>& said, Side side) {
  SideReading reading;
  if (side == Side::removal) {
    Grades<R> grades;
    for (const TradeWord* word : said) {
      add_sign(reading.signs, *word, side);
      if (word->removal) grades.take(*word->removal, *word);
    }
    reading.fault = grades.fault;
    if (grades.said == R::no_effect && grades.by_sign)
      reading.fault = fmt::format("\"no effect\" stands beside \"{}\"", reading.signs.front());
    reading.removal = grades.said ? grades.said : grades.by_sign;
    return reading;
  }
  Grades<O> grades;
  bool all_may_recover = true;
  for (const TradeWord* word : said) {
    add_sign(reading.signs, *word, side);
    if (word->original) grades.take(*word->original, *word);
    all_may_recover = all_may_recover && may_recover(*word);
  }
  reading.fault = grades.fault;
  if (grades.said == O::nothing_seen && grades.by_sign)
    reading.fault = fmt::format("\"nothing seen\" stands beside \"{}\"", reading.signs.front());
  reading.original = grades.said ? grades.said : grades.by_sign;
  if (grades.said && grades.by_sign && !(grades.said == O::recovers && all_may_recover))
    reading.original = std::max(*grades.said, *grades.by_sign);
  return reading;
}

}  // namespace gentlest
