#include "core/catalogue/observation_check.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <utility>

namespace gentlest {

namespace {

using Names = std::set<std::string>;

template <class Record>
Names keys_of(const std::vector<Record>& records, std::string Record::*key) {
  Names keys;
  for (const Record& record : records) keys.insert(record.*key);
  return keys;
}

// What makes two rows the same test by the same witness.
using Key = std::tuple<std::string, std::string, std::vector<std::pair<std::string, double>>, std::string, Contact,
                       std::string, std::string>;

Key key_of(const Observation& seen) {
  std::vector<std::pair<std::string, double>> parts;
  for (const ObservedPart& part : seen.parts) parts.emplace_back(part.solvent, part.percent);
  std::sort(parts.begin(), parts.end());
  return {seen.material, seen.state, parts, seen.liquids_in_words, seen.contact, seen.duration, seen.source};
}

class ObservationCheck {
 public:
  ObservationCheck(const CatalogueRecords& records, std::vector<Diagnostic>& faults)
      : materials_(keys_of(records.materials, &Material::id)),
        solvents_(keys_of(records.solvents, &Solvent::id)),
        sources_(keys_of(records.sources, &Source::key)),
        faults_(faults) {}

  void look_at(const Observation& seen) {
    expect(materials_, seen, seen.material, "is no material of the catalogue", "write the id of a material");
    for (const ObservedPart& part : seen.parts)
      expect(solvents_, seen, part.solvent, "is no liquid of the catalogue", "write the id of a solvent");
    expect(sources_, seen, seen.source, "is no source of sources.yaml", "add it to sources.yaml");
    if (seen.result && seen.grades && !overlap(range_of(*seen.result), *seen.grades))
      complain(
          seen,
          "the grades of this observation leave out its own result, \"" + std::string(to_word(*seen.result)) + "\"",
          "grades go from 1, dissolves, to 6, nothing_seen; removed reaches up to 2, not_removed from 3 on");
    look_for_another(seen);
  }

 private:
  void look_for_another(const Observation& seen) {
    const auto [first, is_new] = first_.emplace(key_of(seen), &seen);
    if (is_new) return;
    const Observation& other = *first->second;
    const bool agree = !seen.grades || !other.grades || overlap(*seen.grades, *other.grades);
    complain(seen,
             agree ? "this observation on \"" + seen.material + "\" stands there twice"
                   : "two observations on \"" + seen.material + "\" by \"" + seen.source + "\" contradict each other",
             "keep one of the two, or say what differs in state, contact or duration");
  }

  void expect(const Names& known, const Observation& seen, const std::string& name, const char* fault,
              const char* otherwise) {
    if (known.count(name) == 1) return;
    const std::string near = nearest_name(name, {known.begin(), known.end()});
    complain(seen, "\"" + name + "\" " + fault, near.empty() ? otherwise : "did you mean \"" + near + "\"?");
  }

  void complain(const Observation& seen, std::string message, std::string remedy) {
    faults_.push_back({seen.where, std::move(message), std::move(remedy), {}});
  }

  Names materials_, solvents_, sources_;
  std::map<Key, const Observation*> first_;
  std::vector<Diagnostic>& faults_;
};

}  // namespace

void check_observations(const CatalogueRecords& records, std::vector<Diagnostic>& faults) {
  ObservationCheck check(records, faults);
  for (const Observation& seen : records.observations) check.look_at(seen);
}

}  // namespace gentlest
