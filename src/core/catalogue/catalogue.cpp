#include "gentlest/catalogue/catalogue.hpp"

#include "core/base/enum_words.hpp"
#include "core/catalogue/finish_check.hpp"
#include "core/catalogue/flame.hpp"
#include "core/catalogue/name_check.hpp"
#include "core/catalogue/observation_check.hpp"

#include "gentlest/base/diagnostic.hpp"
#include "gentlest/catalogue/figures.hpp"

#include <algorithm>
#include <array>
#include <mutex>
#include <set>
#include <utility>

namespace gentlest {

namespace {

constexpr std::array<std::pair<Flag, std::string_view>, 5> flag_words = {{{Flag::resinous, "resinous"},
                                                                          {Flag::waxy, "waxy"},
                                                                          {Flag::bituminous, "bituminous"},
                                                                          {Flag::cross_linked, "cross_linked"},
                                                                          {Flag::water_sensitive, "water_sensitive"}}};

constexpr std::array<std::pair<SphereGrade, std::string_view>, 6> sphere_grade_words = {
    {{SphereGrade::fitted, "fitted"},
     {SphereGrade::recalled, "recalled"},
     {SphereGrade::unbracketed, "unbracketed"},
     {SphereGrade::weak, "weak"},
     {SphereGrade::unsupported, "unsupported"},
     {SphereGrade::assumed, "assumed"}}};

using Faults = std::vector<Diagnostic>;

void complain(Faults& faults, std::string message, std::string remedy) {
  faults.push_back({{}, std::move(message), std::move(remedy), {}});
}

// Complains about figures whose source does not exist.
class SourceCheck {
 public:
  SourceCheck(const std::vector<Source>& sources, Faults& faults) : faults_(faults) {
    for (const Source& source : sources)
      if (!keys_.insert(source.key).second)
        complain(faults_, "source \"" + source.key + "\" is listed twice", "keep one entry of sources.yaml");
  }

  void expect(const std::string& record, const std::string& key) {
    if (keys_.count(key) == 1) return;
    const std::string near = nearest_name(key, {keys_.begin(), keys_.end()});
    complain(faults_, "\"" + record + "\" names the source \"" + key + "\", which sources.yaml does not have",
             near.empty() ? "add it to sources.yaml" : "did you mean \"" + near + "\"?");
  }
  template <class T>
  void expect(const std::string& record, const std::optional<Cited<T>>& figure) {
    if (figure) expect(record, figure->source);
  }
  template <class T>
  void expect(const std::string& record, const std::optional<Known<T>>& figure) {
    if (!figure) return;
    expect(record, figure->chosen.source);
    for (const Cited<T>& other : figure->others) expect(record, other.source);
  }

 private:
  std::set<std::string> keys_;
  Faults& faults_;
};

void check_sources(const Solvent& solvent, SourceCheck& check) {
  for (const SolventFigure& figure : solvent_figures())
    for (const std::string& source : sources_of(figure, solvent)) check.expect(solvent.id, source);
  for (const auto& restriction : solvent.restrictions) check.expect(solvent.id, restriction.source);
  if (solvent.hazards) check.expect(solvent.id, solvent.hazards->source);
  for (const ExposureLimit& limit : solvent.exposure_limits) check.expect(solvent.id, limit.source);
}

void check_sources(const Material& material, SourceCheck& check) {
  if (material.sphere) {
    check.expect(material.id, std::optional(material.sphere->sphere));
    check.expect(material.id, material.sphere->own_spread);
  }
  if (material.strongest_grade) check.expect(material.id, material.strongest_grade->source);
  if (material.harm_grade) check.expect(material.id, material.harm_grade->source);
  if (material.response) check.expect(material.id, material.response->source);
  if (material.teas_region) check.expect(material.id, material.teas_region->source);
}

// Records on liquids together name solvents by id; a misspelt id would make them silently useless.
class IdCheck {
 public:
  IdCheck(const std::vector<Solvent>& solvents, Faults& faults) : faults_(faults) {
    for (const Solvent& solvent : solvents) {
      ids_.insert(solvent.id);
      families_.insert(solvent.family);
    }
  }
  void expect(const char* where, const std::string& id) { complain_unless(ids_.count(id) == 1, where, id); }
  void expect_family(const char* where, const std::string& family) {
    complain_unless(families_.count(family) == 1, where, family);
  }
  void expect_either(const char* where, const std::string& name) {
    complain_unless(ids_.count(name) == 1 || families_.count(name) == 1, where, name);
  }

 private:
  void complain_unless(bool known, const char* where, const std::string& name) {
    if (known) return;
    const std::string near = nearest_name(name, {ids_.begin(), ids_.end()});
    complain(faults_, std::string(where) + " names \"" + name + "\", which the catalogue does not have",
             near.empty() ? "write the id of a solvent" : "did you mean \"" + near + "\"?");
  }

