#include "gentlest/catalogue/chemistry.hpp"

#include "core/base/enum_words.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace gentlest {

namespace {

constexpr std::array<std::pair<Mixing, std::string_view>, 3> mixing_words = {
    {{Mixing::one_liquid, "one_liquid"}, {Mixing::partial, "partial"}, {Mixing::two_liquids, "two_liquids"}}};

constexpr std::array<std::pair<HydrocarbonKind, std::string_view>, 2> kind_words = {
    {{HydrocarbonKind::aliphatic, "aliphatic"}, {HydrocarbonKind::aromatic, "aromatic"}}};

template <class Records>
auto find_by_solvent(const Records& records, std::string_view solvent) -> decltype(records.data()) {
  const auto found =
      std::find_if(records.begin(), records.end(), [&](const auto& record) { return record.solvent == solvent; });
  return found == records.end() ? nullptr : &*found;
}

}  // namespace

std::string_view to_word(Mixing mixing) {
  return word_of(mixing_words, mixing);
}

std::optional<Mixing> mixing_from_word(std::string_view word) {
  return value_of<Mixing>(mixing_words, word);
}

std::optional<HydrocarbonKind> hydrocarbon_kind_from_word(std::string_view word) {
  return value_of<HydrocarbonKind>(kind_words, word);
}

const StandIn* find_stand_in(const Chemistry& chemistry, std::string_view solvent) {
  return find_by_solvent(chemistry.stand_ins, solvent);
}

const KnownPair* find_known_pair(const Chemistry& chemistry, std::string_view a, std::string_view b) {
  for (const KnownPair& pair : chemistry.known_pairs)
    if ((pair.a == a && pair.b == b) || (pair.a == b && pair.b == a)) return &pair;
  return nullptr;
}

const StrengthTable* find_strengths(const Chemistry& chemistry, std::string_view alcohol) {
  const auto found = std::find_if(chemistry.strengths.begin(), chemistry.strengths.end(),
                                  [&](const StrengthTable& table) { return table.alcohol == alcohol; });
  return found == chemistry.strengths.end() ? nullptr : &*found;
}

const MiscibilityNumber* find_miscibility_number(const Chemistry& chemistry, std::string_view solvent) {
  return find_by_solvent(chemistry.miscibility_numbers, solvent);
}

Groups modified_groups_of(const Chemistry& chemistry, std::string_view solvent) {
  const MoleculeGroups* record = find_by_solvent(chemistry.modified_groups, solvent);
  return record ? record->groups : Groups{};
}

}  // namespace gentlest
