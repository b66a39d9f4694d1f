#include "gentlest/noted/fields.hpp"

#include "core/noted/parts.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/learning/reading_fields.hpp"
#include "gentlest/noted/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <regex>

namespace gentlest {

namespace {

struct Heading {
  std::string_view text, key;
};
// English, German, French. Umlauts and accents stand as they are written and without them.
constexpr Heading headings[] = {
    {"no", "test"},
    {"nr", "test"},
    {"number", "test"},
    {"nummer", "test"},
    {"essai", "test"},
    {"datum", "date"},
    {"day", "date"},
    {"when", "date"},
    {"wann", "date"},
    {"year", "date"},
    {"jahr", "date"},
    {"année", "date"},
    {"by", "who"},
    {"initials", "who"},
    {"von", "who"},
    {"name", "who"},
    {"kürzel", "who"},
    {"par", "who"},
    {"initiales", "who"},
    {"recipe", "mixture"},
    {"solvent", "mixture"},
    {"solvents", "mixture"},
    {"solvent mixture", "mixture"},
    {"gemisch", "mixture"},
    {"mischung", "mixture"},
    {"lösemittel", "mixture"},
    {"lösungsmittel", "mixture"},
    {"mélange", "mixture"},
    {"melange", "mixture"},
    {"solvant", "mixture"},
    {"schicht", "layer"},
    {"couche", "layer"},
    {"place", "passage"},
    {"where", "passage"},
    {"stelle", "passage"},
    {"partie", "passage"},
    {"endroit", "passage"},
    {"x", "x_cm"},
    {"y", "y_cm"},
    {"edge", "at_edge"},
    {"edge or picture", "at_edge"},
    {"am rand", "at_edge"},
    {"rand", "at_edge"},
    {"bord", "at_edge"},
    {"au bord", "at_edge"},
    {"window", "window_mm"},
    {"fenster", "window_mm"},
    {"fenêtre", "window_mm"},
    {"licht", "light"},
    {"lumière", "light"},
    {"vergrößerung", "magnification"},
    {"grossissement", "magnification"},
    {"uv vorher", "uv_before"},
    {"uv avant", "uv_before"},
    {"uv nachher", "uv_after"},
    {"uv après", "uv_after"},
    {"tupfer", "swab"},
    {"coton", "swab"},
    {"wet", "wetness"},
    {"nässe", "wetness"},
    {"humidité", "wetness"},
    {"rollen", "rolls"},
    {"passages", "rolls"},
    {"roulements", "rolls"},
    {"contact", "seconds"},
    {"time", "seconds"},
    {"sekunden", "seconds"},
    {"zeit", "seconds"},
    {"secondes", "seconds"},
    {"durée", "seconds"},
    {"first effect", "first_effect_s"},
    {"erste wirkung", "first_effect_s"},
    {"premier effet", "first_effect_s"},
    {"varnish", "removal"},
    {"result", "removal"},
    {"effect", "removal"},
    {"effect on varnish", "removal"},
    {"ergebnis", "removal"},
    {"résultat", "removal"},
    {"firnis", "removal"},
    {"abnahme", "removal"},
    {"vernis", "removal"},
    {"paint", "original"},
    {"paint layer", "original"},
    {"effect on paint", "original"},
    {"malschicht", "original"},
    {"couche picturale", "original"},
    {"peinture", "original"},
    {"color", "colour"},
    {"colour on the swab", "colour"},
    {"color on the swab", "colour"},
    {"farbe am tupfer", "colour"},
    {"farbe", "colour"},
    {"couleur", "colour"},
    {"couleur sur le coton", "colour"},
    {"seen", "signs"},
    {"zeichen", "signs"},
    {"signes", "signs"},
    {"cleared with", "clearing"},
    {"nachreinigung", "clearing"},
    {"rinçage", "clearing"},
    {"dry", "after_drying"},
    {"when dry", "after_drying"},
    {"nach trocknung", "after_drying"},
    {"trocken", "after_drying"},
    {"après séchage", "after_drying"},
    {"photo", "photo"},
    {"photograph", "photo"},
    {"foto", "photo"},
    {"before", "photo_before"},
    {"foto vorher", "photo_before"},
    {"photo avant", "photo_before"},
    {"later look", "looked_after"},
    {"später", "looked_after"},
    {"plus tard", "looked_after"},
    {"sure", "confidence"},
    {"how sure", "confidence"},
    {"sicherheit", "confidence"},
    {"certitude", "confidence"},
    {"note", "remark"},
    {"notes", "remark"},
    {"remarks", "remark"},
    {"bemerkung", "remark"},
    {"bemerkungen", "remark"},
    {"anmerkung", "remark"},
    {"remarque", "remark"},
    {"remarques", "remark"},
    {"korrektur", "correction"},
};

using Words = std::map<std::string, std::string, std::less<>>;

// What a cell may say in place of the log's own word.
const Words& words_of_key(std::string_view key) {
  static const std::map<std::string, Words, std::less<>> all = {
      {"at_edge",
       {{"edge", "yes"},
        {"at the edge", "yes"},
        {"rand", "yes"},
        {"am rand", "yes"},
        {"bord", "yes"},
        {"au bord", "yes"},
        {"ja", "yes"},
        {"oui", "yes"},
        {"y", "yes"},
        {"x", "yes"},
        {"true", "yes"},
        {"picture", "no"},
        {"bild", "no"},
        {"on the picture", "no"},
        {"tableau", "no"},
        {"false", "no"},
        {"n", "no"}}},
      {"withdrawn", {{"ja", "yes"}, {"oui", "yes"}, {"true", "yes"}, {"x", "yes"}, {"false", "no"}}},
      {"colour",
       {{"firnis", "varnish"},
        {"vernis", "varnish"},
        {"schmutz", "dirt"},
        {"saleté", "dirt"},
        {"crasse", "dirt"},
        {"retusche", "retouching"},
        {"retouche", "retouching"},
        {"paint", "original"},
        {"farbe", "original"},
        {"unknown", "not known"},
        {"unbekannt", "not known"},
        {"inconnue", "not known"},
        {"inconnu", "not known"},
        {"?", "not known"}}},
      {"wetness",
       {{"feucht", "damp"},
        {"humide", "damp"},
        {"nass", "wet"},
        {"mouillé", "wet"},
        {"trocken", "dry"},
        {"sec", "dry"}}},
      {"confidence",
       {{"unsure", "low"},
        {"not sure", "low"},
        {"unsicher", "low"},
        {"niedrig", "low"},
        {"faible", "low"},
        {"mittel", "medium"},
        {"moyenne", "medium"},
        {"sure", "high"},
        {"certain", "high"},
        {"sicher", "high"},
        {"hoch", "high"},
        {"élevée", "high"}}}};
  static const Words none;
  const auto found = all.find(key);
  return found == all.end() ? none : found->second;
}

// "20 s", "20,5 sec", "1 min" in seconds; a bare number counts as seconds.
std::string number_text(std::string_view key, const std::string& text) {
  static const std::regex shape(
      R"(^(\d+(?:[.,]\d+)?) *(s|sec\.?|secs|seconds?|sek\.?|sekunden|secondes?|min\.?|minutes?|cm|rolls?|x)?$)",
      std::regex::icase);
  std::smatch parts;
  const std::string plain(trimmed(text));
  if (plain.size() > longest_shape || !std::regex_match(plain, parts, shape)) return {};
  std::string number = parts[1];
  std::replace(number.begin(), number.end(), ',', '.');
  const std::string unit = folded(parts[2].str());
  const bool is_time = key == "seconds" || key == "first_effect_s";
  if (unit.rfind("min", 0) == 0) return is_time ? fmt::format("{}", 60 * *number_from(number)) : "";
  const bool is_length = key == "x_cm" || key == "y_cm";
  const bool is_count = key == "rolls" || key == "test";
  if (unit.empty() || (is_time && unit.front() == 's') || (is_length && unit == "cm") ||
      (is_count && (unit.front() == 'r' || unit == "x")))
    return number;
  return {};
}

// "patchy, smeared" of the layer to remove; nothing changes where a word is none, or they contradict each other.
bool set_outcome(Reading& reading, Side side, const std::string& text) {
  std::vector<const TradeWord*> said;
  for (const std::string& piece : items_of(text, ",;/+")) {
    const TradeWord* word = find_trade_word(piece);
    if (!word || (word->side != Side::either && word->side != side)) return false;
    said.push_back(word);
  }
  if (said.empty()) return false;
  const SideReading together = put_together(said, side);
  if (!together.fault.empty()) return false;
  if (side == Side::removal)
    reading.removal = together.removal;
  else
    reading.original = together.original;
  for (const std::string& sign : together.signs) add_word(reading.signs, sign);
  return true;
}

}  // namespace

void add_word(std::string& words, const std::string& word) {
  for (const std::string& one : items_of(words, ","))
    if (one == word) return;
  words += (words.empty() ? "" : ", ") + word;
}

std::string key_of_heading(std::string_view heading) {
  if (heading.size() > longest_shape) return {};
  std::string plain = folded(heading.substr(0, heading.find('(')));
  if (const std::size_t end = plain.find('['); end != std::string::npos) plain = folded(plain.substr(0, end));
  while (!plain.empty() && (plain.back() == '.' || plain.back() == ':')) plain.pop_back();
  for (const auto& [large, small] :
       {std::pair("\xC3\x84", "\xC3\xA4"), std::pair("\xC3\x96", "\xC3\xB6"), std::pair("\xC3\x9C", "\xC3\xBC"),
        std::pair("\xC3\x89", "\xC3\xA9"), std::pair("\xC3\x88", "\xC3\xA8"), std::pair("\xC3\x87", "\xC3\xA7"),
        std::pair("\xC3\x8A", "\xC3\xAA")})
    for (std::size_t at = plain.find(large); at != std::string::npos; at = plain.find(large))
      plain.replace(at, 2, small);
  std::string as_key = plain;
  for (char& c : as_key)
    if (c == ' ' || c == '-') c = '_';
  for (const ReadingField& field : reading_fields()) {
    const std::string key(field.key);
    for (const char* unit : {"", "_cm", "_mm", "_s"})
      if (as_key + unit == key) return key;
  }
  for (const Heading& one : headings)
    if (one.text == plain) return std::string(one.key);
  for (const char* unit : {" cm", " mm", " s", " sec"})
    if (const std::string_view end(unit); plain.size() > end.size() && plain.substr(plain.size() - end.size()) == end)
      return key_of_heading(plain.substr(0, plain.size() - end.size()));
  return {};
}

std::string date_from(std::string_view text) {
  const std::string plain = folded(text);
  if (is_date(plain)) return plain;
  static const std::regex shape(R"(^(\d{1,2})([./])\s*(\d{1,2})[./]\s*(\d{4})$)");
  std::smatch parts;
  if (plain.size() > longest_shape || !std::regex_match(plain, parts, shape)) return {};
  int day = std::stoi(parts[1]), month = std::stoi(parts[3]);
  // With points the day stands first wherever they are used; with strokes either may.
  if (parts[2] == "/" && day <= 12 && month <= 12 && day != month) return {};
  if (parts[2] == "/" && month > 12) std::swap(day, month);
  const std::string date = fmt::format("{}-{:02}-{:02}", parts[4].str(), month, day);
  return is_date(date) ? date : std::string();
}

bool set_noted_field(Reading& reading, std::string_view key, const std::string& text) {
  const ReadingField& field = *find_field(key);
  const std::string plain(trimmed(text));
  const bool is_free = field.kind == FieldKind::text && field.words.empty();
  if (key == "removal" || key == "original") {
    if (plain == "-" || folded(plain) == "n/a") return set_field(reading, key, "");
    if (set_field(reading, key, plain)) return true;
    return set_outcome(reading, key == "removal" ? Side::removal : Side::original, plain);
  }
  if (says_nothing(plain) && key != "mixture" && !(key == "at_edge" && folded(plain) == "no"))
    return set_field(reading, key, "");
  if (key == "date") {
    const std::string date = date_from(plain);
    return set_field(reading, key, date.empty() ? plain : date);
  }
  if (set_field(reading, key, is_free ? text : folded(plain))) return true;
  if (const auto word = words_of_key(key).find(folded(plain)); word != words_of_key(key).end())
    return set_field(reading, key, word->second);
  if (field.kind != FieldKind::whole && field.kind != FieldKind::number) return false;
  const std::string number = number_text(key, plain);
  return !number.empty() && set_field(reading, key, number);
}

std::vector<Diagnostic> denied_harms(const Reading& reading) {
  std::vector<Diagnostic> faults;
  if (reading.original != OriginalReading::nothing_seen) return faults;
  for (const std::string& words : {reading.signs, reading.after_drying})
    for (const std::string& piece : items_of(words, ",;")) {
      const std::string plain = folded(piece);
      const bool is_of_paint = plain.rfind("paint ", 0) == 0 || plain.rfind("original ", 0) == 0;
      const TradeWord* word = find_trade_word(is_of_paint ? plain.substr(plain.find(' ') + 1) : plain);
      const bool is_of_original = word && (word->side == Side::original || (is_of_paint && word->side == Side::either));
      if (!is_of_original || !word->original || *word->original == OriginalReading::nothing_seen) continue;
      faults.push_back({{},
                        fmt::format("\"{}\" and \"nothing seen\" of the original contradict each other", piece),
                        "write what it did to the original, e.g. original=change that stays",
                        {}});
    }
  return faults;
}

}  // namespace gentlest