  std::set<std::string> ids_;
  std::set<std::string> families_;
  Faults& faults_;
};

void check_pairs(const Chemistry& chemistry, IdCheck& ids, SourceCheck& sources) {
  for (const KnownPair& pair : chemistry.known_pairs) {
    ids.expect("miscibility.yaml", pair.a);
    ids.expect("miscibility.yaml", pair.b);
    sources.expect("miscibility.yaml", pair.source);
  }
  for (const WaterLimit& limit : chemistry.water_limits) {
    ids.expect("water_limits.yaml", limit.alcohol);
    ids.expect("water_limits.yaml", limit.other);
    sources.expect("water_limits.yaml", limit.source);
  }
  for (const StrengthTable& table : chemistry.strengths) {
    ids.expect("strengths.yaml", table.alcohol);
    sources.expect("strengths.yaml", table.source);
  }
  for (const MiscibilityNumber& number : chemistry.miscibility_numbers) {
    ids.expect("miscibility.yaml", number.solvent);
    sources.expect("miscibility.yaml", number.source);
  }
  for (const IncompatiblePair& pair : chemistry.incompatible_pairs) {
    ids.expect_either("cautions.yaml", pair.a);
    ids.expect_either("cautions.yaml", pair.b);
    sources.expect("cautions.yaml", pair.source);
  }
}

void check_chemistry(const Chemistry& chemistry, IdCheck& ids, SourceCheck& sources) {
  check_pairs(chemistry, ids, sources);
  for (const GroupTable* table : {&chemistry.unifac, &chemistry.unifac_modified, &chemistry.unifac_liquids})
    if (!table->subgroups.empty()) sources.expect("group parameters", table->source);
  for (const MoleculeGroups& molecule : chemistry.modified_groups) {
    ids.expect("unifac_dortmund.yaml", molecule.solvent);
    sources.expect("unifac_dortmund.yaml", molecule.source);
  }
  for (const StandIn& stand_in : chemistry.stand_ins) {
    ids.expect("stand_ins.yaml", stand_in.solvent);
    for (const StandIn::Share& share : stand_in.shares) ids.expect("stand_ins.yaml", share.solvent);
    sources.expect("stand_ins.yaml", stand_in.source);
  }
  for (const GloveNote& note : chemistry.glove_notes) {
    ids.expect_family("cautions.yaml", note.family);
    sources.expect("cautions.yaml", note.source);
  }
}

void check_examination(const std::vector<ExaminationQuestion>& questions, IdCheck& ids, SourceCheck& sources) {
  for (const ExaminationQuestion& question : questions) {
    sources.expect(question.id, question.source);
    for (const ExaminationAnswer& answer : question.answers)
      for (const ExaminationStep& step : answer.does)
        if (!step.family.empty()) ids.expect_family("examination.yaml", step.family);
  }
}

// A sphere without standard deviations would pass for an exact one.
void check_spreads(const CatalogueRecords& records, Faults& faults) {
  for (const Material& material : records.materials) {
    if (!material.sphere || material.sphere->own_spread) continue;
    const SphereGrade grade = material.sphere->grade;
    if (std::none_of(records.spreads.begin(), records.spreads.end(),
                     [&](const GradeSpread& spread) { return spread.grade == grade; }))
      complain(faults,
               "\"" + material.id + "\" has no standard deviations, and there is no default for grade \"" +
                   std::string(to_word(grade)) + "\"",
               "add the grade to materials/spreads.yaml");
  }
}

}  // namespace

std::string_view to_word(Flag flag) {
  return word_of(flag_words, flag);
}

std::optional<Flag> flag_from_word(std::string_view word) {
  return value_of<Flag>(flag_words, word);
}

std::string_view to_word(SphereGrade grade) {
  return word_of(sphere_grade_words, grade);
}

std::optional<SphereGrade> sphere_grade_from_word(std::string_view word) {
  return value_of<SphereGrade>(sphere_grade_words, word);
}

namespace {

void check_conditionings(const CatalogueRecords& records, Faults& faults) {
  const auto complain_of = [&](const Conditioning& one, const char* what) {
    complain(faults, "conditioned.yaml: \"" + one.material + "\" " + what,
             "make the file anew with `gentlest condition records`");
  };
  for (const Conditioning& one : records.conditionings) {
    const auto material = std::find_if(records.materials.begin(), records.materials.end(),
                                       [&](const Material& record) { return record.id == one.material; });
    if (material == records.materials.end())
      complain_of(one, "is no material");
    else if (!material->sphere)
      complain_of(one, "has no sphere that could be moved or bent");
    else if (one.sphere && !is_possible(*one.sphere))
      complain_of(one, "has covariances that contradict its deviations");
  }
}

void check_likenesses(const CatalogueRecords& records, Faults& faults) {
  for (const Material& material : records.materials)
    for (const std::string& like : material.observed_like)
      if (like == material.id || std::none_of(records.materials.begin(), records.materials.end(),
                                              [&](const Material& other) { return other.id == like; }))
        complain(faults, "\"" + material.id + "\" behaves like \"" + like + "\", which is no other material",
                 "name the id of a material");
}

std::uint64_t next_serial() {
  static std::mutex mutex;
  static std::uint64_t built = 0;
  const std::lock_guard<std::mutex> lock(mutex);
  return ++built;
}

}  // namespace

Catalogue::Catalogue(CatalogueRecords records) : serial_(next_serial()), records_(std::move(records)) {
  Faults faults;
  solvent_names_ = index_names(records_.solvents, records_.ambiguous_solvents, faults);
  material_names_ = index_names(records_.materials, records_.ambiguous_materials, faults);
  SourceCheck check(records_.sources, faults);
  for (const Solvent& solvent : records_.solvents) check_sources(solvent, check);
  for (const Material& material : records_.materials) {
    check_sources(material, check);
    if (material.sphere && !material.sphere->stand_in_for.empty() && !find_material(material.sphere->stand_in_for))
      complain(faults,
               "\"" + material.id + "\" borrows the sphere of \"" + material.sphere->stand_in_for +
                   "\", which is no material",
               "name the id of a material");
  }
  for (const GradeSpread& spread : records_.spreads) check.expect("spreads", spread.source);
  check_spreads(records_, faults);
  check.expect("response", records_.response.source);
  for (const OtherWay& way : records_.other_ways)
    for (const std::string& source : way.sources) check.expect(way.id, source);
  IdCheck ids(records_.solvents, faults);
  check_chemistry(records_.chemistry, ids, check);
  check_examination(records_.examination, ids, check);
  check_observations(records_, faults);
  check_finishes(records_, faults);
  check_conditionings(records_, faults);
  check_likenesses(records_, faults);
  if (!faults.empty()) throw InputError(Fault::file, std::move(faults));
  for (Solvent& solvent : records_.solvents) complete_flame(solvent, *this);
  for (Material& material : records_.materials)
    for (const Conditioning& one : records_.conditionings)
      if (one.material == material.id) material.conditioning = one;
}

const Source* Catalogue::find_source(std::string_view key) const {
  for (const Source& source : records_.sources)
    if (source.key == key) return &source;
  return nullptr;
}

const ExaminationQuestion* Catalogue::find_question(std::string_view id) const {
  for (const ExaminationQuestion& question : records_.examination)
    if (question.id == id) return &question;
  return nullptr;
}

std::vector<const Observation*> Catalogue::observations_on(const Material& material) const {
  std::vector<const Observation*> found;
  for (const Observation& seen : records_.observations)
    if (seen.material == material.id) found.push_back(&seen);
  return found;
}

std::vector<const Observation*> Catalogue::observations_with(const Solvent& solvent) const {
  std::vector<const Observation*> found;
  for (const Observation& seen : records_.observations)
    if (std::any_of(seen.parts.begin(), seen.parts.end(),
                    [&](const ObservedPart& part) { return part.solvent == solvent.id; }))
      found.push_back(&seen);
  return found;
}

std::optional<UncertainSphere> recorded_sphere(const Material& material, const Catalogue& catalogue) {
  if (!material.sphere) return std::nullopt;
  const SphereRecord& record = *material.sphere;
  UncertainSphere sphere;
  if (record.own_spread) sphere = record.own_spread->value;
  for (const GradeSpread& spread : catalogue.spreads())
    if (!record.own_spread && spread.grade == record.grade) sphere = {{}, spread.sd, spread.R0_sd};
  sphere.mean = record.sphere.chosen.value;
  return sphere;
}

std::optional<UncertainSphere> uncertain_sphere(const Material& material, const Catalogue& catalogue) {
  if (material.conditioning && material.conditioning->sphere) return material.conditioning->sphere;
  return recorded_sphere(material, catalogue);
}

LocalReach local_reach(const Material& material) {
  return material.conditioning ? material.conditioning->reach : LocalReach{};
}

Response response_of(const Material& material, const Catalogue& catalogue, Contact contact) {
  Response response = material.response ? *material.response : catalogue.response();
  if (!material.strongest_grade) return response;
  response.strongest = material.strongest_grade->value;
  if (!material.response && is_short(contact))
    for (Response::Stage& stage : response.stages) stage.intercept += stage.slope * catalogue.swab_ln_further();
  return response;
}

}  // namespace gentlest
