// What a typed name means in this catalogue, and which known names are near to it.
#include "gentlest/catalogue/catalogue.hpp"

namespace gentlest {

namespace {

template <class Record>
Meaning<Record> meaning_in(const NameIndex& names, std::string_view typed, const std::vector<Record>& records,
                           const std::vector<AmbiguousName>& ambiguous) {
  const auto target = names.find(typed);
  if (!target) return {};
  if (target->is_ask) return {nullptr, nullptr, &ambiguous[target->index]};
  const Record& record = records[target->index];
  return {&record, target->other_name ? &record.other_names[*target->other_name] : nullptr, nullptr};
}

template <class Record>
void offer(std::vector<OfferedName>& offered, const std::vector<Record>& records,
           const std::vector<AmbiguousName>& ambiguous) {
  std::size_t next = offered.empty() ? 0 : offered.back().belongs_to + 1;
  for (const Record& record : records) {
    offered.push_back({record.id, next});
    offered.push_back({record.name, next});
    for (const OtherName& other : record.other_names)
      offered.push_back({other.text, next, other.kind == NameKind::trade});
    ++next;
  }
  for (const AmbiguousName& one : ambiguous) {
    for (const OtherName& name : one.names) offered.push_back({name.text, next, name.kind == NameKind::trade});
    ++next;
  }
}

}  // namespace

Meaning<Solvent> Catalogue::meaning_of_solvent(std::string_view name) const {
  return meaning_in(solvent_names_, name, records_.solvents, records_.ambiguous_solvents);
}

Meaning<Material> Catalogue::meaning_of_material(std::string_view name) const {
  return meaning_in(material_names_, name, records_.materials, records_.ambiguous_materials);
}

std::vector<OfferedName> Catalogue::names_near(std::string_view typed, NamesOf whose) const {
  std::vector<OfferedName> offered;
  if (whose != NamesOf::materials) offer(offered, records_.solvents, records_.ambiguous_solvents);
  if (whose != NamesOf::solvents) offer(offered, records_.materials, records_.ambiguous_materials);
  return near_names(typed, offered);
}

}  // namespace gentlest
