#include "core/catalogue/finish_check.hpp"

#include <set>
#include <string>
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

class FinishCheck {
 public:
  FinishCheck(const CatalogueRecords& records, std::vector<Diagnostic>& faults)
      : materials_(keys_of(records.materials, &Material::id)),
        solvents_(keys_of(records.solvents, &Solvent::id)),
        sources_(keys_of(records.sources, &Source::key)),
        faults_(faults) {}

  void look_at(const Finish& finish) {
    expect(materials_, finish.where, finish.material, "is no material of the catalogue", "write the id of a material");
    claim(finish, finish.material);
    if (!finish.aged.empty()) {
      expect(materials_, finish.where, finish.aged, "is no material of the catalogue", "write the id of a material");
      claim(finish, finish.aged);
    }
    for (const AppliedIn& one : finish.applied_in) look_at(one.parts, one.voice);
    for (const AgeingFact& one : finish.ageing) look_at({}, one.voice);
    for (const ComesOffFact& one : finish.comes_off) look_at(one.parts, one.voice);
    if (finish.bedded) look_at({}, *finish.bedded);
  }

  void look_at(const Neighbour& neighbour) {
    look_at(neighbour.parts, neighbour.voice);
    for (const auto* ids : {&neighbour.upper, &neighbour.lower})
      for (const std::string& id : *ids)
        if (id != any_material)
          expect(materials_, neighbour.voice.where, id, "is no material of the catalogue",
                 "write the id of a material");
  }

  void look_at(const std::vector<ObservedPart>& parts, const Voice& voice) {
    for (const ObservedPart& part : parts)
      expect(solvents_, voice.where, part.solvent, "is no liquid of the catalogue", "write the id of a solvent");
    expect(sources_, voice.where, voice.source, "is no source of sources.yaml", "add it to sources.yaml");
    if ((voice.witness == Witness::memory) != (voice.source == "recalled") ||
        (voice.witness == Witness::practice) != (voice.source == "common_practice"))
      complain(voice.where, "\"" + voice.source + "\" cannot stand as \"" + std::string(to_word(voice.witness)) + "\"",
               "recalled is from memory, common_practice is common practice, every other source is seen");
  }

 private:
  void claim(const Finish& finish, const std::string& id) {
    if (claimed_.insert(id).second) return;
    complain(finish.where, "two finishes are made of \"" + id + "\"", "put what is known of it into one");
  }

  void expect(const Names& known, const Location& where, const std::string& name, const char* fault,
              const char* otherwise) {
    if (known.count(name) == 1) return;
    const std::string near = nearest_name(name, {known.begin(), known.end()});
    complain(where, "\"" + name + "\" " + fault, near.empty() ? otherwise : "did you mean \"" + near + "\"?");
  }

  void complain(const Location& where, std::string message, std::string remedy) {
    faults_.push_back({where, std::move(message), std::move(remedy), {}});
  }

  Names materials_, solvents_, sources_, claimed_;
  std::vector<Diagnostic>& faults_;
};

}  // namespace

void check_finishes(const CatalogueRecords& records, std::vector<Diagnostic>& faults) {
  FinishCheck check(records, faults);
  for (const Finish& finish : records.finishes.all) check.look_at(finish);
  for (const Neighbour& neighbour : records.finishes.neighbours) check.look_at(neighbour);
  for (const GeneralFact& fact : records.finishes.general) check.look_at({}, fact.voice);
}

}  // namespace gentlest
