#include "core/catalogue/name_check.hpp"

#include "gentlest/base/text.hpp"

#include <algorithm>
#include <set>
#include <utility>

namespace gentlest {

namespace {

std::string quoted(const std::string& text) {
  return "\"" + text + "\"";
}

const std::string& cas_of(const Solvent& solvent) {
  return solvent.cas;
}

const std::string& cas_of(const Material&) {
  static const std::string none;
  return none;
}

template <class Record>
class NameCheck {
 public:
  NameCheck(const std::vector<Record>& records, const std::vector<AmbiguousName>& ambiguous,
            std::vector<Diagnostic>& faults)
      : records_(records), ambiguous_(ambiguous), faults_(faults) {}

  NameIndex run() {
    for (std::size_t i = 0; i < records_.size(); ++i) {
      own({}, records_[i].id, i, index_.add_literal(records_[i].id, {i}));
      if (!cas_of(records_[i]).empty()) own({}, cas_of(records_[i]), i, index_.add_literal(cas_of(records_[i]), {i}));
    }
    for (std::size_t i = 0; i < records_.size(); ++i) add_names(i);
    for (std::size_t i = 0; i < ambiguous_.size(); ++i) add_ambiguous(i);
    for (std::size_t i = 0; i < records_.size(); ++i) add_folded_id(i);
    return std::move(index_);
  }

 private:
  using Target = NameIndex::Target;
  using Collision = std::optional<NameIndex::Target>;

  void complain(Location where, const std::string& message, std::string remedy) {
    if (told_.insert(message).second) faults_.push_back({std::move(where), message, std::move(remedy), {}});
  }

  // A record's name that another one or an ambiguous name has too.
  void own(const Location& where, const std::string& name, std::size_t record, const Collision& other) {
    if (!other) return;
    complain(where.file.empty() ? place_of(*other) : where,
             quoted(records_[std::min(record, other->index)].id) + " and " +
                 quoted(records_[std::max(record, other->index)].id) + " are both called " + quoted(folded(name)),
             "every id, name, other name and CAS number belongs to one record only; what may be either goes into "
             "names.yaml");
  }

  Location place_of(const Target& target) const {
    return target.other_name ? records_[target.index].other_names[*target.other_name].where : Location{};
  }

  void claimed(const Location& where, const std::string& name, const std::string& id) {
    complain(where, quoted(name) + " is to be asked back, but is a name of " + quoted(id),
             "take it out of names.yaml or out of the record");
  }

  void add_names(std::size_t i) {
    const Record& record = records_[i];
    own({}, record.name, i, index_.add_name(record.name, {i}));
    for (std::size_t k = 0; k < record.other_names.size(); ++k) {
      const OtherName& other = record.other_names[k];
      if (name_keys(other.text).empty())
        complain(other.where, quoted(other.text) + " of " + quoted(record.id) + " is no name", "give it a letter");
      own(other.where, other.text, i, index_.add_name(other.text, {i, false, k}));
      if (other.kind == NameKind::denatured) expect_denatured_name(record, other);
    }
  }

  // What a label calls the bottle must be read back as denatured.
  void expect_denatured_name(const Record& record, const OtherName& other) {
    const auto& names = record.other_names;
    if (std::none_of(names.begin(), names.end(), [&](const OtherName& one) {
          return one.kind == NameKind::denatured && one.text == denatured_name(record.name);
        }))
      complain(other.where, quoted(record.id) + " has denatured names, but not " + quoted(denatured_name(record.name)),
               "add it to them: labels use it");
  }

  void add_ambiguous(std::size_t i) {
    const AmbiguousName& one = ambiguous_[i];
    for (const OtherName& name : one.names) {
      const Collision other = index_.add_name(name.text, {i, true});
      if (other && other->is_ask)
        complain(name.where, quoted(name.text) + " stands twice in names.yaml", "keep one of the two");
      else if (other)
        claimed(name.where, name.text, records_[other->index].id);
    }
    check_choices(one);
  }

  void check_choices(const AmbiguousName& one) {
    const Location where = one.names.empty() ? Location{} : one.names.front().where;
    const std::string name = one.names.empty() ? "a name" : quoted(one.names.front().text);
    if (one.choices.size() < 2)
      complain(where, name + " is to be asked back with fewer than two choices",
               "give at least two, or write it into the record that it means");
    std::set<std::string> ids;
    std::vector<OfferedName> known;
    for (std::size_t i = 0; i < records_.size(); ++i) known.push_back({records_[i].id, i, false});
    for (const NameChoice& choice : one.choices) {
      if (choice.id.empty()) continue;
      if (!ids.insert(choice.id).second)
        complain(choice.where, name + " offers " + quoted(choice.id) + " twice", "name each choice once");
      if (std::none_of(records_.begin(), records_.end(), [&](const Record& record) { return record.id == choice.id; }))
        complain(choice.where, name + " offers " + quoted(choice.id) + ", which the catalogue does not have",
                 did_you_mean(near_names(choice.id, known), "write the id of a record, or no_record"));
    }
    if (ids.empty())
      complain(where, name + " offers no record at all", "give the id of a record, or leave the name out");
  }

  // An id in another spelling may be what an ambiguous name offers: then it is asked for.
  void add_folded_id(std::size_t i) {
    const std::string& id = records_[i].id;
    const Collision other = index_.add_folded_id(id, {i});
    if (!other) return;
    if (!other->is_ask) return own({}, id, i, other);
    const AmbiguousName& ask = ambiguous_[other->index];
    if (std::none_of(ask.choices.begin(), ask.choices.end(), [&](const NameChoice& choice) { return choice.id == id; }))
      claimed(ask.names.front().where, id, id);
  }

  const std::vector<Record>& records_;
  const std::vector<AmbiguousName>& ambiguous_;
  std::vector<Diagnostic>& faults_;
  std::set<std::string> told_;
  NameIndex index_;
};

}  // namespace

NameIndex index_names(const std::vector<Solvent>& records, const std::vector<AmbiguousName>& ambiguous,
                      std::vector<Diagnostic>& faults) {
  return NameCheck<Solvent>(records, ambiguous, faults).run();
}

NameIndex index_names(const std::vector<Material>& records, const std::vector<AmbiguousName>& ambiguous,
                      std::vector<Diagnostic>& faults) {
  return NameCheck<Material>(records, ambiguous, faults).run();
}

}  // namespace gentlest
