#include "gentlest/plan/check_job.hpp"

#include "gentlest/base/text.hpp"
#include "gentlest/base/typed_number.hpp"
#include "gentlest/job/limits.hpp"
#include "gentlest/liquids/grade.hpp"
#include "gentlest/liquids/mixture.hpp"
#include "gentlest/liquids/recipe.hpp"
#include "gentlest/plan/shelf.hpp"

#include "core/plan/job_cures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

namespace gentlest {

namespace {

class JobCheck {
 public:
  JobCheck(const Job& job, const Catalogue& catalogue) : job_(job), catalogue_(catalogue) {}

  std::vector<Diagnostic> run() {
    check_layers();
    std::set<std::string> passages;
    for (const Passage& passage : job_.passages) check_passage(passage, passages);
    check_passages_that_must_go();
    check_shelf();
    check_limits();
    if (faults_.empty()) check_usable_shelf();
    return std::move(faults_);
  }

 private:
  void complain(Location where, std::string message, std::string remedy = {}) {
    if (where.file.empty()) where.file = job_.file;
    faults_.push_back({std::move(where), std::move(message), std::move(remedy), {}});
  }

  // At the key, or where that is left out at another that has a part in the fault.
  void complain_at(const std::string& key, std::string message, std::string remedy = {},
                   const std::string& otherwise = {}) {
    auto found = job_.places.at.find(key);
    if (found == job_.places.at.end()) found = job_.places.at.find(otherwise);
    complain(found == job_.places.at.end() ? Location{} : found->second, std::move(message), std::move(remedy));
  }

  static std::string nearest_of(std::string_view name, const std::vector<std::string>& known,
                                const std::string& otherwise) {
    const std::string near = nearest_name(name, known);
    return near.empty() ? otherwise : did_you_mean({{near}}, otherwise);
  }

  NameFault no_such_solvent(const std::string& name) const {
    return solvent_fault(name, catalogue_, fmt::format("no solvent \"{}\" is known", name),
                         "`gentlest list solvents` shows them all");
  }

  // A material without a sphere is none: the layer is planned by what was seen of it.
  void check_material(const Location& where, const std::string& layer, const std::string& name) {
    if (name.empty() || catalogue_.find_material(name)) return;
    const NameFault fault = material_fault(
        name, catalogue_, fmt::format("no material \"{}\" is known", name),
        fmt::format("`gentlest list materials` shows them all; where nobody knows it, write {}", unknown_material));
    const std::string cure = material_cure(name, catalogue_);
    complain(where, fmt::format("{} (layer \"{}\")", fault.message, layer), cure.empty() ? fault.remedy : cure);
  }

  void check_own_material(const Location& where, const std::string& layer, const std::string& name) {
    if (name != unknown_material) check_material(where, layer, name);
  }

  void check_possible(const Layer& layer) {
    std::set<const Material*> named = {catalogue_.find_material(own_material(layer))};
    int sum = 0;
    for (const PossibleMaterial& one : layer.possible) {
      check_material(one.where, layer.name, one.material);
      const Material* material = catalogue_.find_material(one.material);
      if (material && !named.insert(material).second)
        complain(one.where, fmt::format("layer \"{}\" names {} twice", layer.name, one.material),
                 "name each material that it may be once");
      if (one.percent < 1 || one.percent > 99)
        complain(one.where, fmt::format("{}: percent is {}, outside 1 to 99", one.material, one.percent));
      sum += one.percent;
    }
    if (sum > 99)
      complain(layer.possible.front().where,
               fmt::format("layer \"{}\": what it may be else takes {} % and leaves nothing for its own material",
                           layer.name, sum),
               "let them come to less than 100 %");
  }

  void check_layers() {
    check_each_layer();
    check_roles();
  }

