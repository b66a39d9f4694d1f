// A job's layers as a plan sees them: which material counts, its sphere, its response, its warnings.
#include "core/plan/planned_layers.hpp"

#include "core/plan/planned_chance.hpp"

#include "gentlest/base/diagnostic.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>

namespace gentlest {

namespace {

void add_flags(std::vector<Flag>& flags, const std::vector<Flag>& more) {
  for (const Flag flag : more)
    if (std::find(flags.begin(), flags.end(), flag) == flags.end()) flags.push_back(flag);
}

// How it answers, whichever sphere it has.
void take_behaviour(PlannedLayer& planned, const Material& material, const Catalogue& catalogue) {
  planned.response = response_of(material, catalogue);
  planned.own_response = material.response.has_value();
  if (material.harm_grade) planned.harm_grade = material.harm_grade->value;
}

// What the studio's own paintings showed goes before what stands for the material.
void take_studio(PlannedLayer& planned, const std::vector<StudioStart>& starts) {
  for (const StudioStart& start : starts) {
    if (start.material != planned.material || !planned.sphere) continue;
    planned.without_studio = planned.sphere;
    planned.sphere = start.sphere;
    planned.studio = start;
  }
}

void take_material(PlannedLayer& planned, const std::string& name, const Limits& limits, const Catalogue& catalogue,
                   const std::vector<StudioStart>& starts) {
  if (name == unknown_material) {
    planned.material_name = name;
    return;
  }
  const Material& material = *catalogue.find_material(name);
  take_behaviour(planned, material, catalogue);
  planned.material = material.id;
  planned.material_name = material.name;
  add_flags(planned.flags, material.flags);
  planned.sphere = uncertain_sphere(material, catalogue);
  if (!planned.sphere) {
    planned.no_sphere = material.no_sphere;
    planned.seen = rows_on(material, grade_that_counts(planned, limits), catalogue);
    return;
  }
  planned.grade = material.sphere->grade;
  planned.sphere_source = material.sphere->sphere.chosen.source;
  planned.assumption = material.sphere->assumption;
  planned.reach = local_reach(material);
  planned.observed = rows_on(material, grade_that_counts(planned, limits), catalogue);
  if (material.conditioning) planned.observations_fitted = material.conditioning->observations;
  take_studio(planned, starts);
}

void add_possible(PlannedLayer& planned, const Layer& layer, const Catalogue& catalogue) {
  for (const PossibleMaterial& one : layer.possible) {
    const Material& material = *catalogue.find_material(one.material);
    planned.possible.push_back({material.id, material.name, uncertain_sphere(material, catalogue), one.percent / 100.0,
                                local_reach(material), response_of(material, catalogue)});
    add_flags(planned.flags, material.flags);
  }
}

PlannedLayer plan_layer(const Layer& layer, const Job& job, const Catalogue& catalogue) {
  PlannedLayer planned;
  planned.name = layer.name;
  planned.role = layer.role;
  add_flags(planned.flags, layer.suspected);
  add_possible(planned, layer, catalogue);
  const std::string& name = own_material(layer);
  const Material* material = name.empty() ? nullptr : catalogue.find_material(name);
  if (layer.own_sphere) {
    planned.response = catalogue.response();
    if (material) {
      planned.material_name = material->name;
      take_behaviour(planned, *material, catalogue);
      add_flags(planned.flags, material->flags);
    }
    planned.basis = LayerBasis::own_tests;
    planned.sphere = layer.own_sphere->sphere;
    planned.grade = SphereGrade::fitted;
    planned.sphere_source = layer.own_sphere->source;
    return planned;
  }
  planned.basis = layer.found.empty() ? LayerBasis::recorded : LayerBasis::found;
  take_material(planned, name, job.limits, catalogue, job.starts);
  return planned;
}

// What a passage is judged as of which no more is known than that it may hold resin; null: as its layer.
const Material* stand_in_of_suspicion(const Passage& passage, const Catalogue& catalogue) {
  const auto& flags = passage.suspected;
  if (std::find(flags.begin(), flags.end(), Flag::resinous) == flags.end()) return nullptr;
  const Material* glaze = catalogue.find_material("oil_resin_glaze");
  return glaze && glaze->sphere ? glaze : nullptr;
}

// Empty where the passage is judged like its layer.
std::string material_of(const Passage& passage, const Catalogue& catalogue) {
  if (!passage.material.empty()) return passage.material;
  const Material* stand_in = stand_in_of_suspicion(passage, catalogue);
  return stand_in ? stand_in->id : std::string();
}

PlannedLayer plan_passage(const Passage& passage, const std::string& material, const Job& job,
                          const Catalogue& catalogue) {
  PlannedLayer planned;
  planned.name = passage.name;
  planned.role = Role::keep;
  planned.basis = passage.material.empty() ? LayerBasis::suspected : LayerBasis::passage;
  planned.passage_of = passage.of;
  add_flags(planned.flags, passage.suspected);
  take_material(planned, material, job.limits, catalogue, job.starts);
  return planned;
}

// What is suspected of a passage that is judged like its layer stands beside that layer, not for all of it.
void add_passage_warning(std::vector<PlannedLayer>& layers, const Passage& passage) {
  for (PlannedLayer& layer : layers)
    if (layer.name == passage.of && !passage.suspected.empty())
      layer.passages.push_back({passage.name, passage.suspected});
}

std::vector<Flag> against_margin(const std::vector<Flag>& flags, Role role) {
  std::vector<Flag> against;
  for (const Flag flag : flags)
    if (flag != Flag::water_sensitive && (flag == Flag::cross_linked) == (role == Role::remove))
      against.push_back(flag);
  return against;
}

bool is_meant(const std::string& layer, Role role, const std::string& target) {
  return role == Role::remove && (target.empty() || layer == target);
}

}  // namespace

UncertainSphere met_by_liquids(const PlannedLayer& layer, const std::vector<Liquid>& liquids) {
  const Hansen own = largest_sd(liquids);
  assert(layer.sphere);
  UncertainSphere sphere =
      seen_from(*layer.sphere, {std::max(own.dD, layer.liquid_sd.dD), std::max(own.dP, layer.liquid_sd.dP),
                                std::max(own.dH, layer.liquid_sd.dH)});
  sphere.sd = {std::max(sphere.sd.dD, best_known_sd.dD), std::max(sphere.sd.dP, best_known_sd.dP),
               std::max(sphere.sd.dH, best_known_sd.dH)};
  return sphere;
}

std::vector<PassageWarning> warnings_against_margin(const PlannedLayer& layer) {
  std::vector<PassageWarning> against;
  const auto add = [&](const std::string& passage, const std::vector<Flag>& flags) {
    const std::vector<Flag> found = against_margin(flags, layer.role);
    if (!found.empty()) against.push_back({passage, found});
  };
  add({}, layer.flags);
  for (const PassageWarning& one : layer.passages) add(one.passage, one.flags);
  return against;
}

bool margin_may_be_claimed(const std::vector<PlannedLayer>& layers) {
  return std::all_of(layers.begin(), layers.end(),
                     [](const PlannedLayer& layer) { return layer.sphere && warnings_against_margin(layer).empty(); });
}

bool is_kept_unjudged(const PlannedLayer& layer) {
  return layer.role == Role::keep && !layer.sphere;
}

bool is_risk_open(const std::vector<PlannedLayer>& layers) {
  return std::none_of(layers.begin(), layers.end(),
                      [](const PlannedLayer& layer) { return layer.role == Role::keep && layer.sphere; });
}

bool is_judged_like_layer(const Passage& passage, const std::vector<PlannedLayer>& layers) {
  return std::none_of(layers.begin(), layers.end(),
                      [&](const PlannedLayer& layer) { return layer.name == passage.name; });
}

std::optional<Diagnostic> target_fault(const Job& job, const std::string& target) {
  std::vector<std::string> removable;
  for (const Layer& layer : job.layers) {
    if (is_meant(layer.name, layer.role, target)) return std::nullopt;
    if (layer.role == Role::remove) removable.push_back(layer.name);
  }
  const std::string near = nearest_name(target, removable);
  return Diagnostic{{},
                    fmt::format("no layer \"{}\" with role remove", target),
                    near.empty() ? "" : fmt::format("did you mean \"{}\"?", near),
                    {}};
}

std::vector<PlannedLayer> layers_as_known(const Job& job, const Catalogue& catalogue) {
  std::vector<PlannedLayer> layers;
  for (const Layer& layer : job.layers) layers.push_back(plan_layer(layer, job, catalogue));
  for (const Passage& passage : job.passages) {
    const std::string material = material_of(passage, catalogue);
    if (material.empty())
      add_passage_warning(layers, passage);
    else
      layers.push_back(plan_passage(passage, material, job, catalogue));
  }
  return layers;
}

std::vector<PlannedLayer> planned_layers(const Job& job, const Catalogue& catalogue, const std::string& target) {
  if (const auto fault = target_fault(job, target)) throw InputError(Fault::usage, {*fault});
  std::vector<PlannedLayer> layers = layers_as_known(job, catalogue);
  const Hansen liquid_sd = largest_sd(usable_liquids(shelf_of(job, catalogue)));
  const auto meant = std::find_if(layers.begin(), layers.end(),
                                  [&](const PlannedLayer& layer) { return is_meant(layer.name, layer.role, target); });
  assert(meant != layers.end());
  meant->is_target = true;
  for (PlannedLayer& layer : layers) layer.liquid_sd = liquid_sd;
  return layers;
}

}  // namespace gentlest
