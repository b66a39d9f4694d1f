// The names that people type for solvents and materials, and what each leads to: one record, a question back where it
// may be several, or nothing.
#pragma once

#include "gentlest/base/diagnostic.hpp"

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Whose name it is. A trade name says nothing sure of what is in the bottle; behind a denatured one stands a
/// denaturant that no record holds.
enum class NameKind { english, german, french, italian, spanish, abbreviation, trade, denatured };
std::string_view to_word(NameKind kind);  ///< as the files write it: en, de, fr, it, es, abbr, trade, denatured
std::optional<NameKind> name_kind_from_word(std::string_view word);

/// A name of a record beside its own.
struct OtherName {
  std::string text;
  NameKind kind = NameKind::english;
  Location where = {};
  bool operator==(const OtherName&) const = default;
};

/// "denatured ethanol": what a denatured liquid is called on labels, and how it is read back. A record with denatured
/// names has this one among them.
std::string denatured_name(std::string_view name);

/// One of the things that an ambiguous name may mean.
struct NameChoice {
  std::string id;         ///< of the record; empty where the catalogue has none
  std::string no_record;  ///< then: what it would be, e.g. "acrylic solution paint"
  std::string word;       ///< what tells it from the others, e.g. "aged, yellowed"
  Location where = {};
  bool operator==(const NameChoice&) const = default;
};

/// Names that mean more than one thing: the program asks back and never chooses.
struct AmbiguousName {
  std::vector<OtherName> names;
  std::vector<NameChoice> choices;  ///< at least two, at least one with a record
  std::string note;                 ///< e.g. that it is a trade name; may be empty
  bool operator==(const AmbiguousName&) const = default;
};

/// What a typed name leads to. Neither: unknown.
template <class Record>
struct Meaning {
  const Record* record = nullptr;
  const OtherName* by = nullptr;       ///< the other name that led there; null for id, name and CAS number
  const AmbiguousName* ask = nullptr;  ///< never beside a record
};

/// What two spellings of one name have in common: case, accents, hyphens, spaces, apostrophes, brackets fall away, save
/// between two digits; ß is ss, Greek letters are written out. One key, or two where an umlaut may be its vowel or
/// written with an e. Digits, locants and every other letter stay. Empty for a text without letters and digits.
std::vector<std::string> name_keys(std::string_view text);

/// The keys that a plural may stand for: "xylenes", "Lasuren", "ragie", "vernici". At least four letters stay of a
/// word, so a single letter behind a space is never an ending.
std::vector<std::string> singular_keys(std::string_view text);

/// What a name leads to.
struct NameTarget {
  std::size_t index = 0;  ///< of the record, or of the ambiguous name
  bool is_ask = false;
  std::optional<std::size_t> other_name = {};  ///< index into the record's other names
};

/// Finds records by what people type. Ids and CAS numbers are matched as they stand; then names and ambiguous names,
/// folded; then ids, folded; then all of them as plurals. Nearness never decides.
class NameIndex {
 public:
  using Target = NameTarget;

  /// Each adds one name; what it collides with, or nothing. A second claim of the same target is no collision.
  std::optional<Target> add_literal(std::string_view text, Target target);
  std::optional<Target> add_name(std::string_view text, Target target);
  std::optional<Target> add_folded_id(std::string_view id, Target target);

  std::optional<Target> find(std::string_view typed) const;

 private:
  using Names = std::map<std::string, Target, std::less<>>;
  static std::optional<Target> add(Names& names, const std::string& key, Target target);
  std::optional<Target> find_key(const std::string& key) const;
  Names literal_;
  Names names_;
  Names ids_;
};

/// A name that may be offered, and the record or question that it belongs to.
struct OfferedName {
  std::string text;
  std::size_t belongs_to = 0;
  bool is_trade = false;
};

/// The known names nearest to an unknown one, of different records, at most three: all that lie equally near, else
/// those that hold it or are held by it. Names of less than four letters are not offered.
std::vector<OfferedName> near_names(std::string_view typed, const std::vector<OfferedName>& known);

/// "did you mean "a" or "b"?", trade names marked as such; `otherwise` where there is none.
std::string did_you_mean(const std::vector<OfferedName>& names, const std::string& otherwise);

/// "dammar_fresh (just applied) or dammar_aged (aged, yellowed)", with the note.
std::string choices_text(const AmbiguousName& name);

}  // namespace gentlest
