// Layer 1. What is published about liquids together: group parameters, mutual miscibility, incompatible pairs, gloves.
// Plain records with their sources, read from solvents/*.yaml; solvents are named by id.
#pragma once

#include "gentlest/activity.hpp"
#include "gentlest/source.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Groups of one solvent in the modified set, which tells alcohols and rings apart where the original one does not.
struct MoleculeGroups {
  std::string solvent;
  Groups groups;
  std::string source;
  Standing standing = Standing::derived;
  bool operator==(const MoleculeGroups&) const = default;
};

/// A petroleum cut or the like as a mixture of pure liquids that behave alike: for vapour pressure, activity and flash
/// point only. Its Hansen point stays its own.
struct StandIn {
  struct Share {
    std::string solvent;
    double fraction = 0;  ///< by volume; the shares add up to 1
    bool operator==(const Share&) const = default;
  };
  std::string solvent;
  std::vector<Share> shares;
  std::string source;
  Standing standing = Standing::assumed;
  std::string note;
  bool operator==(const StandIn&) const = default;
};

/// How two liquids get on near room temperature.
enum class Mixing {
  one_liquid,  ///< in every proportion
  partial,     ///< two layers over part of the range
  two_liquids  ///< two layers over nearly all of the range
};
std::string_view to_word(Mixing mixing);
std::optional<Mixing> mixing_from_word(std::string_view word);

/// Published behaviour of one pair near room temperature.
struct KnownPair {
  std::string a;
  std::string b;
  Mixing mixing = Mixing::one_liquid;
  std::optional<double> critical_temperature_C;  ///< above it the pair is one liquid in every proportion
  std::string note;
  std::string source;
  Standing standing = Standing::measured;
  bool operator==(const KnownPair&) const = default;
};

/// Published limit of water in an alcohol that is mixed with another liquid.
struct WaterLimit {
  std::string alcohol;
  std::string other;
  double alcohol_percent = 0;        ///< share of the alcohol (with its water) in the mixture, per cent by volume
  double water_percent = 0;          ///< of the alcohol, per cent by volume: from here on two liquids
  double up_to_alcohol_percent = 0;  ///< the limit is used for shares between the two figures
  double from_alcohol_percent = 0;
  std::string source;
  Standing standing = Standing::measured;
  std::string note;
  bool operator==(const WaterLimit&) const = default;
};

/// Place of a solvent on the miscibility scale of Godfrey; a second number where it mixes with both ends.
struct MiscibilityNumber {
  std::string solvent;
  int first = 0;
  std::optional<int> second;
  std::string source;
  Standing standing = Standing::measured;
  bool operator==(const MiscibilityNumber&) const = default;
};

/// Two kinds of liquid that must not meet, or only with care. Each side names a solvent id or a family.
struct IncompatiblePair {
  std::string a;
  std::string b;
  bool forbidden = false;  ///< true: never mix; false: mix only with the caution
  std::string why;
  std::string source;
  Standing standing = Standing::measured;
  bool operator==(const IncompatiblePair&) const = default;
};

/// What is said of glove materials for a family of solvents.
struct GloveNote {
  std::string family;
  std::string words;
  std::string source;
  Standing standing = Standing::memory;
  bool operator==(const GloveNote&) const = default;
};

/// Everything above, one edition of it.
struct Chemistry {
  GroupTable unifac;           ///< original set
  GroupTable unifac_modified;  ///< Dortmund set
  std::vector<MoleculeGroups> modified_groups;
  std::vector<StandIn> stand_ins;
  std::vector<KnownPair> known_pairs;  ///< the first that names a pair counts
  std::vector<WaterLimit> water_limits;
  std::vector<MiscibilityNumber> miscibility_numbers;
  std::vector<IncompatiblePair> incompatible_pairs;
  std::vector<GloveNote> glove_notes;
  bool operator==(const Chemistry&) const = default;
};

/// Null where nothing is recorded. The order of a and b does not matter.
const StandIn* find_stand_in(const Chemistry& chemistry, std::string_view solvent);
const KnownPair* find_known_pair(const Chemistry& chemistry, std::string_view a, std::string_view b);
const MiscibilityNumber* find_miscibility_number(const Chemistry& chemistry, std::string_view solvent);
/// Empty where none are recorded.
Groups modified_groups_of(const Chemistry& chemistry, std::string_view solvent);

}  // namespace gentlest
