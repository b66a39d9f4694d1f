#include "gentlest/liquids/mixture.hpp"

#include "core/liquids/free_mixture.hpp"
#include "gentlest/base/diagnostic.hpp"
#include "gentlest/base/text.hpp"
#include "gentlest/liquids/grade.hpp"
#include "gentlest/liquids/notation.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace gentlest {

namespace {

struct Piece {
  std::string_view text;
  int column = 1;  // of its first letter, counted from 1
};

// Cuts at commas and semicolons. A comma between two digits belongs to a name (1,4-dioxane) or is a decimal comma,
// which the share's reader then points out.
std::vector<Piece> cut_at_commas(std::string_view text) {
  const auto is_digit = [&](std::size_t i) { return i < text.size() && text[i] >= '0' && text[i] <= '9'; };
  std::vector<Piece> pieces;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    const bool cut =
        i == text.size() || text[i] == ';' || (text[i] == ',' && !(i > 0 && is_digit(i - 1) && is_digit(i + 1)));
    if (!cut) continue;
    std::size_t first = from;
    while (first < i && text[first] == ' ') ++first;
    pieces.push_back({trimmed(text.substr(from, i - from)), static_cast<int>(first) + 1});
    from = i + 1;
  }
  return pieces;
}

struct NamedShare {
  std::string_view name;  // may still hold a grade
  std::string_view share;
  bool in_percent = false;
};

NamedShare split_share(std::string_view piece) {
  NamedShare split;
  if (!piece.empty() && piece.back() == '%') {
    split.in_percent = true;
    piece = trimmed(piece.substr(0, piece.size() - 1));
  }
  const std::size_t space = piece.find_last_of(" \t");
  if (space == std::string_view::npos) {
    split.name = piece;
    return split;
  }
  split.name = trimmed(piece.substr(0, space));
  split.share = piece.substr(space + 1);
  return split;
}

// What a name means: a bottle of the shelf by its label, or a solvent with the grade behind its name.
struct Named {
  Meaning<Solvent> meaning;
  std::string_view grade;
  const Liquid* bottle = nullptr;
  bool is_known() const { return meaning.record || meaning.ask; }
};

Named find_named(std::string_view name, const Catalogue& catalogue, const std::vector<Liquid>& shelf) {
  for (const Liquid& bottle : shelf)
    if (folded(bottle.label) == folded(name)) return {{bottle.solvent}, {}, &bottle};
  Named named{catalogue.meaning_of_solvent(name), {}, nullptr};
  if (named.is_known()) return named;
  for (std::size_t cut = name.find_last_of(' '); cut != std::string_view::npos && cut > 0;
       cut = name.find_last_of(' ', cut - 1)) {
    const std::string_view grade = trimmed(name.substr(cut));
    if (!is_grade(grade)) continue;
    named = {catalogue.meaning_of_solvent(name.substr(0, cut)), grade, nullptr};
    if (named.is_known()) return named;
  }
  return {};
}

// "ethanol denatured": the longest known name that these words begin with, and where the rest begins.
std::pair<const Solvent*, std::size_t> known_start(std::string_view words, const Catalogue& catalogue) {
  for (std::size_t cut = words.find_last_of(' '); cut != std::string_view::npos && cut > 0;
       cut = words.find_last_of(' ', cut - 1))
    if (const Solvent* solvent = catalogue.find_solvent(words.substr(0, cut))) return {solvent, cut + 1};
  return {nullptr, 0};
}

class MixtureReader {
 public:
  MixtureReader(std::string_view text, const Catalogue& catalogue, const std::vector<Liquid>& shelf)
      : text_(text), catalogue_(catalogue), shelf_(shelf) {}

  Mixture read() {
    if (trimmed(text_).empty())
      fault(1, "the mixture is empty", "write for example \"ethanol 30, isooctane 70\"");
    else
      for (const Piece& piece : cut_at_commas(text_)) read_piece(piece);
    if (faults_.empty()) scale_to_one();
    if (!faults_.empty()) throw InputError(Fault::usage, std::move(faults_));
    return Mixture(std::move(parts_));
  }

 private:
  void fault(int column, std::string message, std::string remedy = {}) {
    faults_.push_back({{"mixture", 1, column}, std::move(message), std::move(remedy), std::string(text_)});
  }

  void read_piece(const Piece& piece) {
    if (piece.text.empty()) return fault(piece.column, "nothing stands between two commas");
    NamedShare split = split_share(piece.text);
    double share = 1;
    // "Solvesso 100" is a name, not 100 % of something: the longest name that is known counts.
    const bool is_name = number_from(split.share) ? is_name_with_number(piece.text)
                                                  : find_named(piece.text, catalogue_, shelf_).is_known();
    if (is_name) {
      if (cut_at_commas(text_).size() > 1)
        return fault(piece.column, fmt::format("\"{}\" has no share", piece.text),
                     "write the per cent behind the name");
      split = {piece.text, "1", false};  // a single liquid needs no share
    } else if (!read_share(piece, split, share)) {
      return;
    }
    any_percent_ = any_percent_ || split.in_percent;
    const Named named = find_named(split.name, catalogue_, shelf_);
    if (!named.meaning.record) return unknown(piece, split.name);
    try {
      add(piece, liquid_for(named), share);
    } catch (const InputError& error) {
      const int column =
          piece.column + static_cast<int>(named.grade.empty() ? 0 : named.grade.data() - piece.text.data());
      for (const Diagnostic& one : error.faults()) fault(column, one.message, one.remedy);
    }
  }