  void check_each_layer() {
    std::set<std::string> names;
    for (const Layer& layer : job_.layers) {
      if (!names.insert(folded(layer.name)).second) complain_of_doubled_layer(layer);
      if (layer.recorded.empty() && layer.found.empty() && !layer.own_sphere)
        complain(layer.where, fmt::format("layer \"{}\" has no material", layer.name),
                 "give recorded, found or own_sphere");
      check_own_material(layer.where, layer.name, layer.recorded);
      check_own_material(layer.where, layer.name, layer.found);
      check_possible(layer);
    }
  }

  void complain_of_doubled_layer(const Layer& layer) {
    layers_are_told_ = true;
    complain(layer.where, fmt::format("two layers are called \"{}\"", layer.name), "give each its own name");
  }

  void check_roles() {
    const auto any = [&](Role role) {
      return std::any_of(job_.layers.begin(), job_.layers.end(),
                         [&](const Layer& layer) { return layer.role == role; });
    };
    const bool any_remove = any(Role::remove);
    const bool any_keep = any(Role::keep);
    layers_are_told_ = layers_are_told_ || !any_remove || !any_keep;
    if (job_.layers.empty()) return complain_at("layers", "the job has no layers", "list them from the top down");
    if (!any_remove)
      complain_at("layers", "no layer has the role remove", "mark the layer that must go with role: remove");
    if (!any_keep) complain_at("layers", "no layer has the role keep", "name what must stay with role: keep");
  }

  const Layer* layer_of(const Passage& passage) const {
    const auto layer = std::find_if(job_.layers.begin(), job_.layers.end(),
                                    [&](const Layer& candidate) { return candidate.name == passage.of; });
    return layer == job_.layers.end() ? nullptr : &*layer;
  }

  // Where the layers themselves are at fault, what the passages say of them is no fault of its own.
  void check_layer_of(const Passage& passage) {
    std::vector<std::string> layers, kept;
    for (const Layer& layer : job_.layers) {
      layers.push_back(layer.name);
      if (layer.role == Role::keep) kept.push_back(layer.name);
    }
    if (!layers_are_told_ && !layer_of(passage)) {
      const auto of_material = std::find_if(job_.layers.begin(), job_.layers.end(), [&](const Layer& layer) {
        return own_material(layer) == passage.of && layer.role == Role::keep;
      });
      complain(passage.where, fmt::format("passage \"{}\" belongs to no layer called \"{}\"", passage.name, passage.of),
               of_material != job_.layers.end()
                   ? fmt::format("did you mean \"{}\"?", of_material->name)
                   : nearest_of(passage.of, layers, fmt::format("of: names a layer, here {}", enumerated(kept, "or"))));
    }
    for (const std::string& name : layers)
      if (folded(name) == folded(passage.name))
        complain(passage.where, fmt::format("a layer is called \"{}\" as well", name),
                 "give the passage a name of its own");
  }

  void check_passage(const Passage& passage, std::set<std::string>& names) {
    if (!names.insert(folded(passage.name)).second)
      complain(passage.where, fmt::format("two passages are called \"{}\"", passage.name), "give each its own name");
    check_layer_of(passage);
    check_own_material(passage.where, passage.name, passage.material);
  }

  // Told once for each layer: several passages of one that must go are one slip, most likely of its role.
  void check_passages_that_must_go() {
    if (layers_are_told_) return;
    for (const Layer& layer : job_.layers) {
      if (layer.role == Role::keep) continue;
      std::vector<std::string> names;
      const Passage* first = nullptr;
      for (const Passage& passage : job_.passages) {
        if (layer_of(passage) != &layer) continue;
        if (!first) first = &passage;
        names.push_back("\"" + passage.name + "\"");
      }
      const bool is_one = names.size() == 1;
      if (first)
        complain(first->where,
                 fmt::format("{} {} {} to a layer that must go", is_one ? "passage" : "passages",
                             enumerated(names, "and"), is_one ? "belongs" : "belong"),
                 fmt::format("passages must stay unaffected; name a layer with role: keep{}",
                             is_one ? "" : ", or are the roles swapped?"));
    }
  }

