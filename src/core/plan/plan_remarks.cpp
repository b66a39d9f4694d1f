#include "core/plan/plan_remarks.hpp"

#include "gentlest/catalogue/figures.hpp"

#include <algorithm>
#include <set>

namespace gentlest {

namespace {

void add_sphere(std::vector<WeakPoint>& points, const PlannedLayer& layer, std::size_t at) {
  if (layer.grade != SphereGrade::fitted) points.push_back({WeakPointKind::sphere, at});
  if (!(layer.liquid_sd == Hansen{}))
    points.push_back({WeakPointKind::liquids_vary, at});
  else if (!(met_by_liquids(layer) == *layer.sphere))
    points.push_back({WeakPointKind::surer_than_liquids, at});
}

void add_layer(std::vector<WeakPoint>& points, const PlannedLayer& layer, std::size_t at) {
  if (layer.sphere)
    add_sphere(points, layer, at);
  else
    points.push_back({WeakPointKind::not_judged, at});
  for (std::size_t i = 0; i < layer.possible.size(); ++i) points.push_back({WeakPointKind::may_be_else, at, i});
  if (layer.basis == LayerBasis::recorded) points.push_back({WeakPointKind::not_examined, at});
}

bool is_without_grade(const Liquid& liquid) {
  const std::string& name = liquid.solvent->name;
  return liquid.label == (liquid.denatured ? denatured_name(name) : name);
}

}  // namespace

std::vector<WeakPoint> list_weak_points(const Plan& plan, const Catalogue& catalogue) {
  std::vector<WeakPoint> points;
  for (std::size_t i = 0; i < plan.layers.size(); ++i) add_layer(points, plan.layers[i], i);
  for (std::size_t i = 0; i < plan.job.layers.size(); ++i) {
    const Layer& layer = plan.job.layers[i];
    if (!layer.recorded.empty() && !layer.found.empty() &&
        catalogue.find_material(layer.recorded) != catalogue.find_material(layer.found))
      points.push_back({WeakPointKind::found_otherwise, i});
  }
  for (std::size_t i = 0; i < plan.layers.size(); ++i)
    if (plan.layers[i].sphere && plan.layers[i].response.strongest > 1)
      points.push_back({WeakPointKind::only_swells, i});
  if (std::any_of(plan.layers.begin(), plan.layers.end(),
                  [](const PlannedLayer& layer) { return layer.sphere && !layer.own_response; }))
    points.push_back({WeakPointKind::borrowed_curve});
  for (const Liquid& liquid : plan.shelf)
    if (liquid.solvent->id == "ethanol" && is_without_grade(liquid))
      points.push_back({WeakPointKind::no_grade_written});
  return points;
}

namespace {

void cite(std::set<std::string>& keys, const Mixture& mixture) {
  for (const Part& part : mixture.parts()) {
    const Solvent& solvent = *part.liquid.solvent;
    if (solvent.hansen) keys.insert(solvent.hansen->chosen.source);
    if (solvent.hazards) keys.insert(solvent.hazards->source);
    if (solvent.flash_point_C) keys.insert(solvent.flash_point_C->chosen.source);
    for (const ExposureLimit& limit : solvent.exposure_limits) keys.insert(limit.source);
  }
}

}  // namespace

std::vector<Source> list_sources(const Plan& plan, const Catalogue& catalogue) {
  std::set<std::string> keys;
  for (const PlannedLayer& layer : plan.layers) {
    if (layer.sphere) keys.insert(layer.sphere_source);
    if (layer.sphere) keys.insert(layer.response.source);
    for (const SeenRow& seen : layer.seen) keys.insert(seen.row->source);
  }
  for (const JobBottle& bottle : plan.left_off)
    if (bottle.left_off->seen) keys.insert(bottle.left_off->seen->source);
  for (const JudgedMixture* planned : planned_mixtures(plan)) {
    cite(keys, planned->mixture);
    for (const VerySighting& very : planned->very)
      for (const SeenRow& seen : very.rows) keys.insert(seen.row->source);
    const std::vector<std::string>& phases = planned->fate.phases.sources;
    keys.insert(phases.begin(), phases.end());
  }
  for (const PartingPair& pair : plan.parting) keys.insert(pair.sources.begin(), pair.sources.end());
  for (const Caution& caution : plan.cautions) keys.insert(caution.source);
  return named_sources(keys, catalogue);
}

}  // namespace gentlest
