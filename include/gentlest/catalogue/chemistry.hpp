// What is published about liquids together: group parameters, mutual miscibility, incompatible pairs, gloves.
// Plain records with their sources, read from solvents/*.yaml; solvents are named by id.
#pragma once

#include "gentlest/base/source.hpp"
#include "gentlest/catalogue/activity.hpp"

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

/// Two kinds of hydrocarbon, which bear very different amounts of water with an alcohol.
enum class HydrocarbonKind { aliphatic, aromatic };
std::optional<HydrocarbonKind> hydrocarbon_kind_from_word(std::string_view word);

/// Published limit of water in an alcohol that is mixed with another liquid, over a range of shares. Shares are by
/// volume before mixing, per cent.
struct WaterLimit {
  struct Point {
    double wet_percent = 0;                  ///< share of the alcohol with its water in the mixture
    double water_percent = 0;                ///< share of water in that alcohol: from here on two liquids
    std::optional<double> computed_percent;  ///< the same by the group method for two liquids at 25 C
    bool operator==(const Point&) const = default;
  };
  std::string alcohol;
  std::string other;
  double temperature_C = 0;
  double from_wet_percent = 0;  ///< the limit is used for shares between the two figures
  double to_wet_percent = 0;
  double spread_percent = 0;                ///< so far the limit may be off
  std::vector<Point> points;                ///< by rising share, at least one
  std::optional<HydrocarbonKind> corrects;  ///< computed limits with such hydrocarbons are corrected by this record
  std::string source;
  Standing standing = Standing::measured;
  std::string note;
  bool operator==(const WaterLimit&) const = default;
};

/// Density of an alcohol mixed with water, for the strength on the bottle's label: the two shrink when they are mixed.
struct StrengthTable {
  struct Point {
    double mass_percent = 0;       ///< of the alcohol
    double density_kg_per_m3 = 0;  ///< at 20 C
    bool operator==(const Point&) const = default;
  };
  std::string alcohol;
  std::vector<Point> points;  ///< by rising share, from 0 (water) to 100
  std::string source;
  Standing standing = Standing::measured;
  std::string note;
  bool operator==(const StrengthTable&) const = default;
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
  GroupTable unifac_liquids;   ///< set for two liquids: subgroups as in the original set, other interactions
  std::vector<MoleculeGroups> modified_groups;
  std::vector<StandIn> stand_ins;
  std::vector<KnownPair> known_pairs;  ///< the first that names a pair counts
  std::vector<WaterLimit> water_limits;
  std::vector<StrengthTable> strengths;
  std::vector<MiscibilityNumber> miscibility_numbers;
  std::vector<IncompatiblePair> incompatible_pairs;
  std::vector<GloveNote> glove_notes;
  bool operator==(const Chemistry&) const = default;
};

/// Null where nothing is recorded. The order of a and b does not matter.
const StandIn* find_stand_in(const Chemistry& chemistry, std::string_view solvent);
const KnownPair* find_known_pair(const Chemistry& chemistry, std::string_view a, std::string_view b);
const StrengthTable* find_strengths(const Chemistry& chemistry, std::string_view alcohol);
const MiscibilityNumber* find_miscibility_number(const Chemistry& chemistry, std::string_view solvent);
/// Empty where none are recorded.
Groups modified_groups_of(const Chemistry& chemistry, std::string_view solvent);

}  // namespace gentlest