  // A share below one step of the grid would quietly leave the bottle out.
  void check_largest_share(const ShelfBottle& bottle) {
    const int step = job_.limits.step_percent;
    if (bottle.at_most_percent < 1 || bottle.at_most_percent > 100)
      complain(bottle.where,
               fmt::format("{}: at_most_percent is {}, outside 1 to 100", bottle.solvent, bottle.at_most_percent));
    else if (bottle.at_most_percent < step)
      complain(bottle.where,
               fmt::format("{}: at_most_percent is {}, less than one step of {} %", bottle.solvent,
                           bottle.at_most_percent, step),
               "take a finer step_percent, or leave the bottle off the shelf");
  }

  void check_bottle(const ShelfBottle& bottle, std::set<std::string>& labels) {
    const Meaning<Solvent> named = catalogue_.meaning_of_solvent(bottle.solvent);
    const Solvent* solvent = named.record;
    if (!solvent) {
      const NameFault fault = no_such_solvent(bottle.solvent);
      const std::string cure = bottle_cure(bottle.solvent, catalogue_);
      return complain(bottle.where, fault.message, cure.empty() ? fault.remedy : cure);
    }
    check_largest_share(bottle);
    try {
      read_grade(*solvent, bottle.grade, catalogue_);
      if (!solvent->hansen) return;  // the plan says that it leaves this bottle off, and why
      const Liquid liquid = make_liquid(named, bottle.grade, catalogue_);
      if (!labels.insert(liquid.label).second)
        complain(bottle.where, fmt::format("{} stands on the shelf twice", liquid.label), "list each bottle once");
    } catch (const InputError& error) {
      const Location& at = bottle.grade_where.line > 0 ? bottle.grade_where : bottle.where;
      const std::string plain = with_plain_signs(bottle.grade);
      const bool was_pasted = plain != bottle.grade && is_grade(plain);
      for (const Diagnostic& fault : error.faults())
        complain(at, fault.message,
                 was_pasted ? fmt::format("write \"{}\" anew, with plain quotes and spaces", plain) : fault.remedy);
    }
  }

  void check_shelf() {
    if (job_.shelf.empty())
      return complain_at("shelf", "the shelf is empty", "list the solvents that are at hand and allowed");
    std::set<std::string> labels;
    for (const ShelfBottle& bottle : job_.shelf) check_bottle(bottle, labels);
  }

  // That limits leave no bottle is known before any plan is asked for. Bottles left off for what was seen on a layer
  // are no fault of the job: the plan says so.
  void check_usable_shelf() {
    const Shelf shelf = shelf_of(job_, catalogue_);
    const std::vector<JobBottle> left_off = bottles_left_off(shelf);
    const bool seen = std::any_of(left_off.begin(), left_off.end(), [](const JobBottle& bottle) {
      return bottle.left_off->why == LeftOffWhy::acts_on_layer;
    });
    if (usable_liquids(shelf).empty() && !seen) complain_of_shelf(left_off.front());
  }

  // With what keeps the first bottle off, as the one to look at.
  void complain_of_shelf(const JobBottle& bottle) {
    const std::string& name = bottle.liquid ? bottle.liquid->label : bottle.solvent->name;
    const auto complain_that = [&](const std::string& why) {
      complain_at("shelf", "no bottle of the shelf may be used", name + ": " + why);
    };
    switch (bottle.left_off->why) {
      case LeftOffWhy::no_hansen:
        return complain_that("no Hansen parameters: " + bottle.solvent->no_hansen);
      case LeftOffWhy::water:
        return complain_that("water acts by other ways than solubility; outside the model");
      case LeftOffWhy::family:
        return complain_that(fmt::format("family \"{}\" is to be avoided", bottle.solvent->family));
      case LeftOffWhy::solvent:
        return complain_that("is to be avoided");
      case LeftOffWhy::no_hazard_record:
        return complain_that("no hazard record, and unknown hazards are not allowed");
      case LeftOffWhy::statement:
        return complain_that(fmt::format("carries {}, which is to be avoided", bottle.left_off->statement));
      case LeftOffWhy::acts_on_layer:
        return;  // never asked: check_usable_shelf
    }
  }