  // The whole piece names a liquid though its last word is a number; with "%" behind it the number is a share, since no
  // name ends so.
  bool is_name_with_number(std::string_view piece) const {
    const Meaning<Solvent> meaning = catalogue_.meaning_of_solvent(piece);
    return meaning.record || meaning.ask;
  }

  bool read_share(const Piece& piece, const NamedShare& split, double& share) {
    const int column =
        piece.column + static_cast<int>(split.share.empty() ? 0 : split.share.data() - piece.text.data());
    if (split.share.empty()) {
      if (find_named(piece.text, catalogue_, shelf_).meaning.record) return true;
      unknown(piece, split.name);
      return false;
    }
    const std::optional<double> value = number_from(split.share);
    if (!value) {
      std::string with_point(split.share);
      std::replace(with_point.begin(), with_point.end(), ',', '.');
      fault(column, fmt::format("the share \"{}\" is not a number", split.share),
            number_from(with_point) ? "write " + with_point + ", with a point" : "write a number of per cent, e.g. 30");
      return false;
    }
    if (*value <= 0) {
      fault(column, fmt::format("the share {} must be above 0", split.share), "leave the liquid out instead");
      return false;
    }
    share = *value;
    return true;
  }

  void unknown(const Piece& piece, std::string_view name) {
    const Named named = find_named(name, catalogue_, shelf_);
    if (named.meaning.ask) return complain_of_name(piece, trimmed(name.substr(0, name.size() - named.grade.size())));
    if (const auto [solvent, rest] = known_start(name, catalogue_); solvent) {
      try {
        read_grade(*solvent, name.substr(rest), catalogue_);
      } catch (const InputError& error) {
        return fault(piece.column + static_cast<int>(rest), error.faults().front().message,
                     error.faults().front().remedy);
      }
    }
    complain_of_name(piece, name);
  }

  void complain_of_name(const Piece& piece, std::string_view name) {
    NameFault wrong = solvent_fault(name, catalogue_, fmt::format("unknown solvent \"{}\"", name),
                                    "`gentlest list solvents` shows the known ones");
    fault(piece.column, std::move(wrong.message), std::move(wrong.remedy));
  }

  // Without a grade: the bottle of the shelf. Of several only one without a grade can be meant.
  Liquid liquid_for(const Named& named) const {
    if (named.bottle) return *named.bottle;
    if (!named.grade.empty()) return make_liquid(named.meaning, named.grade, catalogue_);
    const Solvent& solvent = *named.meaning.record;
    std::vector<const Liquid*> bottles;
    for (const Liquid& bottle : shelf_)
      if (bottle.solvent == &solvent && (bottle.denatured || !is_denatured(named.meaning))) bottles.push_back(&bottle);
    if (bottles.size() == 1) return *bottles.front();
    for (const Liquid* bottle : bottles)
      if (bottle->label == solvent.name) return *bottle;
    if (bottles.empty()) return make_liquid(named.meaning, {}, catalogue_);
    throw InputError(Fault::usage, fmt::format("{} stands on the shelf in {} grades", solvent.name, bottles.size()),
                     fmt::format("say which, e.g. \"{}\"", bottles.front()->label));
  }

  void add(const Piece& piece, Liquid liquid, double share) {
    const bool twice =
        std::any_of(parts_.begin(), parts_.end(), [&](const Part& part) { return part.liquid.label == liquid.label; });
    if (twice)
      return fault(piece.column, fmt::format("{} stands twice in the mixture", liquid.label), "add the shares up");
    parts_.push_back({std::move(liquid), share});
  }

  void scale_to_one() {
    double sum = 0;
    for (const Part& part : parts_) sum += part.fraction;
    const bool fractions = !any_percent_ && std::abs(sum - 1) < 1e-6;
    if (!fractions && std::abs(sum - 100) > 1e-4) {
      fault(1, fmt::format("the shares add up to {:.6g}", sum),
            "they must add up to 100 (per cent) or to 1 (fractions)");
      return;
    }
    for (Part& part : parts_) part.fraction /= sum;
  }

  std::string_view text_;
  const Catalogue& catalogue_;
  const std::vector<Liquid>& shelf_;
  bool any_percent_ = false;
  std::vector<Part> parts_;
  std::vector<Diagnostic> faults_;
};

}  // namespace

bool is_in_notation(std::string_view text, const Catalogue& catalogue, const std::vector<Liquid>& shelf) {
  try {
    MixtureReader(text, catalogue, shelf).read();
    return true;
  } catch (const InputError&) {
    return false;
  }
}

Mixture parse_mixture(std::string_view text, const Catalogue& catalogue, const std::vector<Liquid>& shelf) {
  try {
    return MixtureReader(text, catalogue, shelf).read();
  } catch (const InputError&) {
    const std::optional<std::string> meant = in_notation(text, catalogue, shelf);
    if (!meant) throw;
    return MixtureReader(*meant, catalogue, shelf).read();
  }
}

}  // namespace gentlest