  void check_ranges() {
    for (const Limit& limit : all_limits()) {
      const std::optional<double> value = number_of(limit, job_.limits);
      if (!value || is_within(limit, *value)) continue;
      complain_at(fmt::format("limits.{}", limit.key),
                  fmt::format("{} is {}, {}", limit.key, *value, outside_words(limit)), range_remedy(limit, *value));
    }
  }

  bool is_in_range(std::string_view key) const {
    const Limit& limit = *find_limit(key);
    return is_within(limit, number_of(limit, job_.limits).value_or(limit.smallest));
  }

  void check_measuring() {
    if (!is_in_range("parts") || !is_in_range("vial_mL") || !is_in_range("measure_mL")) return;  // told already
    const Limits& limits = job_.limits;
    const auto parts = static_cast<std::size_t>(limits.parts);
    if (const auto fault = measuring_fault(parts, {Millilitres{limits.vial_mL}, Millilitres{limits.measure_mL}}))
      complain_at("limits.measure_mL", fault->message, fault->remedy, "limits.vial_mL");
  }

  void check_limits() {
    const Limits& limits = job_.limits;
    check_ranges();
    if (limits.bottles < limits.parts && is_in_range("parts") && is_in_range("bottles"))
      complain_at("limits.bottles",
                  fmt::format("limits contradict each other: {} parts from {} bottles", limits.parts, limits.bottles),
                  "allow at least as many bottles as parts", "limits.parts");
    check_measuring();
    check_avoided();
  }

  // "ketones", "aromatics", "hydrocarbon": the families whose names are near, or hold it.
  std::string near_family(std::string_view typed) const {
    std::set<std::string> families;
    for (const Solvent& solvent : catalogue_.solvents()) families.insert(solvent.family);
    std::vector<OfferedName> offered;
    for (const std::string& family : families) offered.push_back({family, offered.size()});
    std::vector<OfferedName> near = near_names(typed, offered);
    if (near.empty() && !typed.empty() && typed.back() == 's')
      near = near_names(typed.substr(0, typed.size() - 1), offered);
    return did_you_mean(near, "`gentlest list families` shows them all");
  }

  void check_avoided() {
    std::set<std::string> families;
    for (const Solvent& solvent : catalogue_.solvents()) families.insert(solvent.family);
    const Limits& limits = job_.limits;
    for (std::size_t i = 0; i < limits.avoid_families.size(); ++i)
      if (families.count(limits.avoid_families[i]) == 0)
        complain_at(fmt::format("limits.avoid_families.{}", i),
                    fmt::format("no family \"{}\" is known", limits.avoid_families[i]),
                    near_family(limits.avoid_families[i]));
    check_solvents("avoid_solvents", limits.avoid_solvents);
    check_solvents("allow_acting", limits.allow_acting);
    check_codes("avoid_statements", limits.avoid_statements);
    check_codes("avoid_label", limits.avoid_label);
  }

  void check_solvents(const char* key, const std::vector<std::string>& names) {
    for (std::size_t i = 0; i < names.size(); ++i)
      if (!catalogue_.find_solvent(names[i])) {
        const NameFault fault = no_such_solvent(names[i]);
        complain_at(fmt::format("limits.{}.{}", key, i), fault.message, fault.remedy);
      }
  }

  // A text that is no code would be compared with all and keep nothing away.
  void check_codes(const char* key, const std::vector<std::string>& codes) {
    for (std::size_t i = 0; i < codes.size(); ++i)
      if (!is_statement_code(codes[i]))
        complain_at(fmt::format("limits.{}.{}", key, i),
                    fmt::format("\"{}\" is no GHS hazard statement code", codes[i]), code_cure(codes[i]));
  }

  const Job& job_;
  const Catalogue& catalogue_;
  bool layers_are_told_ = false;  // what the passages say of layers that are at fault themselves is not told
  std::vector<Diagnostic> faults_;
};

}  // namespace

std::vector<Diagnostic> check_job(const Job& job, const Catalogue& catalogue) {
  return JobCheck(job, catalogue).run();
}

}  // namespace gentlest
